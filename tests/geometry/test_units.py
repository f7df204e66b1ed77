"""Lengths as the trade writes them, in and out."""

import re
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from geometry import units
from geometry.errors import LengthError
from geometry.units import feet_inches, read_fall, read_length

INCH = 0.0254  # exact, by definition of the international inch

# Every way we have seen a length written, and what it is in inches.
INCHES = {
    "5'-6 1/2\"": "66.5", "5'-6\"": "66", "5' 6\"": "66", "5'6\"": "66", "5'": "60",
    "5.54'": "66.48",
    "5'-0\"": "60", "5' 6.5\"": "66.5", "5'-6-1/2\"": "66.5", "5'6 1/2": "66.5", "5 ft 6 in": "66",
    "5 ft 6 1/2 in": "66.5", "5ft6in": "66", "5 feet 6 inches": "66", "1 foot 1 inch": "13",
    "66.5 in": "66.5", "66.5\"": "66.5", "66 1/2 in": "66.5", "66 1/2\"": "66.5", "1/2 in": "0.5",
    "1/2\"": "0.5", "0'-0 1/16\"": "0.0625", "3/4\"": "0.75", ".5 in": "0.5", "6''": "6",
    "5’-6”": "66", "5′ 6″": "66", "-8 in": "-8", "−8 in": "-8", "+8 in": "8", "- 8 in": "-8",
    "-1'-6\"": "-18", "-0'-6\"": "-6", " 8 in ": "8", "8 IN": "8", "10 mil": "0.01",
    "15 mils": "0.015",
    "100 ft": "1200", "412.35 ft": "4948.2", "0": "0", "0.0": "0", "0'": "0", "0 mm": "0",
}  # fmt: skip
METRES = {
    "1.65 m": "1.65", "1650 mm": "1.65", "165 cm": "1.65", "165cm": "1.65", "0.2 mm": "0.0002",
    "-1.5 m": "-1.5", "118.250 m": "118.25", ".5 m": "0.5", "2. m": "2",
}  # fmt: skip
NONSENSE = {
    "": "is not a length", "tall": "is not a length", "ft": "is not a length",
    "5 yards": "is not a length",
    "5 6": "is not a length", "1,5 m": "use a point, not a comma", "8 ft, 2 in": "not a comma",
    "5'-14\"": "write 6'-2\"", "5 ft 12 in": "write 6'-0\"", "6 3/2 in": "not below one",
    "6 1/0 in": "not below one", "4/4 in": "not below one", "6.5 1/2 in": "decimal and a fraction",
    "20": "has no unit", "20.5": "has no unit", "6 1/2": "has no unit", "--8 in": "is not a length",
    "8 in high": "is not a length", "1e3 mm": "is not a length", "nan": "is not a length",
    "inf": "is not a length", "5'-6\"-1": "is not a length", "8 in\n9 in": "is not a length",
    "9" * 41: "41 characters",
}  # fmt: skip


@pytest.mark.parametrize(("text", "inches"), INCHES.items())
def test_feet_and_inches_read_in(text: str, inches: str) -> None:
    assert read_length(text) == pytest.approx(float(Fraction(inches)) * INCH, rel=1e-14, abs=0)


@pytest.mark.parametrize(("text", "metres"), METRES.items())
def test_metric_lengths_read_in_exactly(text: str, metres: str) -> None:
    assert read_length(text) == float(metres)


@pytest.mark.parametrize(("text", "words"), NONSENSE.items())
def test_nonsense_is_told_what_would_be_right(text: str, words: str) -> None:
    with pytest.raises(LengthError) as caught:
        read_length(text)
    assert words in str(caught.value)
    assert re.search(r"write|point|characters", str(caught.value))


def test_forty_characters_are_read_and_no_more() -> None:
    assert read_length("0" * 36 + "1 ft") == pytest.approx(12 * INCH)
    with pytest.raises(LengthError, match="41 characters"):
        read_length("0" * 37 + "1 ft")


@pytest.mark.parametrize("value", [None, True, [1], {"a": 1}, b"8 in"])
def test_what_is_no_text_is_no_length(value: object) -> None:
    with pytest.raises(LengthError, match="is not a length"):
        read_length(value)  # type: ignore[arg-type]


@pytest.mark.parametrize(
    ("bare", "metres"), [("ft", 20 * 12 * INCH), ("in", 20 * INCH), ("m", 20.0), ("mm", 0.02)]
)
def test_plain_numbers_take_the_stated_unit(bare: units.BareUnit, metres: float) -> None:
    assert read_length(20, bare) == pytest.approx(metres, rel=1e-15)
    assert read_length("-20", bare) == pytest.approx(-metres, rel=1e-15)
    assert read_length("20 in", bare) == pytest.approx(20 * INCH, rel=1e-15)


@given(st.integers(-200_000, 200_000), st.sampled_from([2, 4, 8, 16, 32]))
def test_any_count_of_a_fraction_prints_and_reads_back(count: int, denominator: int) -> None:
    metres = float(Fraction(count, denominator) * Fraction(254, 10000))
    text = feet_inches(metres, denominator)
    assert read_length(text) == metres
    assert feet_inches(read_length(text), denominator) == text


@given(st.integers(-200_000, 200_000))
def test_sizes_print_and_read_back(count: int) -> None:
    metres = float(Fraction(count, 16) * Fraction(254, 10000))
    assert read_length(units.show_length(metres, "ft-in")) == metres


@given(st.integers(-1_000_000, 1_000_000))
def test_tenths_of_a_millimetre_print_and_read_back(tenths: int) -> None:
    metres = float(Fraction(tenths, 10_000))
    assert read_length(units.show_length(metres, "metric")) == metres


@given(st.floats(-1000, 1000))
def test_feet_inches_never_show_twelve_inches_and_miss_by_half_a_step_at_most(
    metres: float,
) -> None:
    text = feet_inches(metres)
    found = re.fullmatch(r"-?(\d+)'-(\d+)(?: (\d+)/(\d+))?\"", text)
    assert found
    assert int(found[2]) < 12
    assert found[3] is None or (int(found[3]) % 2 == 1 and int(found[4]) in {2, 4, 8, 16})
    assert abs(read_length(text) - metres) <= INCH / 32 * (1 + 1e-9)


@pytest.mark.parametrize(
    ("inches", "text"),
    [
        (11.99, "1'-0\""), (11.96, "0'-11 15/16\""), (-11.99, "-1'-0\""), (66.5, "5'-6 1/2\""),
        (0, "0'-0\""), (-0.01, "0'-0\""), (0.0625, "0'-0 1/16\""), (-6, "-0'-6\""), (144,
        "12'-0\""),
    ],
)  # fmt: skip
def test_feet_inches(inches: float, text: str) -> None:
    assert feet_inches(inches * INCH) == text


FALLS = {
    "1/8 in per ft": Fraction(1, 96), "1/16 in/ft": Fraction(1, 192),
    "0.25 in per foot": Fraction(1, 48),
    "1/4\" per ft": Fraction(1, 48), "1 %": Fraction(1, 100), "0.5%": Fraction(1, 200),
    "1:100": Fraction(1, 100), "1 : 48": Fraction(1, 48), "10 mm/m": Fraction(1, 100),
    "1 cm per m": Fraction(1, 100), "level": Fraction(0), "0": Fraction(0), "0 %": Fraction(0),
}  # fmt: skip


@pytest.mark.parametrize(("text", "fall"), FALLS.items())
def test_falls_read_in(text: str, fall: Fraction) -> None:
    assert read_fall(text) == pytest.approx(float(fall), rel=1e-14)


@pytest.mark.parametrize(
    "text", ["", "gentle", "0.02", "1:0", "1 in", "1/8 in per mile", "-1 %", "%"]
)
def test_what_is_no_fall_is_told_what_would_be(text: str) -> None:
    with pytest.raises(LengthError, match=r"1/8 in per ft, 1 %, 1:100, 10 mm/m or level"):
        read_fall(text)


@pytest.mark.parametrize("value", [True, None, [1], "1" * 200 + " %"])
def test_odd_falls_are_refused_without_repeating_them(value: object) -> None:
    with pytest.raises(LengthError) as caught:
        read_fall(value)  # type: ignore[arg-type]
    assert len(str(caught.value)) < 100


@given(st.integers(0, 48))
def test_falls_print_and_read_back(sixteenths: int) -> None:
    fall = sixteenths / 192
    assert read_fall(units.show_fall(fall, "ft-in")) == pytest.approx(fall, rel=1e-12)


@given(st.integers(0, 2500))
def test_hundredths_of_a_percent_print_and_read_back(hundredths: int) -> None:
    fall = hundredths / 10_000
    assert read_fall(units.show_fall(fall, "metric")) == pytest.approx(fall, rel=1e-12)


@pytest.mark.parametrize(
    ("shown", "text"),
    [
        (units.show_length(6.5 * INCH, "ft-in"), '6 1/2"'),
        (units.show_length(0.5 * INCH, "ft-in"), '1/2"'),
        (units.show_length(-0.5 * INCH, "ft-in"), '-1/2"'),
        (units.show_length(11.99 * INCH, "ft-in"), "1'-0\""),
        (units.show_length(0.0, "ft-in"), '0"'),
        (units.show_length(0.1504, "metric"), "150.4 mm"),
        (units.show_length(-0.15, "metric"), "-150 mm"),
        (units.show_thickness(10 * INCH / 1000, "ft-in"), "10 mil"),
        (units.show_thickness(0.0002, "metric"), "0.20 mm"),
        (units.show_thickness(4 * INCH, "ft-in"), '4"'),
        (units.show_level(6 * INCH, "ft-in"), "+0'-6\""),
        (units.show_level(-8.5 * INCH, "ft-in"), "-0'-8 1/2\""),
        (units.show_level(0.0, "ft-in"), "0'-0\""),
        (units.show_level(-1e-9, "ft-in"), "0'-0\""),
        (units.show_level(0.15, "metric"), "+150 mm"),
        (units.show_level(-0.15, "metric"), "-150 mm"),
        (units.show_level(-1e-9, "metric"), "0 mm"),
        (units.show_elevation(412.35 * 12 * INCH, "ft-in"), "412.35 ft"),
        (units.show_elevation(118.25, "metric"), "118.250 m"),
        (units.show_rod(1.3, "metric"), "1.300 m"),
        (units.show_rod(51.06 * INCH, "ft-in"), "4'-3\""),
        (units.show_area(1.0, "metric"), "1.00 m²"),
        (units.show_area((12 * INCH) ** 2 * 1234.56, "ft-in"), "1,234.6 ft²"),
        (units.show_volume((36 * INCH) ** 3 * 12.5, "ft-in"), "12.50 yd³"),
        (units.show_volume((12 * INCH) ** 3 * 1.5, "ft-in"), "1.50 ft³"),
        (units.show_volume(2.5, "metric"), "2.50 m³"),
        (units.show_volume(0.0255, "metric"), "25.5 L"),
        (units.show_fall(1 / 96, "ft-in"), "1/8 in per ft"),
        (units.show_fall(17 / 192, "ft-in"), "1 1/16 in per ft"),
        (units.show_fall(0.01, "ft-in"), "0.120 in per ft"),
        (units.show_fall(0.0, "ft-in"), "0 in per ft"),
        (units.show_fall(0.005, "metric"), "0.50 %"),
    ],
)
def test_what_is_shown(shown: str, text: str) -> None:
    assert shown == text
