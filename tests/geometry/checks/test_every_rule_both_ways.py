"""No rule without a design that keeps it, one that breaks it, and a source beside it."""

import importlib
import pkgutil
from functools import cache

import pytest

import geometry.rules
from geometry.designfile import read_design
from geometry.layout.lay import Layout, lay_out
from geometry.rules.codes import FALLS, RULE_SETS
from geometry.rules.footings import frost, projection
from geometry.rules.height_rule import HeightRule, SizeRule
from geometry.rules.limit import Limit
from geometry.rules.slabs import spacing
from geometry.water.budget import slope_budget
from geometry.water.verdicts import size_verdicts, verdicts
from tests.geometry.checks.rule_cases import CASES

MODULES = [
    importlib.import_module(f"geometry.rules.{found.name}")
    for found in pkgutil.iter_modules(geometry.rules.__path__)
]
LIMITS = {one.key: one for m in MODULES for one in vars(m).values() if isinstance(one, Limit)}
LIMITS |= {one.key: one for one in (projection(0.25), frost(1.0), spacing(0.1))}
HEIGHTS = [rule for rules in RULE_SETS for rule in rules.heights]
SIZES = [rule for rules in RULE_SETS for rule in rules.sizes]
# Footing 10 in thick under a floor of 6 in of stone, 2 in of foam whose top is at TOF, 4 in of
# slab: the floor at +4 in, the slab's underside at TOF, the cut at -8 in, all level.
HOUSE = """
[project]
name = "A box (invented)"
[[area]]
name = "basement"
corners = ["0, 0", "30 ft, 0", "30 ft, 20 ft", "0, 20 ft"]
[footing]
width = "16 in"
thickness = "10 in"
[grade]
at_wall = "6 ft"
[floor]
tie = "foam top at TOF"
layer = [
    {{ name = "stone", material = "stone-57", thickness = "6 in", role = "base" }},
    {{ name = "foam", material = "xps-iv", thickness = "2 in", role = "insulation" }},
    {{ name = "slab", material = "concrete", thickness = "4 in", role = "slab" }},
]
[drain]
fall = "level"
outlet_invert = "{invert}"
stone = {{ {stone} }}
offset = "{offset}"
"""
USUAL = 'bedding = "2 in", cover = "6 in", width = "24 in"'
THIN = 'bedding = "1 in", cover = "1 in", width = "10 in"'
INVERTS = ("-14 in", "-10 in", "-7 in", "-2 in", "3 in", "8 in")


@cache
def laid(invert: str, stone: str = USUAL, offset: str = "12 in") -> Layout:
    return lay_out(read_design(HOUSE.format(invert=invert, stone=stone, offset=offset)))


@pytest.mark.parametrize("key", LIMITS)
def test_every_limit_has_a_design_on_either_side_and_says_where_it_is_from(key: str) -> None:
    assert key in CASES
    assert len(LIMITS[key].why.split()) > 5
    assert str(LIMITS[key].source)


@pytest.mark.parametrize("rule", HEIGHTS, ids=lambda rule: rule.key)
def test_every_rule_on_height_is_kept_by_one_pipe_and_broken_by_another(rule: HeightRule) -> None:
    found = []
    # From the lowest pipe and the lowest stone to the highest.
    for made in (laid(INVERTS[0], THIN, "4 in"), *map(laid, INVERTS)):
        (one,) = verdicts(made, [rule])
        limit = one.limit
        assert limit is not None
        side = 1 if rule.sense == "at or below" else -1
        over = side * (one.low - limit)
        # Read to the sixteenth, like a tape.
        assert one.met == (over <= 0.0254 / 16 + 1e-9)
        found.append(one.met)
    # They turn once on the way up.
    assert set(found) == {True, False}
    assert found == sorted(found, reverse=rule.sense == "at or below")
    assert str(rule.source)


@pytest.mark.parametrize("rule", SIZES, ids=lambda rule: rule.key)
def test_every_rule_on_stone_is_kept_by_one_drain_and_broken_by_another(rule: SizeRule) -> None:
    (kept,) = size_verdicts(laid("-10 in"), [rule])
    (broken,) = size_verdicts(laid("-3 in", THIN, "4 in"), [rule])
    assert kept.met
    assert not broken.met
    assert kept.found >= rule.least_m - 0.0254 / 16 > broken.found
    assert str(rule.source)


def test_every_fall_that_is_asked_fits_under_a_low_floor_or_does_not() -> None:
    # 50 ft of pipe at 1/8 in per ft take 6 1/4 in; under a slab at TOF over a footing of 10 in
    # less than half of that is left.
    budget = slope_budget(laid("-7 in"))
    assert budget is not None
    fits = [fall.least * budget.longest <= budget.room for fall in FALLS]
    assert set(fits) == {True, False}
    assert all(str(fall.source) for fall in FALLS)
