"""The drain's heights and its slope budget as records of the report: metres, plain names."""

from geometry.layout.lay import Layout
from geometry.parts.fields import Record
from geometry.rules.height_rule import RuleSet
from geometry.water.budget import (
    FallVerdict,
    SlopeBudget,
    fall_verdicts,
    slope_budget,
    slope_budgets,
)
from geometry.water.clashes import Clash, clashes
from geometry.water.heights import drain_heights
from geometry.water.holes import first_water
from geometry.water.verdicts import (
    SizeVerdict,
    Verdict,
    asked_here,
    rule_sets,
    size_verdicts,
    verdicts,
)
from geometry.water.ways import Way, ways


class RuleFigures(Record):
    """One rule held against the drain: levels against the project's TOF; None: no such level.

    spare: how far the point lies on the right side of the limit, negative on the wrong one.
    asked: whether this job is held to the rule; else it is shown to compare.
    """

    rules: str
    asked: bool
    key: str
    title: str
    source: str
    point: str
    limit_m: float | None
    low_spare_m: float | None
    high_spare_m: float | None
    met_low: bool | None
    met_high: bool | None
    note: str


class SizeFigures(Record):
    """One rule on the stone round the pipe: what there is, what is asked, and if it is here."""

    rules: str
    asked: bool
    key: str
    title: str
    source: str
    found_m: float
    least_m: float
    met: bool


class ClashFigures(Record):
    """Two rules that no such pipe can meet together, how far apart, and if both are asked here."""

    up: str
    down: str
    asked: bool
    apart_m: float
    sentence: str


class FirstWaterFigures(Record):
    """Levels at which the drain takes water at its low and high point: as laid, and rolled over."""

    as_laid_m: tuple[float, float] | None
    turned_m: tuple[float, float] | None


class HeightFigures(Record):
    """Every height of the drain by name, against the project's TOF, and the rules on them."""

    low_m: dict[str, float]
    high_m: dict[str, float]
    references_m: dict[str, float]
    first_water: FirstWaterFigures
    rules: tuple[RuleFigures, ...]
    sizes: tuple[SizeFigures, ...]
    clashes: tuple[ClashFigures, ...]


class WayFigures(Record):
    """One way to fit the fall: how much of it, and what there is and what is needed then."""

    key: str
    sentence: str
    amount_m: float
    aside_m: float
    room_m: float
    needed_m: float
    fits: bool


class RoomFigures(Record):
    """The room one rule leaves the fall; greatest_length_m: at the stated fall, None when level."""

    key: str
    title: str
    source: str
    room_m: float
    fits: bool
    level_fits: bool
    greatest_fall_m_per_m: float
    greatest_length_m: float | None


class FallFigures(Record):
    """A fall that is asked for somewhere: the height it needs here, and whether it fits."""

    title: str
    source: str
    least_m_per_m: float
    needed_m: float
    fits: bool


class SlopeFigures(Record):
    """The slope budget under the first rule of `by_rule`, and what buys room."""

    fall_m_per_m: float
    longest_branch_m: float
    lowest_invert_m: float
    highest_invert_m: float
    needed_m: float
    short_m: float
    ways: tuple[WayFigures, ...]
    by_rule: tuple[RoomFigures, ...]
    falls: tuple[FallFigures, ...]


def height_figures(layout: Layout) -> HeightFigures | None:
    """Return the drain's heights and verdicts for the report; None without a drain."""
    heights, drain = drain_heights(layout), layout.drain
    if heights is None or drain is None:
        return None
    sets, water = rule_sets(layout), first_water(drain)
    rules = [rule for known in sets for rule in known.heights]
    here = {rule.key for known in sets if asked_here(layout, known) for rule in known.heights}
    return HeightFigures(
        low_m=dict(heights.low),
        high_m=dict(heights.high),
        references_m=dict(heights.references),
        first_water=FirstWaterFigures(as_laid_m=water.as_laid, turned_m=water.turned),
        rules=tuple(
            _rule(s, asked_here(layout, s), v) for s in sets for v in verdicts(layout, s.heights)
        ),
        sizes=tuple(
            _size(s, asked_here(layout, s), v) for s in sets for v in size_verdicts(layout, s.sizes)
        ),
        clashes=tuple(_clash(layout, c, drain.area.tof, here) for c in clashes(layout, rules)),
    )


def _rule(rules: RuleSet, asked: bool, verdict: Verdict) -> RuleFigures:
    answered = verdict.answered
    return RuleFigures(
        rules=rules.title,
        asked=asked,
        key=verdict.rule.key,
        title=verdict.rule.title,
        source=str(verdict.rule.source),
        point=verdict.rule.point,
        limit_m=verdict.limit,
        low_spare_m=verdict.low_spare if answered else None,
        high_spare_m=verdict.high_spare if answered else None,
        met_low=verdict.met_low if answered else None,
        met_high=verdict.met_high if answered else None,
        note=verdict.rule.note,
    )


def _size(rules: RuleSet, asked: bool, verdict: SizeVerdict) -> SizeFigures:
    rule = verdict.rule
    return SizeFigures(
        rules=rules.title,
        asked=asked,
        key=rule.key,
        title=rule.title,
        source=str(rule.source),
        found_m=verdict.found,
        least_m=rule.least_m,
        met=verdict.met,
    )


def _clash(layout: Layout, clash: Clash, tof: float, here: set[str]) -> ClashFigures:
    return ClashFigures(
        asked={clash.up.key, clash.down.key} <= here,
        up=clash.up.key,
        down=clash.down.key,
        apart_m=clash.apart,
        sentence=clash.sentence(tof, layout.design.project.units),
    )


def slope_figures(layout: Layout) -> SlopeFigures | None:
    """Return the slope budget for the report; None without a drain."""
    budget = slope_budget(layout)
    if budget is None:
        return None
    others = [b for b in slope_budgets(layout) if b.rule.key != budget.rule.key]
    system = layout.design.project.units
    return SlopeFigures(
        fall_m_per_m=budget.fall,
        longest_branch_m=budget.longest,
        lowest_invert_m=budget.lowest,
        highest_invert_m=budget.highest,
        needed_m=budget.needed,
        short_m=budget.short,
        ways=tuple(_way(way, way.sentence(system)) for way in ways(layout, budget)),
        by_rule=tuple(_room(b) for b in (budget, *others)),
        falls=tuple(_fall(v) for v in fall_verdicts(budget)),
    )


def _fall(verdict: FallVerdict) -> FallFigures:
    return FallFigures(
        title=verdict.rule.title,
        source=str(verdict.rule.source),
        least_m_per_m=verdict.rule.least,
        needed_m=verdict.needed,
        fits=verdict.fits,
    )


def _way(way: Way, sentence: str) -> WayFigures:
    return WayFigures(
        key=way.key,
        sentence=sentence,
        amount_m=way.amount,
        aside_m=way.aside,
        room_m=way.room,
        needed_m=way.needed,
        fits=way.fits,
    )


def _room(budget: SlopeBudget) -> RoomFigures:
    return RoomFigures(
        key=budget.rule.key,
        title=budget.rule.title,
        source=str(budget.rule.source),
        room_m=budget.room,
        fits=budget.fits,
        level_fits=budget.level_fits,
        greatest_fall_m_per_m=budget.greatest_fall,
        greatest_length_m=budget.greatest_length,
    )
