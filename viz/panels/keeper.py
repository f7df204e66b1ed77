"""Work that was not saved outlives a reload of the page: the browser's tab keeps it."""

import json
from base64 import b64decode, b64encode
from functools import cache
from pathlib import Path
from typing import Any
from uuid import uuid4

import streamlit as st
from streamlit.components.v2.types import ComponentRenderer

from viz.panels import asdug, deliveries, state, variants

NOTICE = "work brought back"
_KEY, _VISIT, _OPENED, _VARIANTS = "keeper", "visit", "opened", "variants"
# What is kept: the design's text, and the lists that were brought to it.
_KEPT = (state.TEXT, asdug.SHOTS, deliveries.LISTED)
# A tab's store holds some 5 MB; a longer list of shots is a file of its own anyway.
_MOST = 1_000_000


@cache
def _component() -> ComponentRenderer:
    js = Path(__file__).with_suffix(".js").read_text("utf-8")
    return st.components.v2.component("bedcourse_keeper", html="<i hidden></i>", js=js)


def keep(opened: str) -> None:
    """Give the tab what to keep; in a new visit it brings back what it kept.

    opened: names the file the app was opened on; what was made of another is left alone.
    """
    found = {key: _packed(st.session_state[key]) for key in _KEPT if key in st.session_state}
    held = json.dumps({_OPENED: opened, _VARIANTS: variants.listed(), **found})
    visit = st.session_state.setdefault(_VISIT, uuid4().hex)
    with st.container(key="kept"):
        _component()(
            key=_KEY, data={"held": held, "visit": visit}, height="content",
            on_found_change=lambda: _bring_back(opened),
        )  # fmt: skip


def _bring_back(opened: str) -> None:
    """Take what the tab kept, where it is what was given to it."""
    try:
        held = json.loads(str(st.session_state[_KEY].get("found")))
    except ValueError:
        return
    if not isinstance(held, dict) or held.get(_OPENED) != opened:
        return
    found = {key: _unpacked(held.get(key)) for key in _KEPT}
    text = found.pop(state.TEXT)
    if isinstance(text, str) and text != state.text():
        state.put(text)
        st.session_state[NOTICE] = True
    variants.take_up(str(held.get(_VARIANTS)))
    st.session_state.update({key: kept for key, kept in found.items() if kept is not None})


def _packed(value: str | bytes) -> dict[str, str] | None:
    if len(value) > _MOST:
        return None
    if isinstance(value, bytes):
        return {"bytes": b64encode(value).decode()}
    return {"text": value}


def _unpacked(held: Any) -> str | bytes | None:
    match held:
        case {"text": str(words)}:
            return words
        case {"bytes": str(coded)}:
            try:
                return b64decode(coded)
            except ValueError:
                return None
    return None
