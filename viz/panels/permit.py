"""The page "Set": the sheets, still pictures, every file, and the design file itself."""

from collections.abc import Callable

import streamlit as st

from viz.job import Job
from viz.panels import shown, state
from viz.panels.everything import everything
from viz.panels.fields import heard, hold
from viz.panels.sheets import sheets
from viz.panels.spoken import said
from viz.panels.stills import stills

_KEY = "set stage"
DESIGN_FILE = "Design file"


def permit(work: Job) -> None:
    """Show the sheets, the still pictures, the files or the design's text."""
    stages: dict[str, Callable[[Job], None]] = {
        "Sheets": sheets, "Stills": stills, "Files": everything, DESIGN_FILE: design_file,
    }  # fmt: skip
    stages[shown.stage_choice(list(stages), _KEY)](work)


def design_file(_work: Job) -> None:
    """Show the text everything follows from, to be read and edited."""
    key, sent = "whole text", state.text()
    hold(key, sent)
    st.text_area(
        said("The design file: everything follows from it"), key=key, height=560,
        on_change=heard(key, sent, state.put),
    )  # fmt: skip
    shown.save_button(said("Save the design file"), state.text(), "design.toml", "application/toml")
