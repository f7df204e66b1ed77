"""Where things stand round a section: strings of dimensions, columns of labels, levels."""

from dataclasses import dataclass

from viz.drawing.page import Box

GUTTER = 8.0
PAD = 4.0
# Width of the levels column without its text: the pole, the slanting ticks, the triangle.
POLE = 3.0
LEVEL_TEXT_AT = 15.5


@dataclass(frozen=True)
class Layout:
    """Boxes round the picture, mm.

    strip: the picture with the strings of dimensions beside it; leaders run level as far as that
    and bend in the gutters outside it.
    """

    picture: Box
    strip: Box
    left: Box
    right: Box
    levels: Box
    text: float


def layout(
    picture: Box, strings: tuple[float, float], columns: tuple[Box, Box], levels: float, text: float
) -> Layout:
    """Return the boxes round a picture.

    strings: width of the upright strings left and right. columns: boxes as wide and high as their
    labels need, wherever they lie. levels: width of the words of the levels. All mm.
    """
    strip = Box(picture.left - strings[0], picture.low, picture.right + strings[1], picture.high)
    left = _column(columns[0], strip.left - GUTTER - columns[0].width, picture)
    right = _column(columns[1], strip.right + GUTTER, picture)
    edge = right.right + PAD if columns[1].width else strip.right + GUTTER
    pole = Box(edge, picture.low, edge + LEVEL_TEXT_AT + levels, picture.high)
    return Layout(picture, strip, left, right, pole, text)


def _column(column: Box, left: float, picture: Box) -> Box:
    """Return a column at least as high as the picture, and level with its middle."""
    spare = max(0.0, column.height - picture.height) / 2
    return Box(left, picture.low - spare, left + column.width, picture.high + spare)
