"""Fields of the design: each shows what the file says, and what is wrong right under it.

Their words are said here in the app's language; who names a field writes English.
"""

from collections.abc import Callable, Iterable, Iterator, Mapping
from contextlib import contextmanager
from dataclasses import dataclass
from html import escape
from typing import Any

import streamlit as st

from geometry.errors import Fault
from geometry.materials.kinds import Material
from viz.panels import state
from viz.panels.spoken import later, named, said
from viz.panels.state import Path

# Widgets whose value was sent in this run, and those that are sure to show theirs.
_SENT, _SURE = "values sent", "values sure"


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


def hold(key: str, value: Any) -> None:
    """Make a widget show a value; one that shows it already keeps what is being typed in it.

    A run that is broken off may never have reached the browser, which then holds an empty widget
    and would tell that as typed. So a value is sent with every run until one has ended.
    """
    sure = st.session_state.setdefault(_SURE, set())
    if key not in sure or key not in st.session_state or st.session_state[key] != value:
        st.session_state[key] = value
        sure.discard(key)
    st.session_state.setdefault(_SENT, set()).add(key)


def heard(key: str, sent: Any, tell: Callable[[Any], None]) -> Callable[[], None]:
    """Return what hears a widget: it tells a value that is not the one the widget was sent.

    A widget can be heard without having been touched, beside another that was.
    """

    def changed() -> None:
        if st.session_state[key] != sent:
            tell(st.session_state[key])

    return changed


@contextmanager
def until_it_ends() -> Iterator[None]:
    """Make one run of the page; what it sent is sure to be shown if it was not broken off."""
    st.session_state[_SENT] = set()
    yield
    st.session_state[_SURE] = st.session_state[_SENT]


def alone(field: Field, **how: Any) -> None:
    """Show a line of text with its faults under it."""
    text_field(field, **how)
    say_faults(field.path)


def pair(first: Field, second: Field, how: Mapping[str, Mapping[str, Any]] | None = None) -> None:
    """Show two lines of text side by side, the faults of both under them.

    how: by a path's last key, how the field's words are shown and meant, see `text_field`.
    """
    for column, field in zip(st.columns(2), (first, second), strict=True):
        with column:
            text_field(field, **(how or {}).get(str(field.path[-1]), {}))
    say_faults(first.path, second.path)


def text_field(
    field: Field,
    shown: Callable[[Any], str] = lambda value: "" if value is None else str(value),
    meant: Callable[[str], Any] = lambda words: words or None,
) -> None:
    """Show a line of text; shown and meant turn the file's value into words and back.

    What is wrong with it is said by `say_faults`, where there is room.
    """
    key, sent = key_of(field.path), shown(state.value(field.path))
    hold(key, sent)

    def typed(words: Any) -> None:
        state.edit(field.path, meant(str(words).strip()))

    st.text_input(
        said(field.label), key=key, on_change=heard(key, sent, typed),
        placeholder=said(field.usual), disabled=broken(), help=said(field.help) or None,
        max_chars=300,
    )  # fmt: skip


def choice_field(field: Field, choices: Mapping[str, str]) -> None:
    """Show a choice of keys by their names; a key of the file that is not among them is kept.

    The empty key stands for a file that says nothing.
    """
    key, value = key_of(field.path), state.value(field.path)
    written = field.usual if value is None else str(value)
    options = [*choices, *([] if written in choices else [written])]
    hold(key, written)

    def chosen(name: Any) -> None:
        state.edit(field.path, name or None)

    st.selectbox(
        said(field.label), options, key=key, on_change=heard(key, written, chosen),
        format_func=named(choices), disabled=broken(),
        help=said(field.help) or None,
    )  # fmt: skip


def choice(field: Field, choices: Mapping[str, str]) -> None:
    """Show a choice with its faults under it."""
    choice_field(field, choices)
    say_faults(field.path)


_SAID: Mapping[str, bool | None] = later({"not said": None, "yes": True, "no": False})


def three_way(field: Field) -> None:
    """Show whether a thing is so: not said, yes or no, with its faults under it."""
    key, value = key_of(field.path), state.value(field.path)
    sent = next((w for w, v in _SAID.items() if v is value), "not said")
    hold(key, sent)

    def chosen(word: Any) -> None:
        state.edit(field.path, _SAID[str(word)])

    st.segmented_control(
        said(field.label), list(_SAID), format_func=named(), key=key,
        on_change=heard(key, sent, chosen), disabled=broken(), required=True,
        help=said(field.help) or None,
    )  # fmt: skip
    say_faults(field.path)


def several(field: Field, choices: Mapping[str, str]) -> None:
    """Show which of several keys the file lists; those it has that are not among them are kept."""
    key, value = key_of(field.path), state.value(field.path)
    listed = [str(v) for v in value] if isinstance(value, list) else []
    hold(key, listed)

    def chosen(keys: Any) -> None:
        state.edit(field.path, list(keys) or None)

    st.multiselect(
        said(field.label), list(dict.fromkeys([*choices, *listed])), key=key,
        on_change=heard(key, listed, chosen), format_func=named(choices), disabled=broken(),
        help=said(field.help) or None, placeholder=said(field.usual) or None,
    )  # fmt: skip
    say_faults(field.path)


def names(rows: Mapping[str, Material]) -> dict[str, str]:
    """Return the names of catalogue rows by their keys, for a choice."""
    return {key: row.name for key, row in rows.items()}


def area_field(field: Field, text: str, changed: Callable[[str], None]) -> None:
    """Show several lines of text, such as corners; `changed` hears them when they are edited."""
    key = key_of(field.path)
    hold(key, text)
    st.text_area(
        said(field.label), key=key, on_change=heard(key, text, changed), disabled=broken(),
        help=said(field.help) or None, height="content", max_chars=20_000,
        placeholder=said(field.usual) or None,
    )  # fmt: skip


def lines_field(field: Field) -> None:
    """Show a list of the file as lines of text, one entry a line, with its faults under it."""
    value = state.value(field.path)
    rows = value if isinstance(value, list) else [] if value is None else [value]
    text = "\n".join(
        ", ".join(map(str, row)) if isinstance(row, list) else str(row) for row in rows
    )

    def changed(words: str) -> None:
        found = [line.strip() for line in words.splitlines() if line.strip()]
        state.edit(field.path, found or None)

    area_field(field, text, changed)
    say_faults(field.path)


def listed(value: Any) -> str:
    """Return a list of the file as text with commas between."""
    if isinstance(value, list):
        return ", ".join(map(str, value))
    return "" if value is None else str(value)


def number(words: str) -> Any:
    """Return text as a number for the file; other words go there as they are: it says why not."""
    try:
        return float(words) if words else None
    except ValueError:
        return words


def whole(words: str) -> Any:
    """Return text as a whole number for the file; other words as they are."""
    return int(words) if words.isdecimal() else words or None


def wholes(words: str) -> Any:
    """Return text as whole numbers for the file; other words, such as `all`, as they are."""
    found = [whole(word.strip()) for word in words.split(",")]
    return found if words and all(isinstance(n, int) for n in found) else words or None


def say_faults(*paths: Path) -> None:
    """Say what is wrong at these paths, in words with a mark, right where it is called."""
    _say(fault for path in paths for fault in state.faults_at(path))


def say_own_faults(*paths: Path) -> None:
    """Say what is wrong at these paths themselves; their fields say the rest."""
    _say(fault for path in paths for fault in state.faults_of(path))


def _say(faults: Iterable[Fault]) -> None:
    for sentence in dict.fromkeys(fault.sentence for fault in faults):
        st.html(f'<div class="fault"><i>!</i> {escape(sentence)}</div>')


def broken() -> bool:
    """Whether the text is not TOML, so that no field of it can be shown."""
    return state.raw() is None
