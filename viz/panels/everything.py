"""The stage "Files" of the page "Set": what other programs and people read, one by one or all."""

from collections.abc import Callable
from functools import partial

import streamlit as st

from viz.export.bundle import to_zip
from viz.export.ifc.library import HOW, there
from viz.issue import products
from viz.job import Job
from viz.panels import cached, shown
from viz.panels.spoken import later, said

_ZIP, _WHAT = "everything made", "everything.zip"


def everything(work: Job) -> None:
    """Show a button for each file, and one that makes them all."""
    st.subheader(said("For other programs"))
    for label, name, kind, make, help_ in _FILES:
        shown.save_button(said(label), partial(make, work.text), name, kind, said(help_))
    _ifc(work)
    st.subheader(said("Everything at once"))
    _all(work)


def _ifc(work: Job) -> None:
    if there():
        shown.save_button(
            said("Model, IFC4"), lambda: cached.ifc_file(work.text), "model.ifc",
            "application/x-step",
            said("for building models: footings, walls, layers, pipes with their quantities "
                 "(ISO 16739)"),
        )  # fmt: skip
    else:
        st.caption(said("IFC is not offered: {how}", how=HOW))


def _all(work: Job) -> None:
    """Make everything as one ZIP file, saying what is made; it can be stopped."""
    st.caption(
        said("Drawings, pages for the site, tables, models, pictures: one to three minutes.")
    )
    if st.button(said("Make a ZIP of all files"), icon=":material/folder_zip:"):
        with shown.at_work() as tell:
            _keep(work, tell)
    text, data, notes = st.session_state.get(_ZIP, ("", b"", ()))
    if text == work.text:
        shown.save_button(said("ZIP of all files"), data, _WHAT, "application/zip")
        shown.lines("Left out", notes)


def _keep(work: Job, tell: Callable[[str], None]) -> None:
    files, notes = {}, []
    for made in products(work, tell):
        if isinstance(made, str):
            notes.append(made)
        else:
            files[made.name] = made.data
    st.session_state[_ZIP] = (work.text, to_zip(files), tuple(notes))


_Row = tuple[str, str, str, Callable[[str], bytes], str]
_FILES: tuple[_Row, ...] = (
    (later("Page to turn, HTML"), "model.html", "text/html", cached.page_file,
     later("the model for any phone or computer, without a network")),
    (later("Model, GLB"), "model.glb", "model/gltf-binary", cached.model_file,
     later("for 3D programs")),
    (later("Report, JSON"), "report.json", "application/json", cached.report_file,
     later("every figure, with a schema")),
    (later("Tables, XLSX"), "data.xlsx", shown.XLSX, cached.data_file,
     later("levels, volumes, findings, order")),
)  # fmt: skip
