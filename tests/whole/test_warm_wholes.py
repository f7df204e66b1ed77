"""Warmth, foam under load and rules on random designs: what must hold for any of them."""

from collections import Counter

import pytest

from geometry.checks.board import board_loads
from geometry.checks.cold import cold_concrete
from geometry.checks.floor_rules import floor_findings
from geometry.checks.footing_rules import footing_findings
from geometry.checks.ground_rules import ground_findings
from geometry.checks.wall_rules import wall_rule_findings
from geometry.checks.whole import whole_findings
from geometry.heat.floors import floor_heat
from geometry.layout.lay import Layout, lay_out
from tests.designs import design_of, seeded_raw
from tests.rolls import seeds

SAID = {
    "climate": {"inside": "20 C", "outside": "5 C", "wall_resistance": "R-10"},
    "site": {"frost_depth": "1 m", "stories": 2, "termites": "heavy", "radon_vent": True},
}


def rolled(seed: int) -> Layout:
    raw = seeded_raw(seed)
    if raw is None:
        pytest.skip("this seed rolls no sound design")
    loads = {**raw.get("loads", {}), "point": "2000 lbf"}
    return lay_out(design_of({**raw, **SAID, "loads": loads}))


SEEDS = (*range(6), *(pytest.param(n, marks=pytest.mark.slow) for n in seeds(30, 6)))


@pytest.mark.parametrize("seed", SEEDS)
def test_warmth_and_rules_hold_for_any_house(seed: int) -> None:
    made = rolled(seed)
    for area in made.areas:
        cold = cold_concrete(made, area).share
        heat = floor_heat(made, area, cold)
        if heat is None:
            continue
        assert heat.mean_resistance <= heat.resistance + 1e-9
        assert 0 < heat.u_whole <= heat.u_floor * (1 + 1e-9)
        assert (heat.u_wall is None) == (heat.wall_m2 == 0)
        assert heat.loss_w == pytest.approx(15 * heat.loss_w_k)
        assert heat.loss_w_k > 0
    for load in board_loads(made):
        assert load.share_even < load.share_spread
        assert load.share_plate is None or load.share_even < load.share_plate
    checks = (footing_findings, wall_rule_findings, floor_findings, ground_findings)
    found = [f for check in checks for f in check(made)]
    # A sheet, a table or an edition may be told twice where areas differ; nothing else is.
    told = Counter(f.id for f in found)
    del told["floor-retarder"], told["footing-table"]
    assert set(told.values()) <= {1}, told
    assert all(f.found and f.asked and f.advice for f in (*found, *whole_findings(made)))
