"""The page: picture first, controls beside it, figures under it."""

import os
from html import escape
from pathlib import Path

import streamlit as st

from geometry.designfile import load
from geometry.errors import BedcourseError
from geometry.report import CAUTIONS
from viz.carried import demo
from viz.job import Job
from viz.panels import state
from viz.panels.controls import controls
from viz.panels.fields import escaped
from viz.panels.figures import figures
from viz.panels.files import opening
from viz.panels.views import views
from viz.sheets.words import LOCAL_CODE

OPENED = "BEDCOURSE_DESIGN"
_UNITS = {"ft-in": "Feet and inches", "metric": "Metric"}


def page() -> None:
    """Show the whole page."""
    st.html(Path(__file__).parent / "page.css")
    if not state.begun():
        _begin()
    work = state.work()
    if work is None:
        _faults(first=True)
        opening()
        return
    # A sheet of paper wants more room than the model.
    wide = st.session_state.get("view") in ("Section", "Sheets", "Water", "Order", "On site")
    with st.container(key="sheet-desk" if wide else "desk"):
        picture, beside = st.columns(2, gap="medium")
    with picture:
        _head(work)
        _faults()
        _shown(work)
    with beside:
        _units()
        with st.expander("Open and save"):
            opening()
        if refused := st.session_state.get("upload refused"):
            st.warning(refused)
        controls()
    _foot()


def _begin() -> None:
    try:
        state.put(load(Path(os.environ.get(OPENED) or demo())))
    except BedcourseError as error:
        st.warning(str(error))
        state.put(load(demo()))


def _head(work: Job) -> None:
    about = work.layout.design.project
    note = f"<span>{escape(about.address)}</span>" if about.address else ""
    st.html(f'<div class="head"><b>{escape(about.name)}</b>{note}</div>')


def _faults(first: bool = False) -> None:
    """Say all that is wrong at once, and that the picture is that of the last sound design."""
    found = state.faults()
    if not found:
        return
    what = "one fault" if len(found) == 1 else f"{len(found)} faults"
    shown = "" if first else "; the picture and the figures show the last sound one"
    lines = [f"The design has {what}{shown}:", *(f"- {escaped(str(f))}" for f in found)]
    st.error("\n".join(lines), icon=":material/error:")
    if not first:
        st.button("Back to the last sound design", on_click=state.go_back)


def _shown(work: Job) -> None:
    shown = views()
    view = st.segmented_control(
        "Show",
        list(shown),
        default="3D",
        key="view",
        required=True,
        wrap=True,
        label_visibility="collapsed",
    )
    try:
        shown[view or "3D"](work)
        figures(work, _area(work))
    except BedcourseError as error:
        st.warning(str(error))


def _area(work: Job) -> str:
    """Return the name of the area whose fields are shown; the file's order, not the layout's."""
    number = st.session_state.get("area shown", 0)
    areas = work.layout.design.areas
    return areas[number if number < len(areas) else 0].name


def _units() -> None:
    key = "units"
    st.session_state[key] = state.value(("project", "units")) or "ft-in"
    st.segmented_control(
        "Units of the figures", list(_UNITS), format_func=lambda u: _UNITS.get(u, u), key=key,
        on_change=lambda: state.edit(("project", "units"), st.session_state[key]), required=True,
    )  # fmt: skip


def _foot() -> None:
    lines = "".join(f"<li>{escape(line)}</li>" for line in CAUTIONS)
    st.html(f'<div class="foot"><b>{escape(LOCAL_CODE)}</b><ul>{lines}</ul></div>')
