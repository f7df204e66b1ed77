"""The plan on which a cut is chosen: press and drag, tap two places, or tap a named cut."""

from functools import cache
from pathlib import Path
from typing import Any

import streamlit as st
from streamlit.components.v2.types import ComponentRenderer

from viz.job import Job
from viz.panels import cached, cutting
from viz.panels.spoken import later, said

_KEY = "plan chooser"
_WORDS = later({
    "plan": "Plan of the foundation",
    "hint": "Press and drag on the plan to cut there, or tap two places. Drag an end to move it.",
    "second": "Now tap where the cut ends; Escape leaves it.",
})  # fmt: skip
# Short, as they stand on the plan.
_NAMES = later({
    "across": "across", "step": "step", "pier": "pier", "sump": "sump", "bleeder": "bleeder",
    "drain": "drain",
})  # fmt: skip
_HTML = """
<div class="plan">
  <div class="paper" role="img"></div>
  <svg class="over"></svg>
  <div class="names"></div>
</div>
<p class="hint" aria-live="polite"></p>
"""


@cache
def _component() -> ComponentRenderer:
    here = Path(__file__).parent
    css, js = ((here / f"chooser.{kind}").read_text("utf-8") for kind in ("css", "js"))
    return st.components.v2.component("bedcourse_plan_chooser", html=_HTML, css=css, js=js)


def chooser(work: Job) -> None:
    """Show the plan with the cut on it; what is drawn there becomes the cut."""
    plan = cached.chooser(work.text)
    data = {
        "svg": plan.svg,
        "size": plan.size,
        "perMetre": plan.per_metre,
        "origin": plan.origin,
        "cuts": [
            {"name": n, "title": said(_NAMES.get(n, n)), "points": c.path}
            for n, c in work.cuts.items()
        ],
        "chosen": cutting.asked(work).name,
        "points": cutting.corners(work),
        "words": {key: said(words) for key, words in _WORDS.items()},
    }
    _component()(
        key=_KEY,
        data=data,
        on_drawn_change=lambda: cutting.drawn(work, _heard("drawn")),
        on_named_change=lambda: _named(work, _heard("named")),
    )


def _heard(what: str) -> Any:
    return st.session_state[_KEY].get(what)


def _named(work: Job, name: Any) -> None:
    if name in work.cuts:
        cutting.choose(work, str(name))
