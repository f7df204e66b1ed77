"""The bundled fonts: the signs a sheet needs, widths by an independent reader, wrapping."""

from io import BytesIO

import pytest
from fontTools.ttLib import TTFont
from hypothesis import given
from hypothesis import strategies as st
from PIL import ImageFont

from viz.drawing.fonts import (
    CAPITAL,
    font_file,
    shortened,
    subset,
    text_width,
    wrap,
)

WORDS = st.text("abc WMi-,.'\"é½", max_size=60)


@pytest.mark.parametrize("bold", [False, True])
def test_signs_of_the_trade_can_be_written(bold: bool) -> None:
    signs = TTFont(font_file(bold)).getBestCmap()
    assert set(map(ord, "'\"+-.,/()°²³×½¼¾Ø#±…–éñáíóúü¿¡&<>=:;%")) <= set(signs)


@pytest.mark.parametrize("bold", [False, True])
@pytest.mark.parametrize("words", ["+0'-6 1/2\"", "Washed stone, 4 in", "20 in × 10 in"])
def test_width_agrees_with_another_reader_of_the_font(words: str, bold: bool) -> None:
    em = 2000
    plain = ImageFont.truetype(font_file(bold), em, layout_engine=ImageFont.Layout.BASIC)
    width = sum(plain.getlength(sign) for sign in words) / em * 3.0 / CAPITAL
    assert text_width(words, 3.0, bold) == pytest.approx(width, rel=1e-3)


@pytest.mark.parametrize("bold", [False, True])
def test_capitals_are_as_high_as_stated(bold: bool) -> None:
    font = TTFont(font_file(bold))
    assert font["glyf"]["T"].yMax / font["head"].unitsPerEm == pytest.approx(CAPITAL)


@given(WORDS)
def test_no_wrapped_line_is_too_wide_and_no_letter_is_lost(words: str) -> None:
    lines = wrap(words, 20.0, 2.5)
    assert all(text_width(line, 2.5) <= 20.0 + 1e-9 for line in lines)
    assert "".join("".join(lines).split()) == "".join(words.split())


@given(WORDS)
def test_shortened_text_fits(words: str) -> None:
    assert text_width(shortened(words, 15.0, 2.5), 2.5) <= 15.0


def test_subset_holds_the_letters_asked_for_and_is_the_same_each_time() -> None:
    data = subset("TOF 0", False)
    subset.cache_clear()
    assert subset("TOF 0", False) == data
    assert set(map(ord, "TOF 0")) == set(TTFont(BytesIO(data)).getBestCmap())
    assert len(data) < 10_000


def test_the_licence_is_bundled_with_the_fonts() -> None:
    text = (font_file(False).parent / "OFL.txt").read_text()
    assert "SIL OPEN FONT LICENSE Version 1.1" in text
