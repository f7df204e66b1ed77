"""The walk with the rod: every level once, readings from the laser's height, what to hold."""

import pytest

from geometry.layout.inverts import invert_rows
from geometry.layout.lay import Layout, lay_out
from geometry.layout.leveltable import level_rows
from geometry.site.laser import NEAR_M, Reading, legs
from geometry.site.records import Place
from geometry.units import INCH
from tests.whole.networks import network

INSTRUMENT_M = 31.5


def laid(name: str, **changes: object) -> Layout:
    return lay_out(network(name, datum__instrument=f"{INSTRUMENT_M} m", **changes))


def readings(layout: Layout, key: str) -> list[Reading]:
    return [r for leg in legs(layout) if leg.key == key for r in leg.readings]


def test_rods_hang_from_the_laser() -> None:
    for leg in legs(laid("pit and two to daylight")):
        for reading in leg.readings:
            if reading.elevation is not None:
                assert reading.rod == pytest.approx(INSTRUMENT_M - reading.elevation)


def test_the_walk_begins_and_ends_with_the_check_shot() -> None:
    walk = legs(laid("inside"))
    assert [leg.readings for leg in (walk[0], walk[-1])] == [(Reading("benchmark"),)] * 2


def test_every_level_of_the_table_is_shot() -> None:
    for name in ("upper to lower stone", "both to the pit"):
        layout = laid(name)
        shot = [r.level for leg in legs(layout) for r in leg.readings if r.level is not None]
        for row in level_rows(layout):
            buried = row.interface.endswith("bottom") and row.group in ("footing", "pier")
            if buried or "before the dig" in row.interface or row.interface.startswith("column"):
                continue
            assert min(abs(row.level - level) for level in shot) < 5e-4, row.interface


def test_named_places_of_the_pipe_are_all_shot_and_even_steps_keep_off_them() -> None:
    layout = laid("one side, two outlets")
    drain, walked = layout.drains[0], readings(layout, "drain")
    rows = [r for r in invert_rows(layout, drain) if r.names]
    inverts = [r for r in walked if r.key == "invert"]
    named = [r.along for r in inverts if r.places]
    assert named == pytest.approx([r.along for r in rows])
    steps = [r.along for r in inverts if not r.places and r.along is not None]
    assert steps
    assert all(abs(s - n) >= NEAR_M for s in steps for n in named if n is not None)


def test_a_footing_under_masonry_is_held_closer() -> None:
    """ACI 117: +1/2 in, -2 in under concrete; 1/2 in either way where masonry stands on it."""
    for kind, below in (("poured concrete", 2 * INCH), ("concrete block", INCH / 2)):
        tops = readings(laid("inside", wall__kind=kind), "concrete")
        corners = [r for r in tops if r.key == "footing_top"]
        assert [r.places for r in corners] == [(Place("corner", n),) for n in range(1, 7)]
        for reading in corners:
            assert reading.tolerance is not None
            assert (reading.tolerance.above, reading.tolerance.below) == (INCH / 2, below)
