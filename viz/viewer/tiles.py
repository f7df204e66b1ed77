"""Squares of every hatch, as strokes, for the page to repeat over the faces it cuts."""

from typing import Any

import shapely

from viz.drawing.hatches import PATTERNS, hatch_strokes
from viz.drawing.marks import Hatch
from viz.style.materials import HatchName

# Patterns that come back after so many mm are repeated as they are; scattered ones are mirrored,
# so that a stroke that leaves the square comes back into the next.
_ROOT = 2**0.5
_PERIOD: dict[HatchName, float] = {
    "cross": 8 * 2.1 * _ROOT, "diagonal": 18 * 0.9 * _ROOT, "steel": 32 * 0.5 * _ROOT,
    "dashes": 12 * 1.4 * _ROOT, "earth": 22.4,
}  # fmt: skip
_SCATTERED = 24.0


def tiles() -> dict[str, dict[str, Any]]:
    """Return a tile by the name of its hatch: size in mm, whether to mirror, and its strokes.

    A stroke is its weight in mm and x, y, x, y, ... in mm.
    """
    return {name: tile(name) for name in sorted(PATTERNS)}


def tile(name: HatchName) -> dict[str, Any]:
    """Return one hatch's tile."""
    size = _PERIOD.get(name, _SCATTERED)
    drawn = hatch_strokes(Hatch(shapely.box(0.0, 0.0, size, size), name, "#000000"))
    strokes = [
        [strokes.weight, [round(value, 2) for point in line for value in point]]
        for strokes in drawn
        for line in strokes.lines
    ]
    return {"size": round(size, 6), "mirror": name not in _PERIOD, "strokes": strokes}
