"""Heating tubes as laid: loops too long or uneven, bends too tight, floor they do not reach."""

from collections.abc import Iterator

from geometry.checks.finding import Finding
from geometry.layout.lay import Layout
from geometry.layout.tubing.lay import Tubes, lay_tubes
from geometry.materials.tubes import BEND_SOURCE, BEND_TIMES, LOOP_SOURCE
from geometry.sources import GEOMETRY, PRACTICE
from geometry.units import FOOT, System, show_length

# Loops on one manifold differ by no more than this share of the longest (common practice).
_EVEN = 0.10
# Less of a floor than this within a spacing of a tube leaves cold strips (common practice).
_COVERED = 0.85


def tubing_findings(layout: Layout) -> Iterator[Finding]:
    """Yield what was found on each floor's tubes; nothing without any."""
    system = layout.design.project.units
    for tubes in lay_tubes(layout):
        subject = f"{tubes.area.name}, heating tubes"
        wrong = list(_wrong(tubes, subject, system))
        yield from wrong
        if tubes.loops and not wrong:
            yield _sound(tubes, subject, system)


def _wrong(tubes: Tubes, subject: str, system: System) -> Iterator[Finding]:
    if not tubes.loops:
        yield Finding(
            "tubing-none", "look", subject, "No loop fits into this floor.",
            "room for one loop at the spacing, in a slab", GEOMETRY,
            "Lay the tubes nearer together or nearer to the edge, or give the floor a slab.",
        )  # fmt: skip
        return
    yield from _long(tubes, subject, system)
    yield from _uneven(tubes, subject, system)
    yield from _tight(tubes, subject, system)
    if tubes.left_out or tubes.covered < _COVERED:
        yield Finding(
            "tubing-reach", "look", subject,
            f"{tubes.covered:.0%} of the slab lies within a spacing of a tube.",
            f"{_COVERED:.0%} or more", PRACTICE,
            "Look for cold strips on the plan of the tubes; nearer spacing reaches into corners.",
        )  # fmt: skip


def _long(tubes: Tubes, subject: str, system: System) -> Iterator[Finding]:
    if tubes.too_long:
        longest = max(loop.whole_m for loop in tubes.too_long)
        yield Finding(
            "tubing-long", "look", subject,
            f"{len(tubes.too_long)} of {len(tubes.loops)} loops "
            f"{'is' if len(tubes.too_long) == 1 else 'are'} longer than allowed, up to "
            f"{_tube(longest, system)}: there is no room before the manifold to start more.",
            f"loops of {_tube(tubes.tubing.longest, system)} at the most", LOOP_SOURCE,
            "Set the manifold at a longer wall, or give each part of the floor its own.",
        )  # fmt: skip


def _uneven(tubes: Tubes, subject: str, system: System) -> Iterator[Finding]:
    """Yield one finding for parts whose loops differ much: water takes the short way."""
    for part in tubes.parts:
        wholes = [loop.whole_m for loop in part.loops]
        if max(wholes) - min(wholes) > _EVEN * max(wholes):
            yield Finding(
                "tubing-uneven", "look", subject,
                f"Loops are {_tube(min(wholes), system)} to {_tube(max(wholes), system)} long.",
                f"loops of one manifold alike within {_EVEN:.0%}", PRACTICE,
                "Move the manifold, or set a valve in each loop and balance them.",
            )  # fmt: skip


def _tight(tubes: Tubes, subject: str, system: System) -> Iterator[Finding]:
    tight = sum(loop.tight for loop in tubes.loops)
    if tight:
        bend = show_length(tubes.tube.bend, system)
        yield Finding(
            "tubing-bends", "look", subject,
            f"{tight} {'bend is' if tight == 1 else 'bends are'} tighter than {bend}: runs "
            f"{_apart(tubes, system)} apart turn back more sharply than the tube bends.",
            f"bends of {BEND_TIMES} times the tube's outside, {bend}", BEND_SOURCE,
            "Widen the ends of the runs to loops, take the thinner tube, or lay counterflow, which "
            "turns less.",
        )  # fmt: skip


def _sound(tubes: Tubes, subject: str, system: System) -> Finding:
    wholes = [loop.whole_m for loop in tubes.loops]
    count = "1 loop" if len(wholes) == 1 else f"{len(wholes)} loops"
    span = " to ".join(dict.fromkeys(_tube(x, system) for x in (min(wholes), max(wholes))))
    return Finding(
        "tubing", "fine", subject,
        f"{count}, {span} each, {_apart(tubes, system)} apart; {tubes.covered:.0%} of the slab "
        "lies within a spacing of a tube. No tube crosses another.",
        f"loops of {_tube(tubes.tubing.longest, system)} at the most, alike within {_EVEN:.0%}",
        LOOP_SOURCE, "Lay it so, press it before the pour, and photograph it with a tape beside.",
    )  # fmt: skip


def _apart(tubes: Tubes, system: System) -> str:
    return show_length(tubes.tubing.spacing, system)


def _tube(metres: float, system: System) -> str:
    """Print a length of tube: to the foot, or to the decimetre."""
    return f"{metres:,.1f} m" if system == "metric" else f"{metres / FOOT:,.0f} ft"
