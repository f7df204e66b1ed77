"""Open area of drilled pipe against specifications, and what follows from it."""

import pytest

from geometry.formulas.orifices import HoleRow, free_orifice, inlet_area

INCH, FOOT, MM = 0.0254, 0.3048, 1e-3
GPM = 231 * INCH**3 / 60
IN2_PER_FT = INCH**2 / FOOT


def test_maker_s_coil_pipe() -> None:
    # A maker's sheet (builderect.com): 4 in pipe, 167 holes a metre, 20 cm2 a metre. Mean hole of
    # 3.9 mm follows.
    rows = [HoleRow(angle, 3.9 * MM, 3 / 167) for angle in (-60.0, 60.0, 180.0)]
    assert inlet_area(rows) == pytest.approx(20e-4, rel=0.005)


@pytest.mark.parametrize(
    ("square_inches_per_foot", "printed_m2_per_m"),
    [
        (0.945, 20e-4),  # AASHTO M 252 class 2, in a maker's technical note (second-hand)
        (1.42, 30e-4),  # AASHTO M 294 class 2, the same note
        (1.89, 40e-4),  # AASHTO M 294 class 2, 24 in and more, the same note
    ],
)
def test_rows_that_reach_a_class(square_inches_per_foot: float, printed_m2_per_m: float) -> None:
    # Two rows of 3/8 in holes at the spacing that gives the printed inches give the printed metric.
    hole = 0.375
    spacing = 2 * 0.7853982 * hole**2 * 12 / square_inches_per_foot
    rows = [HoleRow(angle, hole * INCH, spacing * INCH) for angle in (-60.0, 60.0)]
    assert inlet_area(rows) == pytest.approx(printed_m2_per_m, rel=0.005)


def test_two_rows_of_half_inch_holes_miss_both_limits() -> None:
    # D2729 pattern from memory: 1/2 in, 5 in apart, two rows. Below 1 in2/ft (NRCS Construction
    # Specification 444) and below 3000 mm2/m (PennDOT 408/2000, 610.2(a)1.c).
    area = inlet_area([HoleRow(angle, 0.5 * INCH, 5 * INCH) for angle in (-60.0, 60.0)])
    assert area < 1.0 * IN2_PER_FT
    assert area < 3000e-6
    assert area == pytest.approx(0.9425 * IN2_PER_FT, rel=1e-4)


@pytest.mark.parametrize(("inches", "gpm"), [(2, 1.2025), (12, 2.9456)])
def test_one_half_inch_hole(inches: float, gpm: float) -> None:
    # C 0.60, worked by hand in feet with g = 32.174.
    flow = free_orifice(0.7853982 * (0.5 * INCH) ** 2, inches * INCH, 0.60)
    assert flow / GPM == pytest.approx(gpm, rel=1e-4)
