"""Words beside the section: the drain's heights at each end, the floor's and footing's between."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field

from geometry.units import System, show_level
from geometry.water.height_figures import HeightFigures
from viz.drawing.fonts import text_width
from viz.drawing.marks import Anchor, Circle, Leader, Mark, Point, Text
from viz.drawing.place import Item, spread
from viz.figures.heights.frame import SOIL, Frame
from viz.figures.heights.picture import level_line
from viz.figures.watertable import HIGHEST, LOWEST
from viz.style.lines import LEADER, PAPER
from viz.style.text import DESCENT, PITCH
from viz.tables.drain_tables import NAMES, REFERENCES

_TURN, _AWAY = 2.0, 9.0
# Leaders of the words in the room stand apart so far, mm; rings of numbers, in text heights.
_STEP = 4.5
_RING, RINGS = 0.95, 2.3
# Beside the section there is room for short names alone.
_SHORT = {"crown": "top of pipe"}
HEADS = {-1: "AT THE LOW POINT", 1: "AT THE HIGH POINT"}
_WATER = (HIGHEST, LOWEST)


@dataclass(frozen=True)
class Row:
    """One level of the floor and footing: its names together, its figure, the level in metres."""

    name: str
    shown: str
    level: float


@dataclass(frozen=True)
class Lettering:
    """How the levels are lettered: text height in mm, the figures' system, numbers by name.

    keys: empty where the words themselves stand at the picture.
    """

    text: float
    system: System
    keys: Mapping[str, int] = field(default_factory=dict)


def reference_rows(figures: HeightFigures, tof: float, system: System) -> list[Row]:
    """Return the levels of floor and footing from the top down; those that are one together.

    tof: the drained area's.
    """
    joined: dict[float, list[str]] = {}
    for name in reversed(REFERENCES):
        if name in figures.references_m:
            joined.setdefault(round(figures.references_m[name], 5), []).append(NAMES[name])
    rows = sorted(joined.items(), reverse=True)
    return [Row(" = ".join(names), show_level(z - tof, system), z) for z, names in rows]


def called(name: str) -> str:
    """Return what a height of the drain or the water table is called beside the section."""
    return name[0].lower() + name[1:] if name in _WATER else _SHORT.get(name, name)


def room_width(rows: list[Row], lettering: Lettering) -> float:
    """Return the width the words in the room take with their leaders, mm."""
    text = lettering.text
    if lettering.keys:
        return (len(rows) * RINGS + 1.0) * text + 14.0
    return max(_words_width(row, text) + (n + 1) * _STEP for n, row in enumerate(rows)) + 8.0


def _words_width(row: Row, text: float) -> float:
    return text_width(f"{row.name} {row.shown}", text)


def room_height(rows: list[Row], lettering: Lettering) -> float:
    """Return the height of the words in the room over the floor, mm."""
    if lettering.keys:
        return 3.0 * lettering.text + 4.0
    return len(rows) * PITCH * lettering.text + 4.0


def room_marks(frame: Frame, rows: list[Row], lettering: Lettering) -> Iterator[Mark]:
    """Yield the names of the levels between the walls, each led down to its level.

    Lower words start farther right, so that no leader runs through words.
    """
    floor, text = frame.y(frame.drain.area.finished_floor), lettering.text
    for number, row in enumerate(rows):
        if lettering.keys:
            x = -frame.inner + (number + 0.8) * RINGS * text
            y = floor + 3.0 + _RING * text
            foot = y - _RING * text
            yield Leader(((x, frame.y(row.level)), (x, foot)), layer="leaders")
            yield from number_mark(lettering.keys[row.name], (x, y), text)
            continue
        x = -frame.inner + (number + 0.8) * _STEP
        y = floor + 4.0 + (len(rows) - 1 - number) * PITCH * text
        middle = y + text / 2
        yield Leader(((x, frame.y(row.level)), (x, middle), (x + 1.6, middle)), layer="leaders")
        yield Text((x + 2.4, y), f"{row.name} {row.shown}", text, layer="labels")


def number_mark(number: int, at: Point, text: float) -> Iterator[Mark]:
    """Yield the number of a key in its ring."""
    yield Circle(at, _RING * text, LEADER, fill=PAPER, layer="labels")
    yield Text((at[0], at[1] - text / 2), str(number), text, True, "middle", layer="labels")


def end_marks(
    frame: Frame, low: Mapping[str, float], high: Mapping[str, float], lettering: Lettering
) -> Iterator[Mark]:
    """Yield the heights at both ends, by name, in columns beside the section."""
    for side, levels in ((-1, low), (1, high)):
        yield from column_marks(frame, side, levels, lettering, HEADS[side])


def column_marks(
    frame: Frame, side: int, levels: Mapping[str, float], lettering: Lettering, head: str
) -> Iterator[Mark]:
    """Yield the heights at one end in a column beside the section, under its head."""
    text, tof, outer = lettering.text, frame.drain.area.tof, frame.edge + SOIL
    rows = sorted(levels.items(), key=lambda row: row[1])
    height = 2 * _RING * text if lettering.keys else text * (1 + DESCENT)
    items = [Item(frame.y(level), height) for _, level in rows]
    middles = spread(items, -1e4, 1e4, (0.2 if lettering.keys else 0.55) * text)
    anchor: Anchor = "start" if side > 0 else "end"
    for (name, level), middle in zip(rows, middles, strict=True):
        y, turn, end = frame.y(level), side * (outer + _TURN), side * (outer + _AWAY)
        yield from level_line(((side * _start(frame, name), y), (turn, y), (end, middle)))
        if lettering.keys:
            at = (side * (outer + _AWAY + _RING * text), middle)
            yield from number_mark(lettering.keys[name], at, text)
            continue
        words = f"{called(name)} {show_level(level - tof, lettering.system)}"
        at = (side * (outer + _AWAY + 1.2), middle - text / 2 + DESCENT * text / 2)
        yield Text(at, words, text, anchor=anchor, layer="labels")
    yield _head(frame, side, middles[-1], lettering, head)


def _start(frame: Frame, name: str) -> float:
    """Return how far out a level's line begins: a line along the wrap or the water hides it."""
    if name in _WATER:
        return frame.edge + SOIL
    if name in {"stone top", "trench bottom"}:
        return frame.footing_in if frame.drain.inside else frame.edge + 0.8
    return frame.pipe + frame.drain.radius * frame.per_metre + 0.8


def _head(frame: Frame, side: int, highest: float, lettering: Lettering, head: str) -> Text:
    """Return what stands over a column; over numbers it reaches in over the stone."""
    text, outer = lettering.text, frame.edge + SOIL
    if not lettering.keys:
        anchor: Anchor = "start" if side > 0 else "end"
        at = (side * (outer + _AWAY + 1.2), highest + 2.2 * text)
        return Text(at, head, text, bold=True, anchor=anchor, layer="labels")
    anchor = "end" if side > 0 else "start"
    high = max(highest + 1.6 * text, frame.y(frame.drain.stone_top) + 1.2 * text)
    if frame.drain.inside:
        # The wall stands near the column: over its top there is room.
        high = max(high, frame.top + 0.8 * text)
    at = (side * (outer + _AWAY + 2 * _RING * text), high)
    return Text(at, head, text, bold=True, anchor=anchor, layer="labels")
