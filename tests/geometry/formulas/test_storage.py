"""What a pit and its stone hold."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from geometry.formulas.storage import StoneBed, Storage, pit_and_stone

BEDS = (StoneBed(-0.3, 0.1, 24.0, 0.4), StoneBed(-0.2, 0.5, 10.0, 0.35))
STORE = pit_and_stone(-0.9, 0.3, 0.164, BEDS)


@given(st.floats(-0.9, 0.3))
def test_level_and_volume_are_inverses(level: float) -> None:
    assert STORE.level(STORE.volume(level)) == pytest.approx(level, abs=1e-12)


@given(st.floats(-0.9, 0.3))
def test_volume_is_the_pit_s_and_the_stone_s(level: float) -> None:
    stone = 9.6 * min(max(level + 0.3, 0), 0.4) + 3.5 * max(level + 0.2, 0)
    assert STORE.volume(level) == pytest.approx(0.164 * (level + 0.9) + stone)


def test_area_is_what_rises() -> None:
    assert STORE.area(-0.5) == pytest.approx(0.164)
    assert STORE.area(-0.3) == pytest.approx(0.164 + 9.6), "just above the bed's bottom"
    assert STORE.area(0.0) == pytest.approx(0.164 + 9.6 + 3.5)
    assert STORE.area(0.3) == pytest.approx(0.164 + 3.5), "at the top, of the band below"


def test_stone_out_of_reach_holds_nothing() -> None:
    low, high = StoneBed(-2.0, -1.0, 50.0, 0.4), StoneBed(0.4, 1.0, 50.0, 0.4)
    assert pit_and_stone(-0.9, 0.3, 0.164, (low, high)).full_m3 == pytest.approx(0.164 * 1.2)
    through = StoneBed(-2.0, 1.0, 50.0, 0.4)
    assert pit_and_stone(-0.9, 0.3, 0.164, (through,)).full_m3 == pytest.approx(20.164 * 1.2)


def test_ends() -> None:
    assert (STORE.bottom_m, STORE.spill_m) == (-0.9, 0.3)
    assert STORE.volume(-5.0) == 0
    assert STORE.volume(5.0) == STORE.full_m3
    with pytest.raises(ValueError, match="level_m"):
        STORE.area(0.4)


@pytest.mark.parametrize(
    ("levels", "volumes"),
    [((0.0,), (0.0,)), ((0.0, 1.0), (0.0,)), ((0.0, 1.0), (0.1, 1.0)), ((1.0, 0.0), (0.0, 1.0)),
     ((0.0, 1.0, 2.0), (0.0, 1.0, 1.0))],
)  # fmt: skip
def test_what_is_no_store_is_refused(levels: tuple[float, ...], volumes: tuple[float, ...]) -> None:
    with pytest.raises(ValueError, match=r"store|rise|below"):
        Storage(levels, volumes)
    with pytest.raises(ValueError, match="thickness"):
        StoneBed(1.0, 0.0, 1.0, 0.4)
