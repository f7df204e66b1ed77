"""A figure at the greatest scale that fits a screen."""

from collections.abc import Callable

from viz.drawing.figure import Figure
from viz.drawing.scale import Scale

# Scales tried, the largest first.
_SCALES = [
    Scale(f"1:{ratio}", ratio)
    for ratio in (24, 32, 40, 48, 64, 80, 96, 128, 160, 192, 240, 320, 480, 960, 1920)
]


def fitting(draw: Callable[[Scale], Figure], width: float, height: float) -> Figure:
    """Return the figure at the greatest scale that fits into width and height, mm.

    Where none fits it is drawn at the smallest.
    """
    for scale in _SCALES:
        made = draw(scale)
        if made.box.width <= width and made.box.height <= height:
            break
    return made
