"""The controls: the design's fields by subject."""

from collections.abc import Mapping
from typing import Any, get_args

import streamlit as st

from geometry.materials.catalogue import AGGREGATES, BOARDS, CONCRETES, SHEETS
from geometry.parts.rules import RuleSetName
from geometry.rules.codes import RULE_SETS
from geometry.rules.editions import EDITIONS
from viz.panels import rows, state
from viz.panels.drains import drains
from viz.panels.fields import (
    Field,
    alone,
    area_field,
    choice_field,
    names,
    pair,
    say_faults,
    text_field,
)
from viz.panels.loads import loads
from viz.panels.ordering import ordering
from viz.panels.sitework import backfill, ground, sump, water
from viz.panels.state import Path
from viz.panels.titles import title_block

_CHOICES: Mapping[str, Mapping[str, Any]] = {
    "base": AGGREGATES, "blinding": AGGREGATES, "retarder": SHEETS, "insulation": BOARDS,
    "slab": CONCRETES, "fill": AGGREGATES,
}  # fmt: skip


def controls() -> None:
    """Show all controls of the design."""
    raw = state.raw()
    areas = raw.get("area") if raw else None
    if not raw or not isinstance(areas, list) or not all(isinstance(a, dict) for a in areas):
        st.info("The fields come back when the text under Design file can be read again.")
        return
    with st.expander("Title block"):
        title_block()
    area = _chosen_area(areas)
    with st.expander("Floor build-up", expanded=True):
        _floor(raw, area)
    with st.expander("Outline, step and piers"):
        _outline(area)
    with st.expander("Footing and wall"):
        _footing(raw, area)
    with st.expander("Drains"):
        drains()
    with st.expander("Sump pit"):
        sump()
    with st.expander("Water"):
        water()
    with st.expander("Ground, dig and levels"):
        ground()
    with st.expander("Backfill"):
        backfill()
    with st.expander("Loads and rules"):
        sets = {one.key: one.title for one in RULE_SETS if one.key in get_args(RuleSetName)}
        loads(sets | {one.key: one.title for one in EDITIONS})
    with st.expander("Ordering"):
        ordering()


def _chosen_area(areas: list[dict[str, Any]]) -> int:
    called = [str(a.get("name", n)) for n, a in enumerate(areas, 1)]
    if len(called) < 2:
        return 0
    return int(
        st.selectbox("Area", range(len(called)), format_func=lambda n: called[n], key="area shown")
    )


def _floor(raw: rows.Raw, area: int) -> None:
    tie = (*rows.home(raw, area, "floor"), "tie")
    usual = "foam over the footing"
    alone(
        Field(tie, "Placed by", usual, "foam bottom at TOF, foam top at TOF, slab top at +6 in"),
        shown=_joined,
    )
    path = rows.layers_home(raw, area)
    layers = state.value(path)
    if not isinstance(layers, list):
        st.caption("The usual floor: 6 in stone, 1/2 in sand, retarder, 2 in foam, 4 in slab.")
        st.button("Change its layers", on_click=state.edit, args=(path, rows.usual_layers()))
        return
    st.caption("Layers, from the top down")
    for number in reversed(range(len(layers))):
        _layer((*path, number), layers[number])


def _joined(value: Any) -> str:
    return "; ".join(map(str, value)) if isinstance(value, list) else str(value or "")


def _layer(path: Path, layer: Any) -> None:
    if not isinstance(layer, dict):
        return
    name = str(layer.get("name", "layer"))
    left, right = st.columns([3, 2])
    with left:
        choices = _CHOICES.get(str(layer.get("role")), {})
        choice_field(Field((*path, "material"), name.capitalize()), names(choices))
    with right:
        text_field(Field((*path, "thickness"), f"Thickness, {name}"))
    say_faults(path)


def _outline(area: int) -> None:
    corners: Path = ("area", area, "corners")
    area_field(
        Field(corners, "Corners", help="outside face of the wall, round the house, x, y a line"),
        rows.corner_lines(state.value(corners)),
        lambda lines: state.edit(corners, rows.corners_of(lines)),
    )
    say_faults(corners)
    step = "its top of footing above (or below, with a minus) the house's"
    alone(Field(("area", area, "step"), "Step of top of footing", "0", step))
    piers: Path = ("area", area, "pier")
    area_field(
        Field(piers, "Piers", help="name: x, y of the centre, one a line"),
        rows.pier_lines(state.value(piers)),
        lambda lines: state.change(lambda text: rows.with_piers(text, area, lines)),
    )
    say_faults(piers)


def _footing(raw: rows.Raw, area: int) -> None:
    footing, wall = rows.home(raw, area, "footing"), rows.home(raw, area, "wall")
    own = [p[-1] for p in (footing, wall) if len(p) > 1]
    st.caption(f"This area's own: {' and '.join(map(str, own))}." if own else "As the house's.")
    pair(
        Field((*footing, "width"), "Footing width", "20 in"),
        Field((*footing, "thickness"), "Footing thickness", "10 in"),
    )
    pair(
        Field((*wall, "thickness"), "Wall thickness", "8 in"),
        Field((*wall, "height"), "Wall height", "8 ft", "from its top of footing up"),
    )
    choice_field(Field((*footing, "material"), "Footing concrete", "concrete"), names(CONCRETES))
    say_faults((*footing, "material"))
