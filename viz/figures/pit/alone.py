"""The pit's figure on a small paper of its own, for the screen."""

from geometry.layout.lay import Layout
from viz.drawing.figure import Figure
from viz.figures.pit.pit import pit_figure

_WIDE, _NARROW = (220.0, 120.0, 3.0), (104.0, 96.0, 2.7)


def pit_pictures(layout: Layout) -> tuple[Figure, Figure] | None:
    """Return the figure for a wide and for a narrow screen; None without known inflow or pit."""
    wide, narrow = pit_figure(layout, *_WIDE), pit_figure(layout, *_NARROW, keyed=True)
    return None if wide is None or narrow is None else (wide, narrow)
