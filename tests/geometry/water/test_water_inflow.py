"""Water to the drain of a box, worked by hand in feet and gallons."""

import pytest
from drained_box import HALF_FT, box
from wet_box import FOOT, GPM, GROUND, INCH, STEADY, wet

from geometry.layout.lay import Layout, lay_out
from geometry.water.inflow import Inflow, inflow

CUBIC_FOOT_AN_HOUR = FOOT**3 / 3600


def coming(layout: Layout) -> Inflow:
    found = inflow(layout)
    assert found is not None
    return found


def test_half_the_rain_on_the_strip_comes() -> None:
    # 600 ft2 at 1/12 ft an hour, half of it: 25 ft3 an hour, 3.117 gpm.
    found = coming(wet())
    assert found.strip_m2 == pytest.approx(600 * FOOT**2, rel=1e-9)
    assert found.rain_m3s == pytest.approx(25 * CUBIC_FOOT_AN_HOUR, rel=1e-9)
    assert found.peak_m3s == pytest.approx(3.117 * GPM, rel=1e-3)


def test_a_strip_not_given_is_what_was_dug_open() -> None:
    # Footing stands out 6 in, working space 2 ft, side 1:1 over 5 ft and 10 in of footing.
    dig = '[grade]\nat_wall = "6 ft"\n[excavation]\nexisting = "5 ft"\nslope = 1.0\n'
    found = coming(wet(STEADY.replace('strip = "5 ft"\n', ""), more=dig))
    assert found.strip_m == pytest.approx((6 + 24 + 70) * INCH, rel=1e-9)


def test_roof_water_is_all_the_rain_on_it() -> None:
    # 900 ft2 at an inch an hour: 75 ft3 an hour, 9.35 gpm.
    found = coming(wet(STEADY + 'roof = "900 sq ft"'))
    assert found.roof_m3s == pytest.approx(75 * CUBIC_FOOT_AN_HOUR, rel=1e-9)
    assert found.peak_m3s == pytest.approx(100 * CUBIC_FOOT_AN_HOUR, rel=1e-9)


DUG = 'water_table = "76 in"\ntight_base = "-20 in"\nreach = "100 ft"\n'


def test_groundwater_of_a_textbook_trench() -> None:
    # Heads of 8 and 1 ft over the tight ground, 100 ft off, 1e-2 cm/s: 8.93 ft3 a day and foot.
    layout = wet(DUG + 'conductivity = "1e-2 cm/s"', drain='outlet_invert = "-8 in"', depth="36 in")
    ground = coming(layout).ground
    assert ground is not None
    assert ground.low_m3s == ground.high_m3s
    assert ground.flow_m3s == pytest.approx(8.93 * 2 * HALF_FT * FOOT**3 / 86400, rel=1e-3)
    assert ground.presumed == ()


def test_a_reach_not_given_is_sichardt_s() -> None:
    # 3000 s sqrt(k): 84 in of drawdown and 1e-4 m/s give 64.0 m.
    dug = DUG.replace('reach = "100 ft"\n', "")
    layout = wet(dug + 'conductivity = "1e-2 cm/s"', drain='outlet_invert = "-8 in"', depth="36 in")
    ground = coming(layout).ground
    assert ground is not None
    assert ground.reach_m == pytest.approx(3000 * 84 * INCH * 0.01)
    assert ground.presumed == ("reach by Sichardt's rule",)


def test_the_soils_group_gives_a_range() -> None:
    # Silt: 1e-6 to 1e-3 cm/s; flow goes with conductivity at a given reach.
    silt = wet(DUG, drain='outlet_invert = "-8 in"', depth="36 in",
               more=GROUND + '[soil]\ngroup = "ML"\n')  # fmt: skip
    ground = coming(silt).ground
    assert ground is not None
    assert ground.high_m3s == pytest.approx(1000 * ground.low_m3s, rel=1e-9)
    assert ground.flow_m3s == ground.high_m3s
    assert ground.presumed == ("conductivity by the soil's group",)


def test_clean_gravel_lets_at_least_so_much_through() -> None:
    gravel = wet(DUG, drain='outlet_invert = "-8 in"', depth="36 in",
                 more=GROUND + '[soil]\ngroup = "GW"\n')  # fmt: skip
    ground = coming(gravel).ground
    assert ground is not None
    assert ground.high_m3s is None
    assert ground.flow_m3s == ground.low_m3s > 0


def test_a_water_table_below_the_drain_brings_nothing() -> None:
    ground = coming(wet('water_table = "-3 ft"\nconductivity = "1e-2 cm/s"')).ground
    assert ground is not None
    assert ground.flow_m3s == 0


@pytest.mark.parametrize(
    ("water", "words"),
    [
        ("", {"rain", "share", "water table", "conductivity"}),
        (STEADY, {"water table", "conductivity"}),
        (STEADY.replace("share = 0.5\n", ""), {"share", "water table", "conductivity"}),
        (STEADY + 'water_table = "TOF"\nconductivity = "1e-4 cm/s"', set()),
        ('storm = "SCS II"\nshare = 0.5', {"rain", "water table", "conductivity"}),
    ],
)
def test_what_is_not_given_is_said_and_not_guessed(water: str, words: set[str]) -> None:
    found = coming(wet(water))
    assert len(found.lacking) == len(words)
    assert all(any(word in line for line in found.lacking) for word in words)
    if "rain" in words or "share" in words:
        assert found.rain_m3s is None


def test_nothing_known_is_no_flow_at_all() -> None:
    found = coming(wet(""))
    assert not found.known
    assert found.peak_m3s is None


def test_a_house_without_drain_has_no_inflow_to_it() -> None:
    layout = box("level")
    assert inflow(layout) is not None
    bare = layout.design.model_copy(update={"drains": ()})
    assert inflow(lay_out(bare)) is None
