"""Words and tables in columns: filled from the top, column by column, sheet by sheet."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass

from viz.drawing.figure import Figure, extent
from viz.drawing.marks import Line, Text
from viz.drawing.page import Box
from viz.drawing.place import NoRoomError
from viz.style.lines import CUT
from viz.style.text import HEAD

# Between columns, between blocks in a column, and from a block's head to the block; mm.
_COLUMN_GAP = 9.0
_BLOCK_GAP = 8.0
_UNDER_HEAD = 3.4
_MOST = 4
# How often the height of pieces is halved to make them even.
_TRIES = 3

# Makes the figures of one block of words for a width and a height, mm.
Block = Callable[[float, float], Sequence[Figure]]


@dataclass(frozen=True)
class Columns:
    """How a room is divided into columns, mm."""

    room: Box
    count: int
    width: float

    def left(self, column: int) -> float:
        """Return where a column begins."""
        return self.room.left + column * (self.width + _COLUMN_GAP)


def columns(room: Box, narrowest: float) -> Columns:
    """Return as many columns of at least so many mm as the room holds."""
    count = int((room.width + _COLUMN_GAP) // (narrowest + _COLUMN_GAP))
    count = min(_MOST, max(1, count))
    return Columns(room, count, (room.width - (count - 1) * _COLUMN_GAP) / count)


def flowed(blocks: Sequence[Block], room: Box, narrowest: float) -> tuple[tuple[Figure, ...], ...]:
    """Return the blocks' figures in their places, sheet by sheet, in columns.

    narrowest: least width of a column, mm. A figure keeps its words in one column. Raises
    NoRoomError from a block that does not fit a column.
    """
    across = columns(room, narrowest)
    tallest = room.height - HEAD - _UNDER_HEAD
    made = [headed(f, across.width) for b in blocks for f in _even(b, across.width, tallest)]
    sheets: list[list[Figure]] = [[]]
    column, top = 0, room.high
    for one in made:
        if top - one.box.height < room.low - 1e-6:
            column, top = column + 1, room.high
        if column == across.count:
            sheets.append([])
            column = 0
        sheets[-1].append(one.at(across.left(column), top - one.box.height))
        top -= one.box.height + _BLOCK_GAP
    return tuple(map(tuple, sheets))


def _even(block: Block, width: float, tallest: float) -> Sequence[Figure]:
    """Return a block's figures; of several none is much lower than the others."""
    figures = block(width, tallest)
    low, high = 1 / max(1, len(figures)), 1.0
    for _ in range(_TRIES if len(figures) > 1 else 0):
        share = (low + high) / 2
        try:
            shorter = block(width, share * tallest)
        except NoRoomError:
            shorter = ()
        if len(shorter) == len(figures):
            figures, high = shorter, share
        else:
            low = share
    return figures


def headed(figure: Figure, width: float) -> Figure:
    """Return a figure with its title over it."""
    left, y = figure.box.left, figure.box.high + _UNDER_HEAD
    head = Text((left, y), figure.title, HEAD, bold=True, layer="title")
    rule = Line(((left, y - 1.6), (left + width, y - 1.6)), CUT, layer="title")
    marks = (*figure.marks, head, rule)
    around = extent(marks)
    box = Box(left, around.low, left + width, around.high)
    return Figure(figure.name, figure.title, marks, box, figure.scale, figure.remark)
