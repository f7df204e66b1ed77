"""The rule sets beside each other: every rule once, its state as the report has it."""

import pytest

from geometry.layout.lay import Layout, lay_out
from geometry.water.height_figures import HeightFigures, height_figures
from tests.viz.figures.drain_figures import example
from viz.tables.drain_tables import by_set

NOTHING = "nothing to hold it to"


def figures_of(layout: Layout) -> HeightFigures:
    found = height_figures(layout)
    assert found is not None
    return found


def without_slab(layout: Layout) -> Layout:
    area = layout.design.areas[0]
    floor = area.floor or layout.design.floor
    layers = tuple(layer for layer in floor.layers if layer.role != "slab")
    bare = area.model_copy(update={"floor": floor.model_copy(update={"layers": layers})})
    return lay_out(layout.design.model_copy(update={"areas": (bare,)}))


@pytest.mark.parametrize("name", ["l-basement", "metric-house", "foam-stopped"])
def test_every_rule_stands_once_in_its_set_with_its_state(name: str) -> None:
    layout = example(name)
    figures = figures_of(layout)
    shown = by_set(figures, layout.design.project.units)
    lines = [(one.title, line.title, line.state) for one in shown for line in one.lines]
    states = {True: "met", False: "not met", None: NOTHING}
    wanted = [(r.rules, r.title, _both(r.met_low, r.met_high)) for r in figures.rules]
    wanted += [(s.rules, s.title, s.met) for s in figures.sizes]
    assert sorted(lines) == sorted((a, b, states[met]) for a, b, met in wanted)
    assert [one.asked for one in shown] == sorted((one.asked for one in shown), reverse=True)


def _both(low: bool | None, high: bool | None) -> bool | None:
    return None if low is None or high is None else low and high


def test_a_floor_without_slab_leaves_rules_on_it_nothing_to_hold_them_to() -> None:
    whole, bare = example("foam-stopped"), without_slab(example("foam-stopped"))
    open_before, open_now = (
        {line.title for one in by_set(figures_of(layout), "ft-in") for line in one.lines
         if line.state == NOTHING}
        for layout in (whole, bare)
    )  # fmt: skip
    assert open_now > open_before
    assert any("slab" in title for title in open_now)
