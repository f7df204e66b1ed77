"""Strings of dimensions, stacked outward, every figure in a place of its own.

All figures read from the bottom of the sheet (the unidirectional system of ASME Y14.5). A figure
that its gap cannot hold stands beside the string in the nearest free place, with a tie to its gap.
"""

from collections.abc import Callable, Iterable, Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise
from math import inf, isfinite

from viz.drawing.fonts import text_width
from viz.drawing.marks import Line, Mark, Point, Text
from viz.style.lines import DIMENSION, SEEN

LAYER = "dimensions"
# Gap between the thing and its extension line, overrun past the string, half a slash; mm.
_GAP = 1.6
_OVERRUN = 1.6
_SLASH = 1.1
# First string from the thing; from a string to the next; air round a figure.
_FIRST = 7.0
_NEXT = 3.2
_AIR = 0.8
# Height of a row of figures, in text heights.
_ROW = 1.5

Span = tuple[float, float]


@dataclass(frozen=True)
class Chain:
    """One string: where its stops lie on paper along its axis, mm, and the words of each gap."""

    stops: tuple[float, ...]
    words: tuple[str, ...]


def chain(
    places: Iterable[float],
    paper: Callable[[float], float],
    show: Callable[[float], str],
    least: float = 1e-3,
) -> Chain | None:
    """Return the string between sorted places of the job, metres; None for fewer than two.

    paper: place to millimetres along the axis. show: a length in words. Places nearer than
    `least` metres are one.
    """
    kept: list[float] = []
    for place in sorted(places):
        if not kept or place - kept[-1] > least:
            kept.append(place)
    if len(kept) < 2:
        return None
    words = tuple(show(b - a) for a, b in pairwise(kept))
    return Chain(tuple(map(paper, kept)), words)


def nearest_free(
    wanted: Sequence[tuple[float, float]], blocked: Sequence[Span]
) -> tuple[float | None, ...]:
    """Return a middle for each (wanted middle, size), clear of all blocked and of each other.

    Given in rising order they keep it, with the least sum of movements. Where they cannot all be
    placed, each takes the nearest place there is; None where there is none.
    """
    return _in_order(wanted, blocked) or _one_by_one(wanted, blocked)


def _in_order(
    wanted: Sequence[tuple[float, float]], blocked: Sequence[Span]
) -> tuple[float, ...] | None:
    """Return the best places in order, by dynamic programming over places that touch something.

    At the least sum of movements each one stands where it wants to, or in a run of neighbours
    that leans on something blocked or on one that does.
    """
    # Of the places of each: (place, cost up to here, number of the place before).
    table: list[list[tuple[float, float, int]]] = []
    end = [(-inf, 0.0)]
    for number, (middle, size) in enumerate(wanted):
        places = sorted(
            p for p in _places(wanted, number, blocked) if _is_free(p, size / 2, blocked)
        )
        column: list[tuple[float, float, int]] = []
        best, cheapest, before = -1, inf, 0
        for place in places:
            while before < len(end) and end[before][0] <= place - size / 2 + 1e-9:
                if end[before][1] < cheapest:
                    best, cheapest = before, end[before][1]
                before += 1
            if best >= 0:
                column.append((place, cheapest + abs(place - middle), best))
        if not column:
            return None
        table.append(column)
        end = [(place + size / 2, cost) for place, cost, _ in column]
    return _traced(table)


def _traced(table: Sequence[Sequence[tuple[float, float, int]]]) -> tuple[float, ...]:
    found: list[float] = []
    at = min(range(len(table[-1])), key=lambda n: table[-1][n][1]) if table else 0
    for column in reversed(table):
        place, _, at = column[at]
        found.append(place)
    return tuple(reversed(found))


def _places(
    wanted: Sequence[tuple[float, float]], number: int, blocked: Sequence[Span]
) -> set[float]:
    """Return where one may stand: as it wants, or leaning on something over its neighbours."""
    middle, size = wanted[number]
    found = {middle}
    over = 0.0
    for before in range(number, -1, -1):
        rests = [high for _, high in blocked]
        if before:
            rests.append(wanted[before - 1][0] + wanted[before - 1][1] / 2)
        found |= {rest + over + size / 2 for rest in rests}
        over += wanted[before - 1][1] if before else 0.0
    under = 0.0
    for after in range(number, len(wanted)):
        rests = [low for low, _ in blocked]
        if after + 1 < len(wanted):
            rests.append(wanted[after + 1][0] - wanted[after + 1][1] / 2)
        found |= {rest - under - size / 2 for rest in rests}
        under += wanted[after + 1][1] if after + 1 < len(wanted) else 0.0
    return found


def _one_by_one(
    wanted: Sequence[tuple[float, float]], blocked: Sequence[Span]
) -> tuple[float | None, ...]:
    taken = list(blocked)
    found: list[float | None] = []
    for middle, size in wanted:
        half = size / 2
        tries = [middle, *(e for low, high in taken for e in (low - half, high + half))]
        free = [t for t in tries if _is_free(t, half, taken)]
        best = min(free, key=lambda t: abs(t - middle)) if free else None
        if best is not None:
            taken.append((best - half, best + half))
        found.append(best)
    return tuple(found)


def _is_free(middle: float, half: float, taken: Sequence[Span]) -> bool:
    return isfinite(middle) and all(
        middle + half <= low + 1e-9 or middle - half >= high - 1e-9 for low, high in taken
    )


def across(
    chains: Sequence[Chain],
    edge: float,
    way: int,
    text: float,
    limits: Span = (-inf, inf),
) -> tuple[Mark, ...]:
    """Return level strings stacked outward from y = `edge`, the first nearest.

    way: 1 upward, -1 downward. limits: x between which figures beside their gaps stay, if they can.
    """
    marks: list[Mark] = []
    line = edge + way * _FIRST
    for number, one in enumerate(chains):
        outer = [stop for later in chains[number + 1 :] for stop in later.stops]
        passing = [(s - _AIR, s + _AIR) for s in outer]
        drawn, rows = _level(one, edge, line, way, text, passing, limits)
        marks += drawn
        line += way * (_NEXT + (1 + rows) * _ROW * text)
    return tuple(marks)


def _level(
    one: Chain, edge: float, line: float, way: int, text: float,
    passing: Sequence[Span], limits: Span,
) -> tuple[list[Mark], int]:  # fmt: skip
    """Return one level string, and how many rows of figures stand beside it."""
    marks: list[Mark] = [*_skeleton(one, lambda along, off: (along, off), edge, line, way)]
    inside, left = _sorted_by_room(one, text)
    marks += [Text((x, line + _AIR), w, text, anchor="middle", layer=LAYER) for x, w in inside]
    rows = 0
    while left:
        wide = [(-inf, limits[0]), (limits[1], inf)] if rows < len(one.words) else []
        sized = [(x, text_width(w, text) + 2 * _AIR) for x, w in left]
        places = nearest_free(sized, [*passing, *wide])
        foot = _row_foot(line, way, rows, text)
        for (x, w), middle in zip(left, places, strict=True):
            if middle is not None:
                marks.append(Text((middle, foot), w, text, anchor="middle", layer=LAYER))
                end = foot + text + _AIR / 2 if way < 0 else foot - _AIR / 2
                marks.append(Line(((x, line), (middle, end)), DIMENSION, layer=LAYER))
        left = [item for item, middle in zip(left, places, strict=True) if middle is None]
        rows += 1
    return marks, rows


def _row_foot(line: float, way: int, row: int, text: float) -> float:
    """Return the baseline of a row of figures beside a string; above it its own stand first."""
    if way < 0:
        return line - (row + 1) * _ROW * text - _AIR
    return line + (row + 1) * _ROW * text + _AIR


def upright(
    chains: Sequence[Chain], edge: float, way: int, text: float, blocked: Sequence[Span] = ()
) -> tuple[Mark, ...]:
    """Return upright strings stacked outward from x = `edge`, the first nearest.

    way: 1 to the right, -1 to the left. blocked: spans of y that figures keep off (leaders).
    """
    marks: list[Mark] = []
    line = edge + way * _FIRST
    for number, one in enumerate(chains):
        outer = [s for later in chains[number + 1 :] for s in later.stops]
        own = [(s - _AIR / 2, s + _AIR / 2) for s in (*one.stops, *outer)]
        marks += _upright(one, edge, line, way, text, [*blocked, *own])
        line += way * _room(one, text)
    return tuple(marks)


def width_upright(chains: Sequence[Chain], text: float) -> float:
    """Return how far upright strings reach out from the thing, mm."""
    return _FIRST + sum(_room(one, text) for one in chains) if chains else 0.0


def _room(one: Chain, text: float) -> float:
    """Return the room of one upright string's figures, mm."""
    return max(text_width(words, text) for words in one.words) + 4 * _AIR + _SLASH


def _upright(
    one: Chain, edge: float, line: float, way: int, text: float, passing: Sequence[Span]
) -> Iterator[Mark]:
    yield from _skeleton(one, lambda along, off: (off, along), edge, line, way)
    gaps = [(a + b) / 2 for a, b in pairwise(one.stops)]
    sized = [(gap, text + 2 * _AIR) for gap in gaps]
    start = line + way * (_SLASH + 2 * _AIR)
    spans = list(pairwise(one.stops))
    rows = zip(gaps, spans, one.words, nearest_free(sized, passing), strict=True)
    for gap, (low, high), words, middle in rows:
        if middle is None:  # never: beyond all that is blocked there is room
            continue
        at = (start, middle - text / 2)
        yield Text(at, words, text, anchor="start" if way > 0 else "end", layer=LAYER)
        if not low < middle < high:
            yield Line(((line, gap), (start - way * _AIR / 2, middle)), DIMENSION, layer=LAYER)


_Placed = list[tuple[float, str]]


def _sorted_by_room(one: Chain, text: float) -> tuple[_Placed, _Placed]:
    """Return (middle of gap, words) of figures that fit their gaps, and of those too wide."""
    inside: _Placed = []
    outside: _Placed = []
    for (a, b), words in zip(pairwise(one.stops), one.words, strict=True):
        fits = text_width(words, text) + 2 * _AIR <= b - a
        (inside if fits else outside).append(((a + b) / 2, words))
    return inside, outside


def _skeleton(
    one: Chain, point: Callable[[float, float], Point], edge: float, line: float, way: int
) -> Iterator[Line]:
    """Yield the string, its extension lines and its slashes."""
    first, last = one.stops[0], one.stops[-1]
    yield Line((point(first - 1.2, line), point(last + 1.2, line)), DIMENSION, layer=LAYER)
    for stop in one.stops:
        ends = (point(stop, edge + way * _GAP), point(stop, line + way * _OVERRUN))
        yield Line(ends, DIMENSION, layer=LAYER)
        slash = (point(stop - _SLASH, line - _SLASH), point(stop + _SLASH, line + _SLASH))
        yield Line(slash, SEEN, layer=LAYER)
