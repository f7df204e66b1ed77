"""A section on paper: to scale, legible, nothing over anything else, nothing off the sheet."""

import re
from dataclasses import replace
from itertools import combinations
from xml.etree import ElementTree as ET

import pytest
from invented_section import LABELS, LEVELS, NOTES, WINDOW, across_house, faces
from shapely import LineString

from geometry.errors import BedcourseError
from geometry.units import INCH
from viz.drawing.lettering import text_box
from viz.drawing.marks import Fill, Hatch, Leader, Line, Text
from viz.drawing.page import PAPERS, Drawing, PaperName
from viz.drawing.scale import named_scale
from viz.export.svg import to_svg
from viz.sheets.level_mark import LevelMark
from viz.sheets.section import section_drawing
from viz.style.text import SMALLEST

SVG = "{http://www.w3.org/2000/svg}"
EDGE = tuple(inches * INCH for inches in (-34, -18, 40, 16))


def drawn(**other: object) -> Drawing:
    given: dict[str, object] = {
        "system": "ft-in", "project": "Invented house", "title": "Section A-A", "notes": NOTES,
        "window": WINDOW, "labels": LABELS, **other,
    }  # fmt: skip
    cut = across_house() if given["window"] is None else faces()
    return section_drawing(cut, LEVELS, **given)  # type: ignore[arg-type]


def texts(drawing: Drawing) -> list[Text]:
    return [mark for mark in drawing.marks if isinstance(mark, Text)]


CASES: list[dict[str, object]] = [
    {},
    {"paper": "letter", "window": EDGE},
    {"paper": "A4", "system": "metric", "window": EDGE},
    {"paper": "A3", "system": "metric"},
    {"paper": "ANSI B"},
    {"paper": "ARCH D", "window": None},
    {"paper": "A1", "system": "metric", "window": None},
    {"paper": "ANSI B", "window": None},
]


@pytest.fixture(params=CASES, ids=str)
def sheet(request: pytest.FixtureRequest) -> Drawing:
    return drawn(**request.param)


def test_a_foot_of_the_scale_bar_is_true_in_the_file() -> None:
    """At 3/4 in to the foot, one foot is 0.75 × 25.4 = 19.05 mm."""
    root = ET.fromstring(to_svg(drawn(scale=named_scale('3/4" = 1\'-0"', "ft-in"))))  # noqa: S314
    bar = root.find(f".//{SVG}g[@class='scale bar']/{SVG}path")
    words = [t.text for t in root.iterfind(f".//{SVG}g[@class='scale text']/{SVG}text")]
    assert bar is not None
    xs = [float(x) for x in re.findall(r"[ML](\S+)", bar.get("d", ""))]
    assert max(xs) - min(xs) == pytest.approx(19.05, abs=0.001)
    assert words[:2] == ["0", "1'-0\""]


@pytest.mark.parametrize(("system", "ratio"), [("ft-in", 12), ("metric", 20)])
def test_the_cut_is_true_to_scale(system: str, ratio: int) -> None:
    sheet = drawn(system=system)
    slab = [m.shape for m in sheet.marks if isinstance(m, Hatch) and m.name == "concrete"]
    wall = max(slab, key=lambda shape: shape.bounds[3] - shape.bounds[1])
    left, low, right, high = wall.bounds
    assert sheet.ratio == ratio
    assert right - left == pytest.approx(8 * 25.4 / ratio)
    assert high - low == pytest.approx(96 * 25.4 / ratio)


def test_no_text_overlaps_another(sheet: Drawing) -> None:
    boxes = [(text.words, text_box(text)) for text in texts(sheet)]
    assert not [(a, b) for (a, one), (b, two) in combinations(boxes, 2) if one.overlaps(two)]


def test_all_text_is_large_enough_and_inside_the_border(sheet: Drawing) -> None:
    frame = next(m for m in sheet.marks if isinstance(m, Line) and m.layer == "frame")
    (left, low), (right, high) = frame.points[0], frame.points[2]
    for text in texts(sheet):
        box = text_box(text)
        assert text.height >= SMALLEST
        assert left < box.left < box.right < right
        assert low < box.low < box.high < high


def test_no_text_stands_on_the_cut(sheet: Drawing) -> None:
    areas = [m.shape for m in sheet.marks if isinstance(m, Fill) and m.layer == "cut"]
    assert areas
    for text in texts(sheet):
        box = text_box(text)
        line = LineString([(box.left, box.low), (box.right, box.high)])
        assert not any(area.intersects(line) for area in areas)


def test_no_two_leaders_cross(sheet: Drawing) -> None:
    leaders = [LineString(m.points) for m in sheet.marks if isinstance(m, Leader)]
    assert len(leaders) >= 8
    assert not [1 for one, two in combinations(leaders, 2) if one.intersects(two)]


def test_a_floor_between_walls_is_labelled_from_above_in_the_order_of_its_layers() -> None:
    sheet = drawn(window=None, paper="ARCH D")
    uprights = [m for m in sheet.marks if isinstance(m, Leader) and len(m.points) == 2]
    heads = {text.words: text.at for text in texts(sheet) if text.bold}
    floor = ("Concrete slab", "Rigid foam board", "Vapor retarder", "Sand", "Washed stone")
    levels = [heads[name][1] for name in floor[:-1]]
    assert len(uprights) == 2
    assert levels == sorted(levels, reverse=True)
    assert len({heads[name][0] for name in floor[:-1]}) == 1


def test_every_wording_is_on_the_sheet(sheet: Drawing) -> None:
    words = " ".join(text.words for text in texts(sheet))
    for part in ("wall", "footing", "slab", "foam", "sheet", "sand", "base", "wrap", "soil"):
        assert LABELS[part].partition("\n")[0] in words


def test_every_label_points_at_its_own_material() -> None:
    leaders = [m for m in drawn().marks if isinstance(m, Leader)]
    stone = [m.shape for m in drawn().marks if isinstance(m, Hatch) and m.name == "stone"]
    on_stone = [m for m in leaders if any(s.covers(LineString(m.points[:1] * 2)) for s in stone)]
    assert len(on_stone) == 2


def test_one_wording_is_written_once() -> None:
    same = dict.fromkeys(("wall", "footing", "slab", "pad", "column"), "Concrete\none pour")
    heads = [text for text in texts(drawn(labels=same)) if text.words == "Concrete"]
    assert len(heads) == 1


def test_thin_parts_are_one_heavy_line_and_noted() -> None:
    sheet = drawn()
    heavy = [m for m in sheet.marks if isinstance(m, Line) and m.layer == "outline"]
    assert {m.weight for m in heavy} >= {0.9, 0.7}
    assert any(m.weight == 0.7 and m.dash for m in heavy)
    note = [t.words for t in texts(sheet) if t.words.startswith("Shown heavy")]
    assert note == ["Shown heavy, not to scale: Vapor retarder, Filter fabric."]


def test_sheet_says_scale_stamp_and_local_code(sheet: Drawing) -> None:
    words = " ".join(text.words for text in texts(sheet))
    for part in ("NOT FOR CONSTRUCTION", "UNTIL APPROVED", "Local code governs", "Scale "):
        assert part in words


def test_levels_are_written_against_the_datum_and_as_elevation() -> None:
    words = [text.words for text in texts(drawn())]
    for part in ("Finished floor", "+0'-6\"", "El. 100.50 ft", "0'-0\"", "El. 100.00 ft"):
        assert part in words


def test_levels_outside_the_window_are_left_out() -> None:
    words = [text.words for text in texts(drawn(window=EDGE, paper="letter"))]
    assert "Finished floor" in words
    assert "Top of wall" not in words


def test_datum_line_lies_at_level_zero() -> None:
    sheet = drawn()
    datum = next(m for m in sheet.marks if isinstance(m, Line) and m.layer == "datum")
    foam = next(m.shape for m in sheet.marks if isinstance(m, Hatch) and m.name == "cross")
    assert datum.points[0][1] == pytest.approx(foam.bounds[1])
    assert datum.dash


def test_undisturbed_ground_touches_the_dig_and_stays_out_of_it() -> None:
    areas = {m.name: m.shape for m in drawn().marks if isinstance(m, Hatch)}
    assert areas["earth"].distance(areas["backfill"]) < 1e-6
    assert areas["earth"].intersection(areas["backfill"]).area < 1e-6


@pytest.mark.parametrize("paper", list(PAPERS))
def test_every_paper_has_its_size(paper: PaperName) -> None:
    sheet = drawn(paper=paper, window=EDGE)
    assert (sheet.width, sheet.height) == (PAPERS[paper].width, PAPERS[paper].height)


def test_long_and_strange_words_stay_in_their_place() -> None:
    project = "The <very> long & winding house of " + "Wwwww" * 40
    sheet = drawn(project=project, title=project, subtitle=project)
    ET.fromstring(to_svg(sheet))  # noqa: S314
    assert max(text_box(text).right for text in texts(sheet)) < sheet.width
    cut = [text for text in texts(sheet) if text.words.endswith("…")]
    assert len(cut) == 3


@pytest.mark.parametrize(
    ("other", "sentence"),
    [
        ({"paper": "A4", "scale": named_scale('3" = 1\'-0"', "ft-in")}, "does not fit this paper"),
        ({"paper": "letter", "window": None}, "41'-2\" wide"),
        ({"window": (50.0, 0.0, 60.0, 1.0)}, "shows nothing"),
        ({"window": (1.0, 0.0, 0.0, 1.0)}, "left below its right"),
        ({"labels": {part: part + "\nand more" * 40 for part in LABELS}}, "choose a larger paper"),
    ],
)
def test_what_cannot_be_drawn_is_said_in_one_sentence(
    other: dict[str, object], sentence: str
) -> None:
    with pytest.raises(BedcourseError, match=sentence):
        drawn(**other)


def test_a_scale_not_in_the_list_is_refused_with_the_list() -> None:
    with pytest.raises(BedcourseError, match="1:50"):
        named_scale("1:33", "metric")


def test_level_without_elevation_is_written_without_one() -> None:
    bare = [replace(level, elevation_m=None) for level in LEVELS]
    sheet = section_drawing(
        faces(), bare, LABELS, system="ft-in", project="Invented", title="A", window=WINDOW
    )
    assert not [text for text in texts(sheet) if text.words.startswith("El.")]
    assert isinstance(bare[0], LevelMark)
