"""Fields of the design: each shows what the file says, and what is wrong right under it."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from html import escape
from typing import Any

import streamlit as st

from geometry.materials.kinds import Material
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


def alone(field: Field, **how: Any) -> None:
    """Show a line of text with its faults under it."""
    text_field(field, **how)
    say_faults(field.path)


def pair(first: Field, second: Field) -> None:
    """Show two lines of text side by side, the faults of both under them."""
    for column, field in zip(st.columns(2), (first, second), strict=True):
        with column:
            text_field(field)
    say_faults(first.path, second.path)


def text_field(
    field: Field,
    shown: Callable[[Any], str] = lambda value: "" if value is None else str(value),
    meant: Callable[[str], Any] = lambda words: words or None,
) -> None:
    """Show a line of text; shown and meant turn the file's value into words and back.

    What is wrong with it is said by `say_faults`, where there is room.
    """
    key = key_of(field.path)
    st.session_state[key] = shown(state.value(field.path))

    def changed() -> None:
        state.edit(field.path, meant(str(st.session_state[key]).strip()))

    st.text_input(
        field.label, key=key, on_change=changed, placeholder=field.usual, disabled=broken(),
        help=field.help or None, max_chars=300,
    )  # fmt: skip


def choice_field(field: Field, choices: Mapping[str, str]) -> None:
    """Show a choice of keys by their names; a key of the file that is not among them is kept."""
    key, value = key_of(field.path), state.value(field.path)
    said = field.usual if value is None else str(value)
    options = [*choices, *([] if said in choices else [said])]
    st.session_state[key] = said

    def changed() -> None:
        state.edit(field.path, st.session_state[key])

    st.selectbox(
        field.label, options, key=key, on_change=changed, disabled=broken(),
        format_func=lambda option: choices.get(option, option), help=field.help or None,
    )  # fmt: skip


def names(rows: Mapping[str, Material]) -> dict[str, str]:
    """Return the names of catalogue rows by their keys, for a choice."""
    return {key: row.name for key, row in rows.items()}


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


def say_faults(*paths: Path) -> None:
    """Say what is wrong at these paths, in words with a mark, right where it is called."""
    found = dict.fromkeys(fault.sentence for path in paths for fault in state.faults_at(path))
    for sentence in found:
        st.html(f'<div class="fault"><i>!</i> {escape(sentence)}</div>')


def broken() -> bool:
    """Whether the text is not TOML, so that no field of it can be shown."""
    return state.raw() is None


_SIGNS = "\\`*_{}[]()#+-.!|<>$:~^"


def escaped(words: str) -> str:
    """Return words that Markdown shows as they are."""
    return "".join(f"\\{sign}" if sign in _SIGNS else sign for sign in words)
