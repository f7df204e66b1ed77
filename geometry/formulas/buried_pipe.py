"""How far a buried flexible pipe flattens: modified Iowa deflection.

Spangler 1941, Watkins and Spangler 1958; the form with pipe stiffness is that of Moser, Buried
Pipe Design, chapter 3. Deflections are shares of the diameter (0.05 is 5 %), stresses in Pa. The
equation is empirical: with the soil moduli of Howard (1977) it met field measurements within two
points of deflection (Moser, p. 91), so a result is a size, not a prediction.
"""

from itertools import pairwise

from geometry.formulas.given import not_negative, positive, within
from geometry.sources import Source

_PLATE = 6.71
"""F/dy of the parallel-plate test is 6.71 EI/r3 (ASTM D2412; from memory, 1/0.149 in Moser)."""

_PIPE_PART, _SOIL_PART = 0.149, 0.061

BEDDING_SOURCE = Source("Moser, Buried Pipe Design", clause="Table 3.3 (after Spangler 1941)")
_BEDDING = (
    (0.0, 0.110),
    (30.0, 0.108),
    (45.0, 0.105),
    (60.0, 0.102),
    (90.0, 0.096),
    (120.0, 0.090),
    (180.0, 0.083),
)

USUAL_BEDDING = 0.1
"""Bedding constant where the angle is not known (Moser, p. 87)."""

PRISM_LAG = 1.0
"""Deflection lag to go with the prism load (Moser, p. 91)."""

USUAL_LIMIT = 0.05
"""Traditional limit of deflection (Moser, p. 115)."""

PVC_LIMIT = 0.075
"""Design limit common for PVC: reversal at 30 % over a factor of 4 (Moser, pp. 115-116)."""


def dimension_ratio(outside_diameter_m: float, wall_m: float) -> float:
    """Outside diameter over wall; the wall must be thinner than the radius."""
    positive(outside_diameter_m=outside_diameter_m, wall_m=wall_m)
    if wall_m >= outside_diameter_m / 2:
        raise ValueError("wall_m must be thinner than the pipe's radius")
    return outside_diameter_m / wall_m


def pipe_stiffness(modulus_pa: float, ratio: float) -> float:
    """Pipe stiffness of a solid wall, Pa: 6.71 x 8/12 E / (DR - 1)^3, that is 4.47 E/(DR - 1)^3.

    ASTM D2412 with I = t3/12 and the mean radius; `ratio` above 2, walls uniform, short-term
    modulus. Not for corrugated walls: their stiffness is measured.
    """
    positive(modulus_pa=modulus_pa)
    if ratio <= 2:
        raise ValueError(f"ratio must be above 2, not {ratio}")
    return _PLATE * 8 / 12 * modulus_pa / (ratio - 1) ** 3


def stiffness_of_ring(ring_stiffness_pa: float) -> float:
    """Pipe stiffness of a pipe sold by ring stiffness SN = EI/D3 (ISO 9969), Pa: 53.7 SN."""
    positive(ring_stiffness_pa=ring_stiffness_pa)
    return _PLATE * 8 * ring_stiffness_pa


def bedding_constant(angle_deg: float) -> float:
    """Bedding constant K by the angle over which the bed carries the pipe, 0 to 180 degrees.

    Straight lines between the rows of Moser's Table 3.3.
    """
    within(0.0, 180.0, angle_deg=angle_deg)
    for (low, at_low), (high, at_high) in pairwise(_BEDDING):
        if angle_deg <= high:
            return at_low + (at_high - at_low) * (angle_deg - low) / (high - low)
    raise AssertionError("the last row is 180 degrees")


def deflection(
    soil_load_pa: float,
    live_load_pa: float,
    stiffness_pa: float,
    soil_modulus_pa: float,
    bedding: float = USUAL_BEDDING,
    lag: float = PRISM_LAG,
) -> float:
    """Deflection as a share of the diameter: K (DL Ws + Wl) / (0.149 PS + 0.061 E').

    Loads are pressures at the crown. The lag counts on the load that stays, not on wheels; it is
    1.0 with the prism load, 1.25 to 2.25 with the smaller Marston load. E' may be 0 (soil that
    does not help at all). Small deflections only: above some 10 % the pipe no longer obeys it.
    """
    not_negative(
        soil_load_pa=soil_load_pa, live_load_pa=live_load_pa, soil_modulus_pa=soil_modulus_pa
    )
    positive(stiffness_pa=stiffness_pa)
    within(0.05, 0.15, bedding=bedding)
    within(1.0, 3.0, lag=lag)
    resistance = _PIPE_PART * stiffness_pa + _SOIL_PART * soil_modulus_pa
    return bedding * (lag * soil_load_pa + live_load_pa) / resistance


def soil_modulus_for(
    limit: float,
    soil_load_pa: float,
    live_load_pa: float,
    stiffness_pa: float,
    bedding: float = USUAL_BEDDING,
    lag: float = PRISM_LAG,
) -> float:
    """Least E' that keeps the deflection within `limit`, Pa; 0 where the pipe alone does."""
    positive(limit=limit, stiffness_pa=stiffness_pa)
    alone = deflection(soil_load_pa, live_load_pa, stiffness_pa, 0.0, bedding, lag)
    if alone <= limit:
        return 0.0
    return _PIPE_PART * stiffness_pa * (alone / limit - 1) / _SOIL_PART
