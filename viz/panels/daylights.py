"""The controls of what a drain empties through: bleeders, and pipes to daylight."""

from typing import Any

import streamlit as st

from geometry.designlists import added, without
from geometry.materials.catalogue import PIPES
from viz.panels import state
from viz.panels.fields import Field, alone, choice, lines_field, names, pair, say_own_faults
from viz.panels.spoken import later, said
from viz.panels.state import Path

_FIRST = {"toward": "20 ft, -60 ft", "ground": ["0 ft, 6 ft", "30 ft, -3 ft", "80 ft, -8 ft"]}
_FIRST_METRIC = {"toward": "6 m, -18 m", "ground": ["0 m, 1.8 m", "9 m, -0.9 m", "24 m, -2.4 m"]}
_MOST = 3


def bleeders(home: Path) -> None:
    """Show the short pipes through the footing; they count where a drain empties through them."""
    st.caption(said("For a drain that empties into the one on the footing's other face."))
    choice(Field((*home, "pipe"), "Bleeder pipe", "sch40-3"), names(PIPES))
    pair(
        Field((*home, "spacing"), "Bleeders apart, at most", "8 ft"),
        Field((*home, "invert"), "Bleeders' invert", "the drain's", "from TOF"),
    )


def daylight(home: Path) -> None:
    """Show each outlet to open air, and what adds one or takes it out."""
    value = state.value(home)
    rows = value if isinstance(value, list) else [value] if isinstance(value, dict) else []
    if not rows:
        st.caption(
            said(
                "A solid pipe that falls until it leaves falling ground: no pump, no power. It "
                "needs ground that drops lower than the drain."
            )
        )
    for place in range(len(rows)):
        here = home if isinstance(value, dict) else (*home, place)
        if len(rows) > 1:
            st.caption(said("Outlet {number}", number=place + 1))
        say_own_faults(here)
        _outlet(here)
        st.button(
            said("Take this outlet out"), key=f"take out {here}", on_click=_take_out, args=(here,)
        )
    if len(rows) < _MOST:
        st.button(
            said("Add an outlet to daylight"), key=f"add to {home}", on_click=_add, args=(home,)
        )


def _outlet(here: Path) -> None:
    alone(Field((*here, "toward"), "Heads toward", help="x, y on the plan, in a straight line"))
    lines_field(
        Field((*here, "ground"), "Ground along the pipe",
              help="distance from the drain, level from TOF, one a line, outward from 0; shoot it "
              "every 10 ft or where the slope changes")
    )  # fmt: skip
    pair(
        Field((*here, "fall"), "Fall of the outlet", "1/4 in per ft", "1/8 in per ft at the least"),
        Field((*here, "cover"), "Ground over it", "12 in", "shallower, wheels and frost reach it"),
    )
    choice(
        Field((*here, "pipe"), "Outlet's pipe", ""), {"": later("the drain's kind"), **names(PIPES)}
    )
    pair(
        Field((*here, "above_ground"), "Open end over the ground", "4 in",
              "clear of snow, leaves and grass"),
        Field((*here, "high_water"), "Highest water there", "not given",
              "of a ditch, stream or street, from TOF: over the open end it runs back in"),
    )  # fmt: skip


def _add(home: Path) -> None:
    metric = state.value(("project", "units")) == "metric"
    entry: dict[str, Any] = _FIRST_METRIC if metric else _FIRST
    state.change(lambda text: added(text, home, entry))


def _take_out(here: Path) -> None:
    state.change(lambda text: without(text, here))
