"""The water table in figures: at its level, in ground and pit alone, the range told and ruled."""

from dataclasses import replace

import pytest
import shapely
from shapely import LineString

from geometry.layout.lay import Layout, lay_out
from geometry.parts.fields import LevelAt
from geometry.units import INCH, show_level
from tests.viz.figures.drain_figures import assert_legible, example, words
from tests.viz.figures.section.drawn_sections import example as worked
from tests.viz.figures.section.drawn_sections import read, shots
from tests.viz.figures.section.legible import problems
from tests.viz.figures.section.section_read import Read
from viz.drawing.marks import Line, Strokes
from viz.drawing.scale import Scale
from viz.figures.heights.heights import heights_figure
from viz.figures.heights.screen import heights_pictures
from viz.figures.pit.pit import pit_figure
from viz.figures.watertable import COLOUR, DASH, HIGHEST, LAYER, LOWEST, WaterTable
from viz.pictures import picture_of

RANGE = WaterTable(-6 * INCH, -11 * INCH)


def in_water(layout: Layout, high: float | None, low: float | None) -> Layout:
    water = layout.design.water.model_copy(update={
        "water_table": None if high is None else LevelAt(base="TOF", offset_m=high),
        "low_water_table": None if low is None else LevelAt(base="TOF", offset_m=low),
    })  # fmt: skip
    return lay_out(layout.design.model_copy(update={"water": water}))


def drawn(name: str, shot: str, table: WaterTable) -> Read:
    work = worked(name)
    picture = picture_of(work, next(s for s in shots(work) if s.name == shot))
    assert picture.standing is not None
    return read(replace(picture, standing=replace(picture.standing, table=table)), (0, "words"))


def lines(read: Read) -> list[LineString]:
    marks = read.of(Line, LAYER)
    return [LineString(m.points) for m in marks if m.dash == DASH]  # type: ignore[attr-defined]


@pytest.mark.parametrize("shot", ["section-sump", "detail-sump", "detail-footing"])
def test_lines_stand_at_the_levels_outside_concrete(shot: str) -> None:
    one = drawn("l-basement", shot, RANGE)
    assert not problems(one)
    heights = {round(line.bounds[1], 6) for line in lines(one)}
    assert heights == {round(one.at(0.0, level)[1], 6) for _, level in RANGE.named}
    concrete = [
        f for f in one.picture.faces if f.label.role in {"footing", "wall", "slab", "insulation"}
    ]
    solid = shapely.union_all([p for f in concrete for p in one.cropped(f.shape)]).buffer(-0.01)
    assert not any(line.intersects(solid) for line in lines(one))
    ruled = [LineString(x) for m in one.of(Strokes, LAYER) for x in m.lines]  # type: ignore[attr-defined]
    assert ruled
    assert all(min(heights) < x.bounds[1] < max(heights) for x in ruled)


def test_it_goes_through_the_pit_where_the_cut_does() -> None:
    one = drawn("l-basement", "detail-sump", RANGE)
    pit = one.picture.standing
    assert pit is not None
    assert pit.pit is not None
    left, _, right, _ = pit.pit
    ends = [(one.at(left, 0.0)[0], one.at(right, 0.0)[0])]
    assert any((line.bounds[0], line.bounds[2]) == pytest.approx(ends[0]) for line in lines(one))


def test_a_level_beyond_the_view_is_told_in_words() -> None:
    one = drawn("l-basement", "detail-footing", WaterTable(-6 * INCH, -9.0))
    low = show_level(-9.0, "ft-in")
    assert f"{LOWEST}, {low}: below what is shown." in one.figure.remark
    assert HIGHEST not in one.figure.remark
    assert len({line.bounds[1] for line in lines(one)}) == 1
    assert not drawn("l-basement", "detail-footing", WaterTable()).of(Line, LAYER)


def test_a_section_names_both_levels() -> None:
    work = worked("l-basement")
    wet = replace(work, layout=in_water(work.layout, RANGE.high, RANGE.low))
    picture = picture_of(wet, next(s for s in shots(wet) if s.name == "detail-sump"))
    said = [t.words for t in read(picture, (0, "words")).texts]
    assert {HIGHEST, LOWEST} <= set(said)


def test_heights_and_pit_show_the_range_too() -> None:
    layout = in_water(example("l-basement"), RANGE.high, RANGE.low)
    heights, pit = heights_figure(layout, Scale("1:12", 12), 2.5), pit_figure(layout, 200, 110, 2.5)
    assert heights is not None
    assert pit is not None
    assert_legible(heights)
    for figure in (heights, pit):
        said = " ".join(words(figure))
        assert f"water table, highest seen {show_level(-6 * INCH, 'ft-in')}" in " ".join(
            said.split()
        )
        assert "water table, low" in said
        assert any(isinstance(m, Line) and m.colour == COLOUR and m.dash for m in figure.marks)
    deep = heights_figure(in_water(layout, RANGE.high, -9.0), Scale("1:12", 12), 2.5)
    assert deep is not None
    assert "below what is shown" in deep.remark


@pytest.mark.parametrize("name", ["l-basement", "metric-house", "foam-stopped"])
def test_screens_have_a_legible_section_wide_and_narrow(name: str) -> None:
    both = heights_pictures(example(name))
    assert both is not None
    for figure in both:
        assert_legible(figure)
    assert both[0].box.width > 2 * both[1].box.width
    assert both[1].box.width <= 110
