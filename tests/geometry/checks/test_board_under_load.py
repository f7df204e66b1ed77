"""Foam under slab, people and wheels: invented floors, by hand."""

import pytest

from geometry.checks.board import BoardLoad
from geometry.report import Found, Report, report
from tests.houses import house

PSI = 6894.757
SLAB_PSI = 150 * 4 / 12 / 144 + 1.55 * 2 / 12 / 144  # 4 in of 150 pcf on 2 in of 1.55 pcf
LOADS = "[loads]\n{}\n\n[soil]"


def made(words: str = "", *changes: tuple[str, str]) -> Report:
    return report(house(("[soil]", LOADS.format(words)), *changes))


def one(done: Report) -> tuple[BoardLoad, Found]:
    (load,) = done.boards
    (found,) = (f for f in done.findings if f.id == "board-under-load")
    return load, found


def test_slab_and_rooms_are_little_for_a_25_psi_board() -> None:
    load, found = one(made())
    live = 40 / 144
    assert load.dead_pa / PSI == pytest.approx(SLAB_PSI, rel=2e-3)
    assert load.live_pa / PSI == pytest.approx(live, rel=1e-4)
    assert load.live_assumed
    # A third of 25 psi for dead load, a fifth for live.
    share = SLAB_PSI / (25 / 3) + live / 5
    assert load.share_even == pytest.approx(share, rel=2e-3)
    assert found.severity == "fine"
    assert "assumed for rooms" in found.found
    assert "not reckoned" in found.found


# A 2,000 lb wheel on 4 1/2 in square: 12.5 in square under the slab. The plate of 3,000 psi: E is
# 57,000 root 3,000 psi, D is E 4^3 / (12 (1 - 0.15^2)), the board's modulus 675 pci at 2 in.
@pytest.mark.parametrize(("load_lb", "severity"), [(500, "fine"), (2000, "look"), (9000, "stop")])
def test_a_wheel_on_the_slab(load_lb: float, severity: str) -> None:
    load, found = one(made(f'floor = "50 psf"\npoint = "{load_lb} lbf"'))
    stiff = 57_000 * 3000**0.5 * 64 / (12 * (1 - 0.15**2))
    plate = load_lb / 8 * (675 / stiff) ** 0.5
    spread = load_lb / 12.5**2
    assert load.plate_pa is not None
    assert load.plate_pa / PSI == pytest.approx(plate, rel=1e-3)
    assert load.spread_pa / PSI == pytest.approx(spread, rel=1e-3)
    even = SLAB_PSI / (25 / 3) + 50 / 144 / 5
    shares = even + plate / 5, even + spread / 5
    assert (load.share_plate, load.share_spread) == tuple(
        pytest.approx(share, rel=2e-3) for share in shares
    )
    assert (shares[0] > 1, shares[1] > 1) == (severity == "stop", severity != "fine")
    assert found.severity == severity
    assert f"{load.share_plate:.0%} in all; spread at 45 degrees alone" in found.found
    assert ("stronger board" in found.advice) == (severity != "fine")


def test_expanded_foam_is_held_to_its_one_percent_strain() -> None:
    eps = ('"xps-iv", thickness = "2 in"', '"eps-i", thickness = "2 in"')
    load, found = one(made("", eps))
    assert load.long_term
    assert load.share_even == pytest.approx((load.dead_pa + load.live_pa) / PSI / 3.6, rel=1e-4)
    assert "D6817" in found.source
    crowd, stopped = one(made('floor = "500 psf"', eps))
    assert crowd.share_even > 1
    assert stopped.severity == "stop"


def test_a_boards_modulus_is_its_stress_at_one_percent_over_that_strain() -> None:
    """3.6 psi at 1 % of 2 in, which is 0.02 in: 180 pci."""
    eps = ('"xps-iv", thickness = "2 in"', '"eps-i", thickness = "2 in"')
    load, _ = one(made('point = "1000 lbf"', eps))
    stiff = 57_000 * 3000**0.5 * 64 / (12 * (1 - 0.15**2))
    assert load.modulus == pytest.approx(180 * 271_447.1, rel=1e-4)
    assert load.plate_pa is not None
    assert load.plate_pa / PSI == pytest.approx(1000 / 8 * (180 / stiff) ** 0.5, rel=1e-3)


def test_two_boards_are_softer_than_one_and_the_weaker_one_counts() -> None:
    row = '    { name = "foam", material = "xps-iv", thickness = "2 in", role = "insulation" },\n'
    two = row + row.replace('"foam"', '"foam 2"').replace("xps-iv", "xps-vi")
    single, double = (one(made('point = "1000 lbf"', *c))[0] for c in ((), ((row, two),)))
    assert single.modulus is not None
    assert double.modulus is not None
    assert 1 / double.modulus - 1 / single.modulus == pytest.approx(1 / (900 * 271_447.1), rel=1e-4)
    assert double.material == "xps-iv"


def test_a_board_of_unknown_stiffness_is_only_told_spread() -> None:
    stiffless = ('"xps-iv", thickness = "2 in"', '"xps-300", thickness = "2 in"')
    load, found = one(made('point = "5000 lbf"', stiffless))
    assert load.plate_pa is None
    assert "how stiff this board is, is not known" in found.found
    assert found.severity == "look"


def test_no_foam_no_finding() -> None:
    foam = '    { name = "foam", material = "xps-iv", thickness = "2 in", role = "insulation" },\n'
    done = made("", (foam, ""), ("foam bottom at TOF", "slab bottom at TOF"))
    assert done.boards == ()
    assert "board-under-load" not in {f.id for f in done.findings}
