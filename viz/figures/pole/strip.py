"""One strip of the story pole at full size: ruler, ticks, words, and the tab to tape it by."""

from collections.abc import Iterator

from shapely import box

from geometry.site.pole import Pole, Strip, Tick
from geometry.units import System
from viz.drawing.figure import Figure, figure
from viz.drawing.fonts import wrap
from viz.drawing.marks import Fill, Line, Mark, Text
from viz.drawing.scale import Scale
from viz.figures.pole.labels import Say, labels
from viz.figures.pole.ruler import ruler
from viz.style.lines import INK, SEEN
from viz.style.text import SMALLEST

FULL_SIZE = Scale("1:1", 1)
# A strip is as wide as the face of a nominal four-inch board, 3 1/2 in.
WIDTH = 88.9
# A tick runs so far from the ruler's edge, and so far at the other edge.
TICK = 19.0
_STUB = 5.0
TICK_WEIGHT = 0.5
_TOF_WEIGHT = 1.0
_WORDS = (26.0, WIDTH - _STUB - 2.0)
_TAB_FILL = "#e6e6e6"
_ARROW = 3.0


def strip_figure(pole: Pole, number: int, system: System, say: Say) -> Figure:
    """Return one strip, the ruler's edge at x = 0 and top of footing at y = 0, mm at full size.

    number: of the strip, from 0 at the top. Raises NoRoomError where its words do not fit.
    """
    strip = pole.strips[number]
    low, high = strip.bottom * 1000, strip.top * 1000
    ticks = ticks_on(pole, strip)
    marks: list[Mark] = list(_tab(strip, number, say))
    marks += _edges(strip, number, len(pole.strips))
    lines = [high, *(t.level * 1000 for t in ticks)]
    marks += ruler(low, high + strip.tab * 1000, lines, system)
    for tick in ticks:
        marks += _tick(tick)
    column = (TICK, *_WORDS)
    marks += labels(ticks, low + 1.0, high - 1.0, column, system, say)
    return figure(f"pole-{pole.area}-{number + 1}", pole.area, marks, FULL_SIZE)


def ticks_on(pole: Pole, strip: Strip) -> list[Tick]:
    """Return the ticks on a strip; its bottom edge belongs to it, its top to the one above."""
    return [t for t in pole.ticks if strip.bottom <= t.level < strip.top]


def _tick(tick: Tick) -> Iterator[Mark]:
    y = tick.level * 1000
    is_tof = any(mark.kind == "TOF" for mark in tick.marks)
    weight = _TOF_WEIGHT if is_tof else TICK_WEIGHT
    yield Line(((0.0, y), (TICK, y)), weight, layer="levels")
    yield Line(((WIDTH - _STUB, y), (WIDTH, y)), weight, layer="levels")


def _edges(strip: Strip, number: int, count: int) -> Iterator[Mark]:
    """Yield the lines to cut along, and arrows at the joins that come to lie on each other."""
    low, top = strip.bottom * 1000, (strip.top + strip.tab) * 1000
    ring = ((0.0, low), (WIDTH, low), (WIDTH, top), (0.0, top), (0.0, low))
    yield Line(ring, SEEN, layer="frame")
    if number:
        join = strip.top * 1000
        yield Line(((0.0, join), (WIDTH, join)), SEEN, layer="frame")
        yield from _arrows(join, _ARROW)
    if number < count - 1:
        yield from _arrows(low, _ARROW)


def _arrows(y: float, size: float) -> Iterator[Mark]:
    """Yield two arrow heads that stand over a level with their points on it."""
    for x in (WIDTH * 0.42, WIDTH * 0.88):
        points = ((x, y), (x - size / 2, y + size), (x + size / 2, y + size), (x, y))
        yield Line(points, SEEN, layer="frame")


def _tab(strip: Strip, number: int, say: Say) -> Iterator[Mark]:
    if not number:
        return
    low, tall = strip.top * 1000, strip.tab * 1000
    yield Fill(box(_WORDS[0] - 5.0, low, WIDTH, low + tall), _TAB_FILL, "frame")
    room = WIDTH - _WORDS[0] - 2.0
    said = (say("pole.tab", page=str(number)), say("pole.tab_edge"))
    lines = [line for words in said for line in wrap(words, room, SMALLEST)]
    if tall < (1.7 * len(lines) + 1.1) * SMALLEST + _ARROW:
        return
    base = low + tall - 1.5 * SMALLEST
    for line in lines:
        yield Text((_WORDS[0], base), line, SMALLEST, colour=INK, layer="labels")
        base -= 1.7 * SMALLEST
