"""Heating tubes to buy: every loop as it is laid, cut whole from coils, no joint in the slab."""

from collections.abc import Iterator, Sequence

from geometry.layout.lay import Layout
from geometry.layout.tubing.lay import Loop, Tubes, lay_tubes
from geometry.parts.usual import GIVEN, Factor
from geometry.takeoff.row import Cut, CutList, Part, Row
from geometry.takeoff.sticks import Cutting, cut_runs
from geometry.takeoff.usual import factor

ITEM = "Tube in the slab"


def tube_rows(layout: Layout) -> Iterator[tuple[Row, CutList | None]]:
    """Yield each heated floor's tubes, and how its loops are cut from coils."""
    for tubes in lay_tubes(layout):
        if tubes.loops:
            yield _row(layout, tubes)


def _row(layout: Layout, tubes: Tubes) -> tuple[Row, CutList]:
    tubing, area, loops = tubes.tubing, tubes.area.name, tubes.loops
    coil = factor(layout.design, "tube.coil")
    cutting, stock = _cut(area, loops, coil.value)
    factors = (
        Factor("spacing", tubing.spacing, "m", GIVEN),
        Factor("longest loop", tubing.longest, "m", GIVEN),
        Factor("ways from the slab to the manifold", sum(x.way_m for x in loops), "m", GIVEN),
        coil,
    )
    longer = "" if stock == coil.value else "a loop is longer than the coil: ask for a longer one; "
    row = Row(
        "heating", ITEM, tubing.tube, area, tubes.length_m, "m", factors, cutting.length_m,
        "coil", len(cutting.stocks), tuple(Part(f"loop {x.number}", x.length_m) for x in loops),
        note=f"{len(loops)} loops, each cut whole: no joint in the slab; {longer}"
        "press it before and during the pour",
    )  # fmt: skip
    return row, CutList(ITEM, tubing.tube, stock, cutting.stocks, cutting.joints)


def _cut(area: str, loops: Sequence[Loop], coil: float) -> tuple[Cutting, float]:
    """Return the coils as they are cut, and their length: no loop is longer."""
    stock = max(coil, *(x.whole_m for x in loops))
    return cut_runs([Cut(f"{area}, loop {x.number}", x.whole_m) for x in loops], stock), stock
