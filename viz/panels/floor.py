"""The page "Floor": the build-up against the footing, its levels, the model."""

from collections.abc import Callable

import streamlit as st

from viz.figures.section.screen import section_pictures
from viz.job import Job
from viz.panels import shown
from viz.panels.cached import sound_job
from viz.panels.layout import levels, model
from viz.panels.pairs import Picture, picture, show
from viz.panels.shared import shared
from viz.panels.warmth import warmth_page
from viz.pictures import detail_shots, floor_shot, picture_of

_KEY = "floor stage"


def floor(work: Job) -> None:
    """Show the floor in section, as a model, as levels, or how warm it is."""
    stages: dict[str, Callable[[Job], None]] = {
        "Build-up": build_up, "Model": model, "Levels": levels,
        "Warmth": warmth_page,
    }  # fmt: skip
    stages[shown.stage_choice(list(stages), _KEY)](work)


def build_up(work: Job) -> None:
    """Show footing and floor in section, with the levels they meet at."""
    one = _picture(work.text)
    show(one)
    with st.container(horizontal=True):
        shown.save_drawing(one.wide, one.name)


@shared(32)
def _picture(text: str) -> Picture:
    """Return the footing's detail for a wide screen, the floor's alone for a narrow one."""
    work = sound_job(text)
    wide, close = picture_of(work, detail_shots(work)[0]), picture_of(work, floor_shot(work))
    return picture(*section_pictures(wide, close))
