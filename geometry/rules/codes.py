"""Rule sets in force somewhere, which contradict each other, each with the text it was read from.

Short wordings are ours; the note says where a text names no point of the pipe. Whether a rule is
in force on a site is the building department's to say.
"""

from geometry.rules.height_rule import FallRule, HeightRule, RuleSet, SizeRule
from geometry.sources import PRACTICE, Source
from geometry.units import INCH

_IRC_2000 = Source("IRC", "2000, as reprinted by a city", "R405.1")
_IRC_2018 = Source("IRC", "2018 and later", "R405.1", sure="second-hand")
_IBC_NJ = Source("IBC", "as worded in New Jersey's IRC R406.4.2", "1805.4.2")
_IBC = Source("IBC", clause="1805.4.2", sure="second-hand")
_NBC = Source("Ontario and BC codes", "O. Reg. 332/12; BCBC 2024", "9.14.3.3.(1)")
_NBC_STONE = Source("Ontario code", "O. Reg. 332/12", "9.14.3.3.(4)")
_DIN_INVERT = Source("DIN 4095", "1990, as told by a surveyor", sure="second-hand")
_DIN_CROWN = Source("DIN 4095", "1990", sure="memory")
_DIN_BASE = Source("Guide to DIN 4095", "trade association's magazine, June 2022", "p. 15")
_WAYNE = Source("Wayne, Michigan", "codified ordinances", "1438.02")
_HENRICO = Source("Henrico County, Virginia", "inspection requirements, drain tile")
_VA = Source("US Veterans Affairs", "plumbing design criteria, subsoil drains")

_UNSAID = "The text does not say which point of the drain; its top is taken."
_STONE_TOP = "stone 6 in or more above top of footing"
_ABOVE_TOF = 6 * INCH

IRC = RuleSet(
    "irc",
    "IRC R405.1",
    (
        HeightRule("irc-area", "drain at or below the area it protects", "crown", "slab top",
                   "at or below", 0.0, _IRC_2000, _UNSAID),
        HeightRule("irc-tof", "drain at or below top of footing, or below the slab", "crown",
                   "TOF", "at or below", 0.0, _IRC_2018, _UNSAID, "slab underside"),
        HeightRule("irc-stone", _STONE_TOP, "stone top", "TOF", "at or above", _ABOVE_TOF,
                   _IRC_2000),
    ),
    (
        SizeRule("irc-beyond", "stone 1 ft or more beyond the footing", "stone beyond footing",
                 12 * INCH, _IRC_2000),
        SizeRule("irc-bedding", "2 in or more of stone under the pipe", "bedding", 2 * INCH,
                 _IRC_2018),
        SizeRule("irc-cover", "6 in or more of stone over the pipe", "stone over pipe", 6 * INCH,
                 _IRC_2018),
    ),
)  # fmt: skip

IBC = RuleSet(
    "ibc",
    "IBC 1805.4.2",
    (
        HeightRule("ibc-invert", "invert not higher than the floor", "invert", "slab top",
                   "at or below", 0.0, _IBC_NJ),
        HeightRule("ibc-base", "bottom of the stone not higher than that of the floor's base",
                   "trench bottom", "base underside", "at or below", 0.0, _IBC),
        HeightRule("ibc-stone", _STONE_TOP, "stone top", "TOF", "at or above", _ABOVE_TOF, _IBC),
    ),
    (
        SizeRule("ibc-beyond", "stone 12 in or more beyond the footing", "stone beyond footing",
                 12 * INCH, _IBC),
        SizeRule("ibc-bedding", "2 in or more of stone under the pipe", "bedding", 2 * INCH, _IBC),
        SizeRule("ibc-cover", "6 in or more of stone over the pipe", "stone over pipe", 6 * INCH,
                 _IBC),
    ),
)  # fmt: skip

CANADA = RuleSet(
    "canada",
    "Ontario and BC 9.14.3.3",
    (
        HeightRule("canada-crown", "top of pipe below the bottom of the floor slab", "crown",
                   "slab underside", "at or below", 0.0, _NBC),
    ),
    (
        SizeRule("canada-over", "150 mm or more of stone on the pipe", "stone over pipe", 0.15,
                 _NBC_STONE),
        SizeRule("canada-beside", "150 mm or more of stone beside the pipe", "stone beside pipe",
                 0.15, _NBC_STONE),
    ),
)  # fmt: skip

DIN = RuleSet(
    "din",
    "DIN 4095",
    (
        HeightRule("din-invert", "invert 20 cm or more below the top of the floor slab", "invert",
                   "slab top", "at or below", 0.20, _DIN_INVERT,
                   "The text means the bare slab at the high point; the finished floor is taken."),
        HeightRule("din-crown", "top of pipe nowhere above the top of the floor slab", "crown",
                   "slab top", "at or below", 0.0, _DIN_CROWN),
        HeightRule("din-base", "trench not below the bottom of the footing", "trench bottom",
                   "footing bottom", "at or above", 0.0, _DIN_BASE),
    ),
)  # fmt: skip

BEARING = RuleSet(
    "bearing",
    "The footing's bearing",
    (
        HeightRule("bearing-trench", "trench beside the footing not below its bottom",
                   "trench bottom", "footing bottom", "at or above", 0.0, PRACTICE,
                   "Deeper only outside a 1:1 splay from the footing's bottom edge."),
    ),
)  # fmt: skip

WAYNE = RuleSet(
    "wayne",
    "Wayne, Michigan",
    (
        HeightRule("wayne-low", "invert level with the base of the footing: not lower", "invert",
                   "footing bottom", "at or above", 0.0, _WAYNE),
        HeightRule("wayne-high", "invert level with the base of the footing: not higher", "invert",
                   "footing bottom", "at or below", 0.0, _WAYNE),
    ),
    (
        SizeRule("wayne-bedding", "2 in of stone under the pipe", "bedding", 2 * INCH, _WAYNE),
        SizeRule("wayne-cover", "6 in or more of stone over the pipe", "stone over pipe", 6 * INCH,
                 _WAYNE),
    ),
    local=True,
)  # fmt: skip

HENRICO = RuleSet(
    "henrico",
    "Henrico County, Virginia",
    (
        HeightRule("henrico-top", "pipe beside the top of the footing, or on it", "crown", "TOF",
                   "at or above", 0.0, _HENRICO,
                   "Taken as: the pipe reaches up to top of footing."),
    ),
    (
        SizeRule("henrico-bedding", "2 in or more of stone under the pipe", "bedding", 2 * INCH,
                 _HENRICO),
        SizeRule("henrico-cover", "6 in or more of stone over the pipe", "stone over pipe",
                 6 * INCH, _HENRICO),
    ),
    local=True,
)  # fmt: skip

VETERANS = RuleSet(
    "veterans",
    "US Veterans Affairs",
    (
        HeightRule("veterans-base", "drain not lower than the base of footings beside it",
                   "pipe underside", "footing bottom", "at or above", 0.0, _VA,
                   "The text does not say which point of the drain; its underside is taken."),
    ),
    local=True,
)  # fmt: skip

RULE_SETS: tuple[RuleSet, ...] = (IRC, IBC, CANADA, DIN, BEARING, WAYNE, HENRICO, VETERANS)

FALLS: tuple[FallRule, ...] = (
    FallRule("level", "level, without dips", 0.0, PRACTICE),
    FallRule("hunting-valley", "1/16 in per ft or more", 1 / 192,
             Source("Hunting Valley, Ohio", "codified ordinances", "Ord. 1992-101")),
    FallRule("din-fall", "0.5 % or more", 0.005, _DIN_INVERT),
    FallRule("eighth", "1/8 in per ft", 1 / 96, PRACTICE),
)  # fmt: skip

CROWN_BELOW_SLAB = CANADA.heights[0]
INVERT_BELOW_FLOOR = IBC.heights[0]
TRENCH_ABOVE_FOOTING_BOTTOM = BEARING.heights[0]
