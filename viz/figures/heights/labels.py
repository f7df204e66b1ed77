"""Words beside the section: the drain's heights at each end, the floor's and footing's between."""

from collections.abc import Iterator, Mapping

from geometry.units import System, show_level
from geometry.water.height_figures import HeightFigures
from viz.drain_tables import NAMES, REFERENCES
from viz.drawing.fonts import text_width
from viz.drawing.marks import Anchor, Leader, Mark, Text
from viz.drawing.place import Item, spread
from viz.figures.heights.frame import SOIL, Frame
from viz.figures.heights.picture import level_line
from viz.style.text import DESCENT, PITCH

_TURN, _AWAY = 2.0, 9.0
# Leaders of the words in the room stand apart so far, mm.
_STEP = 4.5
# Beside the section there is room for short names alone.
_SHORT = {"crown": "top of pipe"}
_HEADS = {-1: "AT THE LOW POINT", 1: "AT THE HIGH POINT"}


def reference_rows(figures: HeightFigures, tof: float, system: System) -> list[tuple[str, float]]:
    """Return what the levels of floor and footing are called with their figures, and the levels.

    From the top down; levels that are one are named together. tof: the drained area's.
    """
    joined: dict[float, list[str]] = {}
    for name in reversed(REFERENCES):
        if name in figures.references_m:
            joined.setdefault(round(figures.references_m[name], 5), []).append(NAMES[name])
    rows = sorted(joined.items(), reverse=True)
    return [(f"{' = '.join(n)} {show_level(z - tof, system)}", z) for z, n in rows]


def room_width(rows: list[tuple[str, float]], text: float) -> float:
    """Return the width the words in the room take with their leaders, mm."""
    return max(text_width(w, text) + (n + 1) * _STEP for n, (w, _) in enumerate(rows)) + 8.0


def room_height(rows: list[tuple[str, float]], text: float) -> float:
    """Return the height of the words in the room over the floor, mm."""
    return len(rows) * PITCH * text + 4.0


def room_marks(frame: Frame, rows: list[tuple[str, float]], text: float) -> Iterator[Mark]:
    """Yield the names of the levels between the walls, each led down to its level.

    Lower words start farther right, so that no leader runs through words.
    """
    floor = frame.y(frame.drain.area.finished_floor)
    for number, (words, level) in enumerate(rows):
        x = -frame.footing_in + (number + 0.8) * _STEP
        y = floor + 4.0 + (len(rows) - 1 - number) * PITCH * text
        middle = y + text / 2
        yield Leader(((x, frame.y(level)), (x, middle), (x + 1.6, middle)), layer="leaders")
        yield Text((x + 2.4, y), words, text, layer="labels")


def end_marks(frame: Frame, figures: HeightFigures, system: System, text: float) -> Iterator[Mark]:
    """Yield the drain's heights at both ends in columns beside the section."""
    for side, levels in ((-1, figures.low_m), (1, figures.high_m)):
        yield from _column(frame, side, levels, system, text)


def _column(
    frame: Frame, side: int, levels: Mapping[str, float], system: System, text: float
) -> Iterator[Mark]:
    tof, outer = frame.drain.area.tof, frame.edge + SOIL
    rows = sorted(levels.items(), key=lambda row: row[1])
    height = text * (1 + DESCENT)
    items = [Item(frame.y(level), height) for _, level in rows]
    middles = spread(items, -1e4, 1e4, 0.55 * text)
    anchor: Anchor = "start" if side > 0 else "end"
    beside = frame.pipe + frame.drain.radius * frame.per_metre + 0.8
    for (name, level), middle in zip(rows, middles, strict=True):
        y = frame.y(level)
        # A line along the wrap would hide it.
        start = frame.edge + 0.8 if name in {"stone top", "trench bottom"} else beside
        turn, end = side * (outer + _TURN), side * (outer + _AWAY)
        yield from level_line(((side * start, y), (turn, y), (end, middle)))
        words = f"{_SHORT.get(name, name)} {show_level(level - tof, system)}"
        at = (side * (outer + _AWAY + 1.2), middle - text / 2 + DESCENT * text / 2)
        yield Text(at, words, text, anchor=anchor, layer="labels")
    high = middles[-1] + 2.2 * text
    at = (side * (outer + _AWAY + 1.2), high)
    yield Text(at, _HEADS[side], text, bold=True, anchor=anchor, layer="labels")
