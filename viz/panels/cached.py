"""What is computed for a design text, kept for the next run of the page."""

import streamlit as st

from geometry.sections.face import CutLine
from viz.drawing.page import PaperName
from viz.export.glb import to_glb
from viz.export.png import to_png
from viz.export.svg import to_svg
from viz.issue import still_of
from viz.job import Job, job
from viz.pictures import Cutting, detail_window, section_of
from viz.scene.orbit import orbit_page
from viz.scene.view import Kind

Ends = tuple[tuple[float, float], tuple[float, float]]


@st.cache_resource(max_entries=8, show_spinner=False)
def sound_job(text: str) -> Job:
    """Return the job of a text. Raises DesignError."""
    return job(text)


@st.cache_data(max_entries=4, show_spinner="Building the model ...")
def turning_page(text: str) -> str:
    """Return the page that shows the model to turn."""
    work = sound_job(text)
    return orbit_page(work.foundation.solids, work.name)


@st.cache_data(max_entries=4, show_spinner=False)
def model_file(text: str) -> bytes:
    """Return the model as GLB."""
    return to_glb(sound_job(text).foundation.solids)


@st.cache_data(max_entries=12, show_spinner="Drawing the section ...")
def section_svg(text: str, title: str, ends: Ends, detail: bool, paper: PaperName) -> str:
    """Return a section as SVG. Raises BedcourseError where it shows nothing or does not fit."""
    work, line = sound_job(text), CutLine(*ends)
    window = detail_window(work.layout, work.foundation, line) if detail else None
    asked = Cutting(title, line, paper, window=window)
    return to_svg(section_of(work.layout, work.foundation, asked))


@st.cache_data(max_entries=6, show_spinner=False)
def section_png(svg: str) -> bytes:
    """Return a section as PNG."""
    return to_png(svg)


@st.cache_data(max_entries=6, show_spinner="Drawing the picture; this takes some seconds ...")
def still_png(text: str, kind: Kind) -> bytes:
    """Return a still as PNG. Raises NoPictures with one sentence."""
    return still_of(sound_job(text), kind)
