"""The dug ground: shots taken in, the map of what lies where, what was found, the tables."""

from html import escape

import streamlit as st

from geometry.errors import LengthError
from geometry.units import read_length
from viz.carried import demo_shots
from viz.export.csvfile import to_csv
from viz.job import Job
from viz.panels import kept, shown
from viz.panels.files import demo_name
from viz.panels.pairs import show
from viz.panels.spoken import escaped, later, said
from viz.tables import survey_tables

# The shots outlast their field, which is gone while another page is shown.
SHOTS, _UPLOAD, _AREA, _LEAST = "shots", "shots file", "dug area", "least base"
_CAUTION = later(
    "A shot every few feet finds what a crew would miss, not what lies between. Never undercut a "
    "footing to reach a level; a hole can cave in, and water in it stands for a reason."
)
_HOW = later(
    "Shoot the dug ground with rod and laser, a shot every few feet and at every edge, and open "
    "the list here: point, x, y, rod (or elevation, or level from TOF), what. x and y as on the "
    "plan; what: ground, footing, or pad and its name."
)


def as_dug(work: Job) -> None:
    """Show the map, the findings and the tables of the shots; before any, how to bring them."""
    held = st.session_state.get(SHOTS)
    if held is None:
        st.info(said(_HOW))
    else:
        _survey(work, held)
    _bring(work)
    shown.caution(_CAUTION)


def _bring(work: Job) -> None:
    with st.container(horizontal=True, vertical_alignment="bottom"):
        st.file_uploader(said("Open shots"), type=["csv", "txt"], key=_UPLOAD, on_change=_open,
                         max_upload_size=20)  # fmt: skip
        if work.name == demo_name():
            st.button(
                said("Example shots"), on_click=_example, help=said("invented, like the house")
            )
        if SHOTS in st.session_state:
            st.button(said("Put the shots away"), on_click=_put_away)


def _open() -> None:
    file = st.session_state[_UPLOAD]
    if file is not None:
        st.session_state[SHOTS] = file.getvalue()


def _example() -> None:
    st.session_state[SHOTS] = demo_shots().read_bytes()


def _put_away() -> None:
    st.session_state.pop(SHOTS, None)


def _least(work: Job) -> float | None:
    """Return the thinnest base that is taken, if one was typed."""
    typed = st.session_state.get(_LEAST, "").strip()
    try:
        return read_length(typed, work.layout.design.project.numbers) if typed else None
    except LengthError:
        return None


def _survey(work: Job, shots: bytes) -> None:
    found = kept.dug(work.text, shots, _least(work))
    names = [area.name for area in found.areas]
    place = 0
    if len(names) > 1:
        place = st.selectbox(
            said("Floor"), range(len(names)), format_func=names.__getitem__, key=_AREA
        )
    if names:
        picture = kept.dug_map(work.text, shots, _least(work), min(place, len(names) - 1))
        show(picture)
    else:
        st.warning(said("There is no map: no floor has shots enough on its ground."))
    _least_field(work)
    shown.verdicts(kept.dug_findings(work.text, shots, _least(work)))
    shown.lines("In the list of shots", map(str, found.faults))
    for title, table in survey_tables.tables(found, work.system):
        with st.expander(escaped(said(title))):
            shown.rows(table)
    with st.container(horizontal=True):
        figures = to_csv(survey_tables.shot_figures(found))
        shown.save_button(said("Every shot, CSV"), figures, "as-dug.csv", "text/csv")
        if names:
            shown.save_drawing(picture.wide, picture.name)


def _least_field(work: Job) -> None:
    st.text_input(
        said("Thinnest base that is taken"), key=_LEAST, max_chars=40, width=260,
        placeholder=said("by the published least"),
        help=said("thinner than this the ground must be cut; your department or engineer may ask "
                  "more"),
    )  # fmt: skip
    if st.session_state.get(_LEAST, "").strip() and _least(work) is None:
        wrong = escape(said("write a thickness like 4 in or 100 mm"))
        st.html(f'<div class="fault"><i>!</i> {wrong}</div>')
