"""Loss along a slab's edge by the energy codes' factors: for slabs at grade, not for basements.

The factors are those of WAC 51-11C-61061, Table A106.1, seen second-hand; which R a figure
belongs to is inferred.
"""

from dataclasses import dataclass
from math import isclose

from geometry.units import INCH, to_unit

MOST_DEPTH_M = 12 * INCH
"""A floor deeper under the grade is no slab at grade (IECC, from memory)."""

# R of the boards under the whole slab, and Btu/h F ft; fully insulated, its edge with it.
_PLAIN = ((0, 0.73), (10, 0.36), (15, 0.31), (20, 0.26), (30, 0.21))
_WARMED = ((0, 0.84), (5, 0.74), (10, 0.55), (15, 0.44), (20, 0.39), (30, 0.32))

_R_IP = to_unit(1.0, "hour*delta_degF*foot**2/Btu", "K*m**2/W")
_F_IP = to_unit(1.0, "Btu/(hour*foot*delta_degF)", "W/(m*K)")


@dataclass(frozen=True)
class FFactor:
    """A factor of the table, W/mK, for boards of at least r_table (US R), and the loss, W/K.

    applies: whether the floor lies as near the grade as the table is meant for.
    """

    factor: float
    r_table: int
    warmed: bool
    loss_w_k: float
    applies: bool


def f_factor(
    resistance: float, perimeter_m: float, depth_m: float, *, warmed: bool = False
) -> FFactor:
    """Return the table's row of boards under a whole slab, the next weaker where none is alike.

    resistance: of the boards, m2K/W. warmed: with heating tubes.
    """
    r_value = resistance / _R_IP
    rows = _WARMED if warmed else _PLAIN
    fits = [row for row in rows if row[0] <= r_value or isclose(row[0], r_value, rel_tol=1e-3)]
    r_table, factor = fits[-1]
    metric = factor * _F_IP
    return FFactor(metric, r_table, warmed, metric * perimeter_m, depth_m < MOST_DEPTH_M)
