"""Water a pit and the stone around it hold, by level: straight between levels where area changes.

The whole store stands at one level: stone as open as drain stone empties into the pit as fast as
a house pump draws. A store in tight soil would not.
"""

from bisect import bisect_right
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from geometry.formulas.given import not_negative, positive, within


@dataclass(frozen=True)
class Storage:
    """Levels, m, rising from the pit's bottom to where it spills; water held up to each, m3.

    The first volume is 0 and volumes rise, else ValueError.
    """

    levels_m: tuple[float, ...]
    volumes_m3: tuple[float, ...]

    def __post_init__(self) -> None:
        """Raise ValueError when levels or volumes do not rise."""
        if len(self.levels_m) != len(self.volumes_m3) or len(self.levels_m) < 2:
            raise ValueError("a store needs as many volumes as levels, two at least")
        if self.volumes_m3[0] != 0:
            raise ValueError("nothing is held below the first level")
        rises = np.diff(self.levels_m) > 0
        if not (np.all(rises) and np.all(np.diff(self.volumes_m3) > 0)):
            raise ValueError("levels and volumes must rise")

    @property
    def bottom_m(self) -> float:
        """Level of the pit's bottom."""
        return self.levels_m[0]

    @property
    def spill_m(self) -> float:
        """Level at which the store runs over."""
        return self.levels_m[-1]

    @property
    def full_m3(self) -> float:
        """Water held when full."""
        return self.volumes_m3[-1]

    def volume(self, level_m: float) -> float:
        """Water held at a level, m3: exact between levels, none below, no more than full."""
        return float(np.interp(level_m, self.levels_m, self.volumes_m3))

    def level(self, volume_m3: float) -> float:
        """Level of a volume of water, m."""
        return float(np.interp(volume_m3, self.volumes_m3, self.levels_m))

    def area(self, level_m: float) -> float:
        """Water's area just above a level, m2: what rises with the next drop."""
        within(self.bottom_m, self.spill_m, level_m=level_m)
        i = min(bisect_right(self.levels_m, level_m), len(self.levels_m) - 1)
        held = self.volumes_m3[i] - self.volumes_m3[i - 1]
        return held / (self.levels_m[i] - self.levels_m[i - 1])


@dataclass(frozen=True)
class StoneBed:
    """Stone that shares its water with the pit: between two levels, m; plan area, m2."""

    low_m: float
    high_m: float
    plan_m2: float
    porosity: float

    def __post_init__(self) -> None:
        """Raise ValueError for a bed upside down, or with a porosity outside 0 to 1."""
        positive(thickness=self.high_m - self.low_m)
        not_negative(plan_m2=self.plan_m2)
        within(0.0, 1.0, porosity=self.porosity)

    def held_below(self, level_m: float) -> float:
        """Water in the bed up to a level, m3."""
        depth = min(max(level_m, self.low_m), self.high_m) - self.low_m
        return depth * self.plan_m2 * self.porosity


def pit_and_stone(
    bottom_m: float, spill_m: float, pit_m2: float, beds: Sequence[StoneBed] = ()
) -> Storage:
    """Return what a pit of one plan area and stone beds about it hold.

    Stone below the pit's bottom or above the spill level is left out: it does not drain to the
    pump, or cannot fill. The pit's own plan must be left out of the beds'.
    """
    positive(depth=spill_m - bottom_m, pit_m2=pit_m2)
    turns = {bottom_m, spill_m} | {level for bed in beds for level in (bed.low_m, bed.high_m)}
    levels = sorted(level for level in turns if bottom_m <= level <= spill_m)

    def held(level: float) -> float:
        stone = sum(bed.held_below(level) - bed.held_below(bottom_m) for bed in beds)
        return (level - bottom_m) * pit_m2 + stone

    return Storage(tuple(levels), tuple(held(level) for level in levels))
