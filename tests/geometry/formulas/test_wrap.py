"""Sheet against sock: areas by hand, and the proportion of times."""

from math import pi

import pytest

from geometry.formulas.wrap import (
    area_ratio,
    clogging_time_ratio,
    sheet_area,
    sheet_width,
    sock_area,
)

INCH = 0.0254


def test_sheet_round_an_18_inch_bed_beside_a_sock() -> None:
    # 18 x 16 in of stone round a 4.215 in pipe: 68 in of girth over 13.24 in: 5.1 times.
    sheet, sock = sheet_area(18 * INCH, 16 * INCH), sock_area(4.215 * INCH)
    assert sheet / INCH == pytest.approx(68)
    assert sock / INCH == pytest.approx(pi * 4.215)
    assert area_ratio(sheet, sock) == pytest.approx(5.135, abs=5e-4)


def test_lap_is_bought_but_takes_no_more_water() -> None:
    assert sheet_width(0.4, 0.4, 0.3) == pytest.approx(sheet_area(0.4, 0.4) + 0.3)


def test_time_goes_with_area() -> None:
    assert clogging_time_ratio(1.7, 0.34) == pytest.approx(5)
    assert clogging_time_ratio(1.7, 0.34) * clogging_time_ratio(0.34, 1.7) == pytest.approx(1)


def test_time_goes_with_what_is_held_and_against_what_arrives() -> None:
    assert clogging_time_ratio(1, 1, silt_held=2) == pytest.approx(2)
    assert clogging_time_ratio(1, 1, silt_rate=4) == pytest.approx(1 / 4)
    assert clogging_time_ratio(1, 1, other_silt_held=2, other_silt_rate=4) == pytest.approx(2)


@pytest.mark.parametrize("wrong", [(0.0, 1.0), (1.0, 0.0), (1.0, -1.0)])
def test_nonsense_is_refused(wrong: tuple[float, float]) -> None:
    with pytest.raises(ValueError, match="area_m"):
        clogging_time_ratio(*wrong)
    with pytest.raises(ValueError, match="must be above zero"):
        sheet_area(*wrong)
