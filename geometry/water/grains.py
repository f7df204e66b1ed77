"""Grains against openings: drain stone at the pipe's holes, sand on the stone under the floor.

Sizes in metres. A grading is a band: its fine and its coarse edge are both asked; where the design
gives what was delivered the two are one.
"""

from dataclasses import dataclass
from itertools import pairwise

from geometry.formulas.granular_filter import (
    RETENTION,
    ROUND_HOLES,
    hole_ratio,
    retention_ratio,
)
from geometry.layout.areas import AreaLayout
from geometry.layout.lay import Layout
from geometry.materials.kinds import Aggregate
from geometry.project import Design
from geometry.water.graded import delivered, size_or_none

# The rules that are judged; D15 is asked of critical drains alone and only told.
JUDGED = (0.85, 0.50)
_SAME = 1e-9


@dataclass(frozen=True)
class HoleFit:
    """A grain size of the stone (share passing) over the hole, at the band's two edges.

    Ratios are None where the grading does not reach that share. least: what the rule asks.
    """

    share: float
    hole_m: float
    fine_edge: float | None
    coarse_edge: float | None
    least: float
    judged: bool
    source: str

    @property
    def fails(self) -> bool:
        """Whether some stone of this grading is too small for the hole by a judged rule."""
        known = [r for r in (self.fine_edge, self.coarse_edge) if r is not None]
        return self.judged and any(r < self.least for r in known)

    @property
    def known(self) -> bool:
        """Whether both edges could be read."""
        return self.fine_edge is not None and self.coarse_edge is not None


@dataclass(frozen=True)
class FineOnCoarse:
    """A layer of finer aggregate lying straight on a coarser one.

    worst, best: D15 of the lower over d85 of the upper, over both bands; None where a grading is
    not known that far. limit: at most, to hold the upper layer back.
    """

    area: str
    upper: str
    lower: str
    worst: float | None
    best: float | None
    limit: float


def drain_hole_fits(layout: Layout) -> tuple[HoleFit, ...]:
    """Return the drain stone against the pipe's holes; empty without a drain or without holes."""
    drain = layout.drain
    if drain is None or not drain.drain.holes.rows:
        return ()
    stone = delivered(layout.design, drain.drain.stone.material)
    return () if stone is None else hole_fits(stone, drain.drain.holes.diameter)


def hole_fits(stone: Aggregate, hole_m: float) -> tuple[HoleFit, ...]:
    """Return a stone against a round hole, a row for each rule in force."""
    rows = []
    for rule in ROUND_HOLES:
        fine, coarse = (
            None if size is None else hole_ratio(size, hole_m)
            for size in (
                size_or_none(stone.fine_edge, rule.share),
                size_or_none(stone.coarse_edge, rule.share),
            )
        )
        judged = rule.share in JUDGED and rule.least <= 1.0
        rows.append(HoleFit(rule.share, hole_m, fine, coarse, rule.least, judged, str(rule.source)))
    return tuple(rows)


def fine_on_coarse(layout: Layout) -> tuple[FineOnCoarse, ...]:
    """Return every floor layer of finer aggregate that lies straight on a coarser one."""
    return tuple(row for area in layout.areas for row in _in_area(area, layout.design))


def _in_area(area: AreaLayout, design: Design) -> list[FineOnCoarse]:
    layers, found = area.floor.layers, []
    for below, above in pairwise(layers):
        lower, upper = (delivered(design, layer.material) for layer in (below, above))
        if lower and upper and _finer(upper, lower):
            worst, best = retention(upper, lower)
            found.append(FineOnCoarse(area.name, upper.key, lower.key, worst, best, RETENTION))
    return found


def _finer(upper: Aggregate, lower: Aggregate) -> bool:
    """Sand on stone is finer by its name where the gradings are not known."""
    sizes = [size_or_none(row.coarse_edge, 0.5) for row in (upper, lower)]
    if sizes[0] is not None and sizes[1] is not None:
        return sizes[0] < sizes[1] - _SAME
    return upper.kind == "sand" and lower.kind == "stone"


def retention(upper: Aggregate, lower: Aggregate) -> tuple[float | None, float | None]:
    """Return D15 of the lower over d85 of the upper, at worst and at best over both bands."""

    def ratio(
        filter_edge: tuple[tuple[float, float], ...], base_edge: tuple[tuple[float, float], ...]
    ) -> float | None:
        d15, d85 = size_or_none(filter_edge, 0.15), size_or_none(base_edge, 0.85)
        return None if d15 is None or d85 is None else retention_ratio(d15, d85)

    worst = ratio(lower.coarse_edge, upper.fine_edge)
    return worst, ratio(lower.fine_edge, upper.coarse_edge)
