"""Cold concrete by hand: what the slab stands on, through a sheet, stone, or on a pier."""

import pytest

from geometry.checks.cold import ColdConcrete, cold_concrete
from tests.houses import WITH_GARAGE, house, without

FOOT2 = 0.3048**2
# 30 x 20 ft with walls of 8 in over strips of 20 in: 6 in of ledge inside.
ROOM = (30 - 16 / 12) * (20 - 16 / 12)
CORE = (30 - 28 / 12) * (20 - 28 / 12)
ROUND = 2 * (30 - 16 / 12 + 20 - 16 / 12)
FOAM = '    { name = "foam", material = "xps-iv", thickness = "2 in", role = "insulation" },\n'
BARE = (FOAM, "")
DRY = without("sump")
COLUMN = ('at = "15 ft, 10 ft"', 'at = "15 ft, 10 ft"\ncolumn = "square"\ncolumn_size = "12 in"')


def cold(*changes: tuple[str, str]) -> ColdConcrete:
    layout = house(DRY, *changes)
    return cold_concrete(layout, layout.areas[0])


def faces(found: ColdConcrete) -> dict[str, float]:
    return {face.contact: face.area_m2 / FOOT2 for face in found.faces}


def test_a_slab_without_foam_is_cold_but_where_columns_pass_it() -> None:
    """The sheet on TOF parts nothing: ledge, pad and ground; a pad of 3 x 3 ft round a column."""
    found = cold(BARE, COLUMN, ('"foam bottom at TOF"', '"stone top at TOF"'))
    edge = ROUND * 4 / 12
    wanted = {"slab on footing": ROOM - CORE, "slab on pier": 9 - 1, "slab on ground": CORE - 9}
    assert faces(found) == pytest.approx(wanted | {"slab edge at wall": edge}, rel=1e-9)
    # The edge is told and not counted; the column's section is no floor.
    assert found.cold_m2 / FOOT2 == pytest.approx(ROOM - 1)
    assert found.share == pytest.approx((ROOM - 1) / ROOM)
    assert found.of("slab on pier") / FOOT2 == pytest.approx(8)


def test_stone_over_footing_and_pad_makes_ground_of_them() -> None:
    """2 of 6 in of stone lie over TOF, on ledge and pad: all the slab lies on stone."""
    found = cold(BARE, COLUMN, ('"foam bottom at TOF"', '"stone top at TOF +2 in"'))
    assert faces(found)["slab on ground"] == pytest.approx(ROOM - 1)
    assert {"slab on footing", "slab on pier"}.isdisjoint(faces(found))


def test_a_pad_that_stands_through_the_foam_is_counted_once() -> None:
    """Foam from TOF to +2 in; the pad's top at +3 in stands in the slab, its column on it."""
    found = cold(COLUMN, ('column = "square"', 'column = "square"\npad_top = "TOF +3 in"'))
    assert faces(found)["pier through foam"] == pytest.approx(9)
    assert found.cold_m2 / FOOT2 == pytest.approx(9)


def test_a_board_at_the_edge_keeps_the_slab_from_the_wall() -> None:
    board = (
        'tie = "foam bottom at TOF"',
        'tie = "foam bottom at TOF"\nedge_board = { material = "xps-iv", thickness = "1 in" }',
    )
    assert "slab edge at wall" in faces(cold())
    assert "slab edge at wall" not in faces(cold(board))


def test_a_higher_floor_beside_is_its_own_areas_matter() -> None:
    """The garage's slab lies bare, the basement's as it would alone."""
    layout = house(WITH_GARAGE, DRY)
    basement, garage = (cold_concrete(layout, area) for area in layout.areas)
    assert faces(basement) == pytest.approx(faces(cold()))
    assert garage.of("pier through foam") == 0
    assert garage.share == pytest.approx(1.0)
