"""The story pole: which levels are marked on the stick, and where its printed strips end."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import Literal

from geometry.layout.areas import AreaLayout
from geometry.layout.drain import DrainLayout
from geometry.layout.footings import column_prism, pad_prism, pier_name
from geometry.layout.lay import Layout
from geometry.site.drains import called

MarkKind = Literal[
    "finished floor", "layer top", "subgrade", "TOF", "footing bottom", "pad top", "column top",
    "drain stone top", "drain invert", "drain high", "drain low", "trench bottom",
]  # fmt: skip

# Levels nearer than this share a tick: a sheet of plastic is thinner than the pencil's line.
SAME_TICK_M = 5e-4
# The stick goes on so far beyond its highest and lowest marks.
BEYOND_M = 0.02
# By how much of the asked overlap a join makes do where marks stand too close for all of it.
_SHARES = (1.0, 0.75, 0.5, 0.3, 0.15, 0.05, 0.01)


@dataclass(frozen=True)
class Mark:
    """One thing that has a level: its kind, the names that tell it apart, metres from TOF."""

    kind: MarkKind
    names: tuple[str, ...]
    level: float


@dataclass(frozen=True)
class Tick:
    """One line across the stick, metres from the area's TOF, and what ends there."""

    level: float
    marks: tuple[Mark, ...]


@dataclass(frozen=True)
class Strip:
    """The part of the stick on one page, metres from TOF.

    tab: height above `top` that the strip before it is taped over; 0 on the first.
    """

    top: float
    bottom: float
    tab: float


@dataclass(frozen=True)
class Room:
    """What a page holds of the stick: its height, the overlap, the least from it to a tick; m."""

    height: float
    overlap: float
    clear: float


@dataclass(frozen=True)
class Pole:
    """An area's story pole. tof: its zero above the project's top of footing, metres.

    ticks: from the top down. strips: from the top down; no tick lies in an overlap.
    """

    area: str
    tof: float
    ticks: tuple[Tick, ...]
    strips: tuple[Strip, ...]


def story_pole(layout: Layout, area: AreaLayout, room: Room) -> Pole:
    """Return the stick of one area, cut into strips that a page holds."""
    ticks = _ticks(sorted(_marks(layout, area), key=lambda m: -m.level))
    return Pole(area.name, area.tof, ticks, strips([t.level for t in ticks], room))


def _marks(layout: Layout, area: AreaLayout) -> Iterator[Mark]:
    """Yield every level that is marked: footing, floor, pads, and the area's drains."""
    yield from _concrete(area)
    *below, top = area.stack.names
    yield Mark("finished floor", (top,), area.finished_floor - area.tof)
    for name, level in zip(below, area.stack.levels[1:], strict=False):
        yield Mark("layer top", (name,), level - area.tof)
    yield Mark("subgrade", (), area.subgrade - area.tof)
    for drain in layout.drains:
        if drain.area is area:
            yield from _drain(drain, layout.drains, area.tof)


def _concrete(area: AreaLayout) -> Iterator[Mark]:
    yield Mark("TOF", (), 0.0)
    yield Mark("footing bottom", (), -area.footing.thickness)
    tops: dict[tuple[MarkKind, float], list[str]] = {}
    for number, pier in enumerate(area.area.piers):
        name, column = pier_name(area, number), column_prism(area, pier)
        tops.setdefault(("pad top", pad_prism(area, pier).top), []).append(name)
        if column:
            tops.setdefault(("column top", column.top), []).append(name)
    for (kind, level), names in tops.items():
        yield Mark(kind, tuple(names), level - area.tof)


def _drain(drain: DrainLayout, drains: Sequence[DrainLayout], tof: float) -> Iterator[Mark]:
    which = tuple(filter(None, (called(drain, drains),)))
    yield Mark("drain stone top", which, drain.stone_top - tof)
    if drain.rise > SAME_TICK_M:
        yield Mark("drain high", which, drain.high_invert - tof)
        yield Mark("drain low", which, drain.outlet_invert - tof)
    else:
        yield Mark("drain invert", which, drain.outlet_invert - tof)
    yield Mark("trench bottom", which, drain.stone_bottom - tof)


def _ticks(marks: Sequence[Mark]) -> tuple[Tick, ...]:
    """Return marks put together where their levels are all but one; TOF keeps its own level."""
    piles: list[list[Mark]] = []
    for mark in marks:
        if piles and piles[-1][0].level - mark.level < SAME_TICK_M:
            piles[-1].append(mark)
        else:
            piles.append([mark])
    return tuple(Tick(_level(pile), tuple(sorted(pile, key=_rank))) for pile in piles)


def _rank(mark: Mark) -> bool:
    return mark.kind not in ("TOF", "finished floor", "subgrade")


def _level(pile: Sequence[Mark]) -> float:
    return next((m.level for m in pile if m.kind == "TOF"), pile[0].level)


def strips(levels: Sequence[float], room: Room) -> tuple[Strip, ...]:
    """Return strips from the top down, as even as their number allows.

    levels: of the ticks, from the top down, metres; neighbours differ. No tick lies in an overlap
    or nearer to it than the room asks; where ticks stand too close for that, the overlap is less.
    """
    found = _cut(levels, room, room.height)
    low, high = 0.0, room.height
    for _ in range(12 if len(found) > 1 else 0):
        middle = (low + high) / 2
        tried = _cut(levels, room, middle) if middle > 2 * room.overlap else ()
        if len(tried) == len(found):
            found, high = tried, middle
        else:
            low = middle
    return found


def _cut(levels: Sequence[float], room: Room, height: float) -> tuple[Strip, ...]:
    top, end = levels[0] + BEYOND_M, levels[-1] - BEYOND_M
    tab, found = 0.0, []
    while top + tab - end > height:
        join, overlap = _join(levels, room, top + tab - height, top)
        found.append(Strip(top, join, tab))
        top, tab = join, overlap
    return (*found, Strip(top, end, tab))


def _join(levels: Sequence[float], room: Room, lowest: float, top: float) -> tuple[float, float]:
    """Return the lowest level a strip can end at and its overlap, no tick in it or close to it."""
    for share in _SHARES:
        overlap, clear = share * room.overlap, share * room.clear
        places = [lowest, *sorted(level + clear for level in levels)]
        for place in places:
            fits = lowest <= place < top - overlap - clear
            if fits and not any(place - clear < z < place + overlap + clear for z in levels):
                return place, overlap
    raise ValueError("ticks stand closer than a strip can be parted")
