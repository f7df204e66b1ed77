"""The one thing the app remembers: the design file's text, and the last text that was sound."""

import tomllib
from collections.abc import Callable
from functools import lru_cache
from typing import Any

import streamlit as st

from geometry.designfile import edited
from geometry.errors import BedcourseError, DesignError, Fault
from geometry.faults.places import in_words, inside
from viz.job import Job
from viz.panels.cached import sound_job

Path = tuple[str | int, ...]
_TEXT, _SOUND, _FAULTS = "design text", "sound text", "faults"


def begun() -> bool:
    """Whether a design has been opened in this visit."""
    return _TEXT in st.session_state


def put(text: str) -> None:
    """Take a design file's text; keep it even if faulty, so that it can be mended."""
    st.session_state[_TEXT] = text
    try:
        sound_job(text)
    except DesignError as error:
        st.session_state[_FAULTS] = error.faults
    except BedcourseError as error:
        st.session_state[_FAULTS] = (Fault("design", str(error)),)
    else:
        st.session_state[_FAULTS] = ()
        st.session_state[_SOUND] = text


def text() -> str:
    """Return the design file's text as it stands, sound or not."""
    return str(st.session_state[_TEXT])


def faults() -> tuple[Fault, ...]:
    """Return what is wrong with the text; nothing if it is sound."""
    found: tuple[Fault, ...] = st.session_state.get(_FAULTS, ())
    return found


def work() -> Job | None:
    """Return the last sound design; None where none has been opened yet."""
    found = st.session_state.get(_SOUND)
    return sound_job(found) if found is not None else None


def go_back() -> None:
    """Return to the last sound text."""
    put(st.session_state[_SOUND])


def raw() -> dict[str, Any] | None:
    """Return the text's tables, to read only; None where it is not TOML."""
    return _tables(text())


@lru_cache(maxsize=8)
def _tables(text: str) -> dict[str, Any] | None:
    """Read the text once, not once for every field of the page."""
    try:
        return tomllib.loads(text)
    except (tomllib.TOMLDecodeError, RecursionError):
        return None


def value(path: Path) -> Any:
    """Return what the file says at a path; None where it says nothing."""
    return inside(raw(), path)


def edit(path: Path, new: Any) -> None:
    """Set one value in the text, comments kept; None takes the key out."""
    change(lambda old: edited(old, path, new))


def change(how: Callable[[str], str]) -> None:
    """Change the text; where that is refused, the text stays and the reason is a fault."""
    try:
        put(how(text()))
    except DesignError as error:
        st.session_state[_FAULTS] = error.faults


def faults_at(path: Path) -> list[Fault]:
    """Return the faults of one place and of what lies within it."""
    words = in_words(path, raw())
    within = (f"{words} ", f"{words}>")
    return [f for f in faults() if f.place == words or f.place.startswith(within)]


def faults_of(path: Path) -> list[Fault]:
    """Return the faults of one place itself, not of what lies within it."""
    words = in_words(path, raw())
    return [f for f in faults() if f.place == words]
