"""The room a line of text takes on paper."""

from viz.drawing.fonts import text_width
from viz.drawing.marks import Text
from viz.drawing.page import Box
from viz.style.text import DESCENT

_SHARE_LEFT = {"start": 0.0, "middle": 0.5, "end": 1.0}


def text_box(text: Text) -> Box:
    """Return the box around a line of text, from its descenders to the top of its capitals."""
    width = text_width(text.words, text.height, text.bold)
    left = text.at[0] - _SHARE_LEFT[text.anchor] * width
    return Box(left, text.at[1] - DESCENT * text.height, left + width, text.at[1] + text.height)
