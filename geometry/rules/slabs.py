"""Rules on the floor's slab and what lies under it: thickness, base, sheet, joints."""

from geometry.rules.limit import Limit
from geometry.sources import PRACTICE, Source
from geometry.units import FOOT, INCH

_R506 = Source("IRC", "2009", "R506.1", sure="second-hand")
_ACI = Source("ACI 302.1R", clause="24 to 36 times the slab", sure="second-hand")

SLAB = Limit(
    "slab-thickness", "slab 3 1/2 in thick or more",
    "A thinner one cracks where a wheel or a shelf's foot stands.", _R506, least=3.5 * INCH,
)  # fmt: skip
BASE = Limit(
    "floor-base", "4 in or more of clean stone or sand under a slab below grade",
    "Water finds its way through it to the drain and does not rise in it to the slab.",
    Source("IRC", "2009", "R506.2.2", sure="second-hand"), least=4 * INCH,
)  # fmt: skip
SHEET = Limit(
    "floor-retarder", "a vapor retarder between slab and base",
    "Without it damp from the ground comes up through the slab for good.",
    Source("IRC", "2012", "R506.2.3"),
)  # fmt: skip
LAP = Limit(
    "retarder-laps", "sheets lapped 6 in or more",
    "Vapor and soil gas pass where two sheets only meet.",
    Source("IRC", "2012", "R506.2.3"), least=6 * INCH,
)  # fmt: skip
GAS_LAP_M = 12 * INCH
"""Lap that soil-gas rules ask for, source GAS_SOURCE."""
GAS_SOURCE = Source("NREL Standard Work Specifications", clause="2.0401.1 (soil gas)")
GAS_BASE = Limit(
    "radon-vent", "4 in or more of clean stone under the whole slab, sheets lapped 12 in",
    "Soil gas must find its way through the stone to one pipe, and not through the floor.",
    Source("ANSI/AARST RRNC-2020", clause="403.1.1; IRC Appendix F, AF103.2, AF103.3 from memory"),
    least=4 * INCH, code="",
)  # fmt: skip
SAND_OVER = Limit(
    "floor-order", "no sand or stone between sheet and slab, unless it stays dry",
    "Rain or wet cure soaks it, and the sheet keeps that water under the floor for years.",
    Source("ASTM E1643-11(2017)", clause="7.4, and ACI 302.2R", sure="second-hand"), code="",
)  # fmt: skip
PANEL_RATIO = Limit(
    "slab-panels", "panels no longer than 1.5 times their width",
    "A long panel cracks across in its middle.",
    Source("ACI 302.1R", clause="panels", sure="second-hand"), most=1.5, code="",
)  # fmt: skip
EDGE_JOINT = Limit(
    "slab-isolation", "slab kept apart from walls and piers by a joint",
    "The slab shrinks and settles otherwise than wall and pier, and cracks where it hangs on them.",
    PRACTICE, code="",
)  # fmt: skip

LEAST_TIMES, MOST_TIMES = 24, 36
"""Spacing of joints over the slab's thickness: by 24 for most mixes, 36 for stiff ones."""

MOST_SPACING_M = 18 * FOOT
"""No panel longer than this whatever the thickness: ACI 360R-06, second-hand."""


def spacing(thickness_m: float) -> Limit:
    """Return how far apart joints may be in a slab of a thickness."""
    return Limit(
        "slab-joints", "joints no farther apart than 36 times the slab, 18 ft at most",
        "Concrete shrinks as it dries and cracks somewhere: a cut says where.",
        _ACI, most=min(MOST_TIMES * thickness_m, MOST_SPACING_M), code="",
    )  # fmt: skip


def saw_depth(thickness_m: float) -> float:
    """Return how deep a joint is sawn: a quarter of the slab, 1 in at least (ACI 302.1R)."""
    return max(thickness_m / 4, 1 * INCH)
