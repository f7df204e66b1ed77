"""The language of the app: which one is spoken, and the app's words in it."""

from collections.abc import Callable, Iterator, Mapping
from contextlib import contextmanager
from contextvars import ContextVar
from functools import cache
from html import escape
from pathlib import Path
from typing import Any, TypeVar

import streamlit as st
from streamlit.components.v2.types import ComponentRenderer

from viz.language.reader import NATIVE, language
from viz.language.screen import screen_codes, screen_words

# The name in the page's address, which outlives a reload.
QUERY = "lang"
_CHOSEN, _SWITCH = "language", "language switch"

# What Markdown takes for marks within a line.
_SIGNS = "\\`*_{}[]<$:~^"
# The language of the run of the page that this thread is at.
_RUNS: ContextVar[str] = ContextVar("language of the run", default="")

Words = TypeVar("Words")


def code() -> str:
    """Return the code of the language: the chosen one, that of the address, or the browser's."""
    return _RUNS.get() or _code()


@contextmanager
def one_language() -> Iterator[None]:
    """Look the language up once for all that is said in the context."""
    before = _RUNS.set(_code())
    try:
        yield
    finally:
        _RUNS.reset(before)


def _code() -> str:
    chosen = st.session_state.get(_CHOSEN)
    if chosen is None:
        browsers = (st.context.locale or "").split("-")[0].casefold()
        wanted = (st.query_params.get(QUERY), browsers)
        chosen = next((one for one in wanted if one in screen_codes()), NATIVE)
        st.session_state[_CHOSEN] = chosen
    return str(chosen)


def said(words: str, **figures: object) -> str:
    """Return the app's words in its language, the very words where it has none for them.

    figures: what stands in the places of the words, such as {count}.
    """
    found = screen_words(code()).get(words, words)
    return found.format(**figures) if figures else found


def named(names: Mapping[Any, str] | None = None) -> Callable[[Any], str]:
    """Return what says each choice by its name in the app's language, one without by itself.

    It speaks the language of this run when it is called after the run as well.
    """
    words, called = screen_words(code()), names or {}

    def name(choice: Any) -> str:
        plain = str(called.get(choice, choice))
        return words.get(plain, plain)

    return name


def later(words: Words) -> Words:
    """Return words as they are: they are handed to `said` where they are shown."""
    return words


class Told(str):
    """Words that are said when they are shown, though they are named before any page is."""

    __slots__ = ()

    def __str__(self) -> str:
        """Return the words in the app's language."""
        return said(str.__str__(self))


def escaped(words: str) -> str:
    """Return words that Markdown shows as they are: names and file's words call no picture."""
    return "".join(f"\\{sign}" if sign in _SIGNS else sign for sign in words)


def foreign() -> bool:
    """Whether another language is spoken than the one findings and drawings are written in."""
    return code() != NATIVE


def in_english(words: str) -> None:
    """Say in another language that something is written in English; nothing in English."""
    if foreign():
        st.html(f'<p class="told">{escape(said(words))}</p>')


def switch() -> None:
    """Show the choice of a language."""
    spoken = code()
    if st.session_state.get(_SWITCH) != spoken:
        st.session_state[_SWITCH] = spoken
    st.segmented_control(
        said("Language"), screen_codes(), format_func=lambda one: language(one).name, key=_SWITCH,
        on_change=_choose, required=True, label_visibility="collapsed",
    )  # fmt: skip


def tell_browser() -> None:
    """Tell the browser which language the page is in; nothing is seen of it."""
    with st.container(key="spoken"):
        _component()(key="spoken language", data=code(), height="content")


def _choose() -> None:
    chosen = str(st.session_state[_SWITCH])
    st.session_state[_CHOSEN] = chosen
    st.query_params[QUERY] = chosen


@cache
def _component() -> ComponentRenderer:
    js = Path(__file__).with_suffix(".js").read_text("utf-8")
    return st.components.v2.component("bedcourse_spoken", html="<i hidden></i>", js=js)
