"""Foam rows against ASTM C578-10 Table 1 and the sources beside it, in the table's units."""

import pytest

from geometry.materials.catalogue import BOARDS

KPA_PER_PSI = 6.894757  # NIST SP 811
KG_M3_PER_PCF = 16.01846  # NIST SP 811
RSI_PER_R = 0.176110  # m2K/W per ft2 F h/Btu, NIST SP 811
N_M3_PER_PCI = 271_447.1  # NIST SP 811

# ASTM C578-10 minimums: psi, pcf, R per inch at 75 F, perm of 1 in, water % by volume.
C578 = {
    "eps-i": (10, 0.90, 3.6, 5.0, 4.0),
    "eps-viii": (13, 1.15, 3.8, 3.5, 3.0),
    "xps-x": (15, 1.30, 5.0, 1.5, 0.3),
    "eps-ii": (15, 1.35, 4.0, 3.5, 3.0),
    "xps-iv": (25, 1.55, 5.0, 1.5, 0.3),
    "eps-ix": (25, 1.80, 4.2, 2.5, 2.0),
    "xps-vi": (40, 1.80, 5.0, 1.1, 0.3),
    "eps-xiv": (40, 2.40, 4.2, 2.5, 2.0),
    "xps-vii": (60, 2.20, 5.0, 1.1, 0.3),
    "eps-xv": (60, 2.85, 4.3, 2.5, 2.0),
    "xps-v": (100, 3.00, 5.0, 1.1, 0.3),
}
# ASTM D6817, psi at 1 % strain.
D6817 = {"eps-i": 3.6, "eps-viii": 5.8, "eps-ii": 7.3, "eps-ix": 10.9}
# A maker's design guide, foundation modulus in pci at 1, 1.5, 2, 2.5, 3 and 4 in.
MODULUS = {
    "xps-x": (590, 550, 500, 450, 400, 300),
    "xps-iv": (750, 710, 675, 595, 565, 510),
    "xps-vi": (1100, 1000, 900, 780, 680, 650),
    "xps-vii": (1520, 1400, 1275, 1150, 1040, 790),
}


@pytest.mark.parametrize(("key", "row"), C578.items())
def test_type_is_the_table_s(key: str, row: tuple[float, ...]) -> None:
    board = BOARDS[key]
    assert board.strength_kpa / KPA_PER_PSI == pytest.approx(row[0], rel=1e-6)
    assert board.density_kg_m3 == pytest.approx(row[1] * KG_M3_PER_PCF, rel=1e-6)
    assert board.r_per_m * 0.0254 / RSI_PER_R == pytest.approx(row[2], rel=1e-4)
    assert board.permeability_perm_in == row[3]
    assert board.water_absorption == pytest.approx(row[4] / 100)


def test_two_inches_of_extruded_foam_is_r_10() -> None:
    resistance = BOARDS["xps-iv"].r_per_m * 0.0508
    assert resistance == pytest.approx(1.7611, rel=1e-4)  # R-10 in m2K/W
    assert BOARDS["xps-iv"].conductivity_w_mk == pytest.approx(0.02884, abs=1e-5)


@pytest.mark.parametrize("key", C578)
def test_one_percent_strain_only_where_published(key: str) -> None:
    strain = BOARDS[key].strain1_kpa
    expected = D6817.get(key)
    assert (strain is None) == (expected is None)
    if strain is not None and expected is not None:
        assert strain / KPA_PER_PSI == pytest.approx(expected, rel=1e-6)


@pytest.mark.parametrize(("key", "pci"), MODULUS.items())
def test_foundation_modulus_by_thickness(key: str, pci: tuple[float, ...]) -> None:
    thicknesses, moduli = zip(*BOARDS[key].foundation_modulus, strict=True)
    assert [t / 0.0254 for t in thicknesses] == pytest.approx([1, 1.5, 2, 2.5, 3, 4])
    assert [m / N_M3_PER_PCI for m in moduli] == pytest.approx(pci, rel=1e-5)


def test_layers_on_each_other_as_the_guide_works_them() -> None:
    # Two 2 in boards of 25 psi: 337.5 pci; 1.5 in on 2 in: 346.0 pci (reciprocals add).
    pairs = BOARDS["xps-iv"].foundation_modulus
    by_inch = {round(t / 0.0254, 1): m / N_M3_PER_PCI for t, m in pairs}
    assert 1 / (1 / by_inch[2.0] + 1 / by_inch[2.0]) == pytest.approx(337.5, abs=0.05)
    assert 1 / (1 / by_inch[1.5] + 1 / by_inch[2.0]) == pytest.approx(346.0, abs=0.05)


def test_a_two_inch_board_weighs_what_two_hands_feel() -> None:
    # 4 x 8 ft x 2 in at 1.55 pcf: 5.333 ft3, 8.27 lb.
    board = BOARDS["xps-iv"]
    assert board.density_kg_m3 is not None
    kilograms = board.width_m * board.length_m * 0.0508 * board.density_kg_m3
    assert kilograms / 0.45359237 == pytest.approx(8.267, abs=0.005)


@pytest.mark.parametrize(
    ("key", "kpa", "conductivity"), [("xps-300", 300, 0.035), ("eps-100", 100, 0.036)]
)
def test_european_grades(key: str, kpa: float, conductivity: float) -> None:
    # EN 13164 and EN 13163 designations; declared conductivities from memory.
    assert BOARDS[key].strength_kpa == kpa
    assert BOARDS[key].conductivity_w_mk == pytest.approx(conductivity)
    assert BOARDS[key].source.sure == "memory"
