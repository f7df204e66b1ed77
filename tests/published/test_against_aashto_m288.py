"""Drainage fabric against AASHTO M 288 (read in UFGS-02373), mm and 1/s."""

import pytest

from geometry.formulas.fabric_filter import flow_through, m288_limits
from geometry.materials.catalogue import FABRICS

# Percent passing No. 200: permittivity, opening. (The page misprints "15" for 50 in row three.)
ROWS = {0: (0.5, 0.43), 14: (0.5, 0.43), 15: (0.2, 0.25), 50: (0.2, 0.25), 51: (0.1, 0.22),
        100: (0.1, 0.22)}  # fmt: skip
# Makers' sheets: ounces: permittivity, gpm/ft2. 8 and 16 oz seen, 4 oz from memory.
FLOW = {8: (1.35, 90), 16: (0.70, 50), 4: (2.0, 140)}


@pytest.mark.parametrize(("percent", "row"), ROWS.items())
def test_limits(percent: float, row: tuple[float, float]) -> None:
    limits = m288_limits(percent / 100)
    assert limits.permittivity_per_s == row[0]
    assert limits.opening_m * 1000 == pytest.approx(row[1])


@pytest.mark.parametrize("fines", [0.05, 0.3, 0.8])
def test_every_fabric_passes_each_hydraulic_row(fines: float) -> None:
    limits = m288_limits(fines)
    for fabric in FABRICS.values():
        assert fabric.permittivity_per_s >= limits.permittivity_per_s
        assert fabric.opening_m <= limits.opening_m


@pytest.mark.parametrize(("ounces", "row"), FLOW.items())
def test_flow_at_50_mm(ounces: int, row: tuple[float, float]) -> None:
    assert FABRICS[f"nonwoven-{ounces}oz"].permittivity_per_s == row[0]
    gpm_per_ft2 = flow_through(row[0], 0.050) / 0.3048 * 448.831
    assert gpm_per_ft2 == pytest.approx(row[1], rel=0.12)
