"""What each element carries, by Manning in feet and by hand, and which of them governs."""

from math import pi

import pytest
from drained_box import INSIDE, OUTSIDE, box
from wet_box import FOOT, GPM, INCH, STEADY, wet

from geometry.formulas.gradation import size_at
from geometry.formulas.stone_flow import ergun_velocity
from geometry.layout.lay import Layout
from geometry.materials.catalogue import AGGREGATES
from geometry.water.capacity import Capacities, Capacity, capacities
from geometry.water.inflow import inflow


def found(layout: Layout) -> Capacities:
    coming = inflow(layout)
    carried = capacities(layout, coming.peak_m3s if coming else None)
    assert carried is not None
    return carried


def row(layout: Layout, name: str) -> Capacity:
    (one,) = (r for r in found(layout).rows if r.name == name)
    return one


def manning(bore_in: float, slope: float, n: float) -> float:
    """A full pipe in feet and seconds: 1.486 / n A R^2/3 S^1/2, as m3/s."""
    bore = bore_in / 12
    feet = 1.486 / n * pi * bore**2 / 4 * (bore / 4) ** (2 / 3) * slope**0.5
    return feet * FOOT**3


@pytest.mark.parametrize(("word", "n"), [("clean", 0.010), ("perforated", 0.020)])
def test_a_drain_pipe_runs_full_by_manning(word: str, n: float) -> None:
    layout = box("1/16 in per ft")
    pipe = row(layout, f"Drain pipe, full, {word}")
    assert pipe.flow_m3s == pytest.approx(manning(INSIDE, 1 / 192, n), rel=1e-3)
    # Two like ways lead to the outlet; each carries half.
    assert pipe.allows_m3s == pytest.approx(2 * manning(INSIDE, 1 / 192, n), rel=1e-3)
    assert pipe.in_line == (word == "perforated")


def test_a_level_pipe_has_no_slope_to_reckon_with() -> None:
    pipe = row(box("level"), "Drain pipe, full, perforated")
    assert pipe.flow_m3s is None
    assert "level" in pipe.note


def test_the_pipe_to_the_pit_carries_everything() -> None:
    lead = row(wet(), "Pipe to the pit, full")
    assert lead.in_line
    assert lead.allows_m3s == pytest.approx(manning(INSIDE, 1 / 48, 0.010), rel=1e-3)


def test_a_pipe_without_holes_governs_with_nothing() -> None:
    carried = found(wet(drain="[drain.holes]\nrows = []"))
    assert carried.governs is not None
    assert carried.governs.name == "Holes of the pipe"
    assert carried.governs.flow_m3s == 0


def test_one_hole_row_takes_water_like_orifices_under_their_mean_head() -> None:
    # Holes straight down at the invert, flat: 0.60 A sqrt(2 g h) under half the bore, every one.
    layout = wet(drain='[drain.holes]\nrows = [0]\ndiameter = "1/4 in"\nspacing = "6 in"')
    assert layout.drain is not None
    area, head = pi / 4 * (INCH / 4) ** 2, INSIDE / 2 * INCH
    each = 0.60 * area * (2 * 9.80665 * head) ** 0.5
    holes = row(layout, "Holes of the pipe")
    assert holes.flow_m3s == pytest.approx(each * layout.drain.hole_count, rel=1e-9)


def test_the_pump_is_taken_at_its_flow_and_governs() -> None:
    carried = found(wet())
    assert carried.governs is not None
    assert carried.governs.name == "Pump"
    assert carried.governs.note == "as given"
    assert carried.governs.flow_m3s == pytest.approx(20 * GPM, rel=1e-9)


CURVE = (
    'pump = {{ off = "4 in", on = "12 in", curve = ["8 ft, 40 gpm", "18 ft, 0 gpm"], '
    'lift = "{}"{} }}'
)


def test_a_curve_is_read_at_the_lift_midway_between_on_and_off() -> None:
    # Water midway 8 in over the bottom: 11 ft 8 in less 8 in is 11 ft, 7 of 10 ft down the line.
    pump = row(wet(pump=CURVE.format("11 ft 8 in", "")), "Pump")
    assert pump.flow_m3s == pytest.approx(28 * GPM, rel=1e-6)
    assert "friction" in pump.note


def test_a_discharge_pipe_takes_from_the_flow() -> None:
    pipe = ', discharge = { length = "60 ft", inside = "1.61 in" }'
    bare = row(wet(pump=CURVE.format("11 ft 8 in", "")), "Pump")
    slowed = row(wet(pump=CURVE.format("11 ft 8 in", pipe)), "Pump")
    assert bare.flow_m3s is not None
    assert slowed.flow_m3s is not None
    assert 0 < slowed.flow_m3s < bare.flow_m3s
    assert "friction" not in slowed.note


def test_a_pump_whose_flow_is_not_given_cannot_govern() -> None:
    carried = found(wet(pump='pump = { off = "2 in", on = "10 in" }'))
    pump = next(r for r in carried.rows if r.name == "Pump")
    assert (pump.flow_m3s, pump.note) == (None, "not given")
    assert carried.governs is not None
    assert carried.governs.name != "Pump"


def test_depths_stand_only_where_the_pipe_carries_its_share() -> None:
    little = found(wet(fall="1/16 in per ft", depth="36 in"))
    depths = [d.depth_m for d in little.depths]
    assert all(d is not None and 0 < d < INSIDE * INCH / 2 for d in depths)
    assert depths[0] is not None
    assert depths[1] is not None
    assert depths[0] < depths[1]
    flood = STEADY + 'roof = "20000 sq ft"'
    much = found(wet(flood, fall="1/16 in per ft", depth="36 in"))
    assert [d.depth_m for d in much.depths] == [None, None]


def test_stone_alone_carries_a_small_part_of_what_the_pipe_does() -> None:
    layout = box("1/8 in per ft", 'outlet_invert = "-12 in"')
    stone, pipe = (
        row(layout, "Stone alone, along the drain"),
        row(layout, "Drain pipe, full, clean"),
    )
    assert stone.flow_m3s is not None
    assert pipe.flow_m3s is not None
    assert 0 < stone.flow_m3s < 0.1 * pipe.flow_m3s
    assert not stone.in_line
    # 16 in wide, from under 2 in of bedding to the crown of the pipe, 4.215 in over that.
    grain = size_at(AGGREGATES["stone-57"].fine_edge, 0.10)
    speed = ergun_velocity(1 / 96, grain, 0.40)
    assert stone.flow_m3s == pytest.approx(speed * 16 * (2 + OUTSIDE) * INCH**2)
    unknown = row(box("1/8 in per ft", '[drain.stone]\nmaterial = "crusher-run"'), stone.name)
    assert unknown.flow_m3s is None
