"""What the app remembers: the design file's text, its texts before, the last that was sound."""

import tomllib
from collections.abc import Callable
from functools import lru_cache
from itertools import accumulate
from typing import Any

import streamlit as st

from geometry.designfile import edited
from geometry.errors import BedcourseError, DesignError, Fault
from geometry.faults.places import in_words, inside
from viz.job import Job
from viz.panels.cached import sound_job

Path = tuple[str | int, ...]
TEXT = "design text"
_SOUND, _FAULTS, _PAST, _FUTURE = "sound text", "faults", "texts before", "texts undone"
# So many changes can be taken back, of texts together so long; a usual one has 4,000 signs.
MOST_KEPT, MOST_SIGNS = 60, 4_000_000


def begun() -> bool:
    """Whether a design has been opened in this visit."""
    return TEXT in st.session_state


def put(text: str) -> None:
    """Take a design file's text; keep it even if faulty, so that it can be mended.

    The text before can be brought back by `undo`.
    """
    before = st.session_state.get(TEXT)
    if before is not None and before != text:
        st.session_state[_PAST] = _latest([*st.session_state.get(_PAST, ()), before])
        st.session_state[_FUTURE] = []
    _take(text)


def _latest(texts: list[str]) -> list[str]:
    """Return the last texts, as many as are kept; the very last in any case."""
    signs = list(accumulate(map(len, reversed(texts))))
    fitting = sum(count <= MOST_SIGNS for count in signs[:MOST_KEPT])
    return texts[-max(fitting, 1) :]


def _take(text: str) -> None:
    st.session_state[TEXT] = text
    try:
        sound_job(text)
    except DesignError as error:
        st.session_state[_FAULTS] = error.faults
    except BedcourseError as error:
        st.session_state[_FAULTS] = (Fault("design", str(error)),)
    else:
        st.session_state[_FAULTS] = ()
        st.session_state[_SOUND] = text


def can_undo() -> bool:
    """Whether there is a change to take back."""
    return bool(st.session_state.get(_PAST))


def can_redo() -> bool:
    """Whether there is a change that was taken back."""
    return bool(st.session_state.get(_FUTURE))


def undo() -> None:
    """Take the last change of the text back."""
    _step(_PAST, _FUTURE)


def redo() -> None:
    """Make the change again that was taken back last."""
    _step(_FUTURE, _PAST)


def _step(source: str, target: str) -> None:
    texts = list(st.session_state.get(source, ()))
    if texts:
        st.session_state[target] = [*st.session_state.get(target, ()), text()]
        _take(texts.pop())
        st.session_state[source] = texts


def text() -> str:
    """Return the design file's text as it stands, sound or not."""
    return str(st.session_state[TEXT])


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
    except (ValueError, RecursionError):  # also a number of thousands of digits
        return None


def value(path: Path) -> Any:
    """Return what the file says at a path; None where it says nothing."""
    return inside(raw(), path)


def metric() -> bool:
    """Whether the file asks for metric figures, sound or not."""
    return bool(value(("project", "units")) == "metric")


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
