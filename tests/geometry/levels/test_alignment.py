"""The stack of layers solved both ways, against sums written out."""

from dataclasses import FrozenInstanceError

import pytest
from hypothesis import given
from hypothesis import strategies as st

from geometry.designfile import read_design
from geometry.layout.lay import lay_out
from geometry.layout.leveltable import level_rows
from geometry.levels import stack

INCH = 0.0254
NAMES = ("stone", "sand", "foam", "slab")
THICK = (6 * INCH, 0.5 * INCH, 2 * INCH, 4 * INCH)


def test_foam_at_tof_says_where_to_cut() -> None:
    placed = stack(NAMES, THICK, "foam bottom", 0.0)
    assert placed.interfaces["subgrade"] == pytest.approx(-6.5 * INCH)
    assert placed.interfaces["finished floor"] == pytest.approx(6 * INCH)


def test_the_cut_says_where_everything_lands() -> None:
    placed = stack(NAMES, THICK, "subgrade", -9 * INCH)
    assert placed.interfaces["foam bottom"] == pytest.approx(-2.5 * INCH)
    assert placed.interfaces["slab top"] == pytest.approx(3.5 * INCH)


@given(
    st.lists(st.integers(1, 400), min_size=1, max_size=9),
    st.data(),
    st.integers(-2000, 2000),
)
def test_any_interface_may_be_tied_and_all_agree(
    sixteenths: list[int], data: st.DataObject, level: int
) -> None:
    names = [f"layer {n}" for n in range(len(sixteenths))]
    thick = [s * INCH / 16 for s in sixteenths]
    at = data.draw(st.integers(0, len(names) - 1))
    face = data.draw(st.sampled_from(["top", "bottom"]))
    placed = stack(names, thick, f"{names[at]} {face}", level * INCH / 16)
    assert placed.interfaces[f"{names[at]} {face}"] == level * INCH / 16
    again = stack(names, thick, "subgrade", placed.interfaces["subgrade"])
    assert again.levels == pytest.approx(placed.levels, abs=1e-12)


def test_the_finished_floor_may_be_tied() -> None:
    placed = stack(NAMES, THICK, "finished floor", 1.0)
    assert placed.interfaces["slab top"] == placed.interfaces["finished floor"] == 1.0
    assert placed.interfaces["subgrade"] == pytest.approx(1.0 - 12.5 * INCH)
    assert len(placed.levels) == len(NAMES) + 1


def test_a_stack_is_raised_whole_and_the_old_one_stays() -> None:
    placed = stack(NAMES, THICK, "subgrade", 0.0)
    raised = placed.moved(0.25)
    assert raised.names == placed.names
    assert raised.levels == pytest.approx([level + 0.25 for level in placed.levels])
    assert placed.interfaces["subgrade"] == 0.0
    with pytest.raises(FrozenInstanceError):
        placed.levels = ()  # type: ignore[misc]


def test_an_unknown_interface_is_an_error() -> None:
    with pytest.raises(KeyError):
        stack(NAMES, THICK, "roof top", 0.0)


def test_rows_are_elevation_and_rod_reading() -> None:
    text = """
[project]
name = "Levels (invented)"
[datum]
top_of_footing = "100 ft"
instrument = "104 ft 3 in"
[[area]]
name = "basement"
corners = ["0, 0", "30 ft, 0", "30 ft, 20 ft", "0, 20 ft"]
[floor]
tie = "foam bottom at TOF"
layer = [
    { name = "stone", material = "stone-57", thickness = "4 in", role = "base" },
    { name = "foam", material = "xps-iv", thickness = "2 in", role = "insulation" },
    { name = "slab", material = "concrete", thickness = "4 in", role = "slab" },
]
"""
    rows = {r.interface: r for r in level_rows(lay_out(read_design(text)))}
    slab = rows["slab top (finished floor)"]
    foot = 0.3048
    assert slab.level == pytest.approx(6 * INCH)
    assert slab.elevation == pytest.approx(100.5 * foot)
    # Rod = height of instrument - elevation: 104.25 - 100.5 = 3.75 ft.
    assert slab.rod == pytest.approx(3.75 * foot)
    assert slab.thickness_below == pytest.approx(4 * INCH)
    assert rows["subgrade"].rod == pytest.approx((4.25 + 4 / 12) * foot)
