"""Heating tubes to buy: length by spacing, and loops so short that none is jointed in the slab."""

from collections.abc import Iterator
from math import ceil

from geometry.layout.areas import AreaLayout
from geometry.layout.floors import openings
from geometry.layout.lay import Layout
from geometry.parts.floor import Tubing
from geometry.parts.usual import GIVEN, Factor
from geometry.plan.outline import minus
from geometry.takeoff.row import Part, Row

# Tubes keep this far from the floor's edge (common practice, no source).
EDGE_M = 0.15


def tube_rows(layout: Layout) -> Iterator[Row]:
    """Yield each heated floor's tubes: one coil to a loop, for no joint lies in a slab."""
    for area in layout.areas:
        tubing = area.floor.tubing
        if tubing:
            yield _row(layout, area, tubing)


def heated_m2(layout: Layout, area: AreaLayout) -> float:
    """Return the floor's area within its edge, less piers and pit."""
    pit = [layout.sump.opening.region] if layout.sump and layout.sump.area is area else []
    taken = [*(prism.region for prism in openings(area)), *pit]
    return float(minus(area.room.buffer(-EDGE_M, join_style="mitre"), taken).area)


def loops(length_m: float, tubing: Tubing) -> int:
    """Return the fewest loops that hold a length, each with its way there and back.

    Raises ValueError where a loop is all way.
    """
    room = tubing.loop - 2 * tubing.way
    if room <= 0:
        raise ValueError("the way to the manifold and back is longer than the longest loop")
    return max(1, ceil(length_m / room - 1e-9))


def _row(layout: Layout, area: AreaLayout, tubing: Tubing) -> Row:
    length = heated_m2(layout, area) / tubing.spacing
    count = loops(length, tubing)
    each = length / count + 2 * tubing.way
    factors = (
        Factor("spacing", tubing.spacing, "m", GIVEN),
        Factor("longest loop", tubing.loop, "m", GIVEN),
        Factor("way to the manifold", tubing.way, "m", GIVEN),
    )
    return Row(
        "heating", "Tube in the slab", "tube", area.name, length, "m", factors, count * each,
        "coil", count, (Part(area.name, length),),
        note="a coil to each loop, all of one length within a tenth; no joint in the slab; "
        "press it before and during the pour",
    )  # fmt: skip
