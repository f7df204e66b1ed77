"""Pairs of rules that no pipe of this size with this fall can meet together in this house.

Each rule leaves the invert at the drain's low point a range, open at one end: a rule that holds a
point down bounds it through the high point, one that holds a point up through the low point. Two
rules whose ranges have nothing in common clash, wherever the pipe is laid.
"""

from collections.abc import Iterable
from dataclasses import dataclass
from itertools import product

from geometry.layout.drain import DrainLayout
from geometry.layout.lay import Layout
from geometry.rules.height_rule import HeightRule
from geometry.units import System, show_length, show_level
from geometry.water.heights import DrainHeights, below, drain_heights, over_invert
from geometry.water.verdicts import MET_WITHIN_M


@dataclass(frozen=True)
class Clash:
    """Two rules that exclude each other; levels of the low point's invert, project TOF, metres.

    least: the lowest the upper rule lets it be. most: the highest the lower rule lets it be.
    """

    up: HeightRule
    down: HeightRule
    least: float
    most: float

    @property
    def apart(self) -> float:
        """How far the two ranges lie apart, metres."""
        return self.least - self.most

    def sentence(self, tof: float, system: System) -> str:
        """Return the clash in words; tof: the drained area's top of footing."""
        least, most = (show_level(x - tof, system) for x in (self.least, self.most))
        return (
            f"“{self.up.title}” ({self.up.source.title}) wants the invert at the low point at "
            f"{least} or higher, “{self.down.title}” ({self.down.source.title}) at {most} or "
            f"lower: {show_length(self.apart, system)} apart."
        )


def clashes(layout: Layout, rules: Iterable[HeightRule]) -> tuple[Clash, ...]:
    """Return the pairs that exclude each other, the widest apart first.

    Of rules that say the same in several codes the first alone is paired.
    """
    heights, drain = drain_heights(layout), layout.drain
    if heights is None or drain is None:
        return ()
    ups: list[tuple[HeightRule, float]] = []
    downs: list[tuple[HeightRule, float]] = []
    for rule in _once(rules):
        bound = invert_bound(drain, heights, rule)
        if bound is not None:
            (downs if below(rule) else ups).append((rule, bound))
    pairs = [Clash(up, down, a, b) for (up, a), (down, b) in product(ups, downs)]
    # Each counts as met that much off: midway between, rules less than twice that apart both do.
    found = [pair for pair in pairs if pair.apart > 2 * MET_WITHIN_M]
    return tuple(sorted(found, key=lambda pair: -pair.apart))


def _once(rules: Iterable[HeightRule]) -> Iterable[HeightRule]:
    """Return rules less those that hold the same point to the same level as one before."""
    kept: dict[tuple[object, ...], HeightRule] = {}
    for rule in rules:
        says = (rule.point, rule.sense, rule.reference, rule.or_reference, rule.margin_m)
        kept.setdefault(says, rule)
    return kept.values()


def invert_bound(drain: DrainLayout, heights: DrainHeights, rule: HeightRule) -> float | None:
    """Return the bound a rule sets to the low point's invert, metres against the project's TOF.

    The most for a rule that holds its point down, else the least; with the fall, bedding and
    cover of the design. None where it sets none: more stone can always be heaped up.
    """
    limit = heights.limit(rule)
    if limit is None or (rule.point == "stone top" and not below(rule)):
        return None
    rise = drain.rise if below(rule) else 0.0
    if rule.point == "trench bottom":
        return limit + drain.outlet_invert - drain.stone_bottom
    if rule.point == "stone top":
        return limit - drain.drain.stone.cover - drain.bore - drain.radius - rise
    height = over_invert(drain).get(rule.point)
    return None if height is None else limit - height - rise
