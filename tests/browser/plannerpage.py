"""A page with the plan editor alone, and what it wrote; served by the tests."""

import streamlit as st

from viz.carried import demo
from viz.panels import state
from viz.panels.planner import planner

if not state.begun():
    state.put(demo().read_text(encoding="utf-8"))
work = state.work()
assert work is not None
planner(work, 0)
st.code("\n".join(line for line in state.text().split("\n") if line.startswith(("corners", "at"))))
st.html(f'<p class="heard">{st.session_state.get("planner heard", 0)}</p>')
