"""Labels of a floor from above: one upright leader through its layers, their words stacked on top.

Where a floor lies between walls, a leader to the side would run through wall, footing and drain;
the room over the floor is empty, so the words stand there, in the order of the layers.
"""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

import numpy as np
import shapely
from shapely import LineString, MultiPolygon, STRtree

from viz.drawing.marks import Anchor, Circle, Leader, Line, Mark, Text
from viz.drawing.page import Box
from viz.figures.section.blocks import Block, Lettering
from viz.figures.section.labels import KEY_RADIUS, key_mark
from viz.style.lines import INK, LEADER
from viz.style.text import PITCH

_CLEAR = 6.0
_ASIDE = 2.2
_GAP = 1.6
_TRIES = 61
# Air round the words.
_AIR = 0.8
# Things narrower than this share of the picture are met in their middle.
_NARROW = 0.2
_DOT = 0.5


@dataclass(frozen=True)
class Flag:
    """Blocks from the top down, each with its dot on the upright at x.

    foot: where the words start, above the floor. left: words stand left of the upright.
    over: how far the rings of key numbers reach above and below them, mm.
    """

    x: float
    blocks: tuple[Block, ...]
    foot: float
    left: bool
    over: float

    @property
    def gap(self) -> float:
        """Space between blocks, mm."""
        return _GAP + self.over

    def words(self, text: float) -> Box:
        """Return the box of the words."""
        height = sum(b.height(text) for b in self.blocks) + self.gap * (len(self.blocks) - 1)
        wide = max(b.width(text) for b in self.blocks) + _ASIDE + text
        start = self.x - wide if self.left else self.x
        return Box(start, self.foot - self.over, start + wide, self.foot + height + self.over)

    def upright(self, text: float) -> Box:
        """Return the box of the upright, with a little air."""
        high = self.words(text).high
        return Box(self.x - 0.5, self.blocks[-1].dot[1], self.x + 0.5, high)

    def meets(self, other: "Flag", text: float) -> bool:
        """Tell whether the words or uprights of two flags touch."""
        ours, theirs = ((f.words(text), f.upright(text)) for f in (self, other))
        return any(a.overlaps(b) for a in ours for b in theirs)


@dataclass(frozen=True)
class Site:
    """Where flags may stand, on paper: room for them, things words must not cover, leaders."""

    room: Box
    things: STRtree
    leaders: STRtree
    lettering: Lettering

    @property
    def text(self) -> float:
        """Text height, mm."""
        return self.lettering.text

    @property
    def over(self) -> float:
        """How far what stands for a block reaches above and below its line, mm."""
        return (KEY_RADIUS - 0.5) * self.text if self.lettering.keys else 0.0

    def is_free(self, flag: Flag, others: Sequence[Flag]) -> bool:
        """Tell whether a flag touches nothing it must not."""
        words, upright = flag.words(self.text), flag.upright(self.text)
        area = shapely.box(words.left, words.low, words.right, words.high).buffer(_AIR)
        line = LineString(((flag.x, upright.low), (flag.x, upright.high)))
        if _meets(self.things, area) or _meets(self.leaders, area) or _meets(self.leaders, line):
            return False
        return not any(flag.meets(other, self.text) for other in others)


def _meets(tree: STRtree, shape: shapely.Geometry) -> bool:
    return len(tree.query(shape, "intersects")) > 0


def place_flags(
    groups: Sequence[Mapping[str, MultiPolygon]], site: Site
) -> tuple[Flag, ...] | None:
    """Return flags that label all groups; None where there is no room for their words.

    groups: shapes on paper by wording; no flag labels two groups.
    """
    placed: list[Flag] = []
    for left in map(dict, groups):
        while left:
            flag = _best(left, placed, site)
            if flag is None:
                return None
            placed.append(flag)
            for label in flag.blocks:
                del left[label.wording]
    return tuple(placed)


def _best(shapes: Mapping[str, MultiPolygon], others: Sequence[Flag], site: Site) -> Flag | None:
    """Return the flag that labels most, if it finds room, else the next."""
    places = np.array(list(_places(shapes, site.room)))
    uprights = shapely.linestrings([((x, site.room.low), (x, site.room.high)) for x in places])
    met = np.stack([shapely.intersects(shape, uprights) for shape in shapes.values()])
    for index in np.argsort(-met.sum(axis=0), kind="stable"):
        if met[:, index].any():
            hit = [w for w, is_met in zip(shapes, met[:, index], strict=True) if is_met]
            blocks = _blocks({w: shapes[w] for w in hit}, uprights[index], site)
            flag = _raised(float(places[index]), blocks, others, site) if blocks else None
            if flag:
                return flag
    return None


def _places(shapes: Mapping[str, MultiPolygon], room: Box) -> Iterator[float]:
    """Yield where an upright may stand: on the middle of narrow things, then about the middle."""
    low, high = shapely.total_bounds(list(shapes.values()))[[0, 2]]
    for shape in shapes.values():
        ends = [(part.bounds[0], part.bounds[2]) for part in shape.geoms]
        if max(right - left for left, right in ends) < _NARROW * room.width:
            yield from sorted((left + right) / 2 for left, right in ends)
    spread = np.linspace(low, high, _TRIES + 2)[1:-1]
    yield from sorted(map(float, spread), key=lambda x: abs(x - (low + high) / 2))


def _blocks(
    shapes: Mapping[str, MultiPolygon], upright: LineString, site: Site
) -> tuple[Block, ...]:
    """Return the blocks of all shapes an upright meets, from the top down."""
    x = upright.coords[0][0]
    met = []
    for wording, shape in shapes.items():
        runs = [run for run in shapely.get_parts(shape.intersection(upright)) if run.length > 0]
        if runs:
            run = max(runs, key=lambda r: r.length)
            dot = (x, (run.bounds[1] + run.bounds[3]) / 2)
            met.append(site.lettering.block(wording, dot))
    return tuple(sorted(met, key=lambda b: -b.dot[1]))


def _raised(x: float, blocks: tuple[Block, ...], others: Sequence[Flag], site: Site) -> Flag | None:
    """Return the flag with its words in the lowest free place above the floor."""
    room = site.room
    upright = LineString(((x, room.low), (x, room.high)))
    hit = site.things.geometries[site.things.query(upright, "intersects")]
    floor = float(shapely.bounds(shapely.intersection(hit, upright))[:, 3].max()) + _CLEAR
    tried = [Flag(x, blocks, floor, left, site.over) for left in (False, True)]
    feet = [(foot, flag) for flag in tried for foot in _feet(flag, others, site)]
    for foot, flag in sorted(feet, key=lambda pair: pair[0]):
        raised = replace(flag, foot=foot)
        if site.is_free(raised, others):
            return raised
    return None


def _feet(flag: Flag, others: Sequence[Flag], site: Site) -> list[float]:
    """Return how high the words may stand: on the floor, or just above something in their way.

    Empty where they are wider or higher than the room.
    """
    room, box = site.room, flag.words(site.text)
    if not (room.left < box.left and box.right < room.right and box.high < room.high):
        return []
    strip = shapely.box(box.left - _AIR, box.low, box.right + _AIR, room.high)
    met = [tree.geometries[tree.query(strip, "intersects")] for tree in (site.things, site.leaders)]
    tops = [b[3] for geoms in met for b in shapely.bounds(shapely.intersection(geoms, strip))]
    tops += [high for o in others for high in (o.words(site.text).high, o.upright(site.text).high)]
    rise = room.high - box.high
    over = [top + 1.5 * _AIR + flag.over for top in tops]
    return [foot for foot in (flag.foot, *over) if flag.foot <= foot < flag.foot + rise]


def flag_marks(flag: Flag, text: float, keyed: bool) -> Iterator[Mark]:
    """Yield the upright with its dots, and the words with a short line to each."""
    tops = _tops(flag, text)
    yield Leader((flag.blocks[-1].dot, (flag.x, tops[0] - text / 2)), layer="leaders")
    way = -1 if flag.left else 1
    for label, top in zip(flag.blocks, tops, strict=True):
        yield Circle(label.dot, _DOT, 0.0, fill=INK, layer="leaders")
        y = top - text / 2
        end = flag.x + way * (_ASIDE - 0.8)
        yield Line(((flag.x, y), (end, y)), LEADER, layer="leaders")
        if keyed:
            yield from key_mark((end + way * text, y), label.lines[0], text)
            continue
        for index, line in enumerate(label.lines):
            at = (flag.x + way * _ASIDE, top - text - index * text * PITCH)
            anchor: Anchor = "end" if flag.left else "start"
            yield Text(at, line, text, index < label.bold, anchor, layer="labels")


def _tops(flag: Flag, text: float) -> list[float]:
    tops, top = [], flag.words(text).high - flag.over
    for label in flag.blocks:
        tops.append(top)
        top -= label.height(text) + flag.gap
    return tops
