"""The levels that matter, across the pit's chart: in words beside it, or as numbers of a key."""

from collections.abc import Iterator
from dataclasses import dataclass

from geometry.layout.lay import Layout
from geometry.units import show_level
from geometry.water.pit import TOF, PitStorm
from viz.drawing.fonts import text_width, wrap
from viz.drawing.marks import Circle, Line, Mark, Text
from viz.drawing.place import Item, spread
from viz.figures.pit.view import View
from viz.figures.pit.words import LABELS
from viz.figures.watertable import COLOUR, DASH, SIZE, table_of, water_mark
from viz.style.lines import CHAIN, DATUM, HATCH, INK, LEADER, PAPER, SEEN
from viz.style.text import DESCENT, PITCH

_SWITCH_DASH = (3.0, 1.5)
# Levels nearer than this on paper, mm, share a line and a label.
_TOGETHER = 0.6
# Leaders from the chart to the words, the ring of a number, in text heights.
_LEADER, _RING = 4.5, 0.95


@dataclass(frozen=True)
class Named:
    """A level that has a name: metres against the project's TOF, and how its line is drawn."""

    name: str
    level_m: float
    weight: float = SEEN
    dash: tuple[float, ...] = ()
    colour: str = INK


@dataclass(frozen=True)
class ChartLevel:
    """A line across the chart: the level's names together, its place, how it is drawn."""

    words: str
    y: float
    line: Named


def named_levels(pit: PitStorm, layout: Layout) -> list[Named]:
    """Return every level to draw; the water table's are among them, if they are given."""
    found = [
        Named(r.mark.name, r.mark.level_m, DATUM, CHAIN)
        if r.mark.name == TOF
        else Named(r.mark.name, r.mark.level_m)
        for r in pit.reached
    ]
    switches = (("pump on", pit.pit.pump_on), ("pump off", pit.pit.pump_off),
                ("alarm", pit.pit.alarm))  # fmt: skip
    found += [Named(name, z, dash=_SWITCH_DASH) for name, z in switches if z is not None]
    found.append(Named("pit bottom", pit.pit.floor))
    for name, level in table_of(layout).named:
        found.append(Named(name[0].lower() + name[1:], level, SEEN, DASH, COLOUR))
    return found


def together(named: list[Named], pit: PitStorm, layout: Layout, view: View) -> list[ChartLevel]:
    """Return the levels from the lowest up; those on one line of paper under one label."""
    levels: list[ChartLevel] = []
    tof, system = pit.pit.area.tof, layout.design.project.units
    for one in sorted(named, key=lambda row: row.level_m):
        y = view.y(one.level_m)
        if not -1e-6 <= y <= view.height + 1e-6:
            continue
        if levels and y - levels[-1].y < _TOGETHER:
            below = levels[-1]
            heavier = max(below.line, one, key=lambda line: line.weight)
            levels[-1] = ChartLevel(f"{one.name}, {below.words}", below.y, heavier)
        else:
            words = f"{one.name}  {show_level(one.level_m - tof, system)}"
            levels.append(ChartLevel(words, y, one))
    return levels


def words_room(levels: list[ChartLevel], text: float) -> float:
    """Return the width right of the chart that the levels' words take, mm."""
    return max(text_width(level.words, text) for level in levels) + _LEADER * text


def ring_room(text: float) -> float:
    """Return the width right of the chart that the levels' numbers take, mm."""
    return (_LEADER + 2 * _RING) * text


def level_lines(levels: list[ChartLevel], view: View, text: float, keyed: bool) -> Iterator[Mark]:
    """Yield the lines and, right of the chart, words or numbers with bent lines to them."""
    tall = 2 * _RING * text if keyed else text * (1 + DESCENT)
    items = [Item(level.y, tall) for level in levels]
    middles = spread(items, -1.5 * text, view.height + 2 * text, (0.2 if keyed else 0.35) * text)
    right = view.width
    for number, (level, middle) in enumerate(zip(levels, middles, strict=True)):
        line = level.line
        yield Line(((0.0, level.y), (right, level.y)), min(line.weight, SEEN), line.colour,
                   line.dash, "levels")  # fmt: skip
        if line.colour == COLOUR:
            yield from water_mark((2.0 + SIZE, level.y))
        bend = ((right, level.y), (right + text, level.y), (right + 3 * text, middle),
                (right + 4 * text, middle))  # fmt: skip
        yield Line(bend, HATCH, layer="leaders")
        if keyed:
            centre = right + (_LEADER + _RING - 0.5) * text
            yield from _numbered(len(levels) - number, (centre, middle), text)
        else:
            yield Text((right + _LEADER * text, middle - text / 2), level.words, text, layer=LABELS)


def _numbered(number: int, at: tuple[float, float], text: float) -> Iterator[Mark]:
    yield Circle(at, _RING * text, LEADER, fill=PAPER, layer=LABELS)
    yield Text((at[0], at[1] - text / 2), str(number), text, True, "middle", layer=LABELS)


def key_rows(levels: list[ChartLevel], width: float, text: float) -> list[tuple[str, ...]]:
    """Return the words of the numbers' key, from 1 at the top, in lines that keep the width."""
    room = width - 3 * text
    return [wrap(level.words, room, text) for level in reversed(levels)]


def level_key(rows: list[tuple[str, ...]], top: float, text: float) -> Iterator[Mark]:
    """Yield the key of the levels' numbers, hanging from a height."""
    y = top - 1.1 * text
    for number, lines in enumerate(rows, start=1):
        yield from _numbered(number, (_RING * text, y), text)
        for line in lines:
            yield Text((3 * text, y - text / 2), line, text, layer=LABELS)
            y -= PITCH * text
        y -= 2.2 * text - PITCH * text
