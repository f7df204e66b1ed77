"""Big levels beside the picture: a story pole at its scale, and what the rod reads at each mark."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from math import ceil, floor

from shapely import box as rectangle

from geometry.units import FOOT, System
from viz.drawing.fonts import text_width
from viz.drawing.marks import Fill, LevelSymbol, Line, Mark, Text
from viz.drawing.page import Box
from viz.drawing.place import Item, spread
from viz.figures.section.view import View
from viz.style.lines import CHAIN, CUT, DATUM, INK, PAPER, SEEN
from viz.style.text import DESCENT

BIG = 8.05
SMALL = 4.2
POLE = 5.0
_POLE_AT = 4.0
_TEXT_AT = 17.5
_GAP = 0.8
_BLOCK_M = {"ft-in": FOOT, "metric": 0.2}


@dataclass(frozen=True)
class Flag:
    """A level to be read at arm's length: metres, its name, the big figure, a line under it."""

    level: float
    name: str
    figure: str
    note: str = ""
    datum: bool = False


def flags_width(flags: Sequence[Flag]) -> float:
    """Return the room that pole and words take beside the picture, mm."""
    words = [max(_widths(flag)) for flag in flags]
    return _TEXT_AT + max(words, default=0.0)


def _widths(flag: Flag) -> tuple[float, float, float]:
    return (
        text_width(flag.name, SMALL, bold=True),
        text_width(flag.figure, BIG, bold=True),
        text_width(flag.note, SMALL),
    )


def _height(flag: Flag) -> float:
    small = SMALL * (1 + DESCENT)
    return small + BIG * (1 + DESCENT) + (small + 0.2 if flag.note else 0.0) + 1.2


def flag_marks(flags: Sequence[Flag], view: View, room: Box, system: System) -> Iterator[Mark]:
    """Yield pole, lines and words of the levels. room: beside the picture, as high as it may be."""
    shown = sorted((f for f in flags if _seen(f, view)), key=lambda f: f.level)
    if not shown:
        return
    left = room.left + _POLE_AT
    yield from _pole(view, Box(left, room.low, left + POLE, room.high), _BLOCK_M[system])
    ys = [view.at(0, f.level)[1] for f in shown]
    items = [Item(y, _height(f)) for y, f in zip(ys, shown, strict=True)]
    middles = spread(items, room.low, room.high, _GAP)
    for flag, y, middle in zip(shown, ys, middles, strict=True):
        yield from _line(flag, y, view, left + POLE)
        yield from _words(flag, y, middle, left + POLE, room.left + _TEXT_AT)


def _seen(flag: Flag, view: View) -> bool:
    return view.extent[1] <= flag.level <= view.extent[3]


def _pole(view: View, room: Box, block: float) -> Iterator[Mark]:
    """Yield the pole with a block for every foot or 200 mm from the datum, cut by the picture."""
    bottom, top = view.extent[1], view.extent[3]
    for number in range(floor(bottom / block), ceil(top / block)):
        low = view.at(0, max(bottom, number * block))[1]
        high = view.at(0, min(top, (number + 1) * block))[1]
        tint = "#c9c9c9" if number % 2 else PAPER
        yield Fill(rectangle(room.left, low, room.right, high), tint, "levels")
    low, high = view.at(0, bottom)[1], view.at(0, top)[1]
    sides = ((room.left, low), (room.left, high)), ((room.right, low), (room.right, high))
    for side in sides:
        yield Line(side, SEEN, layer="levels")


def _line(flag: Flag, y: float, view: View, pole: float) -> Iterator[Mark]:
    if flag.datum:
        yield Line(((view.box.left, y), (pole, y)), DATUM, INK, CHAIN, "datum")
    else:
        yield Line(((view.box.right - 12.0, y), (pole, y)), CUT, INK, layer="levels")
    yield Line(((pole - POLE - 1.0, y), (pole + 1.0, y)), 1.4, INK, layer="levels")


def _words(flag: Flag, y: float, middle: float, pole: float, x: float) -> Iterator[Mark]:
    top = middle + _height(flag) / 2
    name, figure = top - SMALL, top - SMALL * (1 + DESCENT) - 1.2 - BIG
    foot = figure + BIG * 0.25
    yield Line(((pole + 1.0, y), (pole + 3.5, foot), (x - 1.2, foot)), SEEN, layer="levels")
    yield LevelSymbol((x - 3.4, foot), 3.6, flag.datum, "levels")
    yield Text((x, name), flag.name, SMALL, bold=True, layer="levels")
    yield Text((x, figure), flag.figure, BIG, bold=True, layer="levels")
    if flag.note:
        low = figure - BIG * DESCENT - 0.2 - SMALL
        yield Text((x, low), flag.note, SMALL, layer="levels")
