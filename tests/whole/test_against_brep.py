"""The engine's volumes against the same parts rebuilt in a boundary-representation kernel."""

from itertools import pairwise
from math import hypot, pi
from pathlib import Path

import numpy as np
import pytest

from geometry.designfile import read_design
from geometry.layout.lay import Layout
from geometry.materials.catalogue import FABRICS, PIPES
from geometry.parts.pier import Pier
from geometry.project import Design
from tests.designs import Raw, design_of, footing, piers
from tests.designs import core as inside_of
from tests.dice import Length, Seeded
from tests.rolls import seeds
from tests.whole import brep
from tests.whole.outlines import ell, rectangle, tee
from tests.whole.witness import Whole

pytestmark = pytest.mark.slow
EXAMPLE = Path(__file__).parents[2] / "assets" / "examples" / "l-basement.toml"
FT, IN = 0.3048, 0.0254
FLAT, ROUND = 1e-6, 1e-3


@pytest.fixture(scope="module")
def whole() -> Whole:
    return Whole(read_design(EXAMPLE.read_text(encoding="utf-8")))


def corners(design: Design, area: int) -> list[brep.Corner]:
    return list(design.areas[area].corners)


def house() -> list[brep.Corner]:
    """Basement and garage joined, by hand: the shared sides left out."""
    return [(x * FT, y * FT) for x, y in ((0, 0), (42, 0), (42, 42), (26, 42), (26, 32), (0, 32))]


def test_the_wall_of_the_l_by_perimeter(whole: Whole) -> None:
    # Perimeter of the L: 42 + 18 + 16 + 14 + 26 + 32 = 148 ft outside. Five corners turn out and
    # one turns in: the middle line is shorter by 4 x 8 in, 148 - 2'-8" = 145'-4". Wall 8 in
    # thick, 8'-4" high: 145.333 x 0.66667 x 8.33333 = 807.41 ft3.
    middle = 148 - 4 * 8 / 12
    by_hand = middle * (8 / 12) * (8 + 4 / 12) * FT**3
    assert whole.volumes["basement/wall"] == pytest.approx(by_hand, rel=1e-9)
    assert by_hand / FT**3 == pytest.approx(807.41, abs=0.005)
    peer = brep.ring(corners(whole.design, 0), 0, 8 * IN, 0, 100 * IN)
    assert brep.volume(peer) == pytest.approx(by_hand, rel=FLAT)


def test_walls_and_stepped_footing(whole: Whole) -> None:
    design = whole.design
    low, high = corners(design, 0), corners(design, 1)
    step = design.areas[1].step
    joined, wall = house(), design.wall.thickness
    room = brep.prism(brep.grown(joined, -wall), step, step + 4 * FT)
    garage = brep.prism(high, step, step + 4 * FT)
    assert whole.volumes["garage/wall"] == pytest.approx(brep.volume(garage - room), rel=FLAT)
    # Basement strip 20 x 12 in, 6 in out and 14 in inside the outline; garage strip 16 x 8 in,
    # 4 in out and 12 in inside the house, filled down where it stands over the basement's.
    strip = brep.ring(low, 6 * IN, 14 * IN, -12 * IN, 0)

    def upper(bottom: float, top: float) -> brep.Shape:
        band = brep.ring(joined, 4 * IN, 12 * IN, bottom, top)
        near = band & brep.prism(brep.grown(_plain(high), 4 * IN), bottom, top)
        return near - brep.prism(low, bottom, top)

    under = upper(0, step) & brep.ring(low, 6 * IN, 14 * IN, 0, step)
    both = brep.volume(strip) + brep.volume(under + upper(step - 8 * IN, step))
    lead = whole.layout.sump.lead if whole.layout.sump else None
    assert lead is not None
    # The sleeve, 6 in Schedule 40 (6.625 in outside, ASTM D1785), crosses 20 in of footing.
    sleeve = pi * (6.625 / 2 * IN) ** 2 * 20 * IN * hypot(1, 1 / 48)
    assert whole.volumes["footing"] == pytest.approx(both - sleeve, rel=1e-5)


def _plain(points: list[brep.Corner]) -> list[brep.Corner]:
    """The garage's outline without the corner its west side runs straight past."""
    return [p for p in points if p != (26 * FT, 32 * FT)]


def test_pads_columns_and_floors(whole: Whole) -> None:
    design = whole.design
    outline = corners(design, 0)
    tops = {
        "stone": -0.5 * IN,
        "sand": 0.0,
        "retarder": 0.01 * IN,
        "foam": 2.01 * IN,
        "slab": 6.01 * IN,
    }
    pads, columns = [], []
    for pier in design.areas[0].piers:
        pads.append(brep.box(pier.at, 36 * IN, 36 * IN, -12 * IN, 0))
        round_one = pier.column == "round"
        make = brep.cylinder(pier.at, 6 * IN, 0, 6.01 * IN) if round_one else None
        columns.append(make or brep.box(pier.at, 12 * IN, 12 * IN, 0, 6.01 * IN))
        part = f"basement/pier {pier.name}"
        assert whole.volumes[f"{part} pad"] == pytest.approx(brep.volume(pads[-1]), rel=FLAT)
        share = ROUND if round_one else FLAT
        assert whole.volumes[f"{part} column"] == pytest.approx(brep.volume(columns[-1]), rel=share)
    pit = brep.cylinder(design.sump.at, 9.25 * IN, -2, 2) if design.sump else None
    bottom = -6.5 * IN
    lead = lead_bar(design)
    for name, top in tops.items():
        inside = 14 * IN if top <= 0 else 8 * IN
        layer = brep.prism(brep.grown(outline, -inside), bottom, top)
        layer -= [*pads, *columns, pit, lead]
        assert whole.volumes[f"basement/{name}"] == pytest.approx(brep.volume(layer), rel=1e-5), (
            name
        )
        bottom = top


def lead_bar(design: Design) -> brep.Shape:
    """The solid pipe to the sump, by hand: invert at footing bottom, square to the west side."""
    # Trench: wrap, 2 in bedding, pipe of 4.215 in outside and 0.075 in wall (ASTM D2729).
    drain = next(iter(design.drains), None)
    assert drain is not None
    assert design.sump is not None
    wrap, pipe = FABRICS[drain.wrap.material].thickness_m, PIPES[drain.pipe]
    centre = -12 * IN + wrap + 2 * IN + pipe.outside_diameter_m / 2
    x, y = design.sump.at
    start = (-(6 + 8) * IN, y, centre)
    far = x - start[0] - 9 * IN + 1 * IN
    return brep.bar(start, (start[0] + far, y, centre - far / 48), pipe.outside_diameter_m / 2)


def test_drain_run_and_a_share_of_its_holes(whole: Whole) -> None:
    drain = whole.layout.drain
    assert drain is not None
    outline = corners(whole.design, 0)
    route = brep.grown(outline, (6 + 8) * IN)
    # Low beside the sump on the west side, high half-way round; level in plan order from there.
    sump = whole.design.sump
    assert sump is not None
    low = (route[0][0], sump.at[1])
    points = round_from(route, low)
    radius, bore = drain.pipe.outside_diameter_m / 2, drain.pipe.inside_diameter_m / 2
    outside, inside = (sum(map(brep.volume, brep.legs(points, r))) for r in (radius, bore))
    gross = outside - inside
    tees = _opening_of_tee(whole.layout)
    stated = whole.volumes["drain/pipe"] + whole.volumes["drain/fittings"]
    holes = drain.hole_count * one_hole(radius, bore, 3 / 16 * IN)
    openings = len(drain.drain.cleanouts) * _opening_of_riser(whole.layout)
    assert stated == pytest.approx(gross - holes + tees - openings, rel=ROUND)


def round_from(route: list[brep.Corner], low: brep.Corner) -> list[tuple[float, float, float]]:
    """The run from the low point round to itself: up 1/16 in per ft to half-way, then down."""
    ring = [low, *route, low]
    steps = [
        0.0,
        *np.cumsum([hypot(b[0] - a[0], b[1] - a[1]) for a, b in pairwise(ring)]),
    ]
    half, points = steps[-1] / 2, []
    for (x, y), at in zip(ring, steps, strict=True):
        points.append((x, y, min(at, steps[-1] - at) / 192))
    leg = next(n for n, at in enumerate(steps) if at > half)
    share = (half - steps[leg - 1]) / (steps[leg] - steps[leg - 1])
    (x0, y0), (x1, y1) = ring[leg - 1], ring[leg]
    top = (x0 + share * (x1 - x0), y0 + share * (y1 - y0), half / 192)
    return [*points[:leg], top, *points[leg:]]


def one_hole(outer: float, inner: float, hole: float) -> float:
    """Wall one radial hole takes out, by the peer: the mean of twenty drilled in a short pipe."""
    ends = [(0.0, 0.0, 0.0), (2.0, 0.0, 0.0)]
    pipe = brep.swept(ends, outer) - brep.swept(ends, inner)
    places = [((0.1 * n, 0, 0), (0.1 * n, 2 * outer, 0)) for n in range(1, 20)]
    bored = brep.drilled(pipe, places, hole)
    return (brep.volume(pipe) - brep.volume(bored)) / len(places)


def _opening_of_tee(layout: Layout) -> float:
    """What the tee's leg adds: its own wall outside the run, less the opening in the run."""
    drain, pit = layout.drain, layout.sump
    assert drain is not None
    assert pit is not None
    assert pit.lead is not None
    lead, long = pit.lead, 1.0
    outer, inner = drain.radius, drain.bore
    run = [(0, -long, 0), (0, long, 0)]
    end = (lead.begin, 0.0, -lead.fall * lead.begin)
    solid = brep.bar(*run, outer) + brep.bar((0, 0, 0), end, outer)
    past = tuple(1.1 * v for v in end)
    tee = solid - [brep.bar(*run, inner), brep.bar((0, 0, 0), past, inner)]
    return brep.volume(tee) - 2 * long * pi * (outer**2 - inner**2)


def _opening_of_riser(layout: Layout) -> float:
    """What a riser's bore takes out of the bend under it: the wall over the bore, both legs."""
    drain = layout.drain
    assert drain is not None
    legs = [(0.5, 0, 0), (0, 0, 0), (0, 0.5, 0)]
    wall = brep.swept(legs, drain.radius) - brep.swept(legs, drain.bore)
    return brep.volume(wall) - brep.volume(wall - brep.cylinder((0, 0), drain.bore, 0, 1))


@pytest.mark.parametrize("seed", seeds(10))
def test_random_right_angled_houses(seed: int) -> None:
    raw, outline = house_of(seed)
    design = design_of(raw)
    whole = Whole(design)
    strip, wall = design.footing, design.wall
    out = (strip.width - wall.thickness) / 2 + strip.offset
    into = wall.thickness + (strip.width - wall.thickness) / 2 - strip.offset
    found = {
        "footing": brep.ring(outline, out, into, -strip.thickness, 0),
        "main/wall": brep.ring(outline, 0, wall.thickness, 0, wall.height),
    }
    pads = [
        brep.box(p.at, p.width, p.pad_depth, pad_top(p) - p.thickness, pad_top(p))
        for p in design.areas[0].piers
    ]
    level = -9 * IN
    for layer in design.floor.layers:
        top = level + layer.thickness
        below = min(top, 0.0)
        body = None
        if level < -1e-9:
            body = brep.prism(brep.grown(outline, -into), level, below)
        if top > 1e-9:
            above = brep.prism(brep.grown(outline, -wall.thickness), max(level, 0), top)
            body = above if body is None else body + above
        assert body is not None
        found[f"main/{layer.name}"] = body - pads if pads else body
        level = top
    for number, pad in enumerate(pads, 1):
        found[f"main/pier P{number} pad"] = pad
    found["ground/excavation"] = excavation(design, outline, out, into, pads)
    for part, peer in found.items():
        assert whole.volumes[part] == pytest.approx(brep.volume(peer), rel=FLAT), part


def house_of(seed: int) -> tuple[Raw, list[brep.Corner]]:
    """A sound right-angled house with stone, sand, foam, slab and pads, no drain."""
    dice = Seeded(seed)
    plan = dice.choice((rectangle, ell, tee))(dice)
    points = [(Length(round(x / IN * 16)), Length(round(y / IN * 16))) for x, y in plan]
    strip, wall = footing(dice)
    rows = [("stone", "stone-57", 8, "base"), ("sand", "sand-c33", 1, "blinding"),
            ("foam", "xps-iv", 2, "insulation"), ("slab", "concrete", 4, "slab")]  # fmt: skip
    layer = [
        {"name": n, "material": m, "thickness": Length(16 * t), "role": r} for n, m, t, r in rows
    ]
    flat = [{**p, "column": "none"} for p in piers(dice, inside_of(points, strip, wall), [])]
    raw: Raw = {
        "project": {"name": "invented"}, "footing": strip, "wall": wall,
        "floor": {"layer": layer, "tie": ["sand top at TOF"]},
        "excavation": {"working_space": Length(16 * 24), "slope": 0.75,
                       "existing": Length(16 * 30)},
        "grade": {"at_wall": Length(16 * 32)},
        "area": [{"name": "main", "corners": points, "pier": flat}],
    }  # fmt: skip
    return raw, [(x.m, y.m) for x, y in points]


def pad_top(pier: Pier) -> float:
    """Level of a pad's top: against TOF, or the subgrade 9 in below it."""
    base = {"TOF": 0.0, "subgrade": -9 * IN}[pier.pad_top.base]
    return base + float(pier.pad_top.offset_m)


def excavation(
    design: Design, outline: list[brep.Corner], out: float, into: float, pads: list[brep.Shape]
) -> brep.Shape:
    """The hole, 24 in beside the footing, sides 3 across in 4 up; ground under the floor left."""
    bottom, top = -design.footing.thickness, 30 * IN
    foot = out + 24 * IN
    hole = brep.frustum(
        brep.grown(outline, foot), brep.grown(outline, foot + 0.75 * (top - bottom)), bottom, top
    )
    subgrade = -9 * IN
    if subgrade > bottom:
        hole -= brep.prism(brep.grown(outline, -into), bottom, subgrade)
    below = brep.box((0, 0), 400, 400, -10, subgrade)
    for pad in pads:
        pocket = pad & below
        if pocket is not None:  # the peer's word for nothing shared
            hole += pocket
    return hole
