"""Rules held against the drain as it is designed: met or not, where, and by how much."""

from collections.abc import Iterable
from dataclasses import dataclass

from geometry.layout.drain import DrainLayout
from geometry.layout.lay import Layout
from geometry.parts.rules import OwnRule
from geometry.rules.codes import BEARING, RULE_SETS
from geometry.rules.height_rule import HeightRule, Measure, RuleSet, SizeRule
from geometry.sources import Source
from geometry.units import INCH
from geometry.water.heights import below, drain_heights, own_reference, stone_top

# What a tape is read to: nearer than this a level cannot be told from its limit. It also takes
# in limits that were rounded when they were put into the other system of units.
MET_WITHIN_M = INCH / 16
OWN = "own"


@dataclass(frozen=True)
class Verdict:
    """One rule held against the drain; levels against the project's TOF, metres.

    limit: the level asked for, None where this floor or pipe has nothing to hold. low, high:
    the point's levels at the low and at the high point. low_spare, high_spare: how far they lie
    on the right side of the limit; negative on the wrong one.
    """

    rule: HeightRule
    limit: float | None = None
    low: float = 0.0
    high: float = 0.0
    low_spare: float = 0.0
    high_spare: float = 0.0

    @property
    def answered(self) -> bool:
        """Whether this house has both the point and the level."""
        return self.limit is not None

    @property
    def met_low(self) -> bool:
        """Whether the rule is met at the low point."""
        return self.answered and self.low_spare >= -MET_WITHIN_M

    @property
    def met_high(self) -> bool:
        """Whether the rule is met at the high point."""
        return self.answered and self.high_spare >= -MET_WITHIN_M

    @property
    def met(self) -> bool:
        """Whether the rule is met all along the drain, which falls evenly between the two."""
        return self.met_low and self.met_high

    @property
    def past(self) -> float:
        """How far past the limit the worse end lies, metres; 0 where the rule is met."""
        return 0.0 if self.met or not self.answered else -min(self.low_spare, self.high_spare)


@dataclass(frozen=True)
class SizeVerdict:
    """One rule on the stone's sizes: what there is at least along the drain, metres."""

    rule: SizeRule
    found: float

    @property
    def met(self) -> bool:
        """Whether there is enough."""
        return self.found >= self.rule.least_m - MET_WITHIN_M


def verdicts(layout: Layout, rules: Iterable[HeightRule]) -> tuple[Verdict, ...]:
    """Return a verdict on each rule; none without a drain."""
    heights = drain_heights(layout)
    if heights is None:
        return ()
    found = []
    for rule in rules:
        limit = heights.limit(rule)
        if limit is None or rule.point not in heights.low:
            found.append(Verdict(rule))
            continue
        low, high = heights.low[rule.point], heights.high[rule.point]
        side = 1.0 if below(rule) else -1.0
        found.append(Verdict(rule, limit, low, high, side * (limit - low), side * (limit - high)))
    return tuple(found)


def size_verdicts(layout: Layout, rules: Iterable[SizeRule]) -> tuple[SizeVerdict, ...]:
    """Return a verdict on each rule of sizes; none without a drain."""
    drain = layout.drain
    if drain is None:
        return ()
    return tuple(SizeVerdict(rule, _size(drain, rule.measure)) for rule in rules)


def _size(drain: DrainLayout, measure: Measure) -> float:
    """Return the least of a size of the stone along the drain, wrap not counted, metres."""
    stone, offset = drain.drain.stone, drain.drain.offset
    crown = drain.high_invert + drain.bore + drain.radius
    return {
        "stone beyond footing": stone.width - drain.wrap_m,
        "bedding": stone.bedding,
        "stone over pipe": stone_top(drain) - crown,
        "stone beside pipe": min(offset, stone.width - offset) - drain.wrap_m - drain.radius,
    }[measure]


def rule_sets(layout: Layout) -> tuple[RuleSet, ...]:
    """Return the built-in rule sets, and the design's own rules as one more if it has any."""
    own = tuple(_own(rule) for rule in layout.design.height_rules)
    return (*RULE_SETS, RuleSet(OWN, "This design's own rules", own)) if own else RULE_SETS


def asked_here(layout: Layout, rules: RuleSet) -> bool:
    """Return whether a rule set counts for this job.

    The design's own and the footing's bearing always do; of the others those the design names, or
    without any named all that are not of one town or agency.
    """
    named = layout.design.rules.codes
    if rules.key in (OWN, BEARING.key):
        return True
    return rules.key in named if named else not rules.local


def _own(rule: OwnRule) -> HeightRule:
    """Return a rule of the design file as a height rule; its offset is a margin on its side."""
    offset = rule.level.offset_m
    margin = -offset if rule.at == "at or below" else offset
    source = Source(rule.why or "the design file")
    base = own_reference(rule.level.base)
    return HeightRule(f"own: {rule.name}", rule.name, rule.point, base, rule.at, margin, source)
