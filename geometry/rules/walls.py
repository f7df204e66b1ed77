"""Rules on foundation walls: above grade, thickness by the code's table, what holds the foot."""

from dataclasses import dataclass
from typing import Literal

from geometry.rules.limit import MET_WITHIN_M, Limit
from geometry.sources import Source
from geometry.units import FOOT, INCH

ABOVE_GRADE = Limit(
    "wall-above-grade", "top of wall 6 in or more above the finished grade",
    "Wood nearer the ground takes up splash and damp, and termites get in unseen.",
    Source("IRC", "2015", "R404.1.6 (4 in with masonry veneer)"), least=6 * INCH,
)  # fmt: skip

BRACE_SLAB = Limit(
    "wall-foot", "3 1/2 in of slab poured tight to the wall, or a keyway or dowels",
    "Fill pushes the wall's foot inward; the slab's edge is what usually stops it.",
    Source("Minnesota rules", clause="1309.0404 (amends IRC R404.1)"), least=3.5 * INCH,
)  # fmt: skip

WATERPROOF = Limit(
    "wall-waterproofing", "waterproofing, not damp-proofing alone, where ground water stands high",
    "Damp-proofing keeps soil damp out; water that stands against it comes through.",
    Source("IRC", "2018", "R406.1, R406.2"),
)  # fmt: skip

Answer = Literal["table value", "needs an engineer", "table not at hand"]

_PLAIN_MASONRY = Source(
    "IRC", "2003", "Table R404.1.1(1), as told by a home builders' research centre",
    sure="second-hand",
)  # fmt: skip
_ENGINEERED = Source("IRC", clause="R404.1.3 (water pressure: engineered)", sure="memory")
_TABLES = Source("IRC", clause="Tables R404.1.1, R404.1.2 (not at hand)", sure="memory")
_MASONRY = ("block", "masonry", "cmu", "brick")


@dataclass(frozen=True)
class WallAnswer:
    """What the code's table says of a wall, as far as it is at hand. It never says it holds."""

    answer: Answer
    words: str
    source: Source


def wall_answer(
    kind: str, thickness_m: float, height_m: float, fill_m: float, *, water: bool
) -> WallAnswer:
    """Return the table's value for a wall of a kind in words, held at top and foot.

    fill_m: unbalanced. water: ground water presses on it.
    """
    if water:
        words = "ground water stands against it: no table of the code holds for that"
        return WallAnswer("needs an engineer", words, _ENGINEERED)
    masonry = any(word in kind.lower() for word in _MASONRY)
    # Nominal 8 in is 7 5/8 in of block.
    thick = thickness_m >= 7.625 * INCH - MET_WITHIN_M
    low = height_m <= 9 * FOOT + MET_WITHIN_M and fill_m <= 4 * FOOT + MET_WITHIN_M
    if masonry and thick and low:
        words = (
            "8 in of solid or fully grouted masonry, up to 9 ft high: 4 ft of fill without bars, "
            "held at top and foot"
        )
        return WallAnswer("table value", words, _PLAIN_MASONRY)
    return WallAnswer(
        "table not at hand", "ask which row of the code's table this wall is taken from", _TABLES
    )
