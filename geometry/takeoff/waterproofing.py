"""The area of the walls' outside to keep dry: from the footing's edge up to the grade."""

from collections.abc import Iterator
from math import ceil

from geometry.layout.lay import Layout
from geometry.takeoff.row import Part, Row
from geometry.units import to_unit
from geometry.water.wall import OUTSIDE, WallRun, wall_runs


def wall_rows(layout: Layout) -> Iterator[Row]:
    """Yield the area to be damp-proofed or waterproofed, all areas together; none above grade."""
    runs = [run for run in wall_runs(layout) if run.behind == OUTSIDE]
    parts = tuple(Part(run.area, _wet_m2(layout, run)) for run in runs)
    whole = sum(part.in_place for part in parts)
    if whole > 0:
        metric = layout.design.project.units == "metric"
        count = whole if metric else to_unit(whole, "m**2", "ft**2")
        places = tuple(part for part in parts if part.in_place > 0)
        yield Row(
            "wall", "Damp-proofing or waterproofing, outside", "coating", "", whole, "m2", (),
            whole, "m2" if metric else "ft2", ceil(count - 1e-9), places,
            note="net, from the footing's outer edge up to the grade; which of the two the code "
            "asks by the water, how thick or how many coats the maker says",
        )  # fmt: skip


def _wet_m2(layout: Layout, run: WallRun) -> float:
    """Area of one area's outer wall under the grade and of the footing's ledge before it, m2."""
    area = layout.area(run.area)
    up = min(layout.ground.at_wall, area.wall_top) - area.tof
    return run.length_m * (up + max(0.0, area.projection_out)) if up > 0 else 0.0
