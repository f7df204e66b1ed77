"""Friction and weight of soil groups, in the tables' units.

NAVFAC DM-7.2 (1982), Table 1, typical properties of compacted soils (from memory); USACE EM
1110-2-2504, Table 3-1 (after Teng), granular soils in place (seen).
"""

import pytest

from geometry.materials.catalogue import SOILS

KG_M3_PER_PCF = 16.01846  # NIST SP 811
# Group: degrees, greatest dry weight in pcf, low and high.
NAVFAC = {
    "GW": (38, 125, 135), "GP": (37, 115, 125), "GM": (34, 120, 135), "GC": (31, 115, 130),
    "SW": (38, 110, 130), "SP": (37, 100, 120), "SM": (34, 110, 125), "SC": (31, 105, 125),
    "ML": (32, 95, 120), "CL": (28, 95, 120), "MH": (25, 70, 95), "CH": (19, 75, 105),
}  # fmt: skip
CLEAN = ["GW", "GP", "SW", "SP"]


@pytest.mark.parametrize(("group", "row"), NAVFAC.items())
def test_compacted(group: str, row: tuple[float, float, float]) -> None:
    soil = SOILS[group]
    assert soil.compacted_friction_deg == row[0]
    assert soil.dry_density_kg_m3 is not None
    assert [d / KG_M3_PER_PCF for d in soil.dry_density_kg_m3] == pytest.approx(row[1:], rel=1e-6)


@pytest.mark.parametrize("group", CLEAN)
def test_granular_range_in_place(group: str) -> None:
    # Loose 28 to 30, medium 31 to 36, dense 37 to 41 degrees.
    soil = SOILS[group]
    assert soil.friction_range_deg == (28, 41)
    assert soil.compacted_friction_deg is not None
    assert 36 < soil.compacted_friction_deg < 41, "compacted is dense"


def test_no_range_is_guessed_for_other_soils() -> None:
    assert {key for key, soil in SOILS.items() if soil.friction_range_deg} == set(CLEAN)
    assert SOILS["OL"].dry_density_kg_m3 is None


@pytest.mark.parametrize("group", NAVFAC)
def test_saturated_soil_weighs_what_its_voids_hold(group: str) -> None:
    # Dry weight w, grains at 2.65: voids are 1 - w/(2.65 x 62.43) and hold water.
    soil = SOILS[group]
    assert soil.dry_density_kg_m3 is not None
    assert soil.saturated_density_kg_m3 is not None
    for dry, full in zip(soil.dry_density_kg_m3, soil.saturated_density_kg_m3, strict=True):
        assert full == pytest.approx(dry + (1 - dry / 2650) * 1000)


@pytest.mark.parametrize("group", CLEAN)
def test_submerged_weight_of_clean_soil(group: str) -> None:
    # Submerged 55 to 85 pcf from loose to dense.
    soil = SOILS[group]
    assert soil.saturated_density_kg_m3 is not None
    for full in soil.saturated_density_kg_m3:
        assert 55 <= (full - 1000) / KG_M3_PER_PCF <= 85
