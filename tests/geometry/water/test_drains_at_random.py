"""Heights, clashes and the slope budget on random designs: what must hold whatever the house."""

import pytest

from geometry.layout.lay import Layout, lay_out
from geometry.project import Design
from geometry.rules.height_rule import HeightRule
from geometry.water.budget import slope_budget
from geometry.water.clashes import clashes, invert_bound
from geometry.water.heights import drain_heights
from geometry.water.verdicts import rule_sets, verdicts
from tests.designs import design_of, seeded_raw
from tests.rolls import seeds

# Two rules as far apart as one and a half times what each may be missed by: both are met midway.
ONCE_FAILED = (70, 84)


def designs() -> list[Design]:
    """Sound random designs with a drain."""
    rolled = dict.fromkeys((*seeds(30), *ONCE_FAILED))
    raws = [raw for raw in map(seeded_raw, rolled) if raw and "drain" in raw]
    return [design_of(raw) for raw in raws]


DESIGNS = designs()
NUMBERS = range(len(DESIGNS))


def with_drain(design: Design, **changed: object) -> Layout:
    assert design.drains
    drain = design.drains[0].model_copy(update=changed)
    return lay_out(design.model_copy(update={"drains": (drain,)}))


def rules_of(layout: Layout) -> list[HeightRule]:
    return [rule for known in rule_sets(layout) for rule in known.heights]


def own_outlet(layout: Layout, invert: float) -> Layout:
    """The same house with the drain's outlet at another level of the project."""
    assert layout.drain is not None
    return with_drain(layout.design, outlet_invert=invert - layout.drain.area.tof)


def test_there_are_designs_to_try() -> None:
    assert len(DESIGNS) >= 10
    assert any(design.height_rules for design in DESIGNS)


@pytest.mark.parametrize("number", NUMBERS)
def test_the_greatest_fall_exactly_fits(number: int) -> None:
    budget = slope_budget(lay_out(DESIGNS[number]))
    assert budget is not None
    if not budget.greatest_fall:
        assert budget.room <= 0
        return
    laid = with_drain(DESIGNS[number], fall=budget.greatest_fall, outlet_invert=None)
    (verdict,) = verdicts(laid, [budget.rule])
    assert verdict.high_spare == pytest.approx(0, abs=1e-9)
    steeper = with_drain(DESIGNS[number], fall=1.5 * budget.greatest_fall, outlet_invert=None)
    again = slope_budget(steeper)
    assert again is not None
    assert again.short == pytest.approx(0.5 * budget.room, abs=1e-9)


@pytest.mark.parametrize("number", NUMBERS)
def test_more_bedding_never_gives_more_room(number: int) -> None:
    design = DESIGNS[number]
    assert design.drains
    stone = design.drains[0].stone
    rooms = []
    for bedding in (stone.bedding, stone.bedding + 0.01, stone.bedding + 0.1):
        laid = with_drain(design, stone=stone.model_copy(update={"bedding": bedding}))
        budget = slope_budget(laid)
        assert budget is not None
        rooms.append(budget.room)
    assert rooms[0] > rooms[1] > rooms[2]


@pytest.mark.parametrize("number", NUMBERS)
def test_a_footing_deeper_by_what_is_lacking_just_fits(number: int) -> None:
    design = DESIGNS[number]
    steep = with_drain(design, fall=0.02)
    budget = slope_budget(steep)
    assert budget is not None
    deeper = design.footing.model_copy(
        update={"thickness": design.footing.thickness + budget.short}
    )
    areas = tuple(area.model_copy(update={"footing": None}) for area in design.areas)
    laid = lay_out(
        steep.design.model_copy(update={"footing": deeper, "areas": areas}),
    )
    then = slope_budget(laid)
    assert then is not None
    if budget.short:
        assert then.room == pytest.approx(then.needed, abs=1e-9)
    assert then.fits


@pytest.mark.parametrize("number", NUMBERS)
def test_an_outlet_at_a_rule_s_bound_just_meets_it(number: int) -> None:
    layout = lay_out(DESIGNS[number])
    heights, drain = drain_heights(layout), layout.drain
    assert heights is not None
    assert drain is not None
    for rule in rules_of(layout):
        bound = invert_bound(drain, heights, rule)
        if bound is None:
            continue
        (verdict,) = verdicts(own_outlet(layout, bound), [rule])
        if rule.point == "stone top":
            # The stone covers the footing too, so a pipe can lie so low that it no longer counts.
            assert min(verdict.low_spare, verdict.high_spare) <= 1e-9
            continue
        assert min(verdict.low_spare, verdict.high_spare) == pytest.approx(0, abs=1e-9)


@pytest.mark.parametrize("number", NUMBERS)
def test_rules_that_clash_are_never_met_together(number: int) -> None:
    layout = lay_out(DESIGNS[number])
    found = clashes(layout, rules_of(layout))
    for pair in found:
        for share in (-1.0, 0.0, 0.3, 0.7, 1.0, 2.0):
            invert = pair.most + share * pair.apart
            both = verdicts(own_outlet(layout, invert), [pair.up, pair.down])
            assert not all(verdict.met for verdict in both)
    assert [pair.apart for pair in found] == sorted((p.apart for p in found), reverse=True)


@pytest.mark.parametrize("number", NUMBERS)
def test_points_lie_in_order_from_the_trench_up(number: int) -> None:
    heights = drain_heights(lay_out(DESIGNS[number]))
    assert heights is not None
    for end in (heights.low, heights.high):
        levels = list(end.values())
        assert levels == sorted(levels)
