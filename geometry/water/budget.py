"""The slope budget: what a rule leaves the drain to rise in, and what its fall needs.

The room runs from the lowest invert the footing's bottom allows (wrap, bedding and the pipe's wall
above it) to the highest invert a rule on the floor's side allows. A fall fits if its rise over the
longer branch is no more than that. Common practice and arithmetic, no source.
"""

from dataclasses import dataclass

from geometry.layout.drain import DrainLayout
from geometry.layout.lay import Layout
from geometry.rules.codes import CROWN_BELOW_SLAB, FALLS, INVERT_BELOW_FLOOR
from geometry.rules.height_rule import FallRule, HeightRule
from geometry.water.heights import below, drain_heights, over_invert
from geometry.water.verdicts import MET_WITHIN_M, rule_sets


@dataclass(frozen=True)
class SlopeBudget:
    """Room for the fall under one rule; levels of inverts against the project's TOF, metres.

    lowest, highest: least invert at the low point, most at the high point. longest: the longer
    branch along the drain. fall: as stated, metres per metre.
    """

    rule: HeightRule
    lowest: float
    highest: float
    longest: float
    fall: float

    @property
    def room(self) -> float:
        """Height the drain may rise; negative where not even a level pipe fits."""
        return self.highest - self.lowest

    @property
    def needed(self) -> float:
        """Rise of the stated fall over the longer branch."""
        return self.fall * self.longest

    @property
    def short(self) -> float:
        """How much height is lacking; 0 where the fall fits."""
        return max(0.0, self.needed - self.room)

    @property
    def fits(self) -> bool:
        """Whether the stated fall fits, to what a tape can tell."""
        return self.short <= MET_WITHIN_M

    @property
    def level_fits(self) -> bool:
        """Whether a level pipe fits."""
        return self.room >= -MET_WITHIN_M

    @property
    def greatest_fall(self) -> float:
        """The greatest fall that fits, metres per metre; 0 if none does."""
        return max(0.0, self.room) / self.longest

    @property
    def greatest_length(self) -> float | None:
        """The longest branch on which the stated fall fits, metres; None for a level pipe."""
        return max(0.0, self.room) / self.fall if self.fall else None


@dataclass(frozen=True)
class FallVerdict:
    """A fall that somebody asks for: the height it needs here, metres, and whether it fits."""

    rule: FallRule
    needed: float
    fits: bool


def fall_verdicts(budget: SlopeBudget) -> tuple[FallVerdict, ...]:
    """Return for every fall that is asked for somewhere whether the budget has room for it."""
    rows = [(rule, rule.least * budget.longest) for rule in FALLS]
    return tuple(FallVerdict(r, n, n - budget.room <= MET_WITHIN_M) for r, n in rows)


def slope_budget(layout: Layout, rule: HeightRule | None = None) -> SlopeBudget | None:
    """Return the budget under a rule that holds a point of the pipe down.

    Unless given, the pipe's top stays below the slab; in a floor without slab the invert stays
    below the finished floor. None without a drain, or where the rule sets the pipe no limit.
    """
    heights, drain = drain_heights(layout), layout.drain
    if heights is None or drain is None:
        return None
    if rule is None:
        has_slab = heights.limit(CROWN_BELOW_SLAB) is not None
        rule = CROWN_BELOW_SLAB if has_slab else INVERT_BELOW_FLOOR
    limit, height = heights.limit(rule), over_invert(drain).get(rule.point)
    if limit is None or height is None or not below(rule):
        return None
    highest = limit - height
    return SlopeBudget(rule, lowest_invert(drain), highest, drain.longest, drain.drain.fall)


def slope_budgets(layout: Layout) -> tuple[SlopeBudget, ...]:
    """Return the budget under every rule known here that holds a point of the pipe down."""
    rules = [rule for known in rule_sets(layout) for rule in known.heights]
    found = [slope_budget(layout, rule) for rule in rules]
    return tuple(budget for budget in found if budget)


def lowest_invert(drain: DrainLayout) -> float:
    """Level of the invert over a trench that is dug to the footing's bottom."""
    return drain.area.footing_bottom + drain.wrap_m + drain.drain.stone.bedding + drain.pipe.wall_m
