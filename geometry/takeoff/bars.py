"""Continuous footing bars to buy: sticks with laps, tie wire, supports where they are asked for."""

from collections.abc import Iterator
from math import ceil

from geometry.layout.areas import AreaLayout
from geometry.layout.lay import Layout
from geometry.materials.catalogue import BARS
from geometry.plan.outline import polygons
from geometry.project import Design
from geometry.takeoff.row import Cut, CutList, Part, Row
from geometry.takeoff.sticks import cut_runs, rolls
from geometry.takeoff.usual import factor
from geometry.units import FOOT

# Wire for one tie (common practice, no source).
TIE_M = 1 * FOOT


def bar_rows(layout: Layout) -> Iterator[tuple[Row, CutList | None]]:
    """Yield bars of each size, all areas cut from the same sticks, their wire and supports."""
    barred = [a for a in layout.areas if a.footing.bars.count and strip_runs(a)]
    laps = 0
    for size in dict.fromkeys(a.footing.bars.size for a in barred):
        here = [a for a in barred if a.footing.bars.size == size]
        row, cuts = _bars(layout.design, size, here)
        laps += cuts.joints + sum(_closing(a) for a in here)
        yield row, cuts
    if laps:
        yield _wire(layout.design, laps), None
    apart = layout.design.order.bars.chairs
    if barred and apart:
        yield _supports(barred, apart), None


def strip_runs(area: AreaLayout) -> list[tuple[float, bool]]:
    """Return each strip's length along its middle, metres, and whether it closes on itself."""
    width = area.footing.width
    return [(p.area / width, bool(p.interiors)) for p in polygons(area.footings)]


def _closing(area: AreaLayout) -> int:
    """Laps at which bars that run right round meet themselves."""
    return area.footing.bars.count * sum(closed for _, closed in strip_runs(area))


def _bars(design: Design, size: str, areas: list[AreaLayout]) -> tuple[Row, CutList]:
    stick, laps = factor(design, "bars.stick"), factor(design, "bars.lap")
    lap = laps.value * BARS[size].diameter_m
    wanted = [
        Cut(f"{a.name}, bar {n}", length + (lap if closed else 0.0))
        for a in areas
        for length, closed in strip_runs(a)
        for n in range(1, a.footing.bars.count + 1)
    ]
    cutting = cut_runs(wanted, stick.value, lap)
    parts = tuple(
        Part(a.name, a.footing.bars.count * sum(length for length, _ in strip_runs(a)))
        for a in areas
    )
    bought = len(cutting.stocks) * stick.value
    mass = bought * BARS[size].mass_kg_m
    item = f"Footing bars {size}"
    row = Row(
        "bars", item, size, "", sum(p.in_place for p in parts), "m", (laps, stick), bought,
        "stick", len(cutting.stocks), parts, (mass, mass),
        note="run round corners bent; straight bars take corner bars besides",
    )  # fmt: skip
    return row, CutList(item, size, stick.value, cutting.stocks, cutting.joints)


def _wire(design: Design, laps: int) -> Row:
    ties, roll = factor(design, "bars.ties"), factor(design, "bars.wire")
    length = laps * ties.value * TIE_M
    return Row(
        "bars", "Tie wire", "wire", "", length, "m", (ties, roll), length, "roll",
        rolls(length, roll.value), note=f"{laps} laps",
    )  # fmt: skip


def _supports(areas: list[AreaLayout], apart: float) -> Row:
    """Supports under each bar, so far apart."""
    count = sum(
        a.footing.bars.count * sum(ceil(length / apart) for length, _ in strip_runs(a))
        for a in areas
    )
    return Row(
        "bars", "Bar supports", "supports", "", count, "pieces", (), count, "piece", count
    )  # fmt: skip
