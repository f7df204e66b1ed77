"""E' against the Bureau of Reclamation's table (Howard, REC-ERC-77-01, 1977), in psi.

Its range (0 to 3000 psi) and the old typical value were read in a maker's note on the table; the
rows are from memory. The deflections below are a public worked example (second-hand).
"""

import pytest

from geometry.formulas.buried_pipe import deflection
from geometry.materials.catalogue import SOILS
from geometry.materials.kinds import ReactionClass
from geometry.materials.reaction import (
    ACCURACY,
    COMPACTIONS,
    REACTION_PA,
    reaction_modulus,
)

PA_PER_PSI = 6894.757  # NIST SP 811
TABLE: dict[ReactionClass, tuple[float, ...]] = {
    "crushed rock": (1000, 3000, 3000, 3000),
    "clean coarse": (200, 1000, 2000, 3000),
    "coarse with fines": (100, 400, 1000, 2000),
    "lean fine": (50, 200, 400, 1000),
}
GROUPS = {
    "clean coarse": "GW GP SW SP",
    "coarse with fines": "GM GC SM SC",
    "lean fine": "CL ML",
    "none": "CH MH OL",
}


@pytest.mark.parametrize(("soil", "row"), TABLE.items())
def test_rows(soil: ReactionClass, row: tuple[float, ...]) -> None:
    found = [reaction_modulus(soil, compaction) / PA_PER_PSI for compaction in COMPACTIONS]
    assert found == pytest.approx(row, rel=1e-6)


def test_range() -> None:
    every = [e for row in REACTION_PA.values() for e in row.values()]
    assert min(every) == 0
    assert max(every) / PA_PER_PSI == pytest.approx(3000)


def test_the_old_typical_value_is_that_of_moderate_soils() -> None:
    # 700 psi, believed reasonable at 90 % Proctor (Spangler and Watkins; ASCE manual 37).
    moderate = [row["moderate"] / PA_PER_PSI for row in REACTION_PA.values()]
    assert sorted(moderate)[1] < 700 < sorted(moderate)[2]


def test_accuracy() -> None:
    assert [ACCURACY[c] * 100 for c in COMPACTIONS] == pytest.approx([2, 2, 1, 0.5])


@pytest.mark.parametrize(("soil", "keys"), GROUPS.items())
def test_soil_groups(soil: str, keys: str) -> None:
    assert {k for k, row in SOILS.items() if row.reaction_class == soil} == set(keys.split())


@pytest.mark.parametrize(("modulus", "percent"), [(1000, 2.2), (200, 7.9)])
def test_public_worked_example(modulus: float, percent: float) -> None:
    # 12 ft of soil at 120 pcf (10 psi), 46 psi pipe, K 0.1, lag 1.5.
    share = deflection(
        12 * 120 / 144 * PA_PER_PSI, 0, 46 * PA_PER_PSI, modulus * PA_PER_PSI, 0.1, 1.5
    )
    assert 100 * share == pytest.approx(percent, abs=0.05)
