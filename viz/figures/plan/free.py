"""Free places for words: every candidate near the thing is weighed, the cheapest free one wins.

Hard things (cut walls, pipes, words placed before) are never stood on, nor do leaders cross words.
Soft things (thin lines) cost something. Rings of candidates grow until one is free: the paper
outside is empty, so there always is one.
"""

from collections.abc import Sequence
from dataclasses import dataclass, field

import numpy as np
import shapely
from numpy.typing import NDArray
from shapely import STRtree
from shapely.geometry.base import BaseGeometry

from viz.drawing.marks import Point
from viz.drawing.page import Box
from viz.figures.plan.candidates import (
    NEAR,
    Flags,
    Floats,
    Wish,
    around,
    leads,
    needs_leader,
    within,
)

# Costs, in millimetres of distance: a leader over a wall, over another leader, over words (only
# where nothing else is left), each millimetre beyond the belt.
_OVER_WALL = 14.0
_OVER_LEADER = 25.0
_OVER_WORDS = 500.0
# Words that stand without a leader where they can belong to their own side of a wall all the more.
_UNLED = 35.0
_LED = 3.0
_BEYOND = 1.2
# Sets of rings that are tried before words stand where they had better not.
_PATIENT = 2


@dataclass(frozen=True)
class Place:
    """Where something stands, and the line that leads from the thing to it."""

    box: Box
    leader: tuple[Point, ...] = ()


@dataclass(frozen=True)
class Soft:
    """Thin lines, and what it costs words to stand on one of them."""

    lines: tuple[BaseGeometry, ...]
    cost: float


@dataclass
class Places:
    """All that is placed so far, and the ground it stands on.

    hard: shapes words never stand on. walls: those a leader had better not cross. belt: the box
    words had better not leave.
    """

    hard: BaseGeometry
    walls: BaseGeometry
    soft: Sequence[Soft]
    belt: Box
    boxes: list[Box] = field(default_factory=list)
    leaders: list[tuple[Point, ...]] = field(default_factory=list)

    def __post_init__(self) -> None:
        """Ready the shapes for many questions."""
        shapely.prepare(self.hard)
        shapely.prepare(self.walls)
        lines = [(line, s.cost) for s in self.soft for line in s.lines]
        self._tree = STRtree([line for line, _ in lines])
        self._costs = np.array([cost for _, cost in lines])

    def keep_off(self, shapes: Sequence[BaseGeometry]) -> None:
        """Let no words placed from now on stand on these shapes."""
        self.hard = shapely.union_all([self.hard, *shapes])
        shapely.prepare(self.hard)

    def put(
        self,
        wish: Wish,
        banned: BaseGeometry | None = None,
        shunned: BaseGeometry | None = None,
    ) -> Place:
        """Place something in the cheapest free place round its thing, off a banned region.

        shunned: kept off as well as long as there is room elsewhere not too far away.
        """
        reach, number = 1.0, 0
        while True:
            boxes, base = around(wish, np.asarray(NEAR) * reach + (number > 0) * 38.0 * reach / 4)
            for region in (banned, shunned if number < _PATIENT else None):
                if region is not None:
                    kept = ~shapely.intersects(region, shapely.box(*boxes.T))
                    boxes, base = boxes[kept], base[kept]
            found = self._best(boxes, base, wish, number > 1)
            if found is not None:
                return self._keep(boxes[found], wish)
            reach, number = reach * 4, number + 1

    def put_within(self, wish: Wish, region: BaseGeometry) -> Place | None:
        """Place something wholly within a region, nearest its `at`; None where nothing is free."""
        boxes = within(wish, region)
        if not len(boxes):
            return None
        middles = (boxes[:, :2] + boxes[:, 2:]) / 2
        base = 0.15 * np.hypot(*(middles - np.asarray(wish.at)).T)
        found = self._best(boxes, base, wish, False)
        return None if found is None else self._keep(boxes[found], wish)

    def _keep(self, box: Floats, wish: Wish) -> Place:
        left, low, right, high = map(float, box)
        leader: tuple[Point, ...] = ()
        if needs_leader(wish, box[None])[0]:
            start, end = leads(wish, box[None])
            leader = (
                (float(start[0, 0]), float(start[0, 1])),
                (float(end[0, 0]), float(end[0, 1])),
            )
            self.leaders.append(leader)
        self.boxes.append(Box(left, low, right, high))
        return Place(self.boxes[-1], leader)

    def _best(self, boxes: Floats, base: Floats, wish: Wish, last: bool) -> int | None:
        """Return the cheapest free candidate's number; `last`: leaders may pass under words."""
        shapes = shapely.box(*boxes.T)
        bad = shapely.intersects(self.hard, shapes) | self._taken(boxes, shapes)
        kept = np.flatnonzero(~bad)
        if not len(kept):
            return None
        cost = base[kept] + self._softly(shapes[kept]) + self._beyond(boxes[kept])
        cost = cost + self._led(wish, boxes[kept])
        best = int(np.argmin(cost))
        if not last and cost[best] >= _OVER_WORDS:
            return None
        return int(kept[best])

    def _taken(self, boxes: Floats, shapes: NDArray[np.object_]) -> Flags:
        bad = np.zeros(len(boxes), dtype=bool)
        if self.boxes:
            held = np.array([(b.left, b.low, b.right, b.high) for b in self.boxes])
            low = np.maximum(boxes[:, None, :2], held[None, :, :2])
            high = np.minimum(boxes[:, None, 2:], held[None, :, 2:])
            met = high > low
            bad |= (met[..., 0] & met[..., 1]).any(axis=1)
        if self.leaders:
            number, _ = STRtree(shapely.linestrings(self.leaders)).query(shapes, "intersects")
            bad[number] = True
        return bad

    def _softly(self, shapes: NDArray[np.object_]) -> Floats:
        cost = np.zeros(len(shapes))
        if len(self._costs):
            number, line = self._tree.query(shapes, "intersects")
            np.add.at(cost, number, self._costs[line])
        return cost

    def _beyond(self, boxes: Floats) -> Floats:
        belt = self.belt
        out = np.stack((belt.left - boxes[:, 0], belt.low - boxes[:, 1],
                        boxes[:, 2] - belt.right, boxes[:, 3] - belt.high))  # fmt: skip
        total: Floats = _BEYOND * np.clip(out, 0, None).sum(axis=0)
        return total

    def _led(self, wish: Wish, boxes: Floats) -> Floats:
        """Return what the leaders of candidates cost; of those not drawn only the way counts."""
        lines = shapely.linestrings(np.stack(leads(wish, boxes), axis=1))
        drawn = needs_leader(wish, boxes)
        over = shapely.intersects(self.walls, lines)
        cost = np.where(over, _UNLED if wish.loose else _OVER_WALL, 0.0) + np.where(
            drawn, _LED, 0.0
        )
        led = np.flatnonzero(drawn)
        lines = lines[led]
        if self.boxes:
            held = [shapely.box(b.left, b.low, b.right, b.high) for b in self.boxes]
            number, _ = STRtree(held).query(lines, "intersects")
            np.add.at(cost, led[number], _OVER_WORDS)
        if self.leaders:
            number, _ = STRtree(shapely.linestrings(self.leaders)).query(lines, "intersects")
            np.add.at(cost, led[number], _OVER_LEADER)
        return cost
