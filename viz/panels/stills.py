"""The stage "Stills" of the page "Set": pictures drawn with light and shadow, on demand."""

import streamlit as st

from geometry.errors import BedcourseError
from viz.job import Job
from viz.panels import shown
from viz.panels.spoken import escaped, named, said
from viz.stills import SIZE, UPRIGHT, Still, still_png
from viz.stills import stills as all_stills

_KIND, _UPRIGHT, _DRAWN = "still", "still upright", "stills drawn"
# As many pictures are kept for a visit, so that going back to one is at once.
_KEPT = 8


def stills(work: Job) -> None:
    """Show the choice of pictures, and the one that is asked for."""
    offered = {still.name: still for still in all_stills(work)}
    if st.session_state.get(_KIND) not in offered:
        st.session_state[_KIND] = "cutaway"
    name = st.selectbox(
        said("Picture"),
        list(offered),
        key=_KIND,
        format_func=named({key: one.title for key, one in offered.items()}),
    )
    upright = st.toggle(said("Upright, for a phone"), key=_UPRIGHT)
    asked = (work.text, name, upright)
    drawn = st.session_state.setdefault(_DRAWN, {})
    if st.button(said("Draw the picture"), type="primary"):
        _draw(work, offered[name], upright)
    if asked in drawn:
        st.image(
            drawn[asked],
            width="stretch",
            caption=escaped(f"{work.name}: {said(offered[name].title)}"),
        )
        shown.save_button("PNG", drawn[asked], f"{name}.png", "image/png")
    else:
        st.caption(said("A picture takes some seconds; it is drawn when you ask for it."))


def _draw(work: Job, still: Still, upright: bool) -> None:
    """Draw a picture, saying so; it can be stopped."""
    png, sentence = b"", ""
    with shown.at_work() as tell:
        what = said("the picture: {title}", title=said(still.title))
        size = UPRIGHT if upright else SIZE
        try:
            png = still_png(work, still.name, size, beat=lambda: tell(what))
        except BedcourseError as error:
            sentence = str(error)
    if sentence:
        st.warning(escaped(sentence))
        return
    drawn = st.session_state[_DRAWN]
    drawn[(work.text, still.name, upright)] = png
    for old in list(drawn)[:-_KEPT]:
        del drawn[old]
