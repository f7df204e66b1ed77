"""The drain's heights against every rule set, what clashes, its slope, and the footing's bearing.

Which set is in force the building department says; the design file names those of its job. Others
are shown beside them elsewhere and are not checked here.
"""

from collections.abc import Iterator

from geometry.checks.finding import Finding
from geometry.formulas.bearing import SPLAY_SOURCE, trench_intrusion
from geometry.layout.drain import DrainLayout
from geometry.layout.lay import Layout
from geometry.rules.codes import BEARING
from geometry.rules.height_rule import RuleSet
from geometry.sources import GEOMETRY, PRACTICE
from geometry.units import System, show_fall, show_length, show_level
from geometry.water.budget import SlopeBudget, slope_budget
from geometry.water.clashes import Clash, clashes
from geometry.water.verdicts import (
    MET_WITHIN_M,
    OWN,
    SizeVerdict,
    Verdict,
    asked_here,
    rule_sets,
    size_verdicts,
    verdicts,
)
from geometry.water.ways import greatest_fall_words, ways

# More pairs than this are not read in a sentence.
_FEW = 2


def drain_rule_findings(layout: Layout) -> Iterator[Finding]:
    """Yield the findings on the drain's heights; none without a drain."""
    if layout.drain is None:
        return
    yield splay_finding(layout.drain, layout.design.project.units)
    for rules in rule_sets(layout):
        if asked_here(layout, rules) and rules is not BEARING:
            yield rule_set_finding(layout, rules)
    yield from clash_finding(layout)
    yield from slope_finding(layout)


def rule_set_finding(layout: Layout, rules: RuleSet) -> Finding:
    """Return whether the drain meets one set of rules, each broken one with its figures."""
    heights, sizes = verdicts(layout, rules.heights), size_verdicts(layout, rules.sizes)
    broken = [v.rule.source for v in heights if v.answered and not v.met]
    broken += [v.rule.source for v in sizes if not v.met]
    system = layout.design.project.units
    tof = layout.drain.area.tof if layout.drain else 0.0
    titles = [rule.title for rule in rules.heights] + [rule.title for rule in rules.sizes]
    return Finding(
        f"drain-rules-{rules.key}",
        "look" if broken else "fine",
        f"drain, {rules.title}",
        " ".join(_said(heights, sizes, tof, system)),
        "; ".join(titles),
        broken[0] if broken else rules.heights[0].source,
        "Where this rule is in force, change the drain or ask the building department; "
        "the slope budget says what buys room."
        if broken
        else "Lay it so.",
    )


def _said(
    heights: tuple[Verdict, ...], sizes: tuple[SizeVerdict, ...], tof: float, system: System
) -> Iterator[str]:
    met = [v.rule.title for v in heights if v.met] + [v.rule.title for v in sizes if v.met]
    for verdict in heights:
        if verdict.answered and not verdict.met:
            yield f"Not met: {height_words(verdict, tof, system)}."
    for size in sizes:
        if not size.met:
            there, least = (show_length(x, system) for x in (size.found, size.rule.least_m))
            yield f"Not met: {size.rule.title}: {there} of {least}."
    if met:
        yield f"Met: {'; '.join(met)}."
    for verdict in heights:
        if not verdict.answered:
            yield f"Nothing here to hold it to: {verdict.rule.title}."


def height_words(verdict: Verdict, tof: float, system: System) -> str:
    """Return a broken height rule with its figures; levels against the drained area's TOF."""
    ends = [("low", verdict.met_low), ("high", verdict.met_high)]
    where = " and the ".join(f"{name} point" for name, met in ends if not met)
    low, high = (show_level(x - tof, system) for x in (verdict.low, verdict.high))
    point = "hole" if "hole" in verdict.rule.point else verdict.rule.point
    level = low if low == high else f"{low} to {high}"
    limit = show_level((verdict.limit or 0.0) - tof, system)
    return (
        f"{verdict.rule.title}: {point} at {level} against TOF, limit {limit}, "
        f"{show_length(verdict.past, system)} past it at the {where}"
    )


def splay_finding(drain: DrainLayout, system: System) -> Finding:
    """Return whether the trench goes into the ground that carries the footing beside it."""
    area = drain.area
    under = area.footing_bottom - drain.stone_bottom
    # The stone starts at the footing's face, and so does the trench.
    deep = trench_intrusion(0.0, under) > MET_WITHIN_M
    return Finding(
        "drain-bearing-splay",
        "stop" if deep else "fine",
        "drain, trench",
        f"Trench bottom at {show_level(drain.stone_bottom - area.tof, system)} against TOF, "
        f"footing bottom at {show_level(area.footing_bottom - area.tof, system)}.",
        "no trench into the ground under a 1:1 splay from the footing's bottom edge",
        SPLAY_SOURCE,
        f"It goes {show_length(under, system)} below the footing and starts at its face: raise "
        f"the outlet, or keep the trench {show_length(under, system)} or more away; "
        "ask an engineer before you dig there."
        if deep
        else "Dig it so.",
    )


def clash_finding(layout: Layout) -> Iterator[Finding]:
    """Yield the rules that no pipe of this size and fall can meet together in this house.

    Those that count for this job where the design names them, or is held to rules of its own;
    else all that are known: some house somewhere is held to each of them.
    """
    sets, drain = rule_sets(layout), layout.drain
    said = bool(layout.design.rules.sets)
    if said or layout.design.height_rules:
        counted = [rules for rules in sets if asked_here(layout, rules)]
        found = clashes(layout, [rule for rules in counted for rule in rules.heights])
        own = {rule.key for rules in sets if rules.key == OWN for rule in rules.heights}
        found = tuple(pair for pair in found if said or {pair.up.key, pair.down.key} & own)
        if found and drain is not None:
            yield _clash(found, drain, layout.design.project.units, here=True)
    if said:
        return
    found = clashes(layout, [rule for rules in sets for rule in rules.heights])
    if found and drain is not None:
        yield _clash(found, drain, layout.design.project.units, here=False)


def _clash(found: tuple[Clash, ...], drain: DrainLayout, system: System, here: bool) -> Finding:
    """Return the pairs in words; here: all of them count for this job."""
    words = [pair.sentence(drain.area.tof, system) for pair in found[:_FEW]]
    rest = len(found) - _FEW
    pairs = "pair of rules does so" if rest == 1 else "pairs of rules do so"
    more = [f"{rest} more {pairs}."] if rest > 0 else []
    return Finding(
        "drain-rules-asked-clash" if here else "drain-rules-clash",
        "look" if here else "fine",
        "drain, rules of this job that exclude each other"
        if here
        else "drain, rules that exclude each other",
        " ".join([*words, *more]),
        "no drain can be asked to meet both",
        GEOMETRY,
        "No pipe of this size and fall can meet both in this house. Ask both offices, before the "
        "trench is dug, which rule goes before the other, and have it in writing."
        if here
        else "Ask the building department which rule it goes by.",
    )


def slope_finding(layout: Layout) -> Iterator[Finding]:
    """Yield whether the stated fall fits between the footing's bottom and the floor's limit."""
    budget = slope_budget(layout)
    if budget is None:
        return
    system = layout.design.project.units
    fall = f"{show_fall(budget.fall, system)} over" if budget.fall else "A level pipe along"
    # Without the rule in force it is what builders do, wherever they are.
    asked = any(asked_here(layout, s) and budget.rule in s.heights for s in rule_sets(layout))
    fall = fall if budget.fits else f"The fall does not fit. {fall}"
    yield Finding(
        "drain-slope-fits",
        "fine" if budget.fits else "look",
        "drain, slope",
        f"{fall} the longer branch of {show_length(budget.longest, system)} "
        f"needs {show_length(budget.needed, system)} of height; "
        f"{room_words(budget, system)} between the footing's bottom and the limit. "
        f"Greatest fall that fits: {greatest_fall_words(budget, system)}.",
        f"room for the fall over wrap, bedding and pipe, with the {budget.rule.title}",
        budget.rule.source if asked else PRACTICE,
        "Lay it so." if budget.fits else _advice(layout, budget, system),
    )


def room_words(budget: SlopeBudget, system: System) -> str:
    """Return the room in words."""
    size = show_length(abs(budget.room), system)
    return f"there is {size}" if budget.room >= 0 else f"{size} is lacking for a level pipe"


def _advice(layout: Layout, budget: SlopeBudget, system: System) -> str:
    good = [way for way in ways(layout, budget) if way.fits]
    return "What buys room, any one of: " + " ".join(way.sentence(system) for way in good)
