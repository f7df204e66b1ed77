"""The view "Section": a cut chosen on the plan, and what it shows, on a sheet of its own."""

from typing import get_args

import streamlit as st

from geometry.errors import BedcourseError
from viz.drawing.page import PaperName
from viz.drawing.scale import Scale
from viz.issue import small_paper
from viz.job import Job
from viz.panels import cached, cutting, shown
from viz.panels.chooser import chooser
from viz.panels.spoken import in_english, later, named, said
from viz.words import CUTS

_PARTS = later({"whole": "Whole", "detail": "Detail at the footing"})
_PART = "section part"


def section(work: Job) -> None:
    """Show the plan to choose a cut on, and the section there on a chosen paper."""
    with st.container(key="section-desk"):
        plan, drawn = st.columns(2, gap="medium")
        with plan:
            chooser(work)
            _cut(work)
        with drawn:
            _drawn(work)


def _cut(work: Job) -> None:
    """Show the cut in words: which, and the places of the user's own."""
    asked = cutting.asked(work)
    st.session_state[cutting.CUT] = asked.name
    st.selectbox(
        said("Cut"), [*work.cuts, cutting.OWN], format_func=named(cutting.names()), key=cutting.CUT,
        on_change=lambda: cutting.choose(work, str(st.session_state[cutting.CUT])),
    )  # fmt: skip
    if asked.name == cutting.OWN:
        _places(asked)
    st.button(
        said("Look from the other side"), icon=":material/swap_horiz:", width="stretch",
        disabled=not cutting.corners(work), on_click=cutting.turn_round, args=(work,),
    )  # fmt: skip


def _places(asked: cutting.Asked) -> None:
    for key, words, label, help_ in (
        (cutting.FROM, asked.start, said("From (x, y)"), said("the left end of the section")),
        (cutting.TO, asked.end, said("To (x, y)"), said("the right end of the section")),
        (
            cutting.VIA,
            asked.via,
            said("Via (x, y; x, y)"),
            said("corners between, where the cut jogs"),
        ),
    ):
        st.session_state[key] = words
        usual = said("none") if key == cutting.VIA else "12 ft, 6 ft 6 in"
        st.text_input(
            label, key=key, on_change=cutting.typed, help=help_, placeholder=usual, max_chars=300
        )


def _drawn(work: Job) -> None:
    """Show the section with what it is drawn on, and its files."""
    part, paper, scale = _wanted(work)
    try:
        line = cutting.line(work)
        name = cutting.asked(work).name
        sought = cached.Sought(line, CUTS[name], part == "detail", paper, scale)
        svg = cached.section_svg(work.text, sought)
    except BedcourseError as error:
        shown.say(error)
        return
    in_english(shown.DRAWINGS_IN_ENGLISH)
    shown.sheet(svg, _PARTS["detail"] if sought.detail else sought.title)
    with st.container(horizontal=True, vertical_alignment="center"):
        shown.large_toggle()
        called = f"{'detail' if sought.detail else 'section'}-{name}"
        shown.save_drawing(svg, called)
        pdf = f"{called}.pdf"
        shown.save_button(
            "PDF", lambda: cached.section_pdf(work.text, sought), pdf, "application/pdf"
        )


def _wanted(work: Job) -> tuple[str, PaperName, Scale | None]:
    with st.container(horizontal=True, vertical_alignment="bottom"):
        part = st.segmented_control(
            said("Part"), list(_PARTS), format_func=named(_PARTS),
            default="whole", key=_PART, required=True,
        )  # fmt: skip
        papers = get_args(PaperName)
        usual = papers.index(small_paper(work.system))
        paper = st.selectbox(
            said("Paper"), papers, index=usual, key=f"paper {work.system}", width=130
        )
        scale = shown.scale_choice("Scale", work.system, "section scale")
    return part or "whole", paper, scale
