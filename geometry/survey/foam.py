"""Would the foam lie flat and meet top of footing, said for every shot."""

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Literal

import numpy as np

from geometry.layout.areas import AreaLayout
from geometry.layout.lay import Layout
from geometry.rules.limit import MET_WITHIN_M
from geometry.survey.bed import Bed
from geometry.survey.shots import Floats, Ints, Marks, Shots
from geometry.survey.tolerances import BOARD_M
from geometry.survey.tops import Top

Verdict = Literal[
    "lies flat", "lies flat, base thin", "lifts off", "gap under it", "not over footing",
    "no foam", "outside the floor",
]  # fmt: skip
VERDICTS: tuple[Verdict, ...] = (
    "lies flat", "lies flat, base thin", "lifts off", "gap under it", "not over footing",
    "no foam", "outside the floor",
)  # fmt: skip
_FLAT, _THIN, _LIFTS, _GAP, _NOT_OVER, _NONE, _OUTSIDE = range(len(VERDICTS))
# Levels nearer than this are one in the design, metres.
_SAME_M = 1e-6


@dataclass(frozen=True)
class FoamAt:
    """The verdict at one shot. gap_m: from what is under the foam up to where it should lie.

    meets_tof: its underside comes to lie where the design has it against TOF, within what a
    board bridges; None where there is no foam.
    """

    shot: str
    row: int
    x: float
    y: float
    verdict: Verdict
    gap_m: float
    meets_tof: bool | None


@dataclass(frozen=True, eq=False)
class Foam:
    """Verdicts on k shots: index: (k,) of the shot. code: (k,) into VERDICTS. gap: (k,) metres."""

    shots: Shots
    index: Ints
    code: Ints
    gap: Floats

    def count(self, verdict: Verdict) -> int:
        """Return how many shots have a verdict."""
        return int(np.count_nonzero(self.code == VERDICTS.index(verdict)))

    def rows(self) -> Iterator[FoamAt]:
        """Yield the verdicts shot by shot."""
        shots = self.shots
        for index, code, gap in zip(self.index, self.code, self.gap, strict=True):
            meets = None if code in (_NONE, _OUTSIDE, _NOT_OVER) else code in (_FLAT, _THIN)
            yield FoamAt(shots.name(index), int(shots.row[index]), float(shots.x[index]),
                         float(shots.y[index]), VERDICTS[code], float(gap), meets)  # fmt: skip


def foam_level(area: AreaLayout) -> float | None:
    """Return where the foam's underside should lie, metres; None without foam."""
    places = [n for n, layer in enumerate(area.floor.layers) if layer.role == "insulation"]
    return area.stack.levels[places[0]] if places else None


def foam_on_ground(bed: Bed, shots: Shots, index: Ints, inside: Marks) -> Foam:
    """Return the verdicts at shots of the ground; the base is filled to its planned top.

    index: (k,) the shots. inside: (k,) which lie within the floor. gap: thickness of base there.
    """
    gap = bed.top - shots.level[index]
    code = np.full(len(index), _FLAT, np.int64)
    code[gap < bed.least - _SAME_M] = _THIN
    code[gap < -BOARD_M] = _LIFTS
    if foam_level(bed.area) is None:
        code[:] = _NONE
    code[~inside] = _OUTSIDE
    return Foam(shots, index, code, gap)


def foam_on_footing(layout: Layout, shots: Shots, found: tuple[Top, ...]) -> Foam:
    """Return the verdicts at shots on footings; a layer under the foam is filled to its top."""
    on = [top for top in found if top.on == "footing"]
    by_row = {int(shots.row[n]): int(n) for n in shots.of("footing")}
    judged = [_judged(layout.area(top.area), top) for top in on]
    return Foam(
        shots,
        np.array([by_row[top.row] for top in on], np.int64),
        np.array([code for code, _ in judged], np.int64),
        np.array([gap for _, gap in judged], np.float64),
    )


def _judged(area: AreaLayout, top: Top) -> tuple[int, float]:
    level = foam_level(area)
    if level is None:
        return _NONE, 0.0
    gap = level - top.level_m
    if level < area.tof - MET_WITHIN_M:
        return _NOT_OVER, gap
    if gap < -BOARD_M - _SAME_M:
        return _LIFTS, gap
    # A layer planned between footing and foam takes up what the footing lacks.
    bedded = level > area.tof + BOARD_M
    return (_GAP if gap > BOARD_M + _SAME_M and not bedded else _FLAT), gap
