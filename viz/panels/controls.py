"""The controls: the design's fields by subject."""

from collections.abc import Mapping
from typing import Any

import streamlit as st

from geometry.materials.catalogue import (
    AGGREGATES,
    BOARDS,
    CONCRETES,
    FABRICS,
    PIPES,
    SHEETS,
    SOILS,
)
from viz.panels import rows, state
from viz.panels.fields import Field, area_field, choice_field, text_field
from viz.panels.state import Path

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
    area = _chosen_area(areas)
    with st.expander("Floor build-up", expanded=True):
        _floor(raw, area)
    with st.expander("Outline, step and piers"):
        _outline(area)
    with st.expander("Footing and wall"):
        _footing(raw, area)
    with st.expander("Perimeter drain"):
        _drain()
    with st.expander("Sump pit"):
        _sump()
    with st.expander("Ground, dig and levels"):
        _ground()


def _chosen_area(areas: list[dict[str, Any]]) -> int:
    names = [str(a.get("name", n)) for n, a in enumerate(areas, 1)]
    if len(names) < 2:
        return 0
    return int(
        st.selectbox("Area", range(len(names)), format_func=lambda n: names[n], key="area shown")
    )


def _floor(raw: rows.Raw, area: int) -> None:
    tie = (*rows.home(raw, area, "floor"), "tie")
    usual = "foam over the footing"
    text_field(
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
        choice_field(Field((*path, "material"), name.capitalize()), _names(choices))
    with right:
        text_field(Field((*path, "thickness"), f"Thickness, {name}"))


def _names(rows_by_key: Mapping[str, Any]) -> dict[str, str]:
    return {key: row.name for key, row in rows_by_key.items()}


def _outline(area: int) -> None:
    corners: Path = ("area", area, "corners")
    area_field(
        Field(corners, "Corners", help="outside face of the wall, round the house, x, y a line"),
        rows.corner_lines(state.value(corners)),
        lambda lines: state.edit(corners, rows.corners_of(lines)),
    )
    step = "its top of footing above (or below, with a minus) the house's"
    text_field(Field(("area", area, "step"), "Step of top of footing", "0", step))
    piers: Path = ("area", area, "pier")
    area_field(
        Field(piers, "Piers", help="name: x, y of the centre, one a line"),
        rows.pier_lines(state.value(piers)),
        lambda lines: state.change(lambda text: rows.with_piers(text, area, lines)),
    )


def _footing(raw: rows.Raw, area: int) -> None:
    footing, wall = rows.home(raw, area, "footing"), rows.home(raw, area, "wall")
    own = [p[-1] for p in (footing, wall) if len(p) > 1]
    st.caption(f"This area's own: {' and '.join(map(str, own))}." if own else "As the house's.")
    _pair(
        Field((*footing, "width"), "Footing width", "20 in"),
        Field((*footing, "thickness"), "Footing thickness", "10 in"),
    )
    _pair(
        Field((*wall, "thickness"), "Wall thickness", "8 in"),
        Field((*wall, "height"), "Wall height", "8 ft", "from its top of footing up"),
    )
    choice_field(Field((*footing, "material"), "Footing concrete", "concrete"), _names(CONCRETES))


def _pair(first: Field, second: Field) -> None:
    for column, field in zip(st.columns(2), (first, second), strict=True):
        with column:
            text_field(field)


def _drain() -> None:
    if state.value(("drain",)) is None:
        st.caption("This design has no drain.")
        st.button("Add a drain", on_click=state.edit, args=(("drain", "pipe"), "d2729-4"))
        return
    choice_field(Field(("drain", "pipe"), "Pipe", "d2729-4"), _names(PIPES))
    _pair(
        Field(("drain", "fall"), "Fall", "1/8 in per ft", "1/8 in per ft, 1 %, 1:100 or level"),
        Field(("drain", "offset"), "Footing to pipe's middle", "8 in"),
    )
    _pair(
        Field(("drain", "outlet_invert"), "Invert at low point", "on its bedding", "from TOF"),
        Field(("drain", "stone", "cover"), "Stone over the pipe", "6 in"),
    )
    _pair(
        Field(("drain", "stone", "width"), "Stone width", "16 in"),
        Field(("drain", "stone", "bedding"), "Stone under the pipe", "2 in"),
    )
    text_field(
        Field(("drain", "holes", "rows"), "Rows of holes", "-60, 60", "degrees from straight down"),
        shown=_numbers,
        meant=_angles,
    )
    _pair(
        Field(("drain", "holes", "diameter"), "Hole diameter", "1/2 in"),
        Field(("drain", "holes", "spacing"), "Hole spacing", "5 in"),
    )
    choice_field(Field(("drain", "wrap", "material"), "Wrap", "nonwoven-6oz"), _names(FABRICS))


def _numbers(value: Any) -> str:
    return ", ".join(map(str, value)) if isinstance(value, list) else str(value or "")


def _angles(words: str) -> Any:
    """Return angles as numbers; words that are none go to the file, which says what is wrong."""
    found = [_number(word.strip()) for word in words.split(",")]
    return (found if all(isinstance(n, float) for n in found) else words) if words else None


def _number(words: str) -> Any:
    try:
        return float(words) if words else None
    except ValueError:
        return words


def _sump() -> None:
    if state.value(("sump",)) is None:
        st.caption("This design has no sump pit.")
        st.button("Add a sump pit", on_click=state.edit, args=(("sump", "at"), "3 ft 6 in, 6 ft"))
        return
    text_field(Field(("sump", "at"), "Centre", help="x, y on the plan"))
    _pair(
        Field(("sump", "depth"), "Depth below the floor", "30 in"),
        Field(("sump", "diameter"), "Diameter inside", "18 in"),
    )
    text_field(Field(("sump", "fall"), "Fall of the pipe to it", "1/4 in per ft"))
    st.button("Take the sump out", on_click=state.edit, args=(("sump",), None))


def _ground() -> None:
    _pair(
        Field(("grade", "at_wall"), "Grade at the wall", "8 in below top of wall", "from TOF"),
        Field(("grade", "fall"), "Grade falls", "5 %"),
    )
    text_field(Field(("excavation", "working_space"), "Working space", "2 ft"))
    slope = Field(("excavation", "slope"), "Sides slope, across per up", "1")
    text_field(slope, meant=_number)
    _pair(
        Field(("backfill", "stone_width"), "Stone up the wall, width", "12 in"),
        Field(("backfill", "stone_top"), "Stone up the wall, to", "none", "from TOF"),
    )
    choice_field(Field(("soil", "group"), "Soil", "unknown"), _names(SOILS))
    _pair(
        Field(("datum", "top_of_footing"), "Elevation of TOF", "100 ft"),
        Field(("datum", "instrument"), "Elevation of the laser", "none"),
    )
