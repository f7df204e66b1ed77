"""Heating tubes of every floor as pictures for a wide and for a narrow screen."""

from collections.abc import Iterator

from geometry.layout.lay import Layout
from geometry.layout.tubing.lay import Tubes, lay_tubes
from viz.drawing.figure import Figure
from viz.drawing.scale import Scale
from viz.figures.tubing.tubing import tubing_figure

# Widths, heights and text heights of the two pictures, mm; scales tried, the largest first.
_WIDE, _NARROW = (290.0, 230.0, 3.0), (106.0, 190.0, 2.6)
_SCALES = [
    Scale(f"1:{ratio}", ratio)
    for ratio in (24, 32, 40, 48, 64, 80, 96, 128, 160, 192, 240, 320, 480, 960)
]


def tubing_pictures(layout: Layout) -> Iterator[tuple[Figure, Figure]]:
    """Yield each heated floor's tubes for a wide and for a narrow screen."""
    for tubes in lay_tubes(layout):
        if tubes.loops:
            yield _fitting(layout, tubes, _WIDE), _fitting(layout, tubes, _NARROW)


def _fitting(layout: Layout, tubes: Tubes, size: tuple[float, float, float]) -> Figure:
    """Return the figure at the greatest scale that fits, else at the smallest."""
    width, height, text = size
    narrow = width if size is _NARROW else 0.0
    for scale in _SCALES:
        made = tubing_figure(layout, tubes, scale, text, narrow)
        if made.box.width <= width and made.box.height <= height:
            break
    return made
