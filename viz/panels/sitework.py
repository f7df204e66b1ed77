"""The controls of sump pit, water and ground."""

import streamlit as st

from geometry.materials.catalogue import AGGREGATES, SOILS
from viz.panels import state
from viz.panels.fields import (
    Field,
    alone,
    choice,
    lines_field,
    names,
    number,
    pair,
    say_faults,
    text_field,
    three_way,
)
from viz.panels.spoken import later, said


def sump() -> None:
    """Show the sump pit's fields."""
    if state.value(("sump",)) is None:
        st.caption(said("This design has no sump pit."))
        st.button(
            said("Add a sump pit"), on_click=state.edit, args=(("sump", "at"), "3 ft 6 in, 6 ft")
        )
        return
    alone(Field(("sump", "at"), "Centre", help="x, y on the plan"))
    pair(
        Field(("sump", "depth"), "Depth below the floor", "30 in"),
        Field(("sump", "diameter"), "Diameter inside", "18 in"),
    )
    alone(Field(("sump", "fall"), "Fall of the pipe to it", "1/4 in per ft"))
    _pump()
    st.button(said("Take the sump out"), on_click=state.edit, args=(("sump",), None))


def _pump() -> None:
    """Show the levels of the pump's float switch."""
    path = ("sump", "pump")
    if state.value(path) is None:
        first = {"off": "3 in", "on": "10 in"}
        st.button(said("Add a pump's levels"), on_click=state.edit, args=(path, first))
        return
    st.caption(said("The pump's switch: water above the pit's inside bottom"))
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
    st.button(said("Take the pump's levels out"), on_click=state.edit, args=(path, None))


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
    alone(share, meant=number)
    pair(
        Field(("water", "water_table"), "Highest water table", "not given",
              "the highest seen in a year, from TOF or by name; pit, pump and floor go by it"),
        Field(("water", "low_water_table"), "Lowest water table", "not given",
              "the lowest seen in a year, from TOF; drawn beside the highest, nothing goes by it"),
    )  # fmt: skip
    pair(
        Field(("water", "conductivity"), "Ground's conductivity", "by the soil",
              "how fast water seeps through the ground, 1e-4 cm/s; sand lets far more by than "
              "clay"),
        Field(("water", "tight_base"), "Tight ground below", "underside of drain stone",
              "level of clay or rock that lets no water up; the deeper, the more water comes"),
    )  # fmt: skip
    pair(
        Field(("water", "reach"), "Drain pulls water from", "by Sichardt's rule",
              "how far out from the drain the water table is drawn down"),
        Field(("water", "roof"), "Roof led into the drain", "none",
              "900 sq ft or 84 m2; better to lead it away on the ground"),
    )  # fmt: skip


def ground() -> None:
    """Show grade, dig, soil and survey."""
    pair(
        Field(("grade", "at_wall"), "Grade at the wall", "8 in below top of wall", "from TOF"),
        Field(("grade", "fall"), "Grade falls", "5 %"),
    )
    alone(Field(("excavation", "working_space"), "Working space", "2 ft"))
    slope = Field(("excavation", "slope"), "Sides slope, across per up", "1")
    alone(slope, meant=number)
    choice(
        Field(("soil", "group"), "Soil", "unknown",
              "what the hole is dug in; it sets how water seeps, pushes and plugs a fabric"),
        names(SOILS),
    )  # fmt: skip
    sieves = (
        "a lab's sieves, one a line: No. 200, 35 %; the fines decide which fabric will not clog"
    )
    lines_field(Field(("soil", "grading"), "A sample's sieves", "No. 4, 100 %", sieves))
    pair(
        Field(("datum", "top_of_footing"), "Elevation of TOF", "100 ft"),
        Field(("datum", "instrument"), "Elevation of the laser", "none",
              "of its beam; with it every level is a rod reading too"),
    )  # fmt: skip
    turned = "degrees clockwise from straight up the sheet; for the arrow on the plan"
    alone(Field(("datum", "north"), "North", "0", turned), meant=number)


def backfill() -> None:
    """Show what goes back against the wall, and what holds the wall on that day."""
    pair(
        Field(("backfill", "stone_width"), "Stone up the wall, width", "12 in"),
        Field(("backfill", "stone_top"), "Stone up the wall, to", "none", "from TOF"),
    )
    choice(
        Field(("backfill", "material"), "Fill", "",
              "clean stone or sand drains and pushes less than the clay that was dug"),
        {"": later("the soil dug"), **names(AGGREGATES)},
    )  # fmt: skip
    alone(
        Field(("backfill", "water_depth"), "Water below the fill's top", "0 in",
              "where the drain has failed: how far down the water stands in the fill; 0 is full "
              "to the top, the worst push on the wall")
    )  # fmt: skip
    st.caption(said("On the day the fill goes in"))
    for key, (label, more) in _HOLDS.items():
        three_way(Field(("backfill", "state", key), label, help=more))


_HOLDS = later({
    "deck": ("Floor above on and fixed",
             "it holds the top of the wall: fill pushes before it sets"),
    "slab": ("Floor slab in", "it holds the wall's foot"),
    "braced": ("Walls braced inside", "braces down to the floor stand in for deck and slab"),
})  # fmt: skip
