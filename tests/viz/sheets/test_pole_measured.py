"""The printed story pole, taped together from its PDF and measured as with a rule."""

import numpy as np
import pypdfium2 as pdfium
import pytest

from geometry.layout.leveltable import level_rows
from geometry.units import show_level
from tests.viz.sheets.issued import work
from tests.viz.sheets.printed import Printed, Stroke, from_pdf
from viz.issue import set_pdf
from viz.language.reader import language
from viz.sheets.pole import pole_sheets
from viz.sheets.upright import SmallName

STRIP = 88.9
TICK = 19.0


def pages(name: str, paper: SmallName, code: str = "en") -> list[tuple[str, Printed]]:
    sheets = pole_sheets(work(name).layout, paper, language(code))
    document = pdfium.PdfDocument(set_pdf(work(name), sheets))
    return [(s.title, from_pdf(p)) for s, p in zip(sheets, document, strict=True)]


def level_lines(page: Printed, length: float) -> list[Stroke]:
    found = [s for s in page.strokes if len(s.points) == 2 and abs(s.size[1]) < 1e-3]
    return [s for s in found if abs(s.size[0] - length) < 0.02]


def taped(strip: list[Printed]) -> list[float]:
    """Heights of all ticks, mm, over the bottom of the last page's strip, joins laid together."""
    found: list[float] = []
    bottom = 0.0
    for page in reversed(strip):
        ring = next(s for s in page.strokes if len(s.points) == 5 and abs(s.size[0] - STRIP) < 0.02)
        low = ring.points[:, 1].min()
        ticks = [s.points[0, 1] for s in level_lines(page, TICK) if s.weight > 0.4]
        found += [y - low + bottom for y in ticks]
        joins = [s.points[0, 1] for s in level_lines(page, STRIP)]
        bottom += (joins[0] if joins else ring.points[:, 1].max()) - low
    return sorted(found)


@pytest.mark.parametrize(
    ("name", "paper"), [("l-basement", "letter"), ("metric-house", "A4"), ("l-basement", "A4")]
)
def test_the_pole_measures_true_across_its_pages(name: str, paper: SmallName) -> None:
    layout, printed = work(name).layout, pages(name, paper)
    for area in layout.areas:
        heights = np.array(taped([page for title, page in printed if area.name in title]))
        rows = [r for r in level_rows(layout) if r.area == area.name]
        levels = {r.interface: r.level for r in rows}
        low = levels["footing bottom"]
        asked = [
            levels[key] for key in levels
            if key in ("subgrade", "top of footing", "drain stone top (wrapped)",
                       "drain invert, low point", "drain invert, high point")
            or "finished floor" in key or key == "foam top"
        ]  # fmt: skip
        assert len(asked) >= 3
        for level in asked:
            gaps = np.abs(heights - heights[0] - (level - low) * 1000)
            assert gaps.min() < 0.1


@pytest.mark.parametrize(("name", "paper"), [("l-basement", "letter"), ("metric-house", "A4")])
def test_every_page_bears_its_proof(name: str, paper: SmallName) -> None:
    for _, page in pages(name, paper):
        uprights = [s for s in page.strokes if len(s.points) == 2 and s.size[0] < 1e-3]
        lengths = [float(s.size[1]) for s in uprights]
        for bar in (100.0, 101.6):
            assert sum(abs(length - bar) < 0.02 for length in lengths) == 2
        assert "Measure this before you trust the" in page.text
        assert "100 mm" in page.text
        assert "4 in" in page.text
        assert page.width < page.height


def test_each_tick_has_its_level_in_words() -> None:
    layout = work("l-basement").layout
    text = " ".join(page.text for _, page in pages("l-basement", "letter"))
    area = layout.areas[0]
    for level in (area.subgrade, area.finished_floor, area.footing_bottom):
        assert show_level(level - area.tof, "ft-in") in text
    assert "1 of 3" in text


@pytest.mark.parametrize(
    ("name", "paper", "unit"), [("l-basement", "letter", 25.4), ("metric-house", "A4", 10.0)]
)
def test_the_ruler_is_true(name: str, paper: SmallName, unit: float) -> None:
    """Its longest ticks, drawn in one path on each page, stand whole units apart."""
    for _, page in pages(name, paper):
        found = [
            s.points for s in page.strokes
            if len(s.points) > 4 and not len(s.points) % 2
            and np.allclose(np.abs(np.diff(s.points[:, 0]))[::2], 9.0, atol=0.02)
        ]  # fmt: skip
        assert len(found) == 1
        assert np.allclose(np.diff(found[0][::2, 1]), unit, atol=0.02)
