"""A cut drawn by hand: corners on whole sizes, legs that are nearly square to the plan square."""

import math

from geometry.plan.outline import Point
from geometry.units import INCH, System

# A leg within so many degrees of one of the plan's axes is meant to lie along it.
NEARLY_SQUARE = math.radians(4)
# Drawn corners lie on whole inches, or on whole centimetres.
STEPS_M: dict[System, float] = {"ft-in": INCH, "metric": 0.01}


def whole(at: Point, system: System) -> Point:
    """Return the place on whole inches or 10 mm nearest to one on the plan, metres."""
    step = STEPS_M[system]
    return round(at[0] / step) * step, round(at[1] / step) * step


def squared(moved: Point, fixed: Point, system: System) -> Point:
    """Return where the moved end of a leg comes to lie, metres.

    It lies on whole inches or 10 mm; where the leg runs nearly along one of the plan's axes, it
    runs along it from the fixed end.
    """
    x, y = whole(moved, system)
    across, up = abs(moved[0] - fixed[0]), abs(moved[1] - fixed[1])
    if math.atan2(up, across) <= NEARLY_SQUARE:
        return x, fixed[1]
    if math.atan2(across, up) <= NEARLY_SQUARE:
        return fixed[0], y
    return x, y
