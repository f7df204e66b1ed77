"""A builder and a crew who disagree about the foam: three invented designs, re-derived by hand.

A: foam over all footings, pads included. B: pads raised to the foam's top. C: foam stopped at
the footing. No retarder sheet, so that every level stays on the even inch.
"""

from pathlib import Path

import pytest

from geometry.designfile import edited, read_design
from geometry.layout.lay import lay_out
from geometry.report import Report, report

IN, FT = 0.0254, 0.3048
FT2, FT3, YD3 = FT**2, FT**3, 0.764554857984  # NIST SP 811
HERE = Path(__file__).parent
FILES = {"A": "foam_over", "B": "pads_raised", "C": "foam_stopped"}

# House 40 x 28 ft outside, wall 8 in: the room is 40 - 16/12 by 28 - 16/12 ft.
ROOM = (40 - 16 / 12) * (28 - 16 / 12)  # 38'-8" x 26'-8" = 1,031.11 ft2
# Footing 20 in under a wall of 8 in stands in by (20 - 8) / 2 = 6 in: 14 in from outside.
CORE = (40 - 28 / 12) * (28 - 28 / 12)  # 37'-8" x 25'-8" = 966.78 ft2
PADS = 4 * 3 * 3  # four pads of 36 in: 36 ft2
SHEET = 4 * 8


def text(case: str) -> str:
    return (HERE / f"{FILES[case]}.toml").read_text(encoding="utf-8")


def of(design_text: str) -> Report:
    return report(lay_out(read_design(design_text)))


def level(found: Report, interface: str) -> float:
    """A level in inches."""
    return next(r.level_m for r in found.levels if r.interface == interface) / IN


def yards(found: Report, part: str) -> float:
    return next(v.volume_yd3 for v in found.volumes if v.part == f"basement/{part}")


def foam_area(found: Report) -> float:
    """Foam in ft2, from its volume at 2 in thick."""
    cubic = next(v.volume_m3 for v in found.volumes if v.part == "basement/foam")
    return cubic / FT3 / (2 / 12)


@pytest.mark.parametrize(
    ("case", "subgrade", "stone", "foam", "floor", "pad"),
    [("A", -4, 0, 2, 6, 0), ("B", -4, 0, 2, 6, 2), ("C", -6, -2, 0, 4, 0)],
)
def test_levels(
    case: str, subgrade: float, stone: float, foam: float, floor: float, pad: float
) -> None:
    found = of(text(case))
    assert level(found, "subgrade") == pytest.approx(subgrade, abs=1e-9)
    assert level(found, "stone top") == pytest.approx(stone, abs=1e-9)
    assert level(found, "foam top") == pytest.approx(foam, abs=1e-9)
    assert level(found, "slab top (finished floor)") == pytest.approx(floor, abs=1e-9)
    for number in range(1, 5):
        assert level(found, f"pad P{number} top") == pytest.approx(pad, abs=1e-9)


@pytest.mark.parametrize("case", FILES)
def test_stone_and_slab(case: str) -> None:
    # Stone 4 in between the footings, pads out: (966.78 - 36) x 4/12 = 310.26 ft3 = 11.49 yd3.
    # Slab 4 in to the wall, no pad reaches into it: 1,031.11 x 4/12 = 343.70 ft3 = 12.73 yd3.
    found = of(text(case))
    assert yards(found, "stone") == pytest.approx((CORE - PADS) * 4 / 12 / 27, rel=1e-9)
    assert yards(found, "stone") == pytest.approx(11.49, abs=0.005)
    assert yards(found, "slab") == pytest.approx(ROOM * 4 / 12 / 27, rel=1e-9)
    assert yards(found, "slab") == pytest.approx(12.73, abs=0.005)


@pytest.mark.parametrize(
    ("case", "area", "sheets"),
    [("A", ROOM, 32.22), ("B", ROOM - PADS, 31.10), ("C", CORE - PADS, 29.09)],
)
def test_foam_in_sheets_before_waste(case: str, area: float, sheets: float) -> None:
    # A: to the wall over strip and pads; B: less the pads; C: between the footings, less the pads.
    found = of(text(case))
    assert foam_area(found) == pytest.approx(area, rel=1e-9)
    assert foam_area(found) / SHEET == pytest.approx(sheets, abs=0.005)


@pytest.mark.parametrize(
    ("case", "meeting", "ledge", "cold"),
    [
        ("A", "over footing", 0, 0),  # all concrete of the floor lies on foam
        ("B", "over footing", 0, PADS),  # the slab sits on four pads
        ("C", "stopped at footing", ROOM - CORE, ROOM - CORE + PADS),  # ledge 64.33 + pads 36
    ],
)
def test_foam_verdict(case: str, meeting: str, ledge: float, cold: float) -> None:
    found = of(text(case))
    verdict = found.foam[0]
    assert verdict.meeting == meeting
    assert verdict.cold_ledge_m2 / FT2 == pytest.approx(ledge, abs=1e-6)
    assert verdict.cold_concrete_m2 / FT2 == pytest.approx(cold, abs=1e-6)
    assert verdict.cold_share == pytest.approx(cold / ROOM, abs=1e-9)
    words = next(f for f in found.findings if f.id == "foam-meets-tof")
    says = {"A": "over the footing", "B": "over the footing", "C": "inner ledge, 64.3 ft²"}
    assert says[case] in words.found
    assert words.severity == ("look" if case == "C" else "fine")


@pytest.mark.parametrize(
    ("case", "tied"),
    [("A", "subgrade at -4 in"), ("B", "subgrade at -4 in"), ("C", "subgrade at -6 in")],
)
def test_stone_half_an_inch_low_takes_more_concrete(case: str, tied: str) -> None:
    # The floor stays, foam and stone between the footings sink by 1/2 in: the slab fills
    # (966.78 - 36) x 0.5/12 = 38.8 ft3 = 1.44 yd3 there in C, where it meets the footing at TOF.
    low = edited(text(case), ("floor", "tie"), tied)
    low = edited(low, ("floor", "layer", 0, "thickness"), "3.5 in")
    low = edited(low, ("floor", "layer", 2, "thickness"), "4.5 in")
    if case == "B":  # the pads are poured already
        for number in range(4):
            low = edited(low, ("area", 0, "pier", number, "pad_top"), "TOF +2 in")
    before, after = of(text(case)), of(low)
    assert level(after, "slab top (finished floor)") == pytest.approx(
        level(before, "slab top (finished floor)"), abs=1e-9
    )
    more = yards(after, "slab") - yards(before, "slab")
    if case == "C":
        assert more == pytest.approx((CORE - PADS) * 0.5 / 12 / 27, rel=1e-6)
        assert more == pytest.approx(1.44, abs=0.005)
    else:
        # Over the footing the foam sinks with the rest only where it bends; drawn flat, the
        # slab gains half an inch over the whole room, less what B's pads take of it.
        taken = PADS if case == "B" else 0
        assert more == pytest.approx((ROOM - taken) * 0.5 / 12 / 27, rel=1e-6)


def test_what_a_moved_layer_moves() -> None:
    # Foam over the footing instead of stopped: floor +2 in, 64.33 ft2 less cold ledge,
    # and (32.22 - 29.09) sheets more.
    over, stopped = of(text("A")), of(text("C"))
    top = "slab top (finished floor)"
    assert level(over, top) - level(stopped, top) == pytest.approx(2, abs=1e-9)
    more = (foam_area(over) - foam_area(stopped)) / SHEET
    assert more == pytest.approx((ROOM - CORE + PADS) / SHEET, rel=1e-9)
