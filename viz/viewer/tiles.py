"""Rectangles of every hatch, as strokes, for the page to repeat over the faces it cuts."""

from functools import cache
from typing import Any

import numpy as np
import shapely

from viz.drawing.hatches import PATTERNS, Pattern, clipped
from viz.style.materials import HatchName

_ROOT = 2**0.5
# Width and height after which a pattern comes back, mm. Of scattered ones these are whole numbers
# of their cells, an even one upwards; a stroke that leaves at one edge comes in at the other.
_SIZES: dict[HatchName, tuple[float, float]] = {
    "cross": (8 * 2.1 * _ROOT,) * 2, "diagonal": (18 * 0.9 * _ROOT,) * 2,
    "steel": (32 * 0.5 * _ROOT,) * 2, "dashes": (12 * 1.4 * _ROOT,) * 2, "earth": (22.4, 22.4),
    "concrete": (5 * 5.2, 6 * 4.4), "stone": (9 * 2.75, 14 * 1.85), "sand": (24 * 0.85,) * 2,
    "backfill": (6 * 6.4, 8 * 4.6), "topsoil": (16 * 1.5, 10 * 2.6), "water": (5 * 5.0, 16 * 1.6),
}  # fmt: skip
_RULED = frozenset(("cross", "diagonal", "steel", "dashes"))
_PLAIN = (20.0, 20.0)


@cache
def tile(name: HatchName) -> dict[str, Any]:
    """Return a hatch's tile: size in mm, and strokes as weight in mm and x, y, x, y, ... in mm."""
    wide, high = _SIZES.get(name, _PLAIN)
    strokes = [
        [pattern.weight, [round(float(value), 2) for value in line]]
        for pattern in PATTERNS[name]
        for line in _lines(pattern, (wide, high), name in _RULED)
    ]
    return {"size": [round(wide, 6), round(high, 6)], "strokes": strokes}


def _lines(pattern: Pattern, size: tuple[float, float], ruled: bool) -> list[list[float]]:
    """Return a pattern's strokes: ruled ones cut at the tile's edges, others whose middle is in."""
    area = shapely.box(0.0, 0.0, *size)
    made = pattern.make(area)
    if ruled:
        return [[value for point in line for value in point] for line in clipped(made, area)]
    middle = (made.min(axis=1) + made.max(axis=1)) / 2
    inside = np.all((middle >= 0.0) & (middle < np.array(size)), axis=1)
    return [[*line.ravel().tolist()] for line in made[inside]]
