"""Faults of the rules on the drain's height: sets named twice, own rules without a level."""

from collections.abc import Iterator

from geometry.faults.common import At, Words
from geometry.faults.floors import far_faults, unknown_level
from geometry.layout.areas import AreaLayout
from geometry.project import Design


def rule_set_faults(design: Design) -> Iterator[At]:
    """Yield sets of rules that are named twice."""
    sets = design.rules.sets
    for number, name in enumerate(sets):
        if name in sets[:number]:
            yield At(("rules", "sets", number), f'"{name}" stands here twice; leave one out')


def own_rule_faults(design: Design, area: AreaLayout, words: Words) -> Iterator[At]:
    """Yield levels of rules that mean nothing in the drained area; its floor must be sound."""
    for number, rule in enumerate(design.height_rules):
        path = ("height_rule", number, "level")
        yield from unknown_level(path, area, rule.level)
        yield from far_faults(path, rule.level, words)
