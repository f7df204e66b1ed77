"""The pit's figure on a small paper of its own, for the screen."""

from geometry.layout.lay import Layout
from viz.drawing.page import Drawing
from viz.figures.pit.pit import TITLE, pit_figure

_WIDTH, _HEIGHT, _TEXT, _MARGIN = 220.0, 120.0, 3.0, 4.0


def pit_drawing(layout: Layout) -> Drawing | None:
    """Return the figure as a drawing with a margin; None where no inflow or pit is known."""
    found = pit_figure(layout, _WIDTH, _HEIGHT, _TEXT)
    if found is None:
        return None
    placed = found.at(_MARGIN, _MARGIN)
    wide, high = placed.box.width + 2 * _MARGIN, placed.box.height + 2 * _MARGIN
    return Drawing(wide, high, TITLE, 1.0, placed.marks)
