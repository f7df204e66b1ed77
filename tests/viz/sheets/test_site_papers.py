"""Papers for the site: words free of each other and of the paper's edge, in every language."""

from itertools import combinations

import pytest
import shapely

from geometry.site.inspection import NOT_CHECKED, inspection
from geometry.units import show_length
from tests.viz.sheets.issued import work
from tests.viz.sheets.small_papers import every
from tests.whole.networks import TEXTS
from viz.drawing.lettering import text_box
from viz.drawing.marks import Text
from viz.drawing.page import Drawing
from viz.job import Job, job
from viz.language.reader import language
from viz.sheets.inspection import inspection_sheets
from viz.sheets.laser import laser_sheets
from viz.sheets.orders import order_sheets
from viz.sheets.siting import site_papers
from viz.sheets.upright import MARGIN, SmallName

NETWORKS = ("both to the pit", "upper to daylight")
FEW: list[tuple[str, SmallName, str]] = [
    ("l-basement", "letter", "en"),
    ("metric-house", "A4", "es"),
    ("both to the pit", "letter", "es"),
]
EVERY = every(FEW)


def made(name: str) -> Job:
    return job(TEXTS[name]) if name in TEXTS else work(name)


def sound(drawing: Drawing) -> None:
    """No words on words, none nearer the edge than printers reach, all upright paper."""
    assert drawing.width < drawing.height
    texts = [mark for mark in drawing.marks if isinstance(mark, Text) and mark.words.strip()]
    boxes = [shapely.box(b.left, b.low, b.right, b.high) for b in map(text_box, texts)]
    room = shapely.box(MARGIN, MARGIN - 1, drawing.width - MARGIN, drawing.height - MARGIN)
    for text, box in zip(texts, boxes, strict=True):
        assert room.buffer(0.05).contains(box), text.words
        assert text.height >= 2.5
    tree = shapely.STRtree([box.buffer(-0.05) for box in boxes])
    for one, other in tree.query(tree.geometries, "intersects").T:
        assert one == other, (texts[one].words, texts[other].words)


@pytest.mark.parametrize(("name", "paper", "code"), EVERY)
def test_every_paper_is_legible(name: str, paper: SmallName, code: str) -> None:
    house = made(name)
    for _, make in site_papers(house, paper, language(code)):
        for sheet in make():
            sound(sheet.drawing)
    if code == "en":
        for sheet in order_sheets(house, paper):
            sound(sheet.drawing)


def words_of(sheets: tuple[object, ...]) -> str:
    return " ".join(
        mark.words
        for s in sheets
        for mark in s.drawing.marks
        if isinstance(mark, Text)  # type: ignore[attr-defined]
    )


@pytest.mark.parametrize("name", NETWORKS)
def test_hold_points_bear_this_houses_figures(name: str) -> None:
    house = made(name)
    sheets = inspection_sheets(house.layout, house.report, "letter", language("en"))
    said = words_of(sheets)
    holds = inspection(house.layout, house.report)
    assert [h.key for h in holds if h.key == "drain"] == ["drain"] * len(house.layout.drains)
    for area in house.layout.areas:
        assert show_length(area.footing.width, "ft-in") in said
    assert said.count("PHOTO") == sum(len(h.photos) for h in holds)
    assert said.count("Seen by") == len(holds)
    assert "Depth of frost." in said
    assert len(NOT_CHECKED) == len(set(NOT_CHECKED))
    assert "approved" not in said.lower()
    assert "compliant" not in said.lower()


def test_hold_points_come_in_the_order_of_the_build() -> None:
    house = made("l-basement")
    keys = [hold.key for hold in inspection(house.layout, house.report)]
    order = ("subgrade", "footing", "wall", "drain", "pit", "base", "foam", "slab")
    mine = [k for k in keys if keys.count(k) == 1]
    assert mine == [k for k in order if k in mine]
    assert keys[-1] == "slab"


def test_without_a_laser_its_column_is_left_to_be_written() -> None:
    house = made("both to the pit")
    said = words_of(laser_sheets(house.layout, "letter", language("en")))
    assert "No height of the laser is given" in said
    assert "100.00 ft" in said


def test_tons_ordered_for_yards_fall_short_by_the_loose_weight() -> None:
    """A short ton of stone at 1.35 to 1.75 ton/yd3: so many tons are fewer yards."""
    house = made("l-basement")
    said = words_of(order_sheets(house, "letter"))
    row = max(
        (r for r in house.report.order.rows if r.group == "stone and sand"),
        key=lambda r: r.to_buy,
    )
    tons = round(row.count)
    assert f"{tons} tons ordered instead would be only" in " ".join(said.split())
    assert f"{tons / 1.75:.2f} to {tons / 1.35:.2f} yd³" in said


def test_costs_are_printed_where_a_price_was_entered_and_nowhere_else() -> None:
    price = 'of = "Retarder"\neach = 120\nper = "roll"\n'
    priced = f'[order]\ncurrency = "crowns"\n[[order.price]]\n{price}'
    said = words_of(order_sheets(job(TEXTS["inside"] + priced), "letter"))
    assert said.count("Cost") == 1
    assert "120.00 crowns" in said


def test_pages_of_one_paper_are_all_of_one_size() -> None:
    drawings = [s.drawing for s in order_sheets(made("metric-house"), "A4")]
    assert all(a.width == b.width and a.height == b.height for a, b in combinations(drawings, 2))
