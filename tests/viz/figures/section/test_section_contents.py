"""What a section says: labels, levels, datum, ground, thin parts, and what it refuses."""

from dataclasses import replace

import pytest
from shapely import LineString

from geometry.errors import BedcourseError
from geometry.units import INCH
from tests.viz.figures import invented_section as invented
from tests.viz.figures.section.drawn_sections import example, read
from tests.viz.figures.section.section_read import Read
from viz.drawing.marks import Circle, Hatch, Leader, Line, Mark
from viz.pictures import detail_shots, picture_of, section_shots

EDGE = tuple(inches * INCH for inches in (-34.0, -18.0, 40.0, 16.0))


def words(one: Read) -> list[str]:
    return [text.words for text in one.texts]


def areas(one: Read, name: str) -> list:
    return [m.shape for m in one.figure.marks if isinstance(m, Hatch) and m.name == name]


@pytest.mark.parametrize(("system", "ratio"), [("ft-in", 8), ("metric", 10)])
def test_a_wall_of_8_by_96_inches_is_true_to_scale(system: str, ratio: int) -> None:
    one = read(invented.picture(system=system), (0, "words"))
    wall = max(areas(one, "concrete"), key=lambda s: s.bounds[3] - s.bounds[1])
    left, low, right, high = wall.bounds
    assert one.figure.scale is not None
    assert one.figure.scale.ratio == ratio
    assert right - left == pytest.approx(8 * 25.4 / ratio)
    assert high - low == pytest.approx(96 * 25.4 / ratio)


def test_a_floor_between_walls_is_labelled_from_above_in_the_order_of_its_layers() -> None:
    one = read(invented.picture(whole=True), (0, "words"))
    uprights = [m for m in one.of(Leader) if len(m.points) == 2]
    heads = {text.words: text.at for text in one.texts if text.bold}
    floor = ("Concrete slab", "Rigid foam board", "Vapor retarder", "Sand", "Washed stone")
    levels = [heads[name][1] for name in floor[:-1]]
    assert len(uprights) == 2
    assert levels == sorted(levels, reverse=True)
    assert len({heads[name][0] for name in floor[:-1]}) == 1


def test_two_stones_of_other_wording_have_a_label_each() -> None:
    one = read(invented.picture(), (0, "words"))
    stone = areas(one, "stone")
    dots = [LineString(m.points[:1] * 2) for m in one.of(Leader)]
    assert len([dot for dot in dots if any(s.covers(dot) for s in stone)]) == 2


def test_one_wording_is_written_once() -> None:
    same = dict.fromkeys(("wall", "footing", "slab", "pad", "column"), "Concrete\none pour")
    one = read(invented.picture(words=same), (0, "words"))
    assert words(one).count("Concrete") == 1


def test_thin_parts_are_one_heavy_line_and_noted() -> None:
    one = read(invented.picture(), (0, "words"))
    heavy = one.of(Line, "outline")
    assert {m.weight for m in heavy} >= {1.0, 0.7}
    assert any(m.weight == 0.7 and m.dash for m in heavy)
    assert one.figure.remark == "Shown heavy, not to scale: Vapor retarder, Filter fabric."


def test_a_note_stands_before_the_remark_on_thin_parts() -> None:
    one = read(replace(invented.picture(), note="Invented."), (0, "words"))
    assert one.figure.remark.startswith("Invented. Shown heavy")


def test_levels_are_written_against_the_datum_and_as_elevation() -> None:
    """TOF is 30.48 m, 100 ft; the floor 6 in above it."""
    said = words(read(invented.picture(), (0, "words")))
    for part in ("Finished floor", "+0'-6\"", "El. 100.50 ft", "0'-0\"", "El. 100.00 ft"):
        assert part in said
    metric = words(read(invented.picture(system="metric"), (0, "words")))
    assert "El. 30.632 m" in metric


def test_levels_outside_the_window_are_left_out() -> None:
    said = words(read(invented.picture(window=EDGE), (1, "words")))
    assert "Finished floor" in said
    assert "Top of wall" not in said


def test_a_level_without_elevation_is_written_without_one() -> None:
    bare = tuple(replace(level, elevation_m=None) for level in invented.LEVELS)
    said = words(read(invented.picture(levels=bare), (0, "words")))
    assert "+0'-6\"" in said
    assert not [w for w in said if w.startswith("El.")]


def test_the_datum_line_lies_at_level_zero() -> None:
    """The foam board lies on top of footing."""
    one = read(invented.picture(), (0, "words"))
    (datum,) = one.of(Line, "datum")
    (foam,) = areas(one, "cross")
    assert datum.points[0][1] == datum.points[1][1] == pytest.approx(foam.bounds[1])
    assert datum.dash


def test_undisturbed_ground_touches_the_dig_and_stays_out_of_it() -> None:
    one = read(invented.picture(), (0, "words"))
    (earth,), (backfill,) = areas(one, "earth"), areas(one, "backfill")
    assert earth.distance(backfill) < 1e-6
    assert earth.intersection(backfill).area < 1e-6


def test_a_key_is_as_wide_as_the_sheet_allows() -> None:
    narrow = read(invented.picture(window=EDGE), (1, "keyed"))
    wide = read(invented.picture(window=EDGE), (1, "keyed"), widest=600.0)
    assert wide.figure.box.height < narrow.figure.box.height
    assert narrow.figure.box.width < wide.figure.box.width <= 600.0 + 1e-6


@pytest.mark.parametrize(
    ("window", "sentence"),
    [((50.0, 0.0, 60.0, 1.0), "shows nothing"), ((1.0, 0.0, 0.0, 1.0), "left below its right")],
)
def test_what_cannot_be_drawn_is_said_in_one_sentence(window: tuple, sentence: str) -> None:
    with pytest.raises(BedcourseError, match=sentence):
        read(replace(invented.picture(), window=window), (0, "words"))


def bars(one: Read) -> list[Mark]:
    return one.of(Circle, "outline")


def test_two_bars_are_dotted_in_a_plain_cut_of_the_strip_and_none_in_the_sleeve() -> None:
    """The demo's strip has two bars, at its cut by the sump a sleeve for the drain's pipe."""
    work = example("l-basement")
    by_name = {shot.name: shot for shot in detail_shots(work)}
    plain = read(picture_of(work, by_name["detail-footing"]), (0, "words"))
    pierced = read(picture_of(work, by_name["detail-sump"]), (0, "words"))
    assert len(bars(plain)) == 2
    assert not bars(pierced)


def test_sections_through_the_house_leave_small_parts_to_details() -> None:
    work = example("l-basement")
    sump = next(s for s in section_shots(work) if s.name == "section-sump")
    whole = " ".join(words(read(picture_of(work, sump), (0, "words"))))
    close = " ".join(words(read(picture_of(work, next(s for s in detail_shots(work)
                     if s.name == "detail-sump")), (0, "words"))))  # fmt: skip
    assert "lid" in close.lower()
    assert "lid" not in whole.lower()
