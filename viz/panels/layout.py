"""The page "Layout": the model to turn, the plan to draw on, levels and volumes of the whole."""

from collections.abc import Callable

import streamlit as st

from viz.export.csvfile import to_csv
from viz.job import Job
from viz.panels import shown, spoken
from viz.panels.planner import planner
from viz.panels.spoken import said
from viz.panels.turning import turning
from viz.tables import report_tables

# Of the whole frame, with its sliders and buttons, pixels.
MODEL_HEIGHT = 640
# The place of the chosen area in the file, as its choice keeps it.
AREA = "area shown"
_KEY = "layout stage"


def layout(work: Job) -> None:
    """Show the model, the plan, or the tables of the whole."""
    stages: dict[str, Callable[[Job], None]] = {
        "Model": model, "Plan": plan, "Levels": levels, "Volumes": volumes,
    }  # fmt: skip
    stages[shown.stage_choice(list(stages), _KEY)](work)


def model(work: Job) -> None:
    """Show the model to turn."""
    turning(work, height=MODEL_HEIGHT, language=spoken.code())


def plan(work: Job) -> None:
    """Show the outline of the chosen area, its corners to be dragged."""
    planner(work, int(st.session_state.get(AREA, 0)))


def levels(work: Job) -> None:
    """Show every level."""
    shown.rows(report_tables.levels(work.report, work.system))
    shown.save_button(
        "CSV", to_csv(report_tables.level_figures(work.report)), "levels.csv", "text/csv"
    )


def volumes(work: Job) -> None:
    """Show volumes in place, by material and by part."""
    st.caption(said("In place: nothing is added for compaction, laps or waste."))
    shown.rows(report_tables.materials(work.report))
    shown.rows(report_tables.parts(work.report))
    csv = to_csv(report_tables.volume_figures(work.report))
    shown.save_button("CSV", csv, "volumes.csv", "text/csv")
