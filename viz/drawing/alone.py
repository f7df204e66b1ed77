"""A figure on a paper of its own, for a screen: a margin round it, no title block."""

from viz.drawing.figure import Figure
from viz.drawing.page import Drawing

MARGIN = 3.0


def alone(figure: Figure, margin: float = MARGIN) -> Drawing:
    """Return a figure as a drawing with a margin round it, mm."""
    placed = figure.at(margin, margin)
    wide, high = placed.box.width + 2 * margin, placed.box.height + 2 * margin
    return Drawing(wide, high, figure.title, 1.0, placed.marks)
