"""The stage "Stills" of the page "Set": pictures drawn with light and shadow, on demand."""

import streamlit as st

from geometry.errors import BedcourseError
from viz.issue import STILLS
from viz.job import Job
from viz.panels import cached
from viz.panels.shown import save_button
from viz.scene.view import Kind

_KIND, _ASKED = "still", "still asked"


def stills(work: Job) -> None:
    """Show the choice of pictures, and the one that is asked for."""
    kind = st.segmented_control("Picture", STILLS, default="cutaway", key=_KIND, required=True)
    asked = (kind, work.text)
    if st.button("Draw the picture", type="primary"):
        st.session_state[_ASKED] = asked
    if st.session_state.get(_ASKED) == asked:
        _still(work, kind or "cutaway")
    else:
        st.caption("A picture takes some seconds; it is drawn when you ask for it.")


def _still(work: Job, kind: Kind) -> None:
    try:
        png = cached.still_png(work.text, kind)
    except BedcourseError as error:
        st.warning(str(error))
        return
    st.image(png, width="stretch", caption=f"{work.name}: {kind}")
    save_button("PNG", png, f"{kind}.png", "image/png")
