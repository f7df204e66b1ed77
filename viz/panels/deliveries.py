"""What has arrived: delivery tickets taken, kept and saved, cover, what is short, a top-up."""

from html import escape

import streamlit as st

from geometry.materials.catalogue import AGGREGATES
from geometry.takeoff.deliveries import strange, top_up
from geometry.takeoff.tickets import ticket_line, with_ticket
from viz.job import Job
from viz.panels import kept, shown
from viz.panels.fields import names
from viz.panels.pairs import show
from viz.panels.spoken import escaped, later, named, said
from viz.tables import delivery_tables

# The list as text outlasts its field, which is gone while another page is shown.
LISTED = "tickets"
_DAY, _MATERIAL, _AMOUNT, _UNIT, _PLACE = (
    f"ticket {key}" for key in ("date", "material", "amount", "unit", "place")
)
_TEXT, _UPLOAD, _REFUSED = "tickets text", "tickets file", "tickets refused"
_INSTEAD = "top-up material"
_UNITS = ("tons", "yd3", "t", "m3")
_SOLD = names(AGGREGATES)
_PLACES = later({"": "not said", "floor": "the floor", "drain": "the drain"})
_CAUTION = later(
    "A weight tells a volume only within a range: wet stone weighs more. Measure the heap, and "
    "hold the depth on the ground against the plan before you send the truck away."
)


def deliveries(work: Job) -> None:
    """Show what came against what is needed, then the tickets it follows from."""
    listed = str(st.session_state.setdefault(LISTED, ""))
    for picture in kept.came_picture(work.text, listed):
        show(picture)
    rows = kept.came(work.text, listed)
    if not rows:
        st.info(said("This design needs neither stone nor sand."))
    for row in rows:
        if row.mixed_up:
            st.warning(escaped(row.mixed_up), icon=":material/scale:")
    _add(work)
    if rows:
        st.subheader(said("Against the order"))
        shown.rows(delivery_tables.arrivals(rows, work.system))
    _broken(work, listed)
    _top_up(work, listed)
    _file(listed)
    shown.caution(_CAUTION)


def _add(work: Job) -> None:
    """Show the form of one more ticket."""
    unit = f"{_UNIT} {work.system}"
    with st.form("one more ticket"):
        st.markdown(f"**{said('One more ticket')}**")
        left, right = st.columns(2)
        with left:
            st.date_input(said("Date"), value="today", key=_DAY)
            st.text_input(said("Amount"), key=_AMOUNT, placeholder="14.2", max_chars=20)
        with right:
            st.selectbox(
                said("Material"),
                list(_SOLD),
                format_func=named(_SOLD),
                key=_MATERIAL,
            )
            st.selectbox(said("Unit"), _UNITS, key=unit, index=2 if work.system == "metric" else 0)
        areas = [area.name for area in work.layout.areas]
        st.selectbox(
            said("Place"), [*_PLACES, *areas], key=_PLACE, accept_new_options=True,
            format_func=named(_PLACES),
            help=said("what goes to an area or the floor counts for its depth"),
        )  # fmt: skip
        st.form_submit_button(said("Put it on the list"), on_click=_put, args=(unit,))
    if refused := st.session_state.get(_REFUSED):
        st.html(f'<div class="fault"><i>!</i> {escape(refused)}</div>')


def _put(unit: str) -> None:
    said = st.session_state
    amount = f"{said[_AMOUNT]} {said[unit]}"
    line = ticket_line(str(said[_DAY]), said[_MATERIAL], amount, said[_PLACE] or "")
    try:
        said[LISTED] = with_ticket(said[LISTED], line)
    except ValueError as error:
        said[_REFUSED] = str(error)
    else:
        said.pop(_REFUSED, None)


def _broken(work: Job, listed: str) -> None:
    """Say which lines are no tickets, and what came that nothing takes; the rest is kept."""
    read = kept.tickets(listed)
    odd = [delivery_tables.not_needed(key) for key in strange(work.layout, read.tickets)]
    odd += [said("Line {number}:", number=one.line) + f" {one.sentence}" for one in read.broken]
    shown.lines("Left aside; all other lines count", odd)


def _top_up(work: Job, listed: str) -> None:
    """Show what it takes of one material to fill what is short of another."""
    rows = kept.came(work.text, listed)
    if not any(row.short_in_place_m3 for row in rows):
        return
    st.subheader(said("To make up what is short"))
    chosen = st.selectbox(
        said("With"), list(_SOLD), format_func=named(_SOLD), key=_INSTEAD,
        help=said("another stone than the drawing's may not drain or bear alike: ask first"),
    )  # fmt: skip
    made = [top_up(work.layout.design, row, chosen) for row in rows]
    shown.rows(delivery_tables.top_ups([row for row in made if row], work.system))


def _file(listed: str) -> None:
    """Show the list to be edited, opened and saved."""
    with st.expander(said("The list of tickets")):
        st.session_state[_TEXT] = listed
        st.text_area(
            said("date, material, amount, place: one ticket a line"), key=_TEXT, height="content",
            placeholder=said("2026-04-02, stone-57, 14.2 tons, basement"), on_change=_typed,
        )  # fmt: skip
        st.file_uploader(said("Open a list"), type=["csv"], key=_UPLOAD, on_change=_open,
                         max_upload_size=1)  # fmt: skip
        shown.save_button(said("Save the list"), listed, "tickets.csv", "text/csv")


def _typed() -> None:
    st.session_state[LISTED] = str(st.session_state[_TEXT])


def _open() -> None:
    file = st.session_state[_UPLOAD]
    if file is None:
        return
    try:
        st.session_state[LISTED] = file.getvalue().decode("utf-8-sig")
    except UnicodeDecodeError:
        st.session_state[_REFUSED] = said(
            "{file} is not UTF-8 text; save it as UTF-8.", file=file.name
        )
    else:
        st.session_state.pop(_REFUSED, None)
