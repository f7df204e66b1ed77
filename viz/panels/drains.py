"""The controls of the drains: which of several is shown, its fields, one more, one less."""

from collections.abc import Mapping
from typing import Any

import streamlit as st

from geometry.designlists import added, without
from geometry.materials.catalogue import AGGREGATES, FABRICS, PIPES
from viz.panels import state
from viz.panels.daylights import bleeders, daylight
from viz.panels.fields import (
    Field,
    alone,
    choice,
    listed,
    names,
    number,
    pair,
    say_faults,
    say_own_faults,
    text_field,
    whole,
    wholes,
)
from viz.panels.spoken import later, said
from viz.panels.state import Path

SHOWN = "drain shown"
_LINES = later({"outside": "outside the footing", "inside": "inside, under the floor"})
_OUTLETS: Mapping[str, str] = later({
    "": "pit or daylight, whichever is given",
    "pit": "sump pit",
    "daylight": "daylight, by gravity",
    "bleeders": "bleeders through the footing, to the other drain",
    "lower stone": "the stone of a lower area's drain",
})  # fmt: skip


def drains() -> None:
    """Show one of the drains with its fields, and what adds one or takes it out."""
    rows = _rows()
    if not rows:
        st.caption(said("This design has no drain."))
        st.button(said("Add a drain"), on_click=state.edit, args=(("drain", "pipe"), "d2729-4"))
        return
    home = _chosen(rows)
    own = ("holes", "stone", "wrap", "bleeders", "daylight")
    say_own_faults(("drain",), home, *((*home, key) for key in own))
    _where(home)
    _pipe(home)
    _stone(home)
    with st.expander(said("Bleeders through the footing")):
        bleeders((*home, "bleeders"))
    with st.expander(said("Outlets to daylight")):
        daylight((*home, "daylight"))
    with st.container(horizontal=True):
        st.button(said("Add a drain"), on_click=_add, args=(rows,))
        st.button(said("Take this drain out"), on_click=_take_out, args=(home,))


def _rows() -> list[Any]:
    value = state.value(("drain",))
    return value if isinstance(value, list) else [value] if isinstance(value, dict) else []


def _chosen(rows: list[Any]) -> Path:
    """Return where the shown drain is written: the single table, or an entry of the list."""
    if isinstance(state.value(("drain",)), dict):
        return ("drain",)
    if st.session_state.get(SHOWN, 0) >= len(rows):
        st.session_state[SHOWN] = 0
    if len(rows) == 1:
        return ("drain", 0)
    st.selectbox(said("Drain"), range(len(rows)), format_func=lambda n: _called(n, rows), key=SHOWN)
    return ("drain", int(st.session_state[SHOWN]))


def _called(place: int, rows: list[Any]) -> str:
    row = rows[place] if place < len(rows) and isinstance(rows[place], dict) else {}
    about = [str(row[key]) for key in ("name", "area", "line") if row.get(key)]
    return f"{place + 1}: {', '.join(about) or 'outside'}"


def _add(rows: list[Any]) -> None:
    """Add a drain on the other face of the footing, emptying through it."""
    inside = any(isinstance(row, dict) and row.get("line") == "inside" for row in rows)
    line = "outside" if inside else "inside"
    entry = {"line": line, "fall": "level", "outlet": "bleeders"}
    state.change(lambda text: added(text, ("drain",), entry))
    st.session_state[SHOWN] = len(rows)


def _take_out(home: Path) -> None:
    state.change(lambda text: without(text, home))
    st.session_state[SHOWN] = 0


def _where(home: Path) -> None:
    """Show which drain it is, where it runs and what it empties into."""
    areas = state.value(("area",)) or []
    called = [str(a.get("name", "")) for a in areas if isinstance(a, dict)]
    pair(
        Field((*home, "name"), "Name of the drain", "none", "as it is called on the sheets"),
        Field((*home, "sides"), "Along sides", "all",
              "all, or numbers like 1, 2: side 1 runs from corner 1 to corner 2"),
        how={"sides": {"shown": listed, "meant": wholes}},
    )  # fmt: skip
    choice(
        Field((*home, "area"), "Area", ""), {"": later("the lowest"), **{n: n for n in called if n}}
    )
    choice(
        Field((*home, "line"), "Runs", "outside",
              "outside it catches water before the wall; inside it drains the floor's stone"),
        _LINES,
    )  # fmt: skip
    choice(
        Field((*home, "outlet"), "Empties into", "",
              "a drain without an outlet is a tub: water must leave by its own weight or a pump"),
        _OUTLETS,
    )  # fmt: skip
    corner = "its number; else the corner farthest from the outlet"
    near = "its number; else the corner nearest to the outlet"
    pair(
        Field((*home, "high_corner"), "High corner", "farthest", corner),
        Field((*home, "low_corner"), "Low corner", "nearest", near),
        how={"high_corner": {"meant": whole}, "low_corner": {"meant": whole}},
    )
    cleanouts = "corners where a riser lets a hose or rod in; put one at every high end"
    alone(
        Field((*home, "cleanouts"), "Cleanouts at corners", "none", cleanouts),
        shown=listed,
        meant=wholes,
    )


def _pipe(home: Path) -> None:
    choice(Field((*home, "pipe"), "Pipe", "d2729-4"), names(PIPES))
    pair(
        Field((*home, "fall"), "Fall", "1/8 in per ft", "1/8 in per ft, 1 %, 1:100 or level"),
        Field((*home, "offset"), "Footing to pipe's middle", "8 in"),
    )
    alone(
        Field((*home, "outlet_invert"), "Invert at low point", "on its bedding",
              "inside bottom of the pipe, from TOF; the trench must not dig under the footing")
    )  # fmt: skip
    alone(
        Field((*home, "holes", "rows"), "Rows of holes", "-60, 60", "degrees from straight down"),
        shown=listed,
        meant=_angles,
    )
    pair(
        Field((*home, "holes", "diameter"), "Hole diameter", "1/2 in"),
        Field((*home, "holes", "spacing"), "Hole spacing", "5 in"),
    )


def _angles(words: str) -> Any:
    """Return angles as numbers; words that are none go to the file, which says what is wrong."""
    found = [number(word.strip()) for word in words.split(",")]
    return (found if all(isinstance(n, float) for n in found) else words) if words else None


def _stone(home: Path) -> None:
    choice(
        Field((*home, "stone", "material"), "Stone", "stone-57", "washed: fines would plug it"),
        names(AGGREGATES),
    )
    left, right = st.columns(2)
    with left:
        text_field(Field((*home, "stone", "width"), "Stone width", "16 in"))
        text_field(Field((*home, "stone", "cover"), "Stone over the pipe", "6 in"))
    with right:
        text_field(Field((*home, "stone", "bedding"), "Stone under the pipe", "2 in"))
        text_field(Field((*home, "wrap", "overlap"), "Wrap laps over the top", "12 in"))
    say_faults(*((*home, "stone", key) for key in ("width", "cover", "bedding")))
    say_faults((*home, "wrap", "overlap"))
    choice(Field((*home, "wrap", "material"), "Wrap", "nonwoven-6oz"), names(FABRICS))
