"""The levels: a story pole at true height beside the picture, and a column of named levels.

The pole is drawn at the scale of the section and level with it, with a block for every foot (or
200 mm) from the datum, so that a level can be read across without a line through the labels.
"""

from collections.abc import Iterator, Sequence
from math import ceil, floor

from shapely import box

from geometry.units import FOOT, System, show_elevation, show_level
from viz.drawing.fonts import shortened, text_width
from viz.drawing.marks import Fill, LevelSymbol, Line, Mark, Text
from viz.drawing.place import Item, spread
from viz.figures.section.layout import LEVEL_TEXT_AT, POLE, Layout
from viz.figures.section.level_mark import LevelMark
from viz.figures.section.view import View
from viz.style.lines import CHAIN, DATUM, DIMENSION, INK, PAPER, QUIET, SEEN
from viz.style.text import DESCENT, PITCH

LEVELS_HEAD = "LEVELS"
LEVELS_SUB = "from TOF"
ELEVATION = "El."

_GAP = 1.6
_KNEE = (3.0, 8.0)
# Longer names are cut short, in text heights.
_LONGEST = 30.0


def _figures(mark: LevelMark, system: System) -> tuple[str, str]:
    """Return a level against the datum, and its project elevation."""
    if mark.elevation_m is None:
        return show_level(mark.level_m, system, 8), ""
    elevation = f"{ELEVATION} {show_elevation(mark.elevation_m, system)}"
    return show_level(mark.level_m, system, 8), elevation


def _name(mark: LevelMark) -> str:
    return shortened(mark.name, _LONGEST, 1.0, bold=True)


def _tab(levels: Sequence[LevelMark], system: System) -> float:
    """Return how far right of the levels their elevations stand, in text heights."""
    return max(text_width(_figures(m, system)[0], 1.0, bold=True) for m in levels) + 1.2


def levels_width(levels: Sequence[LevelMark], system: System, text: float) -> float:
    """Return the width of the words of all levels in this text height, mm."""
    if not levels:
        return 0.0
    names = max(text_width(_name(mark), 1.0, bold=True) for mark in levels)
    figures = max(text_width(_figures(mark, system)[1], 1.0, bold=True) for mark in levels)
    return max(names, _tab(levels, system) + figures) * text


def seen_levels(levels: Sequence[LevelMark], view: View) -> tuple[LevelMark, ...]:
    """Return the levels within the view, from the lowest up."""
    inside = [m for m in levels if view.extent[1] - 1e-9 <= m.level_m <= view.extent[3] + 1e-9]
    return tuple(sorted(inside, key=lambda mark: mark.level_m))


def level_marks(
    levels: Sequence[LevelMark], view: View, plan: Layout, system: System
) -> Iterator[Mark]:
    """Yield the pole and the rows of the levels within the view."""
    seen = seen_levels(levels, view)
    if not seen:
        return
    yield from _pole(seen, view, plan, FOOT if system == "ft-in" else 0.2)
    text = plan.text
    height = text * (1 + PITCH + DESCENT)
    items = [
        Item(view.at(0, m.level_m)[1] + text * 0.1, height, 1e6 if _is_datum(m) else 1.0)
        for m in seen
    ]
    middles = spread(items, *_reach(items, plan), _GAP)
    tab = _tab(levels, system) * text
    for mark, middle in zip(seen, middles, strict=True):
        yield from _tick(mark, middle, view, plan)
        yield from _row(mark, middle, tab, plan, system)
    head = max(middles[-1] + height / 2 + 2.5, view.at(0, seen[-1].level_m)[1] + 3.5)
    at = (plan.levels.left + LEVEL_TEXT_AT, head)
    yield Text(at, f"{LEVELS_HEAD} {LEVELS_SUB}", text, colour=QUIET, layer="levels")


def _reach(items: Sequence[Item], plan: Layout) -> tuple[float, float]:
    """Return the lowest and highest place of the rows: as high as the picture, or as they need."""
    need = sum(item.height + _GAP for item in items)
    spare = max(0.0, need - plan.levels.height) / 2
    return plan.levels.low - spare, plan.levels.high + spare


def _is_datum(mark: LevelMark) -> bool:
    return abs(mark.level_m) < 1e-6


def _pole(seen: Sequence[LevelMark], view: View, plan: Layout, block: float) -> Iterator[Mark]:
    left, right = plan.levels.left, plan.levels.left + POLE
    bottom, top = seen[0].level_m, seen[-1].level_m
    for number in range(floor(bottom / block), ceil(top / block)):
        low = view.at(0, max(bottom, number * block))[1]
        high = view.at(0, min(top, (number + 1) * block))[1]
        yield Fill(box(left, low, right, high), QUIET if number % 2 else PAPER, "levels")
    low, high = view.at(0, bottom)[1], view.at(0, top)[1]
    corners = ((left, low), (right, low), (right, high), (left, high), (left, low))
    yield Line(corners, SEEN, layer="levels")


def _tick(mark: LevelMark, middle: float, view: View, plan: Layout) -> Iterator[Mark]:
    left, text, datum = plan.levels.left, plan.text, _is_datum(mark)
    level, foot = view.at(0, mark.level_m)[1], middle - text * 0.1
    knees = ((left + POLE + _KNEE[0], level), (left + POLE + _KNEE[1], foot))
    run = ((left, level), *knees, (left + LEVEL_TEXT_AT - 1.2, foot))
    yield Line(run, SEEN if datum else DIMENSION, layer="levels")
    yield LevelSymbol((left + LEVEL_TEXT_AT - 3.2, foot), text * 0.95, datum, "levels")


def _row(
    mark: LevelMark, middle: float, tab: float, plan: Layout, system: System
) -> Iterator[Text]:
    text, x, datum = plan.text, plan.levels.left + LEVEL_TEXT_AT, _is_datum(mark)
    high = middle + text * (1 + PITCH + DESCENT) / 2
    low = high - text * (1 + PITCH)
    yield Text((x, high - text), _name(mark), text, bold=True, layer="levels")
    level, elevation = _figures(mark, system)
    yield Text((x, low), level, text, bold=datum, layer="levels")
    if elevation:
        yield Text((x + tab, low), elevation, text, bold=datum, layer="levels")


def datum_line(view: View, plan: Layout, to_pole: bool) -> Iterator[Mark]:
    """Yield the heavy chain line of the datum across the picture, on to the pole where free."""
    if not view.extent[1] <= 0 <= view.extent[3]:
        return
    y = view.at(0, 0)[1]
    end = plan.levels.left if to_pole else view.box.right
    yield Line(((view.box.left - 4.0, y), (end, y)), DATUM, INK, CHAIN, "datum")
