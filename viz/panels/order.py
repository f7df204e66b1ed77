"""The page "Order": boards as laid, the dispatcher's list, pours, cuts; and what has arrived."""

from collections.abc import Callable
from html import escape

import streamlit as st

from viz.export.csvfile import to_csv
from viz.export.xlsxfile import to_xlsx
from viz.job import Job
from viz.panels import kept, shown
from viz.panels.deliveries import deliveries
from viz.panels.handed import Sought, pages_pdf
from viz.panels.pairs import show
from viz.panels.papers import paper_choice
from viz.panels.spoken import in_english, later, said
from viz.tables import order_tables

_KEY, _LAID = "order stage", "laid"
# What is looked up once, not read.
_FOLDED = ("Cuts", "Allowances and sizes")
_CAUTION = later(
    "Nothing here is a supplier's price or promise. Allowances that were not given are usual "
    "ones, most of them common practice. Agree on the unit, yards or tons, when you call."
)


def order(work: Job) -> None:
    """Show what is to be ordered, or what has arrived of it."""
    stages: dict[str, Callable[[Job], None]] = {
        "To order": _to_order, "What has arrived": deliveries
    }  # fmt: skip
    stages[shown.stage_choice(list(stages), _KEY)](work)


def _to_order(work: Job) -> None:
    found = work.report.order
    _laid(work)
    in_english("The list for the call and the notes are in English, as on the order sheet.")
    shown.lines("For the call", order_tables.spoken(found, work.system))
    for title, table in order_tables.tables(found, work.system):
        if title in _FOLDED:
            with st.expander(said(title)):
                shown.rows(table)
            continue
        st.subheader(said(title))
        shown.rows(table)
    if found.cost is not None:
        cost = order_tables.cost(found.cost, found.currency)
        st.html(f"<b>{escape(said('Together: {cost}', cost=cost))}</b>")
    shown.lines("To know", order_tables.notes(found))
    shown.lines("Not counted", found.left_out)
    shown.caution(_CAUTION)
    with st.container(horizontal=True, vertical_alignment="bottom"):
        book = order_tables.workbook(found, work.system)
        shown.save_button("CSV", to_csv(order_tables.figures(found)), "order.csv", "text/csv")
        shown.save_button("XLSX", lambda: to_xlsx(book), "order.xlsx", shown.XLSX)
        sought = Sought("order sheet", paper_choice(work))
        shown.save_button(
            said("PDF, to print"),
            lambda: pages_pdf(work.text, sought),
            "order.pdf",
            "application/pdf",
        )


def _laid(work: Job) -> None:
    """Show one course of boards or one area's strips as laid, of several the one chosen."""
    found = kept.laid(work.text)
    if not found:
        st.info(said("This design has neither foam boards nor a vapor retarder to lay."))
        return
    places = range(len(found))
    if st.session_state.get(_LAID, 0) not in places:
        st.session_state[_LAID] = 0
    place = 0
    if len(found) > 1:
        place = st.selectbox(
            said("Laying plan"), places, format_func=lambda n: found[n][0].title, key=_LAID
        )
    picture, cuts = found[place]
    show(picture)
    if cuts:
        with st.expander(said("Boards to cut")):
            shown.rows(cuts)
    with st.container(horizontal=True):
        shown.save_drawing(picture.wide, picture.name)
