"""Levels of the profile: which are named, their lines, the staffs of black and white."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from math import ceil, floor

from shapely import box

from geometry.layout.lay import Layout
from geometry.units import INCH, System, show_level
from viz.drawing.fonts import text_width
from viz.drawing.marks import Anchor, Fill, Line, Mark, Text
from viz.figures.profile.view import View
from viz.style.lines import CHAIN, CUT, DATUM, DIMENSION, INK, PAPER, SEEN
from viz.style.text import DESCENT

STAFF = 1.8
# Levels nearer than this are one and have their names joined.
_SAME_LEVEL_M = 5e-4
_HALO = 0.8
# Air between a figure and a line, mm.
_AIR = 0.4
_STEPS: dict[System, tuple[float, ...]] = {
    "ft-in": tuple(n * INCH for n in (0.5, 1, 2, 3, 6, 12, 24, 48)),
    "metric": (0.01, 0.02, 0.05, 0.1, 0.2, 0.5, 1.0),
}
_STYLES: tuple[tuple[float, tuple[float, ...]], ...] = (
    (0.0, ()), (SEEN, (2.6, 1.2)), (CUT, ()), (DATUM, CHAIN),
)  # fmt: skip
_UNDRAWN, _FLOOR, _FOOTING, _DATUM = range(4)


@dataclass(frozen=True)
class NamedLevel:
    """A level, metres against the project's TOF; style: its row in the table of lines."""

    names: tuple[str, ...]
    level: float
    style: int

    @property
    def strong(self) -> bool:
        """Tell whether it belongs to the footing."""
        return self.style >= _FOOTING


def named_levels(layout: Layout) -> tuple[NamedLevel, ...]:
    """Return the levels of footing, floor and drain stone from the lowest up, equal ones joined."""
    joined: list[NamedLevel] = []
    for one in sorted(_levels(layout), key=lambda one: one.level):
        if joined and one.level - joined[-1].level < _SAME_LEVEL_M:
            last = joined.pop()
            one = NamedLevel((*last.names, *one.names), last.level, max(last.style, one.style))
        joined.append(one)
    return tuple(joined)


def _levels(layout: Layout) -> Iterator[NamedLevel]:
    drain = layout.drain
    if drain is None:
        return
    area = drain.area
    yield NamedLevel(("underside of footing",), area.footing_bottom, _FOOTING)
    yield NamedLevel(("top of footing",), area.tof, _DATUM)
    yield NamedLevel(("subgrade under the floor",), area.subgrade, _FLOOR)
    slabs = [n for n, layer in enumerate(area.floor.layers) if layer.role == "slab"]
    if slabs and slabs[-1] > 0:
        yield NamedLevel(("underside of slab",), area.stack.levels[slabs[-1]], _FLOOR)
    yield NamedLevel(("finished floor",), area.finished_floor, _FLOOR)
    yield NamedLevel(("bottom of trench",), drain.stone_bottom, _UNDRAWN)
    yield NamedLevel(("top of wrapped stone",), drain.stone_top, _UNDRAWN)
    if through := layout.bleeders_at(drain):
        invert = through[0].outer_end[2] - through[0].pipe.inside_diameter_m / 2
        many = f"invert of {len(through)} bleeders" if len(through) > 1 else "invert of bleeder"
        yield NamedLevel((many,), invert, _UNDRAWN)


def level_lines(
    levels: Sequence[NamedLevel], view: View, left: float, right: float
) -> Iterator[Line]:
    """Yield the lines of footing and floor across the picture, clear of the hatch they cross."""
    for one in sorted(levels, key=lambda one: one.style):
        weight, dash = _STYLES[one.style]
        if weight:
            ends = ((left, view.y(one.level)), (right, view.y(one.level)))
            yield Line(ends, weight + _HALO, PAPER, layer="levels")
            yield Line(ends, weight, dash=dash, layer="levels")


def staff(
    view: View, system: System, low: float, high: float, x: float, text: float
) -> tuple[tuple[float, ...], tuple[Mark, ...]]:
    """Return the levels that get a figure, metres, and a staff of black and white from x rightward.

    low, high: levels between which it stands, metres.
    """
    per_metre = view.y(1.0)
    steps = [s for s in _STEPS[system] if s * per_metre >= 2.2 * text]
    step = steps[0] if steps else _STEPS[system][-1]
    bottom, top = view.y(low), view.y(high)
    numbers = range(floor(low / step), ceil(high / step) + 1)
    blocks = [
        Fill(box(x, max(view.y(n * step), bottom), x + STAFF, min(view.y((n + 1) * step), top)),
             INK, "levels")
        for n in numbers[:-1]
        if n % 2 == 0
    ]  # fmt: skip
    ring = ((x, bottom), (x + STAFF, bottom), (x + STAFF, top), (x, top), (x, bottom))
    figures = tuple(n * step for n in numbers if low - 1e-6 <= n * step <= high + 1e-6)
    return figures, (*blocks, Line(ring, DIMENSION, layer="levels"))


def figures_beside(
    figures: Sequence[float],
    view: View,
    system: System,
    x: float,
    way: int,
    text: float,
    passing: Sequence[float] = (),
) -> Iterator[Text]:
    """Yield the staff's figures from x to the right (way 1) or the left (-1).

    passing: heights on paper of lines that pass here; a figure in their way is left out.
    """
    for level in figures:
        y = view.y(level)
        under, over = y - (0.5 + DESCENT) * text - _AIR, y + 0.5 * text + _AIR
        if not any(under < other < over for other in passing):
            anchor: Anchor = "start" if way > 0 else "end"
            words = show_level(level, system)
            yield Text((x, y - text / 2), words, text, anchor=anchor, layer="levels")


def figures_width(figures: Sequence[float], system: System, text: float) -> float:
    """Return the room the staff's figures take, mm."""
    return max(text_width(show_level(level, system), text) for level in figures)
