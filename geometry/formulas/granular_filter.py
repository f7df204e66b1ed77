"""Will one soil hold another back, and still let its water through; will stone stay out of holes.

Base is the soil to be held, filter what is laid against it; d and D are grain sizes in metres,
fines the share passing No. 200 (0.075 mm). Of a band the worst edge counts: retention asks the
filter's coarse edge against the base's fine edge, permeability the reverse.
"""

from dataclasses import dataclass
from typing import Literal

from geometry.formulas.given import not_negative, positive, within
from geometry.sources import Source

Category = Literal[1, 2, 3, 4]

NEH_633 = Source("NRCS NEH 633 ch. 26", clause="Tables 26-1, 26-2 (base soils, D15)", sure="memory")
FEMA = Source("UFC 3-220-10", "2022", "6-5.3.1 (after FEMA 2011)", sure="second-hand")
FAA = Source("FAA, in Horonjeff, Planning and Design of Airports", clause="p. 379")
CORPS = Source("US Army Corps of Engineers, shore protection guide", clause="eqs. 9 and 10")

RETENTION = 5.0
"""D15 filter over d85 base, at most (Terzaghi; FAA in Horonjeff; FHWA HDS-6, 6.11)."""

PERMEABILITY = 5.0
"""D15 filter over d15 base, at least: 5 by NRCS (2017), USBR (2011) and FAA, 3 to 5 by the Corps
of Engineers (EM 1110-2-1901)."""

PARALLEL = 25.0
"""D50 filter over d50 base, at most (FAA in Horonjeff; FHWA HDS-6 allows 40)."""

_MM = 1e-3
_SEGREGATION = ((0.5, 20), (1.0, 25), (2.0, 30), (5.0, 40), (10.0, 50))


def base_category(fines: float) -> Category:
    """NRCS category of a base soil by the share passing No. 200, regraded on No. 4 first.

    1 above 85 %, 2 from 40 to 85 %, 3 from 15 to below 40 %, 4 below 15 %.
    """
    within(0.0, 1.0, fines=fines)
    if fines > 0.85:
        return 1
    if fines >= 0.40:
        return 2
    return 3 if fines >= 0.15 else 4


def largest_d15(fines: float, d85_base_m: float, *, dispersive: bool = False) -> float:
    """Largest D15 of a filter that holds a base soil without erosion, m (NRCS, FEMA).

    Category 1: 9 d85, at least 0.2 mm (dispersive 6.5 d85). 2: 0.7 mm (dispersive 0.5 mm).
    3: (40 - A)/25 (4 d85 - 0.7 mm) + 0.7 mm with A the percent passing No. 200, and 0.7 mm where
    4 d85 is less (dispersive likewise with 0.5 mm). 4: 4 d85. `fines` and d85 after regrading on
    No. 4 (gravelly bases). Categories 1 and 4 read second-hand, 2, 3 and dispersive from memory.
    """
    positive(d85_base_m=d85_base_m)
    category = base_category(fines)
    middle = (0.5 if dispersive else 0.7) * _MM
    if category == 1:
        return max(0.2 * _MM, (6.5 if dispersive else 9.0) * d85_base_m)
    if category == 2:
        return middle
    if category == 3:
        blend = (40 - 100 * fines) / 25
        return middle + blend * max(0.0, 4 * d85_base_m - middle)
    return 4 * d85_base_m


def least_d15(d15_base_m: float, factor: float = PERMEABILITY) -> float:
    """Smallest D15 of a filter that drains a base soil, m: factor x d15, not under 0.1 mm.

    d15 of the coarsest base before regrading (FEMA 2011, NRCS 2017).
    """
    positive(d15_base_m=d15_base_m)
    within(3.0, 5.0, factor=factor)
    return max(0.1 * _MM, factor * d15_base_m)


def largest_d90(d10_filter_m: float) -> float:
    """Largest D90 of a filter that does not part when placed, m, by its least D10.

    NRCS NEH 633 ch. 26, Table 26-6 (from memory): 20 mm under 0.5, 25 to 1, 30 to 2, 40 to 5,
    50 to 10, then 60 mm.
    """
    positive(d10_filter_m=d10_filter_m)
    limit = next((most for edge, most in _SEGREGATION if d10_filter_m < edge * _MM), 60)
    return limit * _MM


def retention_ratio(d15_filter_m: float, d85_base_m: float) -> float:
    """D15 filter over d85 base, to hold against RETENTION."""
    positive(d15_filter_m=d15_filter_m, d85_base_m=d85_base_m)
    return d15_filter_m / d85_base_m


def permeability_ratio(d15_filter_m: float, d15_base_m: float) -> float:
    """D15 filter over d15 base, to hold against PERMEABILITY."""
    positive(d15_filter_m=d15_filter_m, d15_base_m=d15_base_m)
    return d15_filter_m / d15_base_m


@dataclass(frozen=True)
class HoleRule:
    """A grain size of the stone round a pipe (`share` passing) over its hole, at least `least`."""

    share: float
    least: float
    source: Source


ROUND_HOLES = (
    HoleRule(0.85, 1.0, FAA),
    HoleRule(0.85, 1.2, CORPS),
    HoleRule(0.50, 1.0, FEMA),
    HoleRule(0.15, 1.0, Source("NRCS NEH 633 ch. 26", clause="critical drains", sure="memory")),
)
"""Round holes. They do not agree: D85 suits steady flow, D50 is the rule of the dam agencies,
D15 is asked where flow surges or turns. The Corps' printed range is 1.0 to 1.2."""

SLOTS = (HoleRule(0.85, 1.4, CORPS),)
"""Slots, by their width; the printed range is 1.2 to 1.4."""


def hole_ratio(grain_m: float, hole_m: float) -> float:
    """A grain size of the stone over the hole's diameter (or the slot's width)."""
    positive(grain_m=grain_m, hole_m=hole_m)
    return grain_m / hole_m


def largest_hole(grain_m: float, least: float = 1.0) -> float:
    """Largest hole that keeps a grain size at `least` times its diameter, m."""
    not_negative(grain_m=grain_m)
    positive(least=least)
    return grain_m / least
