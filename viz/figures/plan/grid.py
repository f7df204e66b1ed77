"""The piers' grid: thin chain lines through their middles to lettered and numbered bubbles."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

import numpy as np

from geometry.layout.lay import Layout
from viz.drawing.fonts import text_width
from viz.drawing.marks import Circle, Line, Mark, Point, Text
from viz.drawing.page import Box
from viz.drawing.place import Item, spread
from viz.figures.plan.dashes import THIN, THIN_CHAIN
from viz.figures.plan.onpaper import OnPaper
from viz.figures.plan.strings import SAME_M
from viz.figures.plan.structure import PierMark, Structure
from viz.style.lines import PAPER, SEEN

# I and O are left out: they read as figures (common practice, no source).
_LETTERS = "ABCDEFGHJKLMNPQRSTUVWXYZ"
_PAST = 2.5
# Lines run on past all else by so much to their bubbles, small ones by less, mm.
_PAST_ALL = 1.5
_SHORT = 0.6
_KNEE = 3.0
_FAR = 1e5


@dataclass(frozen=True)
class GridLine:
    """A line of the grid. place: along its axis, metres. start: its end in the house, mm."""

    name: str
    place: float
    start: float


def letters(number: int) -> str:
    """Return the letters of a number from 0: A to Z without I and O, then AA, AB and on."""
    whole, rest = divmod(number, len(_LETTERS))
    return (letters(whole - 1) if whole else "") + _LETTERS[rest]


def grid_places(layout: Layout) -> tuple[tuple[tuple[str, float], ...], ...]:
    """Return name and place of the numbered lines (at an x), and of the lettered ones (at a y)."""
    piers = [p for a in layout.areas for p in a.area.piers]
    named = []
    for axis in (0, 1):
        places: list[float] = []
        for place in sorted(p.at[axis] for p in piers):
            if not places or place - places[-1] > SAME_M:
                places.append(place)
        names = [str(n + 1) if axis == 0 else letters(n) for n in range(len(places))]
        named.append(tuple(zip(names, places, strict=True)))
    return tuple(named)


def grid_name(layout: Layout, at: Point) -> str:
    """Return the grid place of a pier's middle: `A-1`, letter before number. at: metres."""
    numbered, lettered = (
        min(lines, key=lambda line: abs(line[1] - at[axis]))[0]
        for axis, lines in enumerate(grid_places(layout))
    )
    return f"{lettered}-{numbered}"


def grid_lines(
    layout: Layout, made: Structure, paper: OnPaper
) -> tuple[tuple[GridLine, ...], tuple[GridLine, ...]]:
    """Return the numbered lines (at an x, running up) and the lettered ones (at a y)."""
    upright, level = (
        tuple(GridLine(n, p, _start(made.piers, axis, paper.size(p))) for n, p in lines)
        for axis, lines in enumerate(grid_places(layout))
    )
    return upright, level


def _start(piers: Sequence[PierMark], axis: int, place: float) -> float:
    """Return where a line starts: a little past the farthest pad on it, mm."""
    on = [p for p in piers if abs(p.at[axis] - place) < 0.05]
    return float(min(p.pad.bounds[1 - axis] for p in on)) - _PAST


def radius(lines: Sequence[GridLine], text: float, small: bool = False) -> float:
    """Return the bubbles' radius, mm; small: as their letters just allow."""
    wide = max((text_width(line.name, text, True) for line in lines), default=0.0)
    if small:
        return max(1.15 * text, float(np.hypot(wide / 2, 0.85 * text)) + 0.2)
    return max(1.45 * text, wide / 2 + 0.45 * text)


def grid_marks(
    lines: Sequence[GridLine],
    axis: int,
    paper: OnPaper,
    around: Box,
    text: float,
    small: bool = False,
) -> Iterator[Mark]:
    """Yield one family of lines with their bubbles outside a box: above it, or to its right."""
    if not lines:
        return
    size = radius(lines, text, small)
    edge = (around.high if axis == 0 else around.right) + (_SHORT if small else _PAST_ALL)
    wanted = [paper.size(line.place) for line in lines]
    items = [Item(w, 2 * size) for w in wanted]
    middles = spread(items, -_FAR, _FAR, 0.8)
    moved = any(abs(a - b) > 0.05 for a, b in zip(wanted, middles, strict=True))
    middle = edge + (_KNEE if moved else 0.0) + size
    for line, place, at in zip(lines, wanted, middles, strict=True):
        run = [(place, line.start), (place, edge)]
        if abs(place - at) > 0.05:
            run.append((at, middle - size))
        else:
            run[-1] = (place, middle - size)
        yield Line(tuple(_turned(p, axis) for p in run), THIN, dash=THIN_CHAIN, layer="grid")
        x, y = _turned((at, middle), axis)
        yield Circle((x, y), size, SEEN, fill=PAPER, layer="grid")
        yield Text((x, y - text / 2), line.name, text, True, "middle", layer="grid")


def _turned(point: Point, axis: int) -> Point:
    """Swap a point's coordinates for lines that run level."""
    return point if axis == 0 else (point[1], point[0])
