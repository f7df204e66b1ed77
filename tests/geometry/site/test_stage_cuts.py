"""Where a stage is cut: square across its drain from outside the hole, clear of tees and piers."""

import pytest
import shapely
from hand_house import DRAIN, INCH, PIT, hand_house
from shapely import LineString, Point

from geometry.layout.drain import DrainLayout
from geometry.layout.lay import Layout, lay_out
from geometry.sections.face import CutLine
from geometry.site.places import across, stage_cut
from geometry.site.stages import stages
from tests.whole.networks import network

FOOT = 12 * INCH
SLOPED = "[excavation]\nslope = 0.75\n"


def line(cut: CutLine) -> LineString:
    return LineString([cut.start, cut.end])


def crossed(cut: CutLine, drain: DrainLayout) -> tuple[float, float]:
    """Where along the drain's pipe the cut crosses it first: the plan's x and y, metres."""
    met = shapely.get_parts(line(cut).intersection(drain.route.line))
    first = min(met, key=Point(cut.start).distance)
    return float(first.x), float(first.y)


def whole(layout: Layout, drain: DrainLayout) -> None:
    """From beyond the hole's upper edge to well inside the house's wall, outside first."""
    cut = across(layout, drain)
    hole = layout.ground.hole(drain.area)
    assert hole is not None
    assert 1.5 < shapely.Polygon(hole.high).distance(Point(cut.start)) < 4
    assert drain.area.outline.contains(Point(cut.end))
    assert 1.0 < drain.area.outline.exterior.distance(Point(cut.end)) < 3
    assert line(cut).intersection(drain.area.outline).geom_type == "LineString"


def test_a_drain_is_cut_in_the_middle_of_its_longest_straight() -> None:
    layout = hand_house(DRAIN + SLOPED)
    (drain,) = layout.drains
    whole(layout, drain)
    cut = across(layout, drain)
    # A long side runs 14 in outside of the wall's face, which is 30 ft long.
    x, y = crossed(cut, drain)
    assert x == pytest.approx(15 * FOOT)
    assert min(abs(y + 14 * INCH), abs(y - 20 * FOOT - 14 * INCH)) < 1e-9
    assert cut.start[0] == pytest.approx(cut.end[0])


@pytest.mark.parametrize("corners", ['"0, 0", "0, 20 ft", "30 ft, 20 ft", "30 ft, 0"', ""])
def test_outside_is_at_the_left_whichever_way_the_file_goes_round(corners: str) -> None:
    given = '"0, 0", "30 ft, 0", "30 ft, 20 ft", "0, 20 ft"'
    layout = hand_house(DRAIN + SLOPED, (given, corners or given))
    whole(layout, layout.drains[0])


def test_drains_inside_are_cut_from_outside_as_well() -> None:
    layout = lay_out(network("both to the pit"))
    for drain in layout.drains:
        whole(layout, drain)


@pytest.mark.parametrize(("tee", "share"), [("15 ft", 0.35), ("5 ft", 0.5), ("13 ft", 0.35)])
def test_a_cut_keeps_a_metre_clear_of_a_tee(tee: str, share: float) -> None:
    """The straight is 32 ft 4 in long and the pit's pipe meets it square, 14 in off the corner."""
    layout = hand_house(DRAIN + PIT.replace('"4 ft, 10 ft"', f'"{tee}, 4 ft"'))
    (drain,) = layout.drains
    x, y = crossed(across(layout, drain), drain)
    straight = (30 + 28 / 12) * FOOT
    along = x + 14 * INCH
    assert min(along, straight - along) == pytest.approx(min(share, 1 - share) * straight)
    assert all(Point(drain.route.at(t)).distance(Point(x, y)) > 1.0 for t in drain.tees)


def test_each_stage_is_cut_where_its_work_lies() -> None:
    layout = hand_house()
    (drain,) = layout.drains
    cuts = {stage.key: stage_cut(layout, stage) for stage in stages(layout)}
    beside = across(layout, drain)
    for key in ("subgrade", "bedding", "pipe", "inverts", "drain_stone", "backfill"):
        assert cuts[key] == beside
    # The pit stands at 4 ft, 10 ft, and its pipe comes from the left: 3 m to either side.
    pit = cuts["pit"]
    assert pit.start == pytest.approx((4 * FOOT - 3, 10 * FOOT))
    assert pit.end == pytest.approx((4 * FOOT + 3, 10 * FOOT))
    alone = hand_house(PIT)
    (pit,) = (stage_cut(alone, s) for s in stages(alone) if s.key == "pit")
    assert line(pit).length == pytest.approx(6)
    assert line(pit).centroid.coords[0] == pytest.approx((4 * FOOT, 10 * FOOT))
    for key in ("base", "slab"):
        assert cuts[key] != beside
        assert not layout.areas[0].outline.contains(Point(cuts[key].start))
        assert layout.areas[0].outline.contains(Point(cuts[key].end))


def test_the_hole_is_cut_across_the_outer_drain_and_without_any_at_the_wall() -> None:
    layout = lay_out(network("both to the pit"))
    outer = next(d for d in layout.drains if not d.inside)
    for stage in stages(layout):
        if stage.key in ("subgrade", "backfill"):
            assert stage_cut(layout, stage) == across(layout, outer)
    bare = hand_house("")
    for stage in stages(bare):
        assert bare.areas[0].outline.contains(Point(stage_cut(bare, stage).end))
