"""The fields beside each page: those of the design that its job is about."""

from typing import Any, get_args

import streamlit as st

from geometry.materials.catalogue import CONCRETES
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
)
from viz.panels.layers import layers
from viz.panels.layout import AREA
from viz.panels.lists import gradings, height_rules, prices
from viz.panels.loads import loads, rules
from viz.panels.ordering import ordering
from viz.panels.presets import drain_presets, floor_presets, shape_presets
from viz.panels.sitework import backfill, ground, sump, water
from viz.panels.spoken import later, said
from viz.panels.state import Path
from viz.panels.titles import title_block
from viz.panels.warmthfields import (
    climate_fields,
    joint_fields,
    load_fields,
    site_fields,
    tubing_fields,
    vent_fields,
    wall_fields,
)

# By whether footing and wall are written in the area's own tables.
_OWN = later({
    (False, False): "As the house's.",
    (True, False): "This area's own: footing.",
    (False, True): "This area's own: wall.",
    (True, True): "This area's own: footing and wall.",
})  # fmt: skip


def _readable() -> rows.Raw | None:
    """Return the text's tables; says so where they cannot be read, and nothing is shown."""
    raw = state.raw()
    areas = raw.get("area") if raw else None
    if raw and isinstance(areas, list) and all(isinstance(a, dict) for a in areas):
        return raw
    st.info(said("The fields come back when the text under Set, Design file can be read again."))
    return None


def layout_fields() -> None:
    """Show what says where the house stands: outline, footing, wall, ground."""
    raw = _readable()
    if raw is None:
        return
    with st.expander(said("Begin from a shape")):
        shape_presets()
    area = _chosen_area(raw["area"])
    with st.expander(said("Outline, step and piers"), expanded=True):
        _outline(area)
    with st.expander(said("Footing and wall")):
        _footing(raw, area)
        wall_fields()
    with st.expander(said("Ground, dig and levels")):
        ground()
    with st.expander(said("What the place asks")):
        site_fields()
        vent_fields()


def floor_fields() -> None:
    """Show the floor's layers, from the top down, and what places them."""
    raw = _readable()
    if raw is None:
        return
    area = _chosen_area(raw["area"])
    with st.expander(said("Begin from a usual floor")):
        floor_presets()
    with st.expander(said("Floor build-up"), expanded=True):
        _floor(raw, area)
    with st.expander(said("Joints and heating tubes")):
        joint_fields()
        tubing_fields()
    with st.expander(said("Warmth and loads")):
        climate_fields()
        load_fields()


def drain_fields() -> None:
    """Show the drains, what they empty into, the water and what lies on the pipe."""
    if _readable() is None:
        return
    with st.expander(said("Begin from a usual drain")):
        drain_presets()
    with st.expander(said("Drains"), expanded=True):
        drains()
    with st.expander(said("Sump pit")):
        sump()
    with st.expander(said("Water")):
        water()
    with st.expander(said("Backfill")):
        backfill()
    with st.expander(said("Loads")):
        loads()
    with st.expander(said("Stone as delivered")):
        gradings()


def order_fields() -> None:
    """Show what turns a thing in place into a thing to buy."""
    if _readable() is None:
        return
    with st.expander(said("Ordering"), expanded=True):
        ordering()
        prices()


def check_fields() -> None:
    """Show the rules the job is held to."""
    if _readable() is None:
        return
    with st.expander(said("Rules"), expanded=True):
        sets = {one.key: one.title for one in RULE_SETS if one.key in get_args(RuleSetName)}
        rules(sets | {one.key: one.title for one in EDITIONS})
        height_rules()


def set_fields() -> None:
    """Show the words of the title block."""
    if _readable() is None:
        return
    with st.expander(said("Title block"), expanded=True):
        title_block()


def _chosen_area(areas: list[dict[str, Any]]) -> int:
    called = [str(a.get("name", n)) for n, a in enumerate(areas, 1)]
    if len(called) < 2:
        return 0
    return int(
        st.selectbox(said("Area"), range(len(called)), format_func=lambda n: called[n], key=AREA)
    )


def _floor(raw: rows.Raw, area: int) -> None:
    tie = (*rows.home(raw, area, "floor"), "tie")
    usual = "foam over the footing"
    alone(
        Field(tie, "Placed by", usual, "foam bottom at TOF, foam top at TOF, slab top at +6 in"),
        shown=_joined,
    )
    layers(rows.layers_home(raw, area))


def _joined(value: Any) -> str:
    return "; ".join(map(str, value)) if isinstance(value, list) else str(value or "")


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
    st.caption(said(_OWN[len(footing) > 1, len(wall) > 1]))
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
