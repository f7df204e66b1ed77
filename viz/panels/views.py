"""What can be looked at: the model, a section, the tables, the findings, the design file."""

from base64 import b64encode
from collections.abc import Callable
from html import escape
from typing import get_args

import streamlit as st

from geometry.errors import BedcourseError, LengthError
from geometry.units import read_length
from viz import tables
from viz.drawing.page import PaperName
from viz.export.csvfile import to_csv
from viz.issue import STILLS, papers_for
from viz.job import Job
from viz.panels import cached, state
from viz.panels.figures import verdict
from viz.scene.view import Kind
from viz.words import CUTS

_DETAIL = "Detail at footing and drain"
_OWN = "own"
LARGE = "large sheet"


def views() -> dict[str, Callable[[Job], None]]:
    """Return the views by their names."""
    return {
        "3D": model, "Section": section, "Levels": levels, "Volumes": volumes,
        "Findings": findings, "Design file": design_file,
    }  # fmt: skip


def save_button(label: str, data: str | bytes, name: str, kind: str) -> None:
    """Show a button that saves a file; pressing it leaves the page as it is."""
    st.download_button(
        label, data, name, kind, icon=":material/download:", on_click="ignore", key=f"save {name}"
    )


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


def section(work: Job) -> None:
    """Show a section: chosen cut, whole or as a detail, on a chosen paper."""
    left, middle, right = st.columns([3, 3, 2], vertical_alignment="bottom")
    cut = left.selectbox("Cut", [*work.cuts, _OWN], format_func=_cut_name, key="cut")
    part = middle.segmented_control(
        "Part", ["Detail", "Whole"], default="Detail", key="part", required=True
    )
    detail = part != "Whole"
    papers = get_args(PaperName)
    usual = papers.index(papers_for(work)[detail])
    paper = right.selectbox("Paper", papers, index=usual, key=f"paper {detail} {work.system}")
    try:
        ends = _ends(work, cut)
        title = _DETAIL if detail else CUTS[cut]
        svg = cached.section_svg(work.text, title, ends, detail, paper)
    except BedcourseError as error:
        st.warning(f"{str(error)[:1].upper()}{str(error)[1:]}.")
        return
    _sheet(svg, title)
    with st.container(horizontal=True, vertical_alignment="center"):
        st.toggle("Large", key=LARGE)
        save_button("SVG", svg, f"section-{cut}.svg", "image/svg+xml")
        save_button("PNG", cached.section_png(svg), f"section-{cut}.png", "image/png")


def _cut_name(cut: str) -> str:
    return "Two points of my own" if cut == _OWN else CUTS[cut].removeprefix("Section ")


def _ends(work: Job, cut: str) -> cached.Ends:
    """Return the chosen cut's ends. Raises LengthError for a point that cannot be read."""
    if cut != _OWN:
        return work.cuts[cut].start, work.cuts[cut].end
    left, right = st.columns(2)
    first = left.text_input("From (x, y)", "-10 ft, 6 ft", key="cut from")
    last = right.text_input("To (x, y)", "60 ft, 6 ft", key="cut to")
    ends = _point(work, first), _point(work, last)
    if ends[0] == ends[1]:
        raise LengthError("the two points are one; a cut needs two places")
    return ends


def _point(work: Job, text: str) -> tuple[float, float]:
    pieces = text.split(",")
    if len(pieces) != 2:
        raise LengthError(f"{text!r} is not a place; write x, y like 12 ft, 6 ft 6 in")
    bare = work.layout.design.project.numbers
    return read_length(pieces[0].strip(), bare), read_length(pieces[1].strip(), bare)


def _sheet(svg: str, title: str) -> None:
    """Show a sheet as wide as its place, or large, to be scrolled sideways."""
    picture = b64encode(svg.encode()).decode()
    kind = "sheet large" if st.session_state.get(LARGE) else "sheet"
    image = f'<img alt="{escape(title)}" src="data:image/svg+xml;base64,{picture}">'
    st.html(f'<div class="{kind}">{image}</div>')


def levels(work: Job) -> None:
    """Show every level."""
    _table(tables.levels(work.report, work.system))
    save_button("CSV", to_csv(tables.level_figures(work.report)), "levels.csv", "text/csv")


def volumes(work: Job) -> None:
    """Show volumes in place, by material and by part."""
    st.caption("In place: nothing is added for compaction, laps or waste.")
    _table(tables.materials(work.report))
    _table(tables.parts(work.report))
    save_button("CSV", to_csv(tables.volume_figures(work.report)), "volumes.csv", "text/csv")


def _table(table: tables.Table) -> None:
    columns = {head: [row[n] for row in table.rows] for n, head in enumerate(table.head)}
    st.dataframe(columns, hide_index=True, height="content")


def findings(work: Job) -> None:
    """Show the findings in words, the gravest first."""
    st.html("".join(verdict(f) for f in tables.by_gravity(work.report.findings)))
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
