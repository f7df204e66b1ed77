"""Will a filter fabric hold the soil, let its water through and stay open.

Openings (AOS, O95) and grain sizes in metres, permittivity in 1/s (ASTM D4491: flow per area and
head), fines the share passing No. 200 (0.075 mm). All rules are for steady flow toward a drain.
"""

from dataclasses import dataclass
from math import inf

from geometry.formulas.given import positive, within
from geometry.sources import Source

FHWA = Source("FHWA NHI-07-092", "2008", "chapter 2 (retention, clogging)", sure="memory")
M288 = Source("AASHTO M 288, in UFGS-02373", clause="subsurface drainage by passing No. 200")
CORPS = Source("US Army Corps of Engineers, shore protection guide", clause="eq. 11 (fabric)")

CLOGGING_NOTE = (
    "Retention and permeability do not prove that a fabric stays open. Silt without clay, gap-"
    "graded soil, iron-bearing or alkaline water and muddy placing clog fabrics; a gradient ratio "
    "test with the site's soil (ASTM D5101) is the proof."
)

_MM = 1e-3
_FINE_SOIL_OPENING = 0.3 * _MM


@dataclass(frozen=True)
class DrainageLimits:
    """AASHTO M 288 limits of a drainage fabric: opening at most, permittivity at least."""

    opening_m: float
    permittivity_per_s: float


def m288_limits(fines: float) -> DrainageLimits:
    """M 288 limits by the soil's share passing No. 200: under 15 %, to 50 %, above.

    0.43, 0.25, 0.22 mm and 0.5, 0.2, 0.1 1/s.
    """
    within(0.0, 1.0, fines=fines)
    if fines < 0.15:
        return DrainageLimits(0.43 * _MM, 0.5)
    if fines <= 0.50:
        return DrainageLimits(0.25 * _MM, 0.2)
    return DrainageLimits(0.22 * _MM, 0.1)


def retention_factor(fines: float, uniformity: float, *, woven: bool = False) -> float:
    """B of the FHWA rule O95 <= B d85 (Christopher and Holtz; B from memory).

    Up to half fines by Cu = d60/d10: 1 at 2 and below, 0.5 Cu to 4, 8/Cu to 8, 1 above. More
    fines: 1 woven, 1.8 nonwoven.
    """
    within(0.0, 1.0, fines=fines)
    within(1.0, inf, uniformity=uniformity)
    if fines > 0.50:
        return 1.0 if woven else 1.8
    if uniformity <= 2 or uniformity >= 8:
        return 1.0
    return 0.5 * uniformity if uniformity <= 4 else 8 / uniformity


def fhwa_opening(d85_m: float, fines: float, uniformity: float, *, woven: bool = False) -> float:
    """Largest opening O95 that holds the soil, m: B d85, and 0.3 mm in more than half fines."""
    positive(d85_m=d85_m)
    held = retention_factor(fines, uniformity, woven=woven) * d85_m
    return min(held, _FINE_SOIL_OPENING) if fines > 0.50 else held


def corps_opening(d85_m: float, fines: float) -> float | None:
    """Largest opening by the Corps of Engineers, m; None where no fabric should lie on the soil.

    d85 up to half fines, No. 70 (0.212 mm) above, no fabric alone above 85 %; never an opening
    under No. 100 (0.150 mm), so a d85 below that is None too.
    """
    positive(d85_m=d85_m)
    within(0.0, 1.0, fines=fines)
    if fines > 0.85:
        return None
    most = d85_m if fines < 0.50 else 0.212 * _MM
    return most if most >= 0.150 * _MM else None


def least_opening(d15_m: float, uniformity: float) -> float | None:
    """Smallest opening that does not clog, m: 3 d15 where Cu is above 3 (FHWA; from memory).

    None for narrower soils: there one takes the largest opening that still retains.
    """
    positive(d15_m=d15_m)
    return 3 * d15_m if uniformity > 3 else None


def fabric_permeability(permittivity_per_s: float, thickness_m: float) -> float:
    """Permeability across the fabric, m/s: psi t (ASTM D4491)."""
    positive(permittivity_per_s=permittivity_per_s, thickness_m=thickness_m)
    return permittivity_per_s * thickness_m


def permeability_factor(fabric_m_s: float, soil_m_s: float) -> float:
    """Fabric's permeability over the soil's (UFC 3-220-10, eq. 6-16): 10 to 20 asked by Giroud,
    10 to 100 by others; FHWA asks 1, and 10 where a failure would be costly (from memory)."""
    positive(fabric_m_s=fabric_m_s, soil_m_s=soil_m_s)
    return fabric_m_s / soil_m_s


def flow_through(permittivity_per_s: float, head_m: float) -> float:
    """Water through a clean fabric, m3/s per m2: psi h (ASTM D4491 tests at 50 mm)."""
    positive(permittivity_per_s=permittivity_per_s, head_m=head_m)
    return permittivity_per_s * head_m
