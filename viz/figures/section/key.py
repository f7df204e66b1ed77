"""The key of a section whose labels are numbers: each with its words, in columns under it."""

from collections.abc import Iterator

from viz.drawing.marks import Mark, Text
from viz.drawing.page import Box
from viz.figures.section.blocks import Block, Lettering
from viz.figures.section.labels import KEY_RADIUS, key_mark
from viz.style.text import PITCH

_ROW_GAP = 2.0
_COLUMN_GAP = 6.0
_WIDEST = 62.0
_UNDER = 5.0


def key_marks(lettering: Lettering, above: Box, widest: float) -> Iterator[Mark]:
    """Yield the key in as many columns as the picture above, or `widest` mm, hold."""
    text = lettering.text
    indent = 3 * KEY_RADIUS * text
    room = max(above.width, widest)
    count = max(1, int((room + _COLUMN_GAP) // (_WIDEST + indent + _COLUMN_GAP)))
    width = (room + _COLUMN_GAP) / count - indent - _COLUMN_GAP
    blocks = [(n, lettering.spelled(w, width)) for w, n in lettering.keys.items()]
    share = sum(_height(b, text) for _, b in blocks) / count
    column, y = 0, above.low - _UNDER
    for number, block in blocks:
        used = above.low - _UNDER - y
        if column < count - 1 and used + _height(block, text) / 2 > share:
            column, y = column + 1, above.low - _UNDER
        x = above.left + column * (width + indent + _COLUMN_GAP)
        yield from key_mark((x + KEY_RADIUS * text, y - text / 2), str(number), text)
        for index, line in enumerate(block.lines):
            at = (x + indent, y - text - index * text * PITCH)
            yield Text(at, line, text, index < block.bold, layer="labels")
        y -= _height(block, text)


def _height(block: Block, text: float) -> float:
    return max(block.height(text), 2 * KEY_RADIUS * text) + _ROW_GAP
