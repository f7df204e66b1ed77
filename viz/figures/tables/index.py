"""The index of a set's sheets."""

from collections.abc import Sequence

from viz.drawing.figure import Figure
from viz.figures.tables.figure import table_figures
from viz.tables import Table


def index_figure(rows: Sequence[tuple[str, str, str]], text: float, width: float) -> Figure:
    """Return the index: number, title and contents of each sheet, at most `width` mm wide."""
    table = Table(("Sheet", "Title", "Contents"), tuple(rows))
    (made,) = table_figures("index", "Sheets of this set", table, text, width)
    return made
