"""A level said by name with an offset in feet, inches and fractions."""

import pytest

from geometry.parts.fields import read_level

INCH = 0.0254


@pytest.mark.parametrize(
    ("text", "base", "inches"),
    [
        ("TOF", "TOF", 0),
        ("top of footing", "TOF", 0),
        ("finished floor", "finished floor", 0),
        ("TOF +0.5 in", "TOF", 0.5),
        ("TOF + 6 in", "TOF", 6),
        ("finished floor -2 in", "finished floor", -2),
        ("foam top + 1/2 in", "foam top", 0.5),
        ("-8 in", "TOF", -8),
    ],
)
def test_level_words(text: str, base: str, inches: float) -> None:
    level = read_level(text)
    assert level.base == base
    assert level.offset_m == pytest.approx(inches * INCH, abs=1e-12)


@pytest.mark.parametrize(
    ("text", "inches"), [("TOF +1 3/16 in", 1.1875), ("finished floor -2 1/2 in", -2.5)]
)
def test_whole_inches_and_a_fraction_after_a_name(text: str, inches: float) -> None:
    assert read_level(text).offset_m == pytest.approx(inches * INCH, abs=1e-12)
