"""Fields of the design: each shows what the file says, and its own fault right under it."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from typing import Any

import streamlit as st

from viz.panels import state
from viz.panels.state import Path


@dataclass(frozen=True)
class Field:
    """One key of the file: its label, what holds when the file says nothing, and help."""

    path: Path
    label: str
    usual: str = ""
    help: str = ""


def key_of(path: Path) -> str:
    """Return the widget key of a path; the same path has the same widget on every run."""
    return "field " + "/".join(map(str, path))


def text_field(
    field: Field,
    shown: Callable[[Any], str] = lambda value: "" if value is None else str(value),
    meant: Callable[[str], Any] = lambda words: words or None,
) -> None:
    """Show a line of text; shown and meant turn the file's value into words and back."""
    key = key_of(field.path)
    st.session_state[key] = shown(state.value(field.path))

    def changed() -> None:
        state.edit(field.path, meant(str(st.session_state[key]).strip()))

    st.text_input(
        field.label, key=key, on_change=changed, placeholder=field.usual, disabled=broken(),
        help=field.help or None, max_chars=300,
    )  # fmt: skip
    say_faults(field.path)


def choice_field(field: Field, names: Mapping[str, str]) -> None:
    """Show a choice of keys by their names; a key of the file that is not among them is kept."""
    key, value = key_of(field.path), state.value(field.path)
    said = field.usual if value is None else str(value)
    options = [*names, *([] if said in names else [said])]
    st.session_state[key] = said

    def changed() -> None:
        state.edit(field.path, st.session_state[key])

    st.selectbox(
        field.label, options, key=key, on_change=changed, disabled=broken(),
        format_func=lambda option: names.get(option, option), help=field.help or None,
    )  # fmt: skip
    say_faults(field.path)


def area_field(field: Field, text: str, changed: Callable[[str], None]) -> None:
    """Show several lines of text, such as corners; `changed` hears them when they are edited."""
    key = key_of(field.path)
    st.session_state[key] = text

    def heard() -> None:
        changed(str(st.session_state[key]))

    st.text_area(
        field.label, key=key, on_change=heard, disabled=broken(), help=field.help or None,
        height="content", max_chars=20_000,
    )  # fmt: skip
    say_faults(field.path)


def say_faults(path: Path) -> None:
    """Say what is wrong at a path, in words with a mark."""
    for fault in state.faults_at(path):
        st.markdown(f":material/error: {escaped(fault.sentence)}")


def broken() -> bool:
    """Whether the text is not TOML, so that no field of it can be shown."""
    return state.raw() is None


_SIGNS = "\\`*_{}[]()#+-.!|<>$:~^"


def escaped(words: str) -> str:
    """Return words that Markdown shows as they are."""
    return "".join(f"\\{sign}" if sign in _SIGNS else sign for sign in words)
