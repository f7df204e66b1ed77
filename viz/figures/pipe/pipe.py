"""The perforated pipe in detail: cut across with its holes, seen from below, and its levels."""

from collections.abc import Iterator

from geometry.layout.drain import DrainLayout
from geometry.layout.lay import Layout
from geometry.units import System
from viz.drawing.figure import Figure, extent, figure
from viz.drawing.fonts import text_width, wrap
from viz.drawing.marks import Mark, Text
from viz.drawing.scale import Scale
from viz.figures.dimensions import Chain, across
from viz.figures.pipe.labels import bore_marks, label_marks
from viz.figures.pipe.section import (
    Cross,
    bed_marks,
    bedding_mark,
    cross,
    haloed,
    pipe_marks,
    soil_low,
)
from viz.figures.pipe.strip import strip_marks
from viz.figures.pipe.words import fine, level_table, notes
from viz.style.lines import DIMENSION
from viz.style.text import PITCH

# Between the parts of the figure; the least width of the words under it, mm.
_APART = 7.0
_LEAST_WORDS = 110.0


def pipe_figure(layout: Layout, scale: Scale, text: float) -> Figure | None:
    """Return the drain pipe's detail; None without a drain.

    scale: a large one, 1:5 up to full size. text: height of capitals, mm.
    """
    drain = layout.drain
    if drain is None:
        return None
    system = layout.design.project.units
    marks = _picture(drain, scale, system, text)
    marks += _words_under(drain, system, marks, text)
    remark = "Cut across, seen along the pipe with the house to the left."
    return figure("drain-pipe", "Drain pipe", marks, scale, remark)


def _picture(drain: DrainLayout, scale: Scale, system: System, text: float) -> list[Mark]:
    shape = cross(drain, scale.per_metre)
    marks = [*_section(drain, shape, system, text)]
    if any(abs(row) < 90.0 for row in shape.rows):
        low = extent(marks).low - _APART
        marks += strip_marks(drain, shape, scale.per_metre, system, low, text)
    return marks


def _section(drain: DrainLayout, shape: Cross, system: System, text: float) -> Iterator[Mark]:
    top = shape.stone.high
    yield from bed_marks(shape)
    yield from bedding_mark(shape)[1]
    for x in (-shape.outer, shape.outer):
        yield from haloed(((x, 0.0), (x, top + 1.0)), DIMENSION, layer="dimensions")
    yield from pipe_marks(shape)
    outside = fine(drain.pipe.outside_diameter_m, system)
    yield from across([Chain((-shape.outer, shape.outer), (outside,))], top, 1, text)
    yield from bore_marks(drain, shape, system, text)
    yield from label_marks(drain, shape, system, text)
    low = soil_low(shape) - 2.0 * text
    yield Text((shape.stone.left, low), "house side", text, layer="labels")
    yield Text((shape.stone.right, low), "earth side", text, anchor="end", layer="labels")


def _words_under(
    drain: DrainLayout, system: System, marks: list[Mark], text: float
) -> Iterator[Text]:
    """Yield the notes and the table of levels under everything drawn."""
    room = extent(marks)
    y = room.low - _APART
    for note in notes(drain, system):
        for line in wrap(note, max(room.width, _LEAST_WORDS), text):
            y -= PITCH * text
            yield Text((room.left, y), line, text, layer="notes")
        y -= 0.5 * text
    y -= text
    rows = level_table(drain, system)
    widths = [max(text_width(row[n], text, bold=True) for row in rows) for n in range(len(rows[0]))]
    for number, row in enumerate(rows):
        y -= PITCH * text
        x = room.left
        for column, words in enumerate(row):
            bold = not number or not column
            yield Text((x, y), words, text, bold, layer="notes")
            x += widths[column] + 3 * text
