"""The view "Sheets": the permit set, sheet by sheet, its files, and what it still lacks."""

from html import escape
from typing import get_args

import streamlit as st

from geometry.checks.asked import Item
from geometry.errors import BedcourseError
from viz.drawing.page import PaperName
from viz.issue import DECISIONS, SHEET_DPI, usual_paper
from viz.job import Job
from viz.panels import cached, shown
from viz.panels.spoken import escaped, in_english, later, said
from viz.sheets.permit import sheet_number
from viz.sheets.sheet import Sheet

# The states of what a set lacks, and what is to be done about each.
_OPEN = later({
    "not stated": "a field of the design is empty",
    "not covered": "outside what the model knows; add it by hand",
})  # fmt: skip
_MADE = "zip made"
_PLAN = sheet_number(1, 1)


def sheets(work: Job) -> None:
    """Show the permit set on a chosen paper, one sheet at a time."""
    with st.container(horizontal=True, vertical_alignment="bottom"):
        papers = get_args(PaperName)
        usual = papers.index(usual_paper(work))
        paper = st.selectbox(
            said("Paper of the set"), papers, index=usual, key=f"set paper {work.system}", width=130
        )
        scale = shown.scale_choice("Scale of the sections", work.system, "set scale")
    sought = cached.SetSought(paper, scale)
    try:
        made = cached.set_sheets(work.text, sought)
    except BedcourseError as error:
        shown.say(error)
    else:
        place = _chosen(made)
        _one(work, sought, made, place)
        _whole(work, sought)
    _lacking(work)
    _edges(work, paper)


def _chosen(made: tuple[Sheet, ...]) -> int:
    """Show the sheets by number and title; return the place of the chosen one."""
    numbers = [sheet.number for sheet in made]
    names = {sheet.number: f"{sheet.number}  {sheet.title}" for sheet in made}
    if st.session_state.get("sheet") not in numbers:
        st.session_state["sheet"] = _PLAN if _PLAN in numbers else numbers[0]
    chosen = st.segmented_control(
        said("Sheet shown"),
        numbers,
        format_func=names.__getitem__,
        key="sheet",
        required=True,
        wrap=True,
    )
    return numbers.index(chosen) if chosen in numbers else 0


def _one(work: Job, sought: cached.SetSought, made: tuple[Sheet, ...], place: int) -> None:
    sheet = made[place]
    svg = cached.set_svg(work.text, sought, place)
    in_english(shown.DRAWINGS_IN_ENGLISH)
    shown.sheet(svg, f"{sheet.number} {sheet.title}")
    drawn = "; ".join(sheet.contents)
    st.caption(
        said(
            "Sheet {number} of {count}: {drawn}.",
            number=place + 1,
            count=len(made),
            drawn=escaped(drawn),
        )
    )
    with st.container(horizontal=True, vertical_alignment="center"):
        shown.large_toggle()
        st.markdown(said("This sheet:"), width="content")
        shown.save_drawing(svg, sheet.number)


def _whole(work: Job, sought: cached.SetSought) -> None:
    """Show the files of the whole set; the ZIP file is made when it is asked for."""
    asked = (work.text, sought)
    with st.container(horizontal=True, vertical_alignment="center"):
        st.markdown(said("The whole set:"), width="content")
        shown.save_button(
            "PDF", lambda: cached.whole_pdf(*asked), cached.SET_PDF, "application/pdf"
        )
        help_ = said("PDF, and every sheet as SVG and as PNG at {dpi} dots per inch", dpi=SHEET_DPI)
        wanted = st.button(
            said("Make a ZIP of everything"), icon=":material/folder_zip:", help=help_
        )
        if wanted:
            with shown.at_work() as tell:
                st.session_state[_MADE] = (asked, cached.whole_zip(work.text, sought, tell))
        before, data = st.session_state.get(_MADE, (None, b""))
        if before == asked:
            shown.save_button("ZIP", data, "permit-set.zip", "application/zip")


def _lacking(work: Job) -> None:
    """Say how many of the things that departments ask are not on these sheets, and which."""
    items = [item for item in cached.asked_items(work.text) if item.state in _OPEN]
    unsaid, outside = (sum(item.state == state for item in items) for state in _OPEN)
    st.caption(
        said(
            "Of what building departments publish that they ask, these sheets leave open: "
            "{unsaid} not stated, {outside} not covered. Your department's own list governs.",
            unsaid=unsaid, outside=outside,
        )
    )  # fmt: skip
    with st.expander(said("What the set leaves open")):
        in_english("What departments ask is in English, as on the sheets.")
        st.html("".join(_listed(state, items) for state in _OPEN))


def _edges(work: Job, paper: PaperName) -> None:
    """Show, when asked, what is to be decided beside each other; no part of the set."""
    with st.expander(said("For decision: the floor's edge, the drain's heights")):
        if not st.toggle(said("Draw them"), key="edges"):
            return
        try:
            made = cached.edge_sheets(work.text, paper)
        except BedcourseError as error:
            shown.say(error)
            return
        if not made:
            st.caption(
                said("Without foam under a slab and without a drain there is nothing to choose.")
            )
            return
        for place, sheet in enumerate(made):
            shown.sheet(cached.edge_svg(work.text, paper, place), sheet.title)
        shown.save_button(
            "PDF", lambda: cached.edge_pdf(work.text, paper), DECISIONS, "application/pdf"
        )


def _listed(state: str, items: list[Item]) -> str:
    rows = "".join(
        f"<li><b>{escape(i.topic)}: {escape(i.asked)}</b> {escape(i.detail)} "
        f"<small>{escape(i.source.title)}</small></li>"
        for i in items
        if i.state == state
    )
    head = f"<b>{said(state.capitalize())}</b> <small>{escape(said(_OPEN[state]))}</small>"
    return f'<div class="asked">{head}<ul>{rows}</ul></div>' if rows else ""
