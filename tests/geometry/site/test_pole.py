"""Story poles: what is marked, at which level, and pages that part between marks."""

from itertools import pairwise

import numpy as np
import pytest

from geometry.designfile import read_design
from geometry.layout.lay import Layout, lay_out
from geometry.layout.leveltable import LevelRow, level_rows
from geometry.site.pole import BEYOND_M, Room, Strip, story_pole, strips
from tests.designs import design_of, seeded_raw
from tests.whole.networks import TEXTS, network

ROOM = Room(0.25, 0.02, 0.005)


def sound(room: Room, levels: list[float], found: tuple[Strip, ...]) -> None:
    """Strips follow each other without gap, fit the page, and part where no tick stands."""
    assert found[0].top == pytest.approx(levels[0] + BEYOND_M)
    assert found[-1].bottom == pytest.approx(levels[-1] - BEYOND_M)
    assert found[0].tab == 0.0
    for above, below in pairwise(found):
        assert above.bottom == below.top
        assert 0 < below.tab <= room.overlap
    for strip in found:
        assert strip.top + strip.tab - strip.bottom <= room.height + 1e-9
        overlapped = [z for z in levels if strip.top <= z <= strip.top + strip.tab]
        assert not overlapped or strip is found[0]


def test_a_stick_that_fits_a_page_is_not_parted() -> None:
    assert strips([0.1, 0.0], ROOM) == (Strip(0.1 + BEYOND_M, -BEYOND_M, 0.0),)


def test_pages_are_as_even_as_their_number_allows() -> None:
    """0.54 m with its ends, and two overlaps of 0.02 m, on three pages of at the most 0.25 m."""
    found = strips([0.5, 0.0], ROOM)
    heights = [strip.top + strip.tab - strip.bottom for strip in found]
    assert heights == pytest.approx([0.58 / 3] * 3, abs=5e-4)


def test_pages_part_beside_a_tick_that_stands_where_they_would() -> None:
    levels = [0.3, 0.125, 0.11, 0.0]
    found = strips(levels, ROOM)
    sound(ROOM, levels, found)
    assert len(found) == 2
    assert found[1].tab == ROOM.overlap
    assert all(abs(found[0].bottom - z) >= ROOM.clear - 1e-9 for z in levels)


def test_ticks_closer_than_the_tab_make_it_lower() -> None:
    levels = [n * 0.012 for n in range(40, -1, -1)]
    found = strips(levels, ROOM)
    sound(ROOM, levels, found)
    assert all(0 < strip.tab < ROOM.overlap for strip in found[1:])


def test_any_levels_are_parted_soundly() -> None:
    generator = np.random.default_rng(5)
    for _ in range(60):
        steps = generator.choice((0.001, 0.004, 0.02, 0.05, 0.4), size=generator.integers(1, 30))
        levels = [float(z) for z in np.cumsum(steps)[::-1]]
        sound(ROOM, levels, strips(levels, ROOM))


def _layouts() -> list[Layout]:
    drawn = [raw for raw in map(seeded_raw, range(8)) if raw]
    found = [lay_out(design_of(raw)) for raw in drawn[:2]]
    return [*found, lay_out(network("upper to lower stone")), lay_out(network("both to the pit"))]


def _marked(row: LevelRow) -> bool:
    """Whether a crew marks a level of the table on a stick."""
    if row.group == "drain":
        return "corner" not in row.interface and "bleeders" not in row.interface
    if row.group in ("footing", "pier"):
        pad_bottom = row.interface.startswith("pad") and row.interface.endswith("bottom")
        return row.interface != "top of wall" and not pad_bottom
    return row.group == "floor"


def test_an_upper_area_s_pole_counts_from_its_own_top_of_footing() -> None:
    """The garage's footing lies 4 ft up, its floor 3 ft 6 in over that; a pad as high as it."""
    pier = '[[area.pier]]\nat = "32 ft, 30 ft"\n'
    layout = lay_out(read_design(TEXTS["upper to lower stone"] + pier))
    pole = story_pole(layout, layout.area("garage"), ROOM)
    levels = {mark.kind: mark.level / 0.0254 for tick in pole.ticks for mark in tick.marks}
    assert levels["finished floor"] == levels["column top"] == pytest.approx(42)
    # 6 in of stone, a sheet of 10 mil and 4 in of slab.
    assert levels["subgrade"] == pytest.approx(42 - 10.01)
    assert levels["pad top"] == pytest.approx(0)
    assert levels["footing bottom"] == pytest.approx(-8)


def test_a_pole_bears_every_level_of_the_level_table_a_crew_marks() -> None:
    for layout in _layouts():
        for area in layout.areas:
            pole = story_pole(layout, area, ROOM)
            marked = np.array([tick.level for tick in pole.ticks])
            rows = [r for r in level_rows(layout) if r.area == area.name and _marked(r)]
            assert len(rows) >= 4
            for row in rows:
                assert np.abs(marked - (row.level - area.tof)).min() < 5e-4
            assert 0.0 in marked
            sound(ROOM, [t.level for t in pole.ticks], pole.strips)
