"""The list of what departments ask, ticked where this set answers, as a table with boxes."""

from collections.abc import Iterator, Sequence
from dataclasses import replace

from geometry.checks.asked import Item
from viz.drawing.figure import Figure
from viz.drawing.marks import Line, Mark
from viz.drawing.page import Box
from viz.figures.tables.figure import Signs, table_figures
from viz.style.lines import CUT, SEEN
from viz.tables.table import Table

LAYER = "notes"
_TICKED = ("shown", "stated")
_HEAD = ("Part", "Asked", "State", "Where, or what to do", "Published list")
_REMARK = (
    "From lists that departments publish, those of several departments at second hand. "
    "Your department's own list governs."
)
# Side of the box against the height of the text, and the width of the column of boxes, mm.
_SIDE = 1.15
_COLUMN = 1.6


def completeness_table(items: Sequence[Item]) -> Table:
    """Return the list in words alone."""
    rows = ((i.topic, i.asked, i.state, i.detail, _listed(i)) for i in items)
    return Table(_HEAD, tuple(rows))


def completeness_figures(
    items: Sequence[Item], text: float, width: float, height: float = float("inf")
) -> tuple[Figure, ...]:
    """Return the list in pieces: a ticked box where it is shown or stated, else an empty box.

    What the model does not cover has a dash. Sizes in mm, as in `table_figures`.
    """
    signs = Signs("", _COLUMN * text, [0.0] * len(items), lambda n, box: _sign(items[n], box, text))
    title = "What building departments ask, and where it stands"
    table = completeness_table(items)
    made = table_figures("completeness", title, table, text, width, height, signs)
    return tuple(replace(piece, remark=_REMARK) for piece in made)


def _listed(item: Item) -> str:
    return item.source.title.removeprefix("published list: ")


def _sign(item: Item, box: Box, text: float) -> Iterator[Mark]:
    """Yield the box on the first line of its row, or the dash."""
    side = _SIDE * text
    left, high = box.left, box.high - 0.68 * text
    low, right = high - side, left + side
    if item.state == "not covered":
        middle = (low + high) / 2
        yield Line(((left, middle), (right, middle)), CUT, layer=LAYER)
        return
    corners = ((left, low), (right, low), (right, high), (left, high), (left, low))
    yield Line(corners, SEEN, layer=LAYER)
    if item.state in _TICKED:
        foot = (left + 0.42 * side, low + 0.18 * side)
        tick = ((left + 0.15 * side, low + 0.5 * side), foot, (right, high + 0.1 * side))
        yield Line(tick, CUT, layer=LAYER)
