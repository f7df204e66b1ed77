"""Rules on the ground round the house and the pit in its floor: dig, grade, pit, termites."""

from geometry.rules.limit import Limit
from geometry.sources import Source
from geometry.units import FOOT, INCH

GRADE = Limit(
    "grade-away", "grade falling 6 in or more within 10 ft of the house",
    "Rain that stands at the wall goes down along it and into the drain.",
    Source("IRC", "2015", "R401.3 (a drain or swale where a wall or lot line is in the way)"),
    least=6 * INCH,
)  # fmt: skip
GRADE_WITHIN_M = 10 * FOOT

_PIT = Source("IRC", "2021", "P3303.1.2")
PIT_WIDTH = Limit(
    "pit-width", "pit 18 in or more across",
    "The pump needs room, and so do hands that change it.", _PIT, least=18 * INCH,
)  # fmt: skip
PIT_DEPTH = Limit(
    "pit-depth", "pit 24 in or more deep",
    "A shallow pit fills at once, and the pump starts too often.", _PIT, least=24 * INCH,
)  # fmt: skip

TERMITES = Limit(
    "foam-termites", "no foam in the ground where termites are very heavy, unless excepted",
    "Termites do not eat foam, they tunnel through it to the wood, unseen.",
    Source("IRC", clause="R318.4, as told by a foam makers' association", sure="second-hand"),
)  # fmt: skip

DIG_SLOPE = Limit(
    "dig-slope", "sides of a hole 5 ft deep or more laid back 1 1/2 across for 1 up, unless a "
    "competent person has classed the ground or the sides are shored",
    "A side that slides buries whoever works under it; a yard of earth weighs as much as a car.",
    Source("29 CFR 1926.652", clause="(a)(1), (b)(1)(i); Appendix B: 3/4 to 1 1/2 across by class"),
    least=1.5, code="",
)  # fmt: skip
DIG_DEEP_M = 5 * FOOT
"""Depth from which sides are protected whatever the ground, source of DIG_SLOPE."""

PIT_SEALED = Source(
    "ANSI/AARST CCAH", "2020", "404.1.1 (lid with a gasket, fastened, openings sealed)"
)
