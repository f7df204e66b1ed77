"""Over the outlet's picture: labels in one row, each tied to its thing; the string of distance."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise
from math import inf

from geometry.units import show_fall, show_length
from geometry.water.outlets import show_far
from viz.drawing.fonts import text_width
from viz.drawing.marks import Leader, Line, Mark, Point, Text
from viz.figures.dimensions import nearest_free
from viz.figures.outlet.stage import Stage
from viz.figures.profile.view import rank
from viz.style.lines import DIMENSION, SEEN
from viz.style.text import DESCENT, PITCH
from viz.words import material_name

_GAP, _AIR, _SLASH = 4.0, 1.2, 1.1
# Least share of the picture a stretch of ground takes to be named, and how many are.
_NAMED, _MOST_NAMED = 0.12, 3
# A slope flatter than this is level, and slopes nearer than this are one.
_LEVEL = 5e-4
# How far beyond the last point the dimension of what is lacking stands, mm.
_ASIDE = 5.0


@dataclass(frozen=True)
class Label:
    """A few lines of words and the place on paper they belong to, mm.

    bold: the first line. dotted: the leader ends in a dot; else it goes on into a dimension.
    """

    lines: tuple[str, ...]
    at: Point
    bold: bool = False
    dotted: bool = True


def labels(stage: Stage) -> tuple[Label, ...]:
    """Return what is said over the picture, from left to right."""
    ground = () if stage.compact else _ground(stage)
    found = [*ground, _pipe(stage), *_cover(stage), _end(stage)]
    return tuple(sorted(found, key=lambda label: label.at[0]))


def _ground(stage: Stage) -> Iterator[Label]:
    long = [p for p in _slopes(stage) if p[1] - p[0] >= _NAMED * stage.right]
    for a, b, slope in sorted(long, key=lambda p: p[0] - p[1])[:_MOST_NAMED]:
        way = "falls" if slope > 0 else "rises"
        words = f"Ground {way} {abs(slope):.1%}" if abs(slope) > _LEVEL else "Ground lies level"
        # Before the middle, where the pipe's own label does not stand.
        far = a + 0.2 * (b - a)
        yield Label((words,), stage.at(far, stage.ground.at(far)))


def _slopes(stage: Stage) -> list[tuple[float, float, float]]:
    """Return the ground's stretches from the drain on: start, end and fall, alike ones joined."""
    found: list[tuple[float, float, float]] = []
    for (a, low), (b, high) in pairwise(stage.ground.points[1:]):
        slope = (low - high) / (b - a)
        if found and abs(found[-1][2] - slope) < _LEVEL:
            a, *_ = found.pop()
        found.append((a, b, slope))
    return found


def _pipe(stage: Stage) -> Label:
    run, system = stage.run, stage.system
    name = material_name(run.pipe.key).split(", ", 1)[-1]
    falls = f"falls {show_fall(run.asked.fall, system)}" if run.asked.fall else "laid level"
    stops = stage.stations
    number = max(1, len(stops) // 2)
    far = (stops[number - 1] + stops[number]) / 2
    at = stage.at(far, run.invert(far) + run.pipe.inside_diameter_m / 2)
    far_words = f"{falls}, {show_far(run.length_m, system)} of pipe"
    return Label((f"Solid pipe, {name}", far_words), at, bold=True)


def _cover(stage: Stage) -> Iterator[Label]:
    run, system = stage.run, stage.system
    if run.least_cover is None or run.lacking is not None:
        return
    far, cover = run.least_cover
    crown = run.invert(far) + run.crown_over_invert_m
    size = show_length(cover, system)
    end = run.thin_end
    more = "less from here to the end" if end and end.start == far else "least over the pipe"
    at = stage.at(far, crown + cover)
    yield Label((f"{size} of ground over the pipe", more), at, dotted=False)


def _end(stage: Stage) -> Label:
    run, system = stage.run, stage.system
    if run.lacking:
        short = show_length(run.lacking.at_last_m, system)
        x, y = stage.at(run.reach_m, run.end_invert_m + run.lacking.at_last_m)
        words = ("Does not come out", f"{short} lacking here")
        return Label(words, (x + _ASIDE, y), bold=True, dotted=False)
    over = show_length(run.end_invert_m - run.ground.at(run.reach_m), system)
    name = "Open end with guard" if run.asked.guard else "Open end, no guard"
    at = stage.at(run.reach_m, run.end_invert_m)
    return Label((name, f"invert {over} over the ground"), at, True)


def cover_marks(stage: Stage) -> Iterator[Line]:
    """Yield the dimension of the least cover, or of what is lacking at the last point."""
    run = stage.run
    if run.lacking is not None:
        x, low = stage.at(run.reach_m, run.end_invert_m)
        high = low + stage.view.y(run.lacking.at_last_m)
        yield from _upright(x + _ASIDE, low, high)
        for y in (low, high):
            yield Line(((x + 1.0, y), (x + _ASIDE + 1.6, y)), DIMENSION, layer="dimensions")
    elif run.least_cover is not None:
        far, cover = run.least_cover
        x, low = stage.at(far, run.invert(far) + run.crown_over_invert_m)
        yield from _upright(x, low, low + stage.view.y(cover))


def _upright(x: float, low: float, high: float) -> Iterator[Line]:
    yield Line(((x, low), (x, high)), SEEN, layer="dimensions")
    for y in (low, high):
        slash = ((x - _SLASH, y - _SLASH), (x + _SLASH, y + _SLASH))
        yield Line(slash, SEEN, layer="dimensions")


@dataclass(frozen=True)
class Row:
    """The labels on paper. turn: height where leaders turn aside, base: of the lowest baseline.

    blocked: spans of x that words keep off, within: those they keep to if they can; mm.
    """

    labels: tuple[Label, ...]
    turn: float
    base: float
    blocked: tuple[tuple[float, float], ...]
    within: tuple[float, float]
    text: float

    @property
    def top(self) -> float:
        """Upper edge of the words, mm."""
        lines = max(len(label.lines) for label in self.labels)
        return self.base + (lines - 1) * PITCH * self.text + self.text

    def marks(self) -> Iterator[Mark]:
        """Yield leaders and words."""
        for label, middle in zip(self.labels, self._middles(), strict=True):
            foot = (middle, self.base - DESCENT * self.text - _AIR)
            x, y = label.at
            points = ((x, y), (x, self.turn), foot)
            drawn = Leader(points, DIMENSION, "leaders")
            yield drawn if label.dotted else Line(points, DIMENSION, layer="leaders")
            for number, words in enumerate(reversed(label.lines)):
                at = (middle, self.base + number * PITCH * self.text)
                bold = label.bold and number == len(label.lines) - 1
                yield Text(at, words, self.text, bold, "middle", layer="labels")

    def _middles(self) -> Sequence[float]:
        """Return the words' middles: within the picture where they fit, else as near as can be."""
        sizes = [(label.at[0], self._width(label) + _GAP) for label in self.labels]
        low, high = self.within
        for blocked in ((*self.blocked, (-inf, low), (high, inf)), self.blocked):
            free = [middle for middle in nearest_free(sizes, blocked) if middle is not None]
            if len(free) == len(sizes):
                return free
        return rank(sizes, 0.0)

    def _width(self, label: Label) -> float:
        bold = (label.bold and not number for number in range(len(label.lines)))
        return max(text_width(w, self.text, b) for w, b in zip(label.lines, bold, strict=True))
