"""The sheets of words: index, notes, cautions, key of materials, what is asked for; schedules."""

from collections.abc import Iterator, Sequence
from functools import partial

from geometry.checks.completeness import completeness
from geometry.layout.lay import Layout
from geometry.report import CAUTIONS
from viz.figures.notes.figure import notes_figures
from viz.figures.notes.general import general_notes, preparers_statement
from viz.figures.tables import drains, schedules
from viz.figures.tables.completeness import completeness_figures
from viz.figures.tables.figure import table_figures
from viz.figures.tables.index import index_figures
from viz.figures.tables.key import key_figures
from viz.job import Job
from viz.sheets.flow import Block
from viz.sheets.sheet import Leaf, contents
from viz.sheets.words import LOCAL_CODE
from viz.tables import report_tables
from viz.tables.table import Table


def general_blocks(work: Job, leaves: Sequence[Leaf], text: float) -> tuple[Block, ...]:
    """Return the words that stand before the drawings. leaves: the set, for its index."""
    layout = work.layout
    notes = (
        ("notes", "General notes", general_notes(layout, work.report)),
        ("cautions", "Cautions", (*CAUTIONS, LOCAL_CODE)),
        ("preparer", "These drawings", preparers_statement(layout)),
    )
    return (
        partial(index_figures, _rows(leaves), text),
        *(partial(notes_figures, name, title, said, text) for name, title, said in notes),
        partial(key_figures, layout, work.foundation, text),
    )


def asked_blocks(work: Job, text: float) -> tuple[Block, ...]:
    """Return the list of what building departments ask for, and where it is shown."""
    return (partial(completeness_figures, completeness(work.layout), text),)


def schedule_blocks(work: Job, text: float) -> tuple[Block, ...]:
    """Return the schedules, each a table."""
    layout, report = work.layout, work.report
    rows: tuple[tuple[str, str, Table], ...] = (
        ("layers", "Floor layers, from the top down", schedules.floor_layers(layout)),
        ("footings", "Footings", schedules.footings(layout)),
        ("walls", "Walls", schedules.walls(layout)),
        ("piers", "Piers", schedules.piers(layout)),
        *_drain_tables(layout),
        ("levels", "Levels", report_tables.levels(report, work.system)),
        ("materials", "Volumes in place, each material", report_tables.materials(report)),
        ("parts", "Volumes in place, each part", report_tables.parts(report)),
    )
    return tuple(
        partial(table_figures, name, title, table, text)
        for name, title, table in rows
        if table.rows
    )


def _drain_tables(layout: Layout) -> Iterator[tuple[str, str, Table]]:
    """Yield the schedules of every drain, with its title where there are several."""
    laser = ", to set out" if layout.design.datum.instrument is not None else ""
    for view in layout.views():
        several = view.drain is not None and len(layout.drains) > 1
        which = f": {view.drain.title}" if several and view.drain else ""
        key = view.drain.key if view.drain else "drain"
        yield key, f"Drain{which}", drains.drain(view)
        yield f"{key} points", f"Inverts along the drain{laser}{which}", drains.inverts(view)


def _rows(leaves: Sequence[Leaf]) -> list[tuple[str, str, str]]:
    ordered = sorted(leaves, key=lambda leaf: leaf.number)
    return [(leaf.number, leaf.title, "; ".join(contents(leaf.figures))) for leaf in ordered]
