"""What a control refused, said beside it: the design's text was left as it was."""

from collections.abc import Callable, Iterable
from html import escape

import streamlit as st

from geometry.errors import DesignError, Fault
from viz.panels import state


def change(key: str, how: Callable[[str], str]) -> None:
    """Change the design's text; where that is refused, keep why under this key."""
    try:
        text = how(state.text())
    except DesignError as error:
        st.session_state[key] = error.faults
        return
    st.session_state[key] = ()
    state.put(text)


def was_refused(key: str) -> bool:
    """Whether what was asked for last under this key was refused."""
    return bool(st.session_state.get(key))


def say_refused(key: str, named: bool = False) -> None:
    """Say what was refused last under this key; named: with the place each speaks of."""
    found: Iterable[Fault] = st.session_state.get(key, ())
    for fault in found:
        words = f"{fault.place}: {fault.sentence}" if named else fault.sentence
        st.html(f'<div class="fault"><i>!</i> {escape(words)}</div>')
