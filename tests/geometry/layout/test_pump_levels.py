"""Float levels of the pump, counted up from the pit's inside bottom; an invented house."""

import pytest

from geometry.designfile import read_design
from geometry.layout.lay import Layout, lay_out
from geometry.layout.leveltable import level_rows

INCH = 0.0254
HOUSE = """
[project]
name = "A box (invented)"
[[area]]
name = "basement"
corners = ["0, 0", "30 ft, 0", "30 ft, 20 ft", "0, 20 ft"]
[floor]
tie = "slab bottom at TOF"
layer = [{{ name = "slab", material = "concrete", thickness = "4 in", role = "slab" }}]
[sump]
at = "4 ft, 8 ft"
depth = "30 in"
{pump}
"""


def laid(pump: str) -> Layout:
    return lay_out(read_design(HOUSE.format(pump=pump)))


def rows(layout: Layout) -> dict[str, float]:
    return {r.interface: r.level for r in level_rows(layout) if r.group == "sump"}


def test_floats_hang_on_the_pits_bottom() -> None:
    layout = laid('pump = { off = "3 in", on = "10 in", alarm = "14 in" }')
    # Finished floor 4 in over TOF, pit 30 in deep: its bottom at -26 in.
    wanted = {"pump off": -23, "pump on": -16, "high-water alarm": -12}
    found = rows(layout)
    for name, inches in wanted.items():
        assert found[name] == pytest.approx(inches * INCH, abs=1e-12)
    assert list(found.values()) == sorted(found.values(), reverse=True)
    pit = layout.sump
    assert pit is not None
    assert (pit.pump_off, pit.pump_on, pit.alarm) == tuple(found[name] for name in wanted)


def test_a_pit_without_pump_or_alarm_has_no_such_levels() -> None:
    assert not {"pump off", "pump on", "high-water alarm"} & set(rows(laid("")))
    quiet = rows(laid('pump = { off = "3 in", on = "10 in" }'))
    assert "pump on" in quiet
    assert "high-water alarm" not in quiet
