"""The page: its head, which job is looked at, the picture first, the fields beside it."""

import os
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from html import escape
from pathlib import Path

import streamlit as st
from streamlit.delta_generator import DeltaGenerator

from geometry.designfile import load
from geometry.errors import BedcourseError
from geometry.report import CAUTIONS
from viz.carried import demo
from viz.job import Job
from viz.panels import keeper, state, turns
from viz.panels.fields import heard, hold, until_it_ends
from viz.panels.figures import figures
from viz.panels.files import opening
from viz.panels.layout import AREA
from viz.panels.pages import FIRST, PAGES, Page
from viz.panels.settled import give_back
from viz.panels.spoken import (
    escaped,
    in_english,
    later,
    named,
    one_language,
    said,
    switch,
    tell_browser,
)
from viz.sheets.words import LOCAL_CODE

OPENED = "BEDCOURSE_DESIGN"
VIEW = "view"
_UNITS = later({"ft-in": "Feet and inches", "metric": "Metric"})


def page() -> None:
    """Show the whole page."""
    with one_language(), until_it_ends():
        with turns.taken(quick=True):
            drawn = _quick()
        if drawn:
            with turns.taken(quick=False):
                drawn()
    give_back()


def _quick() -> Callable[[], None] | None:
    """Show all but the picture; return what draws it in its place."""
    st.html(Path(__file__).parent / "page.css")
    if not state.begun():
        _begin()
    work = state.work()
    if work is None:
        _faults(first=True)
        opening()
        return None
    _head(work)
    tell_browser()
    keeper.keep(os.environ.get(OPENED, ""))
    _brought_back()
    name = _chosen_page()
    one = PAGES[name]
    with _desk(name, one) as (picture, beside):
        with picture:
            _faults()
            looked_at = st.container(key=f"picture of {name.lower()}")
            if one.figures:
                _said(lambda: figures(work, _area(work)))
        if one.fields and beside:
            with beside:
                one.fields()
    _foot()

    def drawn() -> None:
        with looked_at:
            _said(lambda: one.shown(work))

    return drawn


def _begin() -> None:
    try:
        state.put(load(Path(os.environ.get(OPENED) or demo())))
    except BedcourseError as error:
        st.warning(escaped(str(error)))
        state.put(load(demo()))


def _head(work: Job) -> None:
    """Show whose house it is, and what holds on every page: undo, units, files."""
    about = work.layout.design.project
    note = f"<span>{escape(about.address)}</span>" if about.address else ""
    with st.container(key="head", horizontal=True, vertical_alignment="center"):
        st.html(f'<div class="head"><b>{escape(about.name)}</b>{note}</div>')
        _steps()
        with st.popover(said("Units, language"), icon=":material/straighten:"):
            _units()
            switch()
        with st.popover(said("Open and save"), icon=":material/folder_open:"):
            opening()
    if refused := st.session_state.get("upload refused"):
        st.warning(escaped(refused))


def _steps() -> None:
    st.button(
        "", icon=":material/undo:", help=said("Take the last change back"), key="undo",
        on_click=state.undo, disabled=not state.can_undo(),
    )  # fmt: skip
    st.button(
        "", icon=":material/redo:", help=said("Make it again"), key="redo",
        on_click=state.redo, disabled=not state.can_redo(),
    )  # fmt: skip


def _brought_back() -> None:
    if st.session_state.pop(keeper.NOTICE, False):
        brought = said("Your unsaved work was brought back after the page was loaded anew. "
                       "Undo returns to the file.")  # fmt: skip
        st.toast(brought, icon=":material/restore_page:")


def _chosen_page() -> str:
    name = st.segmented_control(
        said("Page"), list(PAGES), format_func=named(), default=FIRST, key=VIEW, required=True,
        wrap=True, label_visibility="collapsed",
    )  # fmt: skip
    return name if name in PAGES else FIRST


@contextmanager
def _desk(name: str, one: Page) -> Iterator[tuple[DeltaGenerator, DeltaGenerator | None]]:
    """Give the place of the picture and that of the fields, if the page has any."""
    kind = "desk" if one.figures else "sheet-desk"
    with st.container(key=f"{kind}-{name.lower().replace(' ', '-')}"):
        if one.fields is None:
            yield st.container(), None
        else:
            picture, beside = st.columns(2, gap="medium")
            yield picture, beside


def _faults(first: bool = False) -> None:
    """Say all that is wrong at once, and that the picture is that of the last sound design."""
    found = state.faults()
    if not found:
        return
    head = said("The design has one fault.") if len(found) == 1 else said(
        "The design has {count} faults.", count=len(found))  # fmt: skip
    meanwhile = "" if first else said("The picture and the figures show the last sound one.")
    lines = [f"{head} {meanwhile}".strip(), *(f"- {escaped(str(f))}" for f in found)]
    st.error("\n".join(lines), icon=":material/error:")
    in_english("Faults are told in English.")
    if not first:
        st.button(said("Back to the last sound design"), on_click=state.go_back)


def _said(show: Callable[[], None]) -> None:
    """Show something; what it cannot show is said in one sentence."""
    try:
        show()
    except BedcourseError as error:
        st.warning(escaped(str(error)))


def _area(work: Job) -> str:
    """Return the name of the area whose fields are shown; the file's order, not the layout's."""
    number = st.session_state.get(AREA, 0)
    areas = work.layout.design.areas
    return areas[number if number < len(areas) else 0].name


def _units() -> None:
    key, sent = "units", state.value(("project", "units")) or "ft-in"
    hold(key, sent)
    st.segmented_control(
        said("Units of the figures"), list(_UNITS), key=key,
        format_func=named(_UNITS),
        on_change=heard(key, sent, lambda units: state.edit(("project", "units"), units)),
        required=True,
        label_visibility="collapsed",
    )  # fmt: skip


def _foot() -> None:
    lines = "".join(f"<li>{escape(said(line))}</li>" for line in CAUTIONS)
    st.html(f'<div class="foot"><b>{escape(said(LOCAL_CODE))}</b><ul>{lines}</ul></div>')
