"""The model to turn: the viewer's page in a frame, which each new design reaches in its changes.

Two components: one hangs the frame and never changes, so the page and its script are sent once;
the other carries the model. A shape of a part is sent once as well: the browser keeps it by its
name, and asks for one that it lacks.
"""

import zlib
from base64 import b64encode
from functools import cache
from pathlib import Path

import streamlit as st
from streamlit.components.v2.types import ComponentRenderer

from viz.job import Job
from viz.panels import cached
from viz.panels.spoken import later, said
from viz.viewer.message import message
from viz.viewer.page import viewer_shell

_KEY = "turning"
_HELD, _SENT = "turning held", "turning sent"
_TITLE = "The model, to be turned"
_HTML = """
<div class="turning">
  <p role="status"></p>
</div>
"""
_WORDS = later({
    "title": "The model, to be turned",
    "building": "Building the model ...",
    "cannot": "This browser cannot draw the model; sections and sheets show the same.",
})  # fmt: skip
# Names of shapes the browser is taken to hold; it holds somewhat more.
_MOST_HELD = 200


@cache
def _frame() -> ComponentRenderer:
    here = Path(__file__).parent
    css, js = ((here / f"turning.{kind}").read_text("utf-8") for kind in ("css", "js"))
    return st.components.v2.component("bedcourse_turning", html=_HTML, css=css, js=js)


@cache
def _model() -> ComponentRenderer:
    js = (Path(__file__).parent / "turning.js").read_text("utf-8")
    return st.components.v2.component("bedcourse_turning_model", js=js)


@cache
def _shell() -> str:
    return b64encode(zlib.compress(viewer_shell(_TITLE).encode(), 9)).decode()


def turning(work: Job, *, height: int, language: str = "") -> None:
    """Show the model to turn; camera, cut and choices stay when the design changes.

    height: of the whole frame with its controls, pixels. language: of the viewer's words, such
    as "es"; without one the browser's. Raises BedcourseError where the viewer's script is
    missing from the installation.
    """
    words = {key: said(told) for key, told in _WORDS.items()}
    # Without a gap between them: what carries the model takes no room, before and after it comes.
    with st.container(gap=None):
        _frame()(
            key=f"{_KEY} frame",
            data={"shell": _shell(), "height": height, "words": words},
            height=height,
        )
        _sent(work.text, language)


@st.fragment
def _sent(text: str, language: str) -> None:
    """Send the model; a fragment, so that an answer to the browser runs nothing else.

    text: of the design, not its job, for a fragment holds what it was given.
    """
    _model()(
        key=_KEY,
        data=_message(text, language),
        on_missing_change=_resend,
    )


def _message(text: str, language: str) -> bytes:
    """Return the model with those shapes the browser is not known to hold.

    The same as last time where nothing has changed: then it is not sent at all.
    """
    asked = (text, language)
    last = st.session_state.get(_SENT)
    if last and last[0] == asked:
        return bytes(last[1])
    held: dict[str, None] = st.session_state.setdefault(_HELD, {})
    record = cached.viewer_model(text)
    made = message(record, held, language)
    for name in record["shapes"]:
        held.pop(name, None)
        held[name] = None
    for name in [*held][: max(0, len(held) - _MOST_HELD)]:
        del held[name]
    st.session_state[_SENT] = (asked, made)
    return made


def _resend() -> None:
    """Take shapes for not held; the next message brings them."""
    held: dict[str, None] = st.session_state.get(_HELD, {})
    for name in st.session_state[_KEY].get("missing") or ():
        held.pop(str(name), None)
    st.session_state.pop(_SENT, None)
