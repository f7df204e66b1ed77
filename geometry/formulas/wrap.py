"""A sheet round the stone beside a sock on the pipe: area that takes water, and what follows.

Geometry and proportion only. Fabric clogs from the side the soil is on: a sheet meets the soil
over the whole bed, a sock meets only what has come through the stone.
"""

from math import pi

from geometry.formulas.given import not_negative, positive


def sock_area(outside_diameter_m: float) -> float:
    """Area of a sock per metre of pipe, m2/m: pi D."""
    positive(outside_diameter_m=outside_diameter_m)
    return pi * outside_diameter_m


def sheet_area(width_m: float, height_m: float) -> float:
    """Area of a sheet round a rectangular bed that meets the soil, m2/m: its girth.

    The lap counts once: where two sheets lie on each other water passes both.
    """
    positive(width_m=width_m, height_m=height_m)
    return 2 * (width_m + height_m)


def sheet_width(width_m: float, height_m: float, lap_m: float) -> float:
    """Width of sheet to cut, m: the girth and the lap over the top."""
    not_negative(lap_m=lap_m)
    return sheet_area(width_m, height_m) + lap_m


def area_ratio(sheet_m: float, sock_m: float) -> float:
    """Sheet over sock, areas per metre of the same pipe."""
    positive(sheet_m=sheet_m, sock_m=sock_m)
    return sheet_m / sock_m


def clogging_time_ratio(
    area_m: float,
    other_area_m: float,
    silt_held: float = 1.0,
    other_silt_held: float = 1.0,
    silt_rate: float = 1.0,
    other_silt_rate: float = 1.0,
) -> float:
    """How many times longer one fabric takes to fill than another: a proportion, no lifetime.

    Time = area x silt it holds per area / silt that arrives per metre and year. Assumes that the
    silt spreads evenly over the area, that both fabrics are closed by the same mass per area
    (unless `silt_held` says otherwise), that the same water with the same silt reaches both
    (unless `silt_rate` says otherwise), and that nothing is washed through or falls off. Only
    ratios of the last four arguments count, so any unit will do.
    """
    positive(
        area_m=area_m, other_area_m=other_area_m, silt_held=silt_held,
        other_silt_held=other_silt_held, silt_rate=silt_rate, other_silt_rate=other_silt_rate,
    )  # fmt: skip
    return area_m * silt_held / silt_rate / (other_area_m * other_silt_held / other_silt_rate)
