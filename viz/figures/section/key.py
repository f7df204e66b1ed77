"""The key of a section whose labels are numbers: each with its words, in columns under it."""

from collections.abc import Iterator, Sequence
from typing import TypeAlias

from viz.drawing.fonts import text_width
from viz.drawing.marks import Mark, Point, Text
from viz.drawing.page import Box
from viz.figures.section.blocks import Lettering
from viz.figures.section.labels import KEY_RADIUS, key_mark
from viz.style.text import PITCH

_Words: TypeAlias = tuple[str, str]

_ROW_GAP = 0.8
_COLUMN_GAP = 6.0
_WIDEST = 62.0
_UNDER = 4.0
# Between a key and what stands beside it.
KEY_GAP = 6.0


def key_marks(lettering: Lettering, above: Box, room: float) -> Iterator[Mark]:
    """Yield the key under what is above, in as many columns as `room` mm hold."""
    text = lettering.text
    indent = 3 * KEY_RADIUS * text
    count = max(1, int((room + _COLUMN_GAP) // (_WIDEST + indent + _COLUMN_GAP)))
    width = (room + _COLUMN_GAP) / count - indent - _COLUMN_GAP
    entries = [(n, _entry(lettering, w, width)) for w, n in lettering.keys.items()]
    columns = _poured([_height(e, text) for _, e in entries], count)
    for column, filled in enumerate(columns):
        x, y = above.left + column * (width + indent + _COLUMN_GAP), above.low - _UNDER
        for number, entry in entries[filled]:
            yield from key_mark((x + KEY_RADIUS * text, y - text / 2), str(number), text)
            for index, line in enumerate(entry):
                yield from _words(line, (x + indent, y - text - index * text * PITCH), text)
            y -= _height(entry, text)


def _poured(heights: Sequence[float], count: int) -> list[slice]:
    """Return which of the entries, in order, each column holds, none higher than it need be."""
    ends = range(len(heights) + 1)
    for limit in sorted(sum(heights[a:b]) for a in ends for b in ends if a < b):
        columns = _within(heights, limit + 1e-9)
        if len(columns) <= count:
            return columns
    return []


def _within(heights: Sequence[float], limit: float) -> list[slice]:
    """Return columns filled one after the other up to a height."""
    columns, start, used = [], 0, 0.0
    for number, height in enumerate(heights):
        if number > start and used + height > limit:
            columns.append(slice(start, number))
            start, used = number, 0.0
        used += height
    return [*columns, slice(start, len(heights))]


def _entry(lettering: Lettering, wording: str, width: float) -> tuple[_Words, ...]:
    """Return an entry's lines as (bold, plain) words: on one line where it fits."""
    block = lettering.spelled(wording, width)
    bold, plain = block.lines[: block.bold], block.lines[block.bold :]
    if len(bold) == len(plain) == 1:
        long = text_width(bold[0], lettering.text, bold=True) + lettering.text
        if long + text_width(plain[0], lettering.text) <= width:
            return ((bold[0], plain[0]),)
    return (*((line, "") for line in bold), *(("", line) for line in plain))


def _words(line: _Words, at: Point, text: float) -> Iterator[Text]:
    bold, plain = line
    if bold:
        yield Text(at, bold, text, bold=True, layer="labels")
    if plain:
        aside = text_width(bold, text, bold=True) + text if bold else 0.0
        yield Text((at[0] + aside, at[1]), plain, text, layer="labels")


def _height(entry: Sequence[_Words], text: float) -> float:
    lines = (len(entry) - 1) * text * PITCH + 1.33 * text
    return max(lines, 2 * KEY_RADIUS * text) + _ROW_GAP
