"""The controls of drain, sump pit, water and ground."""

from typing import Any

import streamlit as st

from geometry.materials.catalogue import FABRICS, PIPES, SOILS
from viz.panels import state
from viz.panels.fields import Field, alone, choice_field, names, pair, say_faults, text_field


def drain() -> None:
    """Show the perimeter drain's fields."""
    if state.value(("drain",)) is None:
        st.caption("This design has no drain.")
        st.button("Add a drain", on_click=state.edit, args=(("drain", "pipe"), "d2729-4"))
        return
    choice_field(Field(("drain", "pipe"), "Pipe", "d2729-4"), names(PIPES))
    say_faults(("drain", "pipe"))
    pair(
        Field(("drain", "fall"), "Fall", "1/8 in per ft", "1/8 in per ft, 1 %, 1:100 or level"),
        Field(("drain", "offset"), "Footing to pipe's middle", "8 in"),
    )
    pair(
        Field(("drain", "outlet_invert"), "Invert at low point", "on its bedding", "from TOF"),
        Field(("drain", "stone", "cover"), "Stone over the pipe", "6 in"),
    )
    pair(
        Field(("drain", "stone", "width"), "Stone width", "16 in"),
        Field(("drain", "stone", "bedding"), "Stone under the pipe", "2 in"),
    )
    alone(
        Field(("drain", "holes", "rows"), "Rows of holes", "-60, 60", "degrees from straight down"),
        shown=_numbers,
        meant=_angles,
    )
    pair(
        Field(("drain", "holes", "diameter"), "Hole diameter", "1/2 in"),
        Field(("drain", "holes", "spacing"), "Hole spacing", "5 in"),
    )
    choice_field(Field(("drain", "wrap", "material"), "Wrap", "nonwoven-6oz"), names(FABRICS))
    say_faults(("drain", "wrap", "material"))


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


def sump() -> None:
    """Show the sump pit's fields."""
    if state.value(("sump",)) is None:
        st.caption("This design has no sump pit.")
        st.button("Add a sump pit", on_click=state.edit, args=(("sump", "at"), "3 ft 6 in, 6 ft"))
        return
    alone(Field(("sump", "at"), "Centre", help="x, y on the plan"))
    pair(
        Field(("sump", "depth"), "Depth below the floor", "30 in"),
        Field(("sump", "diameter"), "Diameter inside", "18 in"),
    )
    alone(Field(("sump", "fall"), "Fall of the pipe to it", "1/4 in per ft"))
    _pump()
    st.button("Take the sump out", on_click=state.edit, args=(("sump",), None))


def _pump() -> None:
    """Show the levels of the pump's float switch."""
    path = ("sump", "pump")
    if state.value(path) is None:
        first = {"off": "3 in", "on": "10 in"}
        st.button("Add a pump's levels", on_click=state.edit, args=(path, first))
        return
    st.caption("The pump's switch: water above the pit's inside bottom")
    left, right = st.columns(2)
    with left:
        text_field(Field((*path, "off"), "Pump stops at"))
    with right:
        text_field(Field((*path, "on"), "Pump starts at"))
    left, right = st.columns(2)
    with left:
        text_field(Field((*path, "alarm"), "High-water alarm at", "none"))
    with right:
        usual = "by its curve" if state.value((*path, "curve")) else "not given"
        text_field(Field((*path, "flow"), "Pump throws", usual, "34 gpm or 2.1 L/s, in this pit"))
    say_faults(path)
    st.button("Take the pump's levels out", on_click=state.edit, args=(path, None))


def water() -> None:
    """Show what is known of the water; what is left empty stays unknown."""
    kinds = "SCS I, SCS IA, SCS II, SCS III or steady"
    pair(
        Field(("water", "storm"), "Storm", "not given", kinds),
        Field(("water", "rain"), "Rain in it", "not given", "its whole depth, such as 4 in"),
    )
    pair(
        Field(("water", "duration"), "It lasts", "24 h"),
        Field(("water", "strip"), "Backfill that takes rain", "all dug open", "from the wall out"),
    )
    share = Field(("water", "share"), "Share that soaks in", "not given", "0 to 1")
    alone(share, meant=_number)
    pair(
        Field(("water", "water_table"), "Highest water table", "not given", "from TOF, or by name"),
        Field(("water", "conductivity"), "Ground's conductivity", "by the soil", "1e-4 cm/s"),
    )
    alone(Field(("water", "roof"), "Roof led into the drain", "none", "900 sq ft or 84 m2"))


def ground() -> None:
    """Show grade, dig, backfill, soil and survey."""
    pair(
        Field(("grade", "at_wall"), "Grade at the wall", "8 in below top of wall", "from TOF"),
        Field(("grade", "fall"), "Grade falls", "5 %"),
    )
    alone(Field(("excavation", "working_space"), "Working space", "2 ft"))
    slope = Field(("excavation", "slope"), "Sides slope, across per up", "1")
    alone(slope, meant=_number)
    pair(
        Field(("backfill", "stone_width"), "Stone up the wall, width", "12 in"),
        Field(("backfill", "stone_top"), "Stone up the wall, to", "none", "from TOF"),
    )
    choice_field(Field(("soil", "group"), "Soil", "unknown"), names(SOILS))
    say_faults(("soil", "group"))
    pair(
        Field(("datum", "top_of_footing"), "Elevation of TOF", "100 ft"),
        Field(("datum", "instrument"), "Elevation of the laser", "none"),
    )
