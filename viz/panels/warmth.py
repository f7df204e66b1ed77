"""The page on the floor's warmth: heat to the ground, edge, foam under load, tubes, joints."""

from collections.abc import Callable

import streamlit as st

from geometry.edge_heat import EdgeHeat, edge_heats
from geometry.layout.tubing.lay import lay_tubes
from viz.export.csvfile import to_csv
from viz.figures.joints import joints_pictures
from viz.figures.tubing.screen import tubing_pictures
from viz.job import Job
from viz.panels import shown
from viz.panels.cached import sound_job
from viz.panels.pairs import Picture, pictures_of, show
from viz.panels.shared import shared
from viz.panels.spoken import escaped, said
from viz.tables import warmth_tables
from viz.tables.table import Table

_KEY = "warmth stage"
_SAWN = (
    "Sawing concrete makes silica dust that harms lungs for good: cut wet or with a vacuum, and "
    "wear a mask. Know where tubes lie before you cut over them."
)
_PRESSED = (
    "Tubes in a slab cannot be mended: fill them, hold them under pressure before and while the "
    "concrete is placed, and read the gauge."
)


def warmth_page(work: Job) -> None:
    """Show one side of the floor's warmth: figures and findings first, then tables and files."""
    stages: dict[str, Callable[[Job], None]] = {
        "Heat": _heat, "Edge": _edge, "Load": _load, "Tubes": _tubes, "Joints": _joints,
    }  # fmt: skip
    stages[shown.stage_choice(list(stages), _KEY)](work)


def _heat(work: Job) -> None:
    """Show the build-up's resistance and what the floor loses, by the standard and by the codes."""
    warmth = work.report.warmth
    if not warmth:
        st.info(said("No heated area has an edge towards the ground: there is no loss to reckon."))
        return
    _found(work, ("energy", "heat-below-tubes"))
    _tables(
        (
            ("Resistance of the floor's layers", warmth_tables.layers(warmth, work.system)),
            ("Heat to the ground", warmth_tables.heat(warmth, work.system)),
            ("Heat down from warm tubes", warmth_tables.below_tubes(warmth, work.system)),
        )
    )
    shown.lines("How it is reckoned", warmth_tables.NOTES)


def _edge(work: Job) -> None:
    """Show the ways to make the floor's edge, each with its cold concrete and its loss."""
    edges = _edges(work.text)
    if not edges:
        st.info(said("The ways to make the edge are told for a floor with foam under its slab."))
        return
    _found(work, ("foam-meets-tof", "slab-joint-rules"))
    title = "Ways to make the edge, and what each does to its warmth"
    _tables(((title, warmth_tables.ways(edges, work.system)),))


def _load(work: Job) -> None:
    """Show what the foam under the slab carries."""
    boards = work.report.boards
    if not boards:
        st.info(said("There is no foam under a slab."))
        return
    _found(work, ("board",))
    _tables((("Foam under the slab and its load", warmth_tables.boards(boards, work.system)),))


def _tubes(work: Job) -> None:
    """Show the heating tubes as they are laid, and every loop's length."""
    found = _pictures(work.text)
    if not found:
        st.info(said("The design has no heating tubes; give their spacing in the field beside."))
        return
    for picture in found:
        show(picture)
    _found(work, ("tubing",))
    shown.caution(_PRESSED)
    _tables(
        tuple(
            (said("Loops: {area}", area=tubes.area.name), warmth_tables.loops(tubes, work.system))
            for tubes in lay_tubes(work.layout)
            if tubes.loops
        )
    )
    with st.container(horizontal=True):
        for picture in found:
            shown.save_drawing(picture.wide, picture.name)


def _joints(work: Job) -> None:
    """Show where the slab is cut and where it is kept apart."""
    found = _joint_pictures(work.text)
    if not found:
        st.info(said("Nothing is said of joints; give how far apart they are in the field beside."))
        return
    for picture in found:
        show(picture)
    _found(work, ("slab-",))
    shown.caution(_SAWN)
    with st.container(horizontal=True):
        for picture in found:
            shown.save_drawing(picture.wide, picture.name)


def _found(work: Job, beginnings: tuple[str, ...]) -> None:
    shown.verdicts(f for f in work.report.findings if f.id.startswith(beginnings))


def _tables(titled: tuple[tuple[str, Table], ...]) -> None:
    """Show tables, then buttons that save them."""
    kept = [(title, table) for title, table in titled if table.rows]
    for title, table in kept:
        st.subheader(escaped(said(title)))
        shown.rows(table)
    with st.container(horizontal=True):
        for title, table in kept:
            short, told = (words.split(",")[0] for words in (title, said(title)))
            file = f"{short.lower().replace(':', '').replace(' ', '-')}.csv"
            shown.save_button(f"{told}, CSV", to_csv(table), file, "text/csv")


@shared(32)
def _edges(text: str) -> tuple[EdgeHeat, ...]:
    return edge_heats(sound_job(text).layout.design)


@shared(32)
def _pictures(text: str) -> tuple[Picture, ...]:
    return pictures_of(tubing_pictures(sound_job(text).layout))


@shared(32)
def _joint_pictures(text: str) -> tuple[Picture, ...]:
    return pictures_of(joints_pictures(sound_job(text).layout))
