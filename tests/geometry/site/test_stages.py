"""The stages of the build: nothing forgotten, amounts and levels those of order and report."""

from itertools import pairwise

import pytest

from geometry.designfile import read_design
from geometry.layout.inverts import invert_rows
from geometry.layout.lay import Layout, lay_out
from geometry.report import report
from geometry.site.stages import MOST_INVERTS, stages
from geometry.solids.foundation import build
from geometry.takeoff.order import order
from tests.whole.networks import HOUSE, INSIDE, OUTSIDE, PIT, TEXTS, network
from viz.carried import examples

EXAMPLES = {name: file.read_text(encoding="utf-8") for name, file in examples().items()}
HOUSES = {**EXAMPLES, **TEXTS}
EVERY = [*EXAMPLES, "both to the pit", "upper to daylight"]


def laid(name: str) -> Layout:
    return lay_out(read_design(HOUSES[name]))


def keys(layout: Layout) -> list[str]:
    return [stage.key for stage in stages(layout)]


@pytest.mark.parametrize("name", EVERY)
def test_stone_of_all_stages_is_the_stone_of_the_order(name: str) -> None:
    layout = laid(name)
    bought = [a for stage in stages(layout) for a in stage.amounts if a.key == "bulk"]
    rows = [row for row in order(layout).rows if row.group == "stone and sand"]
    assert rows
    for row in rows:
        mine = [a for a in bought if a.material == row.material]
        assert sum(a.in_place for a in mine) == pytest.approx(row.in_place)
        assert sum(a.to_buy for a in mine) == pytest.approx(row.to_buy)
        assert sum(a.count for a in mine) == pytest.approx(row.count)
        assert sum(a.mass_kg[1] for a in mine if a.mass_kg) == pytest.approx(
            row.mass_kg[1] if row.mass_kg else 0.0
        )


@pytest.mark.parametrize("name", EVERY)
def test_other_things_are_counted_as_in_the_order(name: str) -> None:
    layout = laid(name)
    found = stages(layout)
    for group, key in (("concrete", "concrete"), ("foam", "boards"), ("drain", "perforated_pipe")):
        rows = {(r.material, r.count) for r in order(layout).rows if r.group == group}
        mine = {(a.material, a.count) for s in found for a in s.amounts if a.key == key}
        assert mine <= rows
        assert mine or not rows
    pipe = sum(a.in_place for s in found for a in s.amounts if a.key == "perforated_pipe")
    assert pipe == pytest.approx(
        sum(r.in_place for r in order(layout).rows if r.item == "Perforated pipe")
    )


@pytest.mark.parametrize("name", EVERY)
def test_every_part_but_what_stands_is_laid_in_some_stage(name: str) -> None:
    layout = laid(name)
    standing = {"footing", "wall", "pad", "column", "sleeve", "bleeder"}
    parts = {s.label.part for s in build(layout).solids if s.label.role not in standing}
    assert parts <= {part for stage in stages(layout) for part in stage.parts}


@pytest.mark.parametrize("name", list(EXAMPLES))
def test_tops_are_the_levels_of_the_report(name: str) -> None:
    layout = laid(name)
    said = {(r.area, r.interface.split(" (")[0]): r for r in report(layout).levels}
    for area in layout.areas:
        for number, layer in enumerate(area.floor.layers):
            part = f"{area.name}/{layer.name}"
            (stage,) = [s for s in stages(layout) if part in s.parts]
            row = said[area.name, f"{layer.name} top"]
            top, under = stage.shots
            assert (top.level, top.elevation) == pytest.approx((row.level_m, row.elevation_m))
            assert top.rod == pytest.approx(row.rod_reading_m)
            assert top.above_tof == pytest.approx(row.level_m - area.tof)
            assert under.level == pytest.approx(area.stack.levels[number])
            assert stage.thickness == pytest.approx((layer.thickness, layer.thickness))


@pytest.mark.parametrize("name", [*EVERY, "pit and two to daylight"])
def test_every_named_invert_is_shot_once_in_the_order_it_is_walked(name: str) -> None:
    layout = laid(name)
    for drain in layout.drains:
        mine = [s for s in stages(layout) if s.key == "inverts" and s.drain == drain.key]
        shots = [shot for stage in mine for shot in stage.shots]
        rows = [row for row in invert_rows(layout, drain) if row.names]
        assert [s.level for s in shots] == [row.level for row in rows]
        assert [len(s.places) for s in shots] == [len(row.names) for row in rows]
        assert all(len(stage.shots) <= MOST_INVERTS for stage in mine)


def test_the_example_is_built_from_the_hole_up_an_area_at_a_time() -> None:
    assert keys(laid("metric-house")) == [
        "subgrade", "bedding", "pipe", "inverts", "drain_stone", "backfill", "pit", "base",
        "blinding", "retarder", "insulation", "edge_board", "slab",
    ]  # fmt: skip
    found = [s.areas for s in stages(laid("l-basement")) if s.key in ("base", "retarder", "slab")]
    assert found == [("basement",)] * 3 + [("garage",)] * 3


def test_a_drain_inside_waits_for_the_backfill_and_is_seen_before_the_floor() -> None:
    layout = lay_out(network("both to the pit"))
    found = [(s.key, s.drain) for s in stages(layout)]
    inside = next(d.key for d in layout.drains if d.inside)
    outside = next(d.key for d in layout.drains if not d.inside)
    filled = found.index(("backfill", ""))
    assert found.index(("drain_stone", outside)) < filled < found.index(("bedding", inside))
    holds = {s.drain: s.holds[0].key for s in stages(layout) if s.key == "drain_stone"}
    assert holds == {outside: "drain_stone", inside: "drain_stone_inside"}
    asked = {s.drain: str(s.holds[0].source) for s in stages(layout) if s.key == "drain_stone"}
    assert asked == {outside: "Durham NC, Henrico VA", inside: "Stevens Point WI, Chisago MN"}
    dangers = {c.key for s in stages(layout) if s.drain == inside for c in s.cautions}
    assert "cave_in" not in dangers


def test_what_comes_right_before_a_slab_is_held_for_the_pour() -> None:
    for name in EVERY:
        found = stages(laid(name))
        before = [a.holds[-1].key for a, b in pairwise(found)
                  if b.key == "slab"]  # fmt: skip
        assert before
        assert set(before) == {"pour"}
        assert sum(h.key == "pour" for s in found for h in s.holds) == len(before)


@pytest.mark.parametrize(
    ("state", "warned"),
    [
        ("", "wall_not_known"),
        ("[backfill.state]\ndeck = false\nbraced = false\n", "wall_not_held"),
        # Neither a slab at its foot nor what is not spoken of holds a wall's top.
        ("[backfill.state]\ndeck = false\n", "wall_not_known"),
        ("[backfill.state]\nbraced = false\nslab = true\n", "wall_not_known"),
        ("[backfill.state]\ndeck = false\nbraced = true\n", "wall_held"),
        ("[backfill.state]\ndeck = true\nslab = true\n", "wall_held"),
    ],
)
def test_the_backfill_says_what_holds_the_wall(state: str, warned: str) -> None:
    layout = lay_out(read_design(HOUSE + state))
    (filled,) = [s for s in stages(layout) if s.key == "backfill"]
    assert filled.cautions[0].key == warned


def test_areas_with_the_same_floor_on_the_same_levels_share_its_stages() -> None:
    corners = '["60 ft, 0", "80 ft, 0", "80 ft, 20 ft", "60 ft, 20 ft"]'
    twin = f'[[area]]\nname = "twin"\ncorners = {corners}\n'
    other = twin + 'step = "4 in"\n'
    one, two = (lay_out(read_design(HOUSE + text)) for text in (twin, other))
    assert keys(one).count("slab") == 1
    assert keys(two).count("slab") == 2
    (slab,) = [s for s in stages(one) if s.key == "slab"]
    assert slab.areas == ("basement", "twin")
    rows = [r for r in order(one).rows if r.group == "concrete" and r.item == "Slab"]
    assert [a.count for a in slab.amounts] == [r.count for r in rows]


def test_without_a_laser_there_is_no_rod_and_without_a_drain_no_pipe() -> None:
    bare = lay_out(read_design(HOUSE))
    assert all(shot.rod is None for s in stages(bare) for shot in s.shots)
    assert not {"pipe", "bedding", "pit"} & set(keys(bare))
    fallen, level = (lay_out(read_design(HOUSE + t + PIT)) for t in (OUTSIDE, INSIDE))
    assert {"bedding"} == {k for s in stages(fallen) for k in s.instructions if "bedding" in k}
    assert {"bedding_level"} == {k for s in stages(level) for k in s.instructions if "bedding" in k}
