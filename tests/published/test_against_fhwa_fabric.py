"""Fabric retention against FHWA NHI-07-092 (Christopher and Holtz); the factors from memory.

The form O95 <= B d85 and a fabric ten times as permeable as the soil were read second-hand;
UFC 3-220-10, eq. 6-16, gives the factor on permeability.
"""

import pytest

from geometry.formulas.fabric_filter import (
    fabric_permeability,
    fhwa_opening,
    least_opening,
    permeability_factor,
    retention_factor,
)
from geometry.materials.catalogue import FABRICS

MM = 1e-3
B = {1.5: 1.0, 2.0: 1.0, 3.0: 1.5, 4.0: 2.0, 5.0: 1.6, 8.0: 1.0, 12.0: 1.0}


@pytest.mark.parametrize(("uniformity", "factor"), B.items())
def test_factor_of_sands(uniformity: float, factor: float) -> None:
    assert retention_factor(0.2, uniformity) == pytest.approx(factor)


def test_factor_of_silts_and_clays() -> None:
    assert retention_factor(0.6, 3, woven=True) == 1.0
    assert retention_factor(0.51, 3) == 1.8
    assert retention_factor(0.50, 3) == 1.5, "half fines still count as sand"
    assert fhwa_opening(0.05 * MM, 0.6, 3) == pytest.approx(0.09 * MM)
    assert fhwa_opening(0.5 * MM, 0.6, 3) == pytest.approx(0.3 * MM), "at most 0.3 mm"


def test_clogging_opening() -> None:
    assert least_opening(0.05 * MM, 4) == pytest.approx(0.15 * MM)
    assert least_opening(0.05 * MM, 3.01) is not None
    assert least_opening(0.05 * MM, 3) is None


def test_permeability_of_a_fabric_on_silty_sand() -> None:
    # Silty sand at its most open (NRCS, 1e-3 cm/s): every fabric is far above ten times.
    for fabric in FABRICS.values():
        found = fabric_permeability(fabric.permittivity_per_s, fabric.thickness_m)
        assert found == pytest.approx(fabric.permeability_m_s)
        assert permeability_factor(found, 1e-5) > 100
        assert fabric.porosity > 0.5
