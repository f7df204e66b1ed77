"""Telling cuts: they pass where they say, and stay clear of what would hide the floor."""

import shapely

from geometry.designfile import read_design
from geometry.layout.lay import lay_out
from geometry.sections.telling import CLEAR_M, telling_cuts
from viz.carried import demo, examples


def laid(text):
    layout = lay_out(read_design(text))
    return layout, {
        c.name: shapely.LineString((c.line.start, c.line.end)) for c in telling_cuts(layout)
    }


def test_every_example_has_cuts_through_what_they_name():
    for path in examples().values():
        layout, cuts = laid(path.read_text(encoding="utf-8"))
        piers = [p for a in layout.areas for p in a.area.piers]
        assert ("pier" in cuts) == bool(piers)
        assert ("sump" in cuts) == (layout.sump is not None)
        if piers:
            assert cuts["pier"].distance(shapely.Point(piers[0].at)) < 1e-9
        if layout.sump:
            assert cuts["sump"].distance(shapely.Point(layout.sump.sump.at)) < 1e-9
        walls = cuts["across"].intersection(layout.areas[0].walls)
        assert len(shapely.get_parts(walls)) >= 2


def test_the_cut_across_moves_off_a_pier_in_the_middle_of_the_house():
    """The longest side is 42 ft; a pier at its middle would stand in the cut at 21 ft."""
    text = demo().read_text(encoding="utf-8").replace('at = "13 ft, 10 ft"', 'at = "21 ft, 10 ft"')
    layout, cuts = laid(text)
    pads = [p.region for b in layout.structure if b.label.role == "pad" for p in b.prisms]
    assert min(cuts["across"].distance(pad) for pad in pads) >= CLEAR_M - 1e-9
    assert cuts["pier"].intersects(shapely.Point(21 * 0.3048, 10 * 0.3048).buffer(1e-6))


def test_cuts_reach_beyond_the_hole_on_both_sides():
    layout, cuts = laid(demo().read_text(encoding="utf-8"))
    hole = shapely.Polygon(layout.ground.hole(layout.areas[0]).high)
    for track in cuts.values():
        ends = shapely.MultiPoint(track.coords)
        assert not ends.intersects(hole.buffer(-1e-6))
