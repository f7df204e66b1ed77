"""The order of random houses: what must hold whatever is built."""

from dataclasses import replace
from functools import cache

import pytest
import shapely

from geometry.layout.lay import Layout, lay_out
from geometry.parts.order import Bulk, Ordering
from geometry.solids.foundation import build
from geometry.takeoff.earth import backfill_volume, grading_volume, wall_stone_volume
from geometry.takeoff.foam import board_layouts
from geometry.takeoff.order import order
from geometry.takeoff.row import Order
from geometry.takeoff.sheet import strip_layouts
from geometry.takeoff.volumes import earthwork_volumes, part_volumes
from tests.designs import design_of, seeded_raw
from tests.rolls import seeds
from tests.whole import networks

FEW = seeds(15)
MANY = seeds(75, 15)


@cache
def house(seed: int) -> Layout | None:
    raw = seeded_raw(seed)
    return None if raw is None else lay_out(design_of(raw))


def houses(seeds: range) -> list[Layout]:
    found = [layout for seed in seeds if (layout := house(seed))]
    assert len(found) > len(seeds) // 4
    return found


def holds(layout: Layout) -> None:
    made = order(layout)
    boards_tile(layout)
    strips_cover(layout)
    enough(made)
    cuts_fit(made)
    nothing_twice(layout, made)


def boards_tile(layout: Layout) -> None:
    for _, laid in board_layouts(layout):
        for course in laid:
            regions = [p.region for p in course.pieces]
            whole = sum(r.area for r in regions)
            assert abs(whole - course.region.area) < 1e-9
            assert abs(shapely.union_all(regions).area - whole) < 1e-9
            assert course.least <= course.boards <= course.without_reuse
            assert course.joints_m >= 0


def strips_cover(layout: Layout) -> None:
    for body, laid in strip_layouts(layout):
        floor = shapely.union_all([p.region for p in body.prisms])
        assert floor.difference(shapely.union_all(laid.strips).buffer(1e-9)).area < 1e-9


def enough(made: Order) -> None:
    for row in made.rows:
        assert row.to_buy >= row.in_place * (1 - 1e-9) or row.item.startswith("Edge"), row
        assert row.count >= 0
        assert row.trucks is None or row.trucks >= 1
        assert row.mass_kg is None or 0 < row.mass_kg[0] <= row.mass_kg[1]
    for pour in made.pours:
        assert sum(pour.loads_m3) == pytest.approx(pour.ordered_m3)
        assert pour.ordered_m3 >= pour.neat_m3 + pour.variation_m3 + pour.loss_m3 - 1e-9
        assert min(pour.neat_m3, *pour.loads_m3) > 0


def cuts_fit(made: Order) -> None:
    for listed in made.cuts:
        for stock in listed.stocks:
            used = sum(c.length_m for c in stock.cuts)
            assert used + stock.left_m == pytest.approx(listed.stock_m, abs=1e-6)
            assert all(c.length_m > 0 for c in stock.cuts)


def nothing_twice(layout: Layout, made: Order) -> None:
    """All that is bought by volume is in place once: stone and concrete add up to the parts."""
    volumes = [(v.label.role, v.volume) for v in part_volumes(layout)]
    concrete = sum(v for role, v in volumes if role in ("footing", "pad", "wall", "column", "slab"))
    assert sum(p.neat_m3 for p in made.pours) == pytest.approx(concrete)
    loose = sum(v for role, v in volumes if role.endswith(("stone", "base", "blinding", "fill")))
    bulk = sum(r.in_place for r in made.rows if r.group == "stone and sand")
    assert bulk == pytest.approx(loose + wall_stone_volume(layout), rel=1e-9)


def test_few_houses() -> None:
    for layout in houses(FEW):
        holds(layout)


def test_double_waste_is_added_once() -> None:
    waste = (Bulk(compaction=0.1, waste=0.1), Bulk(compaction=0.1, waste=0.2))
    for layout in houses(range(12)):
        once, twice = (
            order(replace_order(layout, Ordering(stone=w, sand=w, base=w, soil=w))) for w in waste
        )
        for a, b in zip(once.rows, twice.rows, strict=True):
            same = 1.2 / 1.1 if a.group == "stone and sand" else 1.0
            assert b.to_buy == pytest.approx(a.to_buy * same)
            assert b.in_place == a.in_place


def replace_order(layout: Layout, ordering: Ordering) -> Layout:
    return replace(layout, design=layout.design.model_copy(update={"order": ordering}))


@pytest.mark.slow
def test_many_houses() -> None:
    for layout in houses(MANY):
        holds(layout)


@pytest.mark.slow
def test_earth_and_stone_beside_the_walls_are_those_of_their_solids() -> None:
    """Slices of the layout against meshes, holes with sloping sides and steps among them."""
    met = 0
    networks_ = [lay_out(networks.network(name)) for name in networks.TEXTS]
    # The sides of the last one's hole stop leaning in just above the stone's bottom.
    for layout in [*networks_, *houses(FEW), *houses(MANY), house(764)]:
        assert layout is not None
        parts = {v.label.part: v.volume for v in earthwork_volumes(build(layout))}
        met += layout.ground.wall_stone() is not None
        assert backfill_volume(layout) == pytest.approx(
            parts.get("ground/backfill", 0.0), rel=1e-5, abs=1e-5
        )
        assert grading_volume(layout) == pytest.approx(
            parts.get("ground/grading", 0.0), rel=1e-4, abs=1e-5
        )
        assert wall_stone_volume(layout) == pytest.approx(
            parts.get("ground/wall stone", 0.0), rel=1e-5, abs=1e-5
        )
    assert met > 20
