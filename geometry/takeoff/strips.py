"""Sheet rolled out in strips over a room, turned up at its walls, lapped side by side."""

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
import shapely
from shapely import Polygon
from shapely.geometry.base import BaseGeometry

from geometry.plan.outline import offset, polygons
from geometry.takeoff.aligned import Aligned
from geometry.takeoff.row import Cut
from geometry.takeoff.sticks import Cutting, cut_runs, pieces_of


@dataclass(frozen=True)
class Roll:
    """A roll of sheet: width and length, and the lap of a strip on the next; metres."""

    width: float
    length: float
    lap: float


@dataclass(frozen=True, eq=False)
class StripLayout:
    """Strips over a room. strips: outlines on the plan, turn-ups folded flat; metres.

    seam_m: laps between strips and within long ones. holes_m: round piers and the pit.
    """

    strips: tuple[Polygon, ...]
    runs: tuple[Cut, ...]
    cutting: Cutting
    seam_m: float
    holes_m: float

    @property
    def rolls(self) -> int:
        """Rolls needed."""
        return len(self.cutting.stocks)


def lay_strips(region: BaseGeometry, roll: Roll, turn_up: float) -> StripLayout:
    """Lay strips along the room's longest side or across it: fewer rolls, then less sheet and seam.

    region: the floor the sheet covers. turn_up: height up the walls, metres. Openings are cut out
    of the strip as it lies: they save nothing.
    """
    floors = polygons(region)
    solid = shapely.union_all([Polygon(p.exterior) for p in floors])
    holes = sum(float(ring.length) for p in floors for ring in p.interiors)
    grown = offset(solid, turn_up)
    ways = [_laid(Aligned(grown, across), roll, holes) for across in (False, True)]
    return min(ways, key=lambda way: (way.rolls, round(way.cutting.length_m, 6), way.seam_m))


def _laid(frame: Aligned, roll: Roll, holes: float) -> StripLayout:
    sheet, step = frame.turned, roll.width - roll.lap
    _, y0, _, y1 = sheet.bounds
    count = pieces_of(y1 - y0, roll.width, roll.lap)
    lows = [y0 + n * step for n in range(count)]
    strips = [
        shapely.box(piece.bounds[0], low, piece.bounds[2], low + roll.width)
        for low in lows
        for piece in _band(sheet, low, low + roll.width)
    ]
    seams = sum(
        piece.area / roll.lap for low in lows[1:] for piece in _band(sheet, low, low + roll.lap)
    )
    runs = _runs(strips)
    cutting = cut_runs(runs, roll.length, roll.lap)
    placed = frame.back(np.array(strips, dtype=object))
    return StripLayout(
        tuple(placed), runs, cutting, float(seams) + cutting.joints * roll.width, holes
    )


def _band(sheet: BaseGeometry, low: float, high: float) -> list[Polygon]:
    x0, _, x1, _ = sheet.bounds
    return polygons(sheet.intersection(shapely.box(x0, low, x1, high)))


def _runs(strips: Sequence[Polygon]) -> tuple[Cut, ...]:
    lengths = (float(s.bounds[2] - s.bounds[0]) for s in strips)
    return tuple(Cut(f"strip {n}", length) for n, length in enumerate(lengths, 1))
