"""Telling cuts: they pass where they say, and stay clear of what would hide the floor."""

import pytest
import shapely

from geometry.designfile import read_design
from geometry.layout.lay import Layout, lay_out
from geometry.sections.face import CutLine
from geometry.sections.telling import CLEAR_M, telling_cuts
from tests.designs import design_of, seeded_raw
from tests.rolls import seeds
from tests.whole import networks
from viz.carried import demo, examples

FOOT = 0.3048
TWO = """
[project]
name = "Side by side (invented)"
[[area]]
name = "low"
corners = ["0, 0", "40 ft, 0", "40 ft, 20 ft", "0, 20 ft"]
[[area]]
name = "high"
step = "{step}"
corners = ["40 ft, 0", "56 ft, 0", "56 ft, 20 ft", "40 ft, 20 ft"]
"""


def laid(text: str) -> tuple[Layout, dict[str, CutLine]]:
    layout = lay_out(read_design(text))
    return layout, {c.name: c.line for c in telling_cuts(layout)}


def parts(line: CutLine, shape: shapely.Geometry) -> list[shapely.Geometry]:
    return [p for p in shapely.get_parts(shape.intersection(line.track())) if not p.is_empty]


def test_every_example_has_cuts_through_what_they_name() -> None:
    for path in examples().values():
        layout, cuts = laid(path.read_text(encoding="utf-8"))
        piers = [p for a in layout.areas for p in a.area.piers]
        assert ("pier" in cuts) == bool(piers)
        assert ("sump" in cuts) == (layout.sump is not None)
        if piers:
            assert cuts["pier"].track().distance(shapely.Point(piers[0].at)) < 1e-9
        assert len(parts(cuts["across"], layout.areas[0].walls)) >= 2


def test_the_cut_at_the_sump_follows_the_pipe() -> None:
    for path in examples().values():
        layout, cuts = laid(path.read_text(encoding="utf-8"))
        assert layout.sump is not None
        assert layout.lead is not None
        track = cuts["sump"].track()
        for distance in (0.0, layout.lead.face, layout.lead.back, layout.lead.end):
            assert track.distance(shapely.Point(layout.lead.at(distance)[:2])) < 1e-9
        assert track.distance(shapely.Point(layout.sump.sump.at)) < 1e-9


def test_the_cut_across_moves_off_a_pier() -> None:
    """The garage's step is 16 ft long with its middle at 34 ft; a pier there would be cut."""
    text = demo().read_text(encoding="utf-8").replace('at = "26 ft, 10 ft"', 'at = "34 ft, 10 ft"')
    layout, cuts = laid(text)
    pads = [p.region for b in layout.structure if b.label.role == "pad" for p in b.prisms]
    assert min(cuts["across"].track().distance(pad) for pad in pads) >= CLEAR_M - 1e-9


def test_cuts_reach_beyond_the_hole_on_both_sides() -> None:
    layout, cuts = laid(demo().read_text(encoding="utf-8"))
    hole = layout.ground.hole(layout.areas[0])
    assert hole is not None
    inside = shapely.Polygon(hole.high).buffer(-1e-6)
    for line in cuts.values():
        assert not shapely.MultiPoint(line.path).intersects(inside)


def test_the_cut_across_the_example_goes_over_the_step_to_the_garage() -> None:
    _, cuts = laid(demo().read_text(encoding="utf-8"))
    shared = shapely.LineString([(26 * FOOT, 18 * FOOT), (42 * FOOT, 18 * FOOT)])
    assert len(cuts["across"].crossings(shared)) == 1
    assert "step" not in cuts


def test_a_step_that_lies_beside_the_cut_across_gets_its_own() -> None:
    layout, cuts = laid(TWO.format(step="3 ft"))
    shared = shapely.LineString([(40 * FOOT, 0), (40 * FOOT, 20 * FOOT)])
    assert cuts["across"].crossings(shared) == ()
    assert len(cuts["step"].crossings(shared)) == 1
    assert all(len(parts(cuts["step"], a.outline)) == 1 for a in layout.areas)


def test_areas_at_one_level_have_no_step() -> None:
    assert "step" not in laid(TWO.format(step="0"))[1]


@pytest.mark.parametrize("seed", seeds(12))
def test_the_cut_across_shows_wall_footing_and_drain_of_rolled_designs(seed: int) -> None:
    raw = seeded_raw(seed)
    if raw is None:
        pytest.skip("this seed rolls no sound design")
    layout = lay_out(design_of(raw))
    cuts = {c.name: c.line for c in telling_cuts(layout)}
    across = cuts["across"]
    assert len(parts(across, layout.areas[0].footings)) >= 2
    width = layout.areas[0].footing.width
    assert all(p.length < 3 * width for p in parts(across, layout.areas[0].footings))
    if layout.drain and layout.drain.drain.sides == "all":
        assert across.crossings(layout.drain.route.line)
    levels = {round(a.tof, 6) for a in layout.areas}
    if len(levels) > 1:
        named = [across, *(cuts[n] for n in ("step",) if n in cuts)]
        crossed = [sum(bool(parts(c, a.outline)) for a in layout.areas) for c in named]
        assert max(crossed) > 1


@pytest.mark.parametrize("name", networks.TEXTS)
def test_every_drain_and_a_bleeder_are_cut(name: str) -> None:
    layout = lay_out(networks.network(name))
    cuts = {c.name: c.line for c in telling_cuts(layout)}
    for drain in layout.drains:
        assert any(cut.crossings(drain.route.line) for cut in cuts.values())
    others = [cut for name, cut in cuts.items() if name not in ("drain", "bleeder")]
    missed = [d for d in layout.drains if not any(cut.crossings(d.route.line) for cut in others)]
    assert ("drain" in cuts) == bool(missed)
    assert ("bleeder" in cuts) == bool(layout.bleeders)
    if layout.bleeders:
        track = cuts["bleeder"].track()
        ends = [[shapely.Point(e[:2]) for e in (b.outer_end, b.inner_end)] for b in layout.bleeders]
        # Where the house has such a place, neither pads nor pit nor risers are in its way.
        pads = [p.region for b in layout.structure if b.label.role == "pad" for p in b.prisms]
        risers = [p.region for d in layout.drains for p in layout.risers(d)]
        assert min(track.distance(shape) for shape in (*pads, *risers)) >= CLEAR_M - 1e-9
        along = [pair for pair in ends if max(track.distance(p) for p in pair) < 1e-9]
        # From outside inward, and the first footing on the way is the one it lies in.
        first = min(cuts["bleeder"].spans(layout.areas[0].footings))[0]
        place = shapely.Point(cuts["bleeder"].place(first))
        assert any(outer.distance(place) < 0.3 < inner.distance(place) for outer, inner in along)


def test_a_drain_that_no_other_cut_meets_gets_its_own() -> None:
    # The cut across and the pier's run north and south, the pit's along its pipe to the west.
    text = networks.TEXTS["upper to lower stone"].replace("sides = [2, 3, 4]", "sides = [2]")
    layout, cuts = laid(text)
    upper = next(d for d in layout.drains if d.area.name == "garage")
    assert upper.drain.sides == (2,)
    meeting = [name for name, cut in cuts.items() if cut.crossings(upper.route.line)]
    assert meeting == ["drain"]


@pytest.mark.parametrize("name", ["daylight", "both to the pit", "upper to daylight"])
def test_the_cut_across_keeps_off_bleeders_and_pipes_to_daylight(name: str) -> None:
    layout = lay_out(networks.network(name))
    track = next(c.line for c in telling_cuts(layout) if c.name == "across").track()
    out = [x for d in layout.drains for x in layout.leads(d) if x is not layout.pit_lead]
    bores = [*(lead.outside for lead in out), *(b.outside for b in layout.bleeders)]
    assert bores
    lines = [shapely.LineString((bore.start[:2], bore.end[:2])) for bore in bores]
    assert min(line.distance(track) for line in lines) >= CLEAR_M - 1e-9
