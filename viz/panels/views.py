"""What can be looked at: model, section, sheets, tables, water, order, on site, findings, file."""

from collections.abc import Callable

import streamlit as st

from geometry.errors import BedcourseError
from viz import tables
from viz.export.csvfile import to_csv
from viz.issue import STILLS
from viz.job import Job
from viz.panels import cached, state
from viz.panels.order import order
from viz.panels.section import section
from viz.panels.sheets import sheets
from viz.panels.shown import save_button, table, verdicts
from viz.panels.site import on_site
from viz.panels.water import water
from viz.scene.view import Kind


def views() -> dict[str, Callable[[Job], None]]:
    """Return the views by their names."""
    return {
        "3D": model, "Section": section, "Sheets": sheets, "Levels": levels,
        "Volumes": volumes, "Water": water, "Order": order, "On site": on_site,
        "Findings": findings, "Design file": design_file,
    }  # fmt: skip


def model(work: Job) -> None:
    """Show the model to turn, and stills on demand."""
    page = cached.turning_page(work.text)
    st.iframe(page, height=520, alt="The model, to be turned")
    with st.container(horizontal=True):
        save_button("GLB", cached.model_file(work.text), "model.glb", "model/gltf-binary")
        save_button("Page to turn", page, "model.html", "text/html")
    with st.expander("Still pictures"):
        kind = st.segmented_control("View", STILLS, default="cutaway", key="still", required=True)
        asked = (kind, work.text)
        if st.button("Draw the picture"):
            st.session_state["still asked"] = asked
        if st.session_state.get("still asked") == asked:
            _still(work, kind or "cutaway")


def _still(work: Job, kind: Kind) -> None:
    try:
        png = cached.still_png(work.text, kind)
    except BedcourseError as error:
        st.warning(str(error))
        return
    st.image(png, width="stretch", caption=f"{work.name}: {kind}")
    save_button("PNG", png, f"{kind}.png", "image/png")


def levels(work: Job) -> None:
    """Show every level."""
    table(tables.levels(work.report, work.system))
    save_button("CSV", to_csv(tables.level_figures(work.report)), "levels.csv", "text/csv")


def volumes(work: Job) -> None:
    """Show volumes in place, by material and by part."""
    st.caption("In place: nothing is added for compaction, laps or waste.")
    table(tables.materials(work.report))
    table(tables.parts(work.report))
    save_button("CSV", to_csv(tables.volume_figures(work.report)), "volumes.csv", "text/csv")


def findings(work: Job) -> None:
    """Show the findings in words, the gravest first."""
    verdicts(work.report.findings)
    save_button("CSV", to_csv(tables.findings(work.report)), "findings.csv", "text/csv")
    save_button("Report, JSON", work.report.to_json(), "report.json", "application/json")


def design_file(_work: Job) -> None:
    """Show the text everything follows from, to be read and edited."""
    key = "whole text"
    st.session_state[key] = state.text()
    st.text_area(
        "The design file: everything follows from it", key=key, height=560,
        on_change=lambda: state.put(str(st.session_state[key])),
    )  # fmt: skip
