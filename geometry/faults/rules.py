"""Faults of the builder's own rules on the drain's height: names, and levels that are none."""

from collections.abc import Iterator

from geometry.faults.common import At, Words
from geometry.faults.floors import far_faults, unknown_level
from geometry.layout.areas import AreaLayout
from geometry.project import Design


def own_rule_faults(design: Design, area: AreaLayout, words: Words) -> Iterator[At]:
    """Yield levels of rules that mean nothing in the drained area; its floor must be sound."""
    for number, rule in enumerate(design.height_rules):
        path = ("height_rule", number, "level")
        yield from unknown_level(path, area, rule.level)
        yield from far_faults(path, rule.level, words)
