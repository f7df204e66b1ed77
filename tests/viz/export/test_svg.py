"""The SVG writer: true millimetres, escaped words, the same bytes each time, a PNG from it."""

from io import BytesIO
from xml.etree import ElementTree as ET

import pytest
from PIL import Image
from shapely import Point as Spot
from shapely import box

from viz.drawing.marks import Circle, Fill, Hatch, Line, Text
from viz.drawing.page import Drawing
from viz.export.png import to_png
from viz.export.svg import to_svg

SVG = "{http://www.w3.org/2000/svg}"
NASTY = "O'Brien & <Sons> \"]]>\x07"


def drawing(*marks: object) -> Drawing:
    return Drawing(100.0, 50.0, NASTY, 1, marks)  # type: ignore[arg-type]


def test_the_sheet_is_in_millimetres() -> None:
    root = ET.fromstring(to_svg(drawing()))  # noqa: S314
    assert (root.get("width"), root.get("height")) == ("100mm", "50mm")
    assert root.get("viewBox") == "0 0 100 50"


def test_y_runs_up_in_a_drawing_and_down_in_the_file() -> None:
    root = ET.fromstring(to_svg(drawing(Line(((10, 5), (20, 5)), 0.5))))  # noqa: S314
    path = root.find(f".//{SVG}path")
    assert path is not None
    assert path.get("d") == "M10 45L20 45"
    assert path.get("stroke-width") == "0.5"


def test_words_of_users_are_escaped_and_control_characters_dropped() -> None:
    root = ET.fromstring(to_svg(drawing(Text((5, 5), NASTY, 2.5))))  # noqa: S314
    assert root.findtext(f"{SVG}title") == NASTY[:-1]
    assert root.findtext(f".//{SVG}text") == NASTY[:-1]


def test_text_height_is_that_of_capitals() -> None:
    root = ET.fromstring(to_svg(drawing(Text((5, 5), "TOF", 3.0))))  # noqa: S314
    text = root.find(f".//{SVG}text")
    assert text is not None
    assert float(text.get("font-size", "")) == pytest.approx(4.0)


def test_the_letters_travel_with_the_file() -> None:
    assert "@font-face" not in to_svg(drawing())
    both = to_svg(drawing(Text((5, 5), "a", 3.0), Text((5, 9), "b", 3.0, bold=True)))
    assert both.count("@font-face") == 2


def test_same_drawing_same_bytes() -> None:
    one = drawing(Hatch(Spot(30, 20).buffer(15), "stone", "#333333"), Text((5, 5), "x", 3.0))
    assert to_svg(one) == to_svg(one)


def test_png_has_the_dots_asked_for_and_the_marks_in_place() -> None:
    sheet = drawing(Fill(box(0, 25, 50, 50), "#ff0000"), Circle((75, 12.5), 5, 0, fill="#0000ff"))
    image = Image.open(BytesIO(to_png(to_svg(sheet), 254))).convert("RGB")
    assert image.size == (1000, 500)
    assert image.getpixel((100, 100)) == (255, 0, 0)
    assert image.getpixel((750, 375)) == (0, 0, 255)
    assert image.getpixel((900, 100)) == (255, 255, 255)


@pytest.mark.parametrize("dpi", [72, 150, 300])
def test_png_states_its_dots_per_inch_and_stays_sound(dpi: int) -> None:
    image = Image.open(BytesIO(to_png(to_svg(drawing()), dpi)))
    assert image.info["dpi"] == pytest.approx((dpi, dpi), abs=0.02)
    image.load()


def test_accents_are_joined_and_marks_of_direction_dropped() -> None:
    root = ET.fromstring(to_svg(drawing(Text((5, 5), "Re\u0301my \u202eABC\ud800", 2.5))))  # noqa: S314
    assert root.findtext(f".//{SVG}text") == "R\u00e9my ABC"


def test_png_is_lettered_in_the_bundled_font() -> None:
    bare, written = (to_png(to_svg(drawing(*m)), 100) for m in ((), (Text((5, 20), "HHH", 10),)))
    dark = [sum(p < 128 for p in Image.open(BytesIO(b)).convert("L").get_flattened_data())
            for b in (bare, written)]  # fmt: skip
    assert dark[0] == 0
    assert dark[1] > 1000
