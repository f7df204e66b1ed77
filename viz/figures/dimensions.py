"""Strings of dimensions, stacked outward, every figure in a place of its own.

All figures read from the bottom of the sheet (the unidirectional system of ASME Y14.5). A figure
that its gap cannot hold stands beside the string in the nearest free place, with a tie to its gap.
"""

from collections.abc import Callable, Iterable, Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise

from viz.drawing.fonts import text_width
from viz.drawing.marks import Line, Mark, Point, Text
from viz.style.lines import DIMENSION, SEEN

LAYER = "dimensions"
# Gap between the thing and its extension line, overrun past the string, half a slash; mm.
_GAP = 1.6
_OVERRUN = 1.6
_SLASH = 1.1
# First string from the thing; air round a figure.
_FIRST = 7.0
_AIR = 0.8

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
) -> tuple[float, ...]:
    """Return a middle for each (wanted middle, size), clear of what is blocked and of each other."""
    taken = list(blocked)
    found = []
    for middle, size in wanted:
        half = size / 2
        tries = [middle, *(e for low, high in taken for e in (low - half, high + half))]
        free = [t for t in tries if all(t + half <= lo + 1e-9 or t - half >= hi - 1e-9
                                        for lo, hi in taken)]  # fmt: skip
        best = min(free, key=lambda t: abs(t - middle))
        taken.append((best - half, best + half))
        found.append(best)
    return tuple(found)


def depth_across(chains: Sequence[Chain], text: float) -> float:
    """Return how far level strings reach out from the thing, mm."""
    return _FIRST + (len(chains) - 1) * _pitch_across(text) + 2.2 * text + _AIR if chains else 0.0


def across(
    chains: Sequence[Chain], edge: float, way: int, text: float, blocked: Sequence[Span] = ()
) -> tuple[Mark, ...]:
    """Return level strings stacked outward from y = `edge`, the first nearest.

    way: 1 upward, -1 downward. blocked: spans of x that figures keep off, beside the strings' own.
    """
    marks: list[Mark] = []
    for number, one in enumerate(chains):
        line = edge + way * (_FIRST + number * _pitch_across(text))
        outer = [s for later in chains[number + 1 :] for s in later.stops]
        passing = [*blocked, *((s - _AIR / 2, s + _AIR / 2) for s in outer)]
        marks += _level(one, edge, line, way, text, passing)
    return tuple(marks)


def _pitch_across(text: float) -> float:
    return 3.4 * text + 2 * _AIR


def _level(
    one: Chain, edge: float, line: float, way: int, text: float, passing: Sequence[Span]
) -> Iterator[Mark]:
    yield from _skeleton(one, lambda along, off: (along, off), edge, line, way)
    above, beyond = line + _AIR, line + way * (_AIR + 0.6)
    under = beyond if way > 0 else beyond - text
    inside, outside = _sorted_by_room(one, text)
    for middle, words in inside:
        yield Text((middle, above), words, text, anchor="middle", layer=LAYER)
    # Above a string that grows upward its own figures already stand: the next row is theirs.
    low = under if way < 0 else line + _AIR + 1.4 * text
    sized = [(middle, text_width(words, text) + 2 * _AIR) for middle, words in outside]
    for (gap, words), middle in zip(outside, nearest_free(sized, passing), strict=True):
        yield Text((middle, low), words, text, anchor="middle", layer=LAYER)
        foot = low - _AIR / 2 if way > 0 else low + text + _AIR / 2
        yield Line(((gap, line), (middle, foot)), DIMENSION, layer=LAYER)


def width_upright(chains: Sequence[Chain], text: float) -> float:
    """Return how far upright strings reach out from the thing, mm."""
    return _FIRST + sum(_room(one, text) for one in chains) if chains else 0.0


def _room(one: Chain, text: float) -> float:
    """Return the room of one upright string's figures, mm."""
    return max(text_width(words, text) for words in one.words) + 4 * _AIR + _SLASH


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
        at = (start, middle - text / 2)
        yield Text(at, words, text, anchor="start" if way > 0 else "end", layer=LAYER)
        if not low < middle < high:
            yield Line(((line, gap), (start - way * _AIR / 2, middle)), DIMENSION, layer=LAYER)


def _sorted_by_room(
    one: Chain, text: float
) -> tuple[list[tuple[float, str]], list[tuple[float, str]]]:
    """Return (middle of gap, words) of the figures that fit their gaps, and of those that do not."""
    inside, outside = [], []
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
