"""Soil groups against the published tables, in the tables' units."""

from math import radians, tan

import pytest

from geometry.materials.catalogue import SOILS

N_M3_PER_PCF = 157.0875  # NIST SP 811: 4.4482216 N over 0.0283168 m3
PA_PER_PSF = 47.88026  # NIST SP 811

# HUD Residential Structural Design Guide (2000), soil load table: Ka, pcf, equivalent fluid pcf.
HUD = {
    **dict.fromkeys(("GW", "GP", "GM", "SW", "SP"), (0.26, 115, 30)),
    **dict.fromkeys(("GC", "SM"), (0.35, 100, 35)),
    **dict.fromkeys(("SC", "ML"), (0.45, 100, 45)),
    **dict.fromkeys(("CL", "MH", "CH"), (0.60, 100, 60)),
}
# IBC 2012 Table 1806.2, psf.
BEARING = {
    **dict.fromkeys(("GW", "GP"), 3000),
    **dict.fromkeys(("SW", "SP", "SM", "SC", "GM", "GC"), 2000),
    **dict.fromkeys(("CL", "ML", "MH", "CH"), 1500),
}
# IBC Table 1610.1 (from memory): active, at rest, psf per ft. None: not permitted as backfill.
LATERAL = {
    "GW": (30, 60), "GP": (30, 60), "SW": (30, 60), "SP": (30, 60), "GM": (40, 60),
    "GC": (45, 60), "SM": (45, 60), "ML": (45, 100), "SC": (60, 100), "CL": (60, 100),
    "MH": None, "CH": None, "OL": None,
}  # fmt: skip
# IRC Table R405.1 (from memory).
DRAINAGE = {"I": "GW GP SW SP GM SM", "II": "GC SC ML CL", "III": "CH MH", "IV": "OL"}
# NRCS NEH 631 chapter 3, Figure 3-10: cm/s, low and high.
SEEPAGE = {
    "GW": (1e-2, None), "SP": (1e-3, None), "GM": (1e-6, 1e-3), "SM": (1e-6, 1e-3),
    "SC": (1e-8, 1e-6), "ML": (1e-6, 1e-3), "CL": (1e-8, 1e-6), "MH": (1e-6, 1e-4),
}  # fmt: skip
# Army earthmoving manual, loose volume over volume in place (sand seen, the rest from memory).
SWELL = {"SW": 1.11, "SP": 1.11, "CL": 1.43, "CH": 1.43, "SM": 1.25, "SC": 1.25}


@pytest.mark.parametrize(("key", "row"), HUD.items())
def test_density_and_active_coefficient(key: str, row: tuple[float, float, float]) -> None:
    soil = SOILS[key]
    assert soil.active_coefficient == row[0]
    assert soil.density_kg_m3 == pytest.approx(row[1] * 16.01846, rel=1e-6)
    assert soil.density_kg_m3 is not None
    fluid = row[0] * soil.density_kg_m3 / 16.01846
    assert fluid == pytest.approx(row[2], abs=0.11)


@pytest.mark.parametrize("key", HUD)
def test_friction_angle_gives_back_its_coefficient(key: str) -> None:
    # Rankine in its other form: Ka = tan2(45 - phi/2).
    angle = SOILS[key].friction_angle_deg
    assert angle is not None
    assert tan(radians(45 - angle / 2)) ** 2 == pytest.approx(HUD[key][0], rel=1e-9)


def test_friction_angle_of_clean_soil_lies_in_the_granular_range() -> None:
    # USACE EM 1110-2-2504 Table 3-1: medium to dense granular soil, 31 to 41 degrees.
    angle = SOILS["SW"].friction_angle_deg
    assert angle is not None
    assert 31 <= angle <= 41


@pytest.mark.parametrize(("key", "psf"), BEARING.items())
def test_bearing(key: str, psf: float) -> None:
    assert SOILS[key].bearing_pa == pytest.approx(psf * PA_PER_PSF, rel=1e-6)


@pytest.mark.parametrize(("key", "row"), LATERAL.items())
def test_lateral_load(key: str, row: tuple[float, float] | None) -> None:
    soil = SOILS[key]
    if row is None:
        assert soil.active_load_n_m3 is None
        assert soil.at_rest_load_n_m3 is None
    else:
        assert soil.active_load_n_m3 == pytest.approx(row[0] * N_M3_PER_PCF, rel=1e-5)
        assert soil.at_rest_load_n_m3 == pytest.approx(row[1] * N_M3_PER_PCF, rel=1e-5)


@pytest.mark.parametrize(("group", "keys"), DRAINAGE.items())
def test_drainage_group(group: str, keys: str) -> None:
    assert {key for key, soil in SOILS.items() if soil.drainage_group == group} == set(keys.split())


@pytest.mark.parametrize(("key", "row"), SEEPAGE.items())
def test_permeability(key: str, row: tuple[float, float | None]) -> None:
    seepage = SOILS[key].permeability_m_s
    assert seepage is not None
    assert seepage[0] * 100 == pytest.approx(row[0])
    assert (seepage[1] is None) == (row[1] is None)
    if seepage[1] is not None:
        assert seepage[1] * 100 == pytest.approx(row[1])


@pytest.mark.parametrize(("key", "loose"), SWELL.items())
def test_swell(key: str, loose: float) -> None:
    swell = SOILS[key].swell
    assert swell is not None
    assert 1 + swell == pytest.approx(loose)


def test_fines_follow_the_group_s_first_letter() -> None:
    # ASTM D2487: fine-grained from 50 % passing No. 200, clean coarse soil under 5 %.
    for soil in SOILS.values():
        if soil.group is None:
            continue
        assert soil.fines is not None
        low, high = soil.fines
        assert (low >= 0.5) == (soil.group[0] in "MCO")
        assert (high <= 0.05) == (soil.group in {"GW", "GP", "SW", "SP"})


def test_an_unknown_soil_gives_no_figure() -> None:
    soil = SOILS["unknown"]
    named = {"key", "name", "kind", "source", "also"}
    assert all(value is None for field, value in vars(soil).items() if field not in named)
