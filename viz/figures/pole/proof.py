"""Bars of known length to lay a rule on, and the whole pole in small with its pages."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from shapely import box

from geometry.site.pole import Pole
from geometry.units import INCH
from viz.drawing.figure import Figure, figure
from viz.drawing.marks import Fill, Line, Mark, Text
from viz.drawing.place import Item, spread
from viz.style.lines import INK, PAPER, QUIET, SEEN
from viz.style.text import SMALLEST

# Blocks of each bar, their length in mm, and what is written at its end.
BARS: tuple[tuple[int, float, str], ...] = ((10, 10.0, "100 mm"), (8, INCH * 500, "4 in"))
_WIDE = 7.0
_APART = 12.0
_FINE = 0.13


def proof_bars() -> Figure:
    """Return two upright bars, of exactly 100 mm and 4 in, parallel to the pole."""
    marks: list[Mark] = []
    for place, (count, block, words) in enumerate(BARS):
        left = place * (_WIDE + _APART)
        marks += _bar(left, count, block)
        over = (left + _WIDE / 2, count * block + 2.0)
        marks.append(Text(over, words, 3.0, bold=True, anchor="middle", layer="labels"))
    return figure("proof", "Proof bars", marks)


def _bar(left: float, count: int, block: float) -> Iterator[Mark]:
    """Yield blocks in black and white; hairlines at both ends stand out, to lay a rule on."""
    right, high = left + _WIDE, count * block
    for number in range(count):
        colour = PAPER if number % 2 else INK
        yield Fill(box(left, number * block, right, (number + 1) * block), colour, "scale bar")
    for x in (left, right):
        yield Line(((x, 0.0), (x, high)), _FINE, layer="scale bar")
    for y in (0.0, high):
        yield Line(((left - 3.0, y), (right + 3.0, y)), _FINE, layer="scale bar")


@dataclass(frozen=True)
class Small:
    """How the whole pole is drawn in small: its height and width, mm, and the strip in hand."""

    height: float
    width: float
    number: int


def overview(pole: Pole, small: Small, page: str) -> Figure:
    """Return the whole pole in small: its strips with their numbers, the one in hand black.

    page: the word before a strip's number.
    """
    top, bottom = pole.strips[0].top, pole.strips[-1].bottom
    ratio = small.height / (top - bottom)
    middles = _middles(pole, ratio)
    marks: list[Mark] = []
    for number, strip in enumerate(pole.strips):
        low, high = (strip.bottom - bottom) * ratio, (strip.top - bottom) * ratio
        chosen = number == small.number
        ring = ((0.0, low), (small.width, low), (small.width, high), (0.0, high), (0.0, low))
        if chosen:
            marks.append(Fill(box(0.0, low, small.width, high), "#d0d0d0", "frame"))
        marks.append(Line(ring, SEEN, layer="frame"))
        spot = (small.width + 2.0, middles[number] - SMALLEST / 2)
        colour = INK if chosen else QUIET
        words = f"{page} {number + 1}"
        marks.append(Text(spot, words, SMALLEST, bold=chosen, colour=colour, layer="labels"))
    for tick in pole.ticks:
        y = (tick.level - bottom) * ratio
        is_tof = any(mark.kind == "TOF" for mark in tick.marks)
        long = small.width if is_tof else 0.6 * small.width
        marks.append(Line(((0.0, y), (long, y)), 0.6 if is_tof else SEEN, layer="levels"))
    return figure("overview", "The whole pole", marks)


def _middles(pole: Pole, ratio: float) -> Sequence[float]:
    bottom = pole.strips[-1].bottom
    wanted = [((s.top + s.bottom) / 2 - bottom) * ratio for s in reversed(pole.strips)]
    total = (pole.strips[0].top - bottom) * ratio
    placed = spread([Item(y, SMALLEST) for y in wanted], 0.0, total, 1.0)
    return tuple(reversed(placed))
