"""The plan to be edited: corners, piers and the pit are dragged, lengths of sides are typed."""

from functools import cache
from math import isfinite
from pathlib import Path
from typing import Any

import streamlit as st
from streamlit.components.v2.types import ComponentRenderer

from geometry.plan.edits import length_of
from geometry.plan.outline import Point
from geometry.planfile import change as moves
from geometry.planfile.read import Plan, PlanArea, Spot, plan_of
from geometry.units import System, show_length
from viz.job import Job
from viz.panels import state
from viz.panels.fields import say_faults
from viz.panels.refusals import change, refused, say_refused
from viz.panels.spoken import later, said

_KEY = "planner"
# How many edits were heard, the side whose typed length was refused, and why an edit was.
_HEARD, _TYPED, _REFUSED = "planner heard", "planner typed", "planner refused"
_HTML = """
<div class="plan" role="group">
  <svg class="draft">
    <g class="others"></g><g class="room"></g><g class="signs"></g>
    <g class="guides"></g><g class="corners"></g><g class="spots"></g><g class="adds"></g>
  </svg>
  <div class="sides"></div>
</div>
<div class="bar"><button type="button" class="remove"></button>
<p class="hint" aria-live="polite"></p></div>
"""
_WORDS = later({
    "plan": "Plan of {area}, to be edited",
    "corner": "Corner {n}, at {x}, {y}",
    "pier": "Pier {name}, at {x}, {y}",
    "pit": "Sump pit, at {x}, {y}",
    "pit name": "pit",
    "add": "Add a corner to side {n}",
    "side": "Length of side {n}",
    "remove": "Remove corner {n}",
    "remove none": "Remove a corner",
    "hint": "Drag a corner, pier or pit. Type a side's length. Press + to add a corner.",
    "chosen": "Arrow keys move it by {step}; Delete removes it; Escape leaves it.",
    "moving": "Arrow keys move it by {step}; Escape leaves it.",
    "north": "N",
    "unread": "Corner {n} cannot be read in the file and is left out here.",
})  # fmt: skip


@cache
def _component() -> ComponentRenderer:
    here = Path(__file__).parent
    css = (here / "planner.css").read_text("utf-8")
    # One script of three files, each of which stands on the one before.
    names = ("planner_drawing", "planner_labels", "planner")
    js = "".join((here / f"{name}.js").read_text("utf-8") for name in names)
    return st.components.v2.component("bedcourse_planner", html=_HTML, css=css, js=js)


def planner(work: Job, area: int) -> None:
    """Show an area's outline with handles, as the text says it, sound or not.

    area: its number in the file, from 0. What is dragged or typed is written into the text.
    """
    plan = plan_of(state.raw())
    if not plan.areas:
        st.info(said("The plan comes back when the areas of the design file can be read again."))
        return
    # The shown area may just have been taken out of the file.
    area = area if 0 <= area < len(plan.areas) else 0
    _component()(
        key=_KEY,
        data=_told(plan, area) | {"north": work.layout.design.datum.north},
        on_edited_change=lambda: _heard(st.session_state[_KEY].get("edited")),
    )
    say_refused(_REFUSED)
    say_faults(("area", area, "corners"), ("area", area, "pier"), ("sump", "at"))


def _told(plan: Plan, area: int) -> dict[str, Any]:
    """Return what the script draws: metres, and lengths in the design's own words."""
    return {
        "area": area,
        "areas": [
            {"name": a.name, "corners": a.corners, "piers": [_spot(p) for p in a.piers]}
            for a in plan.areas
        ],
        "sides": _lengths(plan.areas[area], plan.system),
        "pit": _spot(plan.pit) if plan.pit else None,
        "metric": plan.system == "metric",
        "step": moves.SNAP[plan.system],
        "heard": st.session_state.get(_HEARD, 0),
        "refused": st.session_state.get(_TYPED) if refused(_REFUSED) else None,
        "words": {key: said(words) for key, words in _WORDS.items()},
    }


def _spot(spot: Spot) -> dict[str, Any]:
    return {"name": spot.name, "at": spot.at, "size": (spot.width, spot.depth)}


def _lengths(area: PlanArea, system: System) -> list[str | None]:
    """Return each side's length in words; None for one with an end that cannot be read."""
    after = (*area.corners[1:], *area.corners[:1])
    pairs = zip(area.corners, after, strict=True)
    return [show_length(length_of((a, b), 0), system) if a and b else None for a, b in pairs]


def _heard(told: Any) -> None:
    """Write one edit into the text; what cannot be understood is left."""
    st.session_state[_HEARD] = st.session_state.get(_HEARD, 0) + 1
    st.session_state[_TYPED] = None
    try:
        kind, area, number = str(told["kind"]), int(told["area"]), int(told["number"])
        words = str(told.get("words", ""))[:60]
        x, y = (round(float(size), 6) for size in told.get("at") or (0.0, 0.0))
    except (TypeError, ValueError, LookupError):
        return
    if not (isfinite(x) and isfinite(y)):
        return
    change(_REFUSED, lambda text: _edited(text, kind, area, number, (x, y), words))
    if kind == "length" and refused(_REFUSED):
        st.session_state[_TYPED] = {"side": number, "words": words}


def _edited(text: str, kind: str, area: int, number: int, to: Point, words: str) -> str:
    match kind:
        case "corner":
            return moves.corner_to(text, area, number, to)
        case "add":
            return moves.corner_added(text, area, number, to)
        case "remove":
            return moves.corner_removed(text, area, number)
        case "length":
            return moves.side_to(text, area, number, words)
        case "pier":
            return moves.pier_to(text, area, number, to)
        case "pit":
            return moves.pit_to(text, to)
    return text
