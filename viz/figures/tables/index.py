"""The index of a set's sheets."""

from collections.abc import Sequence

from viz.drawing.figure import Figure
from viz.figures.tables.figure import table_figures
from viz.tables.table import Table


def index_figures(
    rows: Sequence[tuple[str, str, str]], text: float, width: float, height: float = float("inf")
) -> tuple[Figure, ...]:
    """Return the index in pieces that keep width and height, mm.

    rows: number, title and contents of each sheet. Raises NoRoomError where one does not fit.
    """
    table = Table(("Sheet", "Title", "Contents"), tuple(rows))
    return table_figures("index", "Sheets of this set", table, text, width, height)
