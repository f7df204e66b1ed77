"""Energy codes' least insulation of slabs at grade and of basement walls, by climate zone.

IECC R402.1.2 and .1.3, IRC N1102.1.2 and .1.3, in the editions that are in force in most places.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Literal

from geometry.rules.limit import Limit
from geometry.sources import Source
from geometry.units import FOOT, INCH, to_unit

Zone = Literal["1", "2", "3", "4", "4C", "5", "6", "7", "8"]
"""Climate zones of the code; moist or dry (A, B) makes no difference here, marine 4 (C) does."""

R_IP = to_unit(1.0, "hour*delta_degF*foot**2/Btu", "K*m**2/W")
"""One of the R that boards are sold by, m2K/W."""

AT_GRADE_M = 12 * INCH
"""A floor less deep under the grade than this is a slab at grade: IECC R402.2.10 (from memory)."""

_TABLE = Source(
    "IRC", "2018", "table N1102.1.2, as a city's code prints it, and a national laboratory's "
    "comparison of editions",
)  # fmt: skip
_TABLE_2021 = Source("IRC", "2021", "table N1102.1.3, as a national laboratory prints it")
_HEATED = Source(
    "IRC", clause="table N1102.1.2, note d, as states print it: R-5 under heated slabs"
)


@dataclass(frozen=True)
class EnergyRule:
    """What an edition asks in a zone, US R. continuous or cavity: either does for a wall.

    slab_r, slab_depth_m: of the edge of a slab at grade, from its top down or inward.
    """

    continuous: int
    cavity: int
    slab_r: int
    slab_depth_m: float


@dataclass(frozen=True)
class EnergyEdition:
    """An edition by the key of `[rules] sets`; zones in their order, 4 marine counted as 5."""

    key: str
    title: str
    source: Source
    rules: dict[Zone, EnergyRule]


def _zones(*rows: tuple[str, EnergyRule]) -> dict[Zone, EnergyRule]:
    return {zone: rule for zones, rule in rows for zone in zones.split()}  # type: ignore[misc]


_NONE = EnergyRule(0, 0, 0, 0.0)
_BEFORE = _zones(
    ("1 2", _NONE),
    ("3", EnergyRule(5, 13, 0, 0.0)),
    ("4", EnergyRule(10, 13, 10, 2 * FOOT)),
    ("4C 5", EnergyRule(15, 19, 10, 2 * FOOT)),
    ("6 7 8", EnergyRule(15, 19, 10, 4 * FOOT)),
)
_SINCE_2021 = _zones(
    ("1 2", _NONE),
    ("3", EnergyRule(5, 13, 10, 2 * FOOT)),
    ("4", EnergyRule(10, 13, 10, 4 * FOOT)),
    ("4C 5 6 7 8", EnergyRule(15, 19, 10, 4 * FOOT)),
)
ENERGY: tuple[EnergyEdition, ...] = (
    EnergyEdition("irc-2012", "IRC 2012", _TABLE, _BEFORE),
    EnergyEdition("irc-2018", "IRC 2018", _TABLE, _BEFORE),
    EnergyEdition("irc-2021", "IRC 2021", _TABLE_2021, _SINCE_2021),
)

UNDER_HEATED = 5
"""US R under the whole of a heated slab, on top of its edge's; its source is in `heated`."""


def energy_editions(codes: frozenset[str]) -> tuple[EnergyEdition, ...]:
    """Return the editions a job is held to: those it names; all where it names the code or none.

    None where it names other codes alone, or only an edition whose table is not known here.
    """
    named = tuple(one for one in ENERGY if one.key in codes)
    editions = any(code.startswith("irc-") for code in codes)
    return named or (ENERGY if not codes or ("irc" in codes and not editions) else ())


def wall_limit(editions: Sequence[EnergyEdition], zone: Zone) -> Limit:
    """Return what editions that ask alike ask of a basement wall, m2K/W of boards over it."""
    rule = editions[0].rules[zone]
    return Limit(
        "energy-wall",
        f"{_titles(editions)}, zone {zone}: basement walls R-{rule.continuous} in boards, or "
        f"R-{rule.cavity} between studs",
        "Concrete keeps no heat: without boards a basement loses more through its walls than "
        "through its floor.",
        editions[-1].source, least=rule.continuous * R_IP,
    )  # fmt: skip


def slab_limit(editions: Sequence[EnergyEdition], zone: Zone, depth: str) -> Limit:
    """Return what editions that ask alike ask of a slab's edge at grade, m2K/W; depth: in words."""
    rule = editions[0].rules[zone]
    return Limit(
        "energy-slab",
        f"{_titles(editions)}, zone {zone}: slab at grade R-{rule.slab_r} at its edge, {depth} "
        "from its top down or inward",
        "Most of a slab's heat leaves by its edge, where the ground is as cold as the air.",
        editions[-1].source, least=rule.slab_r * R_IP,
    )  # fmt: skip


def _titles(editions: Sequence[EnergyEdition]) -> str:
    return ", ".join(one.title for one in editions)


def heated() -> Limit:
    """Return what is asked under the whole of a heated slab, m2K/W."""
    return Limit(
        "energy-heated-slab", f"R-{UNDER_HEATED} or more under the whole of a heated slab",
        "A warm slab drives heat into the ground all winter, in its middle too.",
        _HEATED, least=UNDER_HEATED * R_IP,
    )  # fmt: skip
