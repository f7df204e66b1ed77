"""The sheets of words: index, notes, cautions, key of materials, what is asked for; schedules."""

from collections.abc import Sequence

from geometry.report import CAUTIONS
from viz import tables
from viz.drawing.figure import Figure
from viz.figures import schedules
from viz.figures.general_notes import general_notes, preparers_statement
from viz.figures.notes import notes_figure
from viz.figures.tables import table_figures
from viz.job import Job
from viz.sheets.flow import Block
from viz.sheets.sheet import Leaf
from viz.sheets.words import LOCAL_CODE
from viz.tables import Table


def general_blocks(work: Job, leaves: Sequence[Leaf], text: float) -> tuple[Block, ...]:
    """Return the words that stand before the drawings. leaves: the set, for its index."""
    layout, report = work.layout, work.report
    notes = general_notes(layout, report)
    return (
        _noted("notes", "General notes", notes, text),
        _noted("cautions", "Cautions", (*CAUTIONS, LOCAL_CODE), text),
        _noted("preparer", "Prepared by", preparers_statement(layout), text),
    )


def schedule_blocks(work: Job, text: float) -> tuple[Block, ...]:
    """Return the schedules, each a table."""
    layout, report = work.layout, work.report
    rows: tuple[tuple[str, str, Table], ...] = (
        ("layers", "Floor layers, from the top down", schedules.floor_layers(layout)),
        ("footings", "Footings", schedules.footings(layout)),
        ("walls", "Walls", schedules.walls(layout)),
        ("piers", "Piers", schedules.piers(layout)),
        ("drain", "Drain", schedules.drain(layout)),
        ("drain points", "Drain, place by place", schedules.drain_points(layout)),
        ("levels", "Levels", tables.levels(report, work.system)),
        ("materials", "Volumes in place, each material", tables.materials(report)),
        ("parts", "Volumes in place, each part", tables.parts(report)),
    )
    return tuple(_tabled(name, title, table, text) for name, title, table in rows if table.rows)


def _tabled(name: str, title: str, table: Table, text: float) -> Block:
    def make(width: float, height: float) -> tuple[Figure, ...]:
        return table_figures(name, title, table, text, width, height)

    return make


def _noted(name: str, title: str, notes: Sequence[str], text: float) -> Block:
    def make(width: float, height: float) -> tuple[Figure, ...]:
        return (notes_figure(name, title, notes, text, width),)

    return make
