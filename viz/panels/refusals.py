"""What a control refused, said beside it: the design's text was left as it was."""

from collections.abc import Callable
from html import escape

import streamlit as st

from geometry.errors import DesignError, Fault
from viz.panels import state


def change(key: str, how: Callable[[str], str]) -> None:
    """Change the design's text; where that is refused, keep why under this key."""
    try:
        text = how(state.text())
    except DesignError as error:
        st.session_state[key] = (state.text(), error.faults)
        return
    st.session_state.pop(key, None)
    state.put(text)


def refused(key: str) -> tuple[Fault, ...]:
    """Return why what was asked for last under this key was refused; nothing of another text."""
    text, found = st.session_state.get(key, ("", ()))
    faults: tuple[Fault, ...] = found
    return faults if text == state.text() else ()


def say_refused(key: str, named: bool = False) -> None:
    """Say what was refused last under this key; named: with the place each speaks of."""
    for fault in refused(key):
        words = f"{fault.place}: {fault.sentence}" if named else fault.sentence
        st.html(f'<div class="fault"><i>!</i> {escape(words)}</div>')
