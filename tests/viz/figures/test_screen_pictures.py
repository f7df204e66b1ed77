"""Pictures for wide and narrow screens: they fit, and show what was laid, dug, brought."""

import pytest
from drain_figures import words

from geometry.survey.asdug import as_dug
from geometry.survey.reading import read_shots
from geometry.takeoff.deliveries import arrived
from geometry.takeoff.foam import board_layouts
from geometry.takeoff.tickets import read_tickets
from geometry.units import show_volume
from viz.carried import demo, demo_shots, examples
from viz.figures.arrived import arrived_figure
from viz.figures.boards.screen import laid_pictures
from viz.figures.survey.screen import map_pictures
from viz.job import job

# Widths, mm, and the noise of binary arithmetic.
WIDE, NARROW = 290.0 + 1e-6, 106.0 + 1e-6


@pytest.mark.parametrize("name", examples())
def test_boards_and_strips_fit_both_screens_and_every_piece_bears_its_number(name: str) -> None:
    layout = job(examples()[name].read_text(encoding="utf-8")).layout
    found = list(laid_pictures(layout))
    courses = [course for _, laid in board_layouts(layout) for course in laid]
    assert len(found) > len(courses) > 0
    for one in found:
        assert one.wide.box.width <= WIDE
        assert one.narrow.box.width <= NARROW
    for one, course in zip(found, courses, strict=False):
        for picture in (one.wide, one.narrow):
            assert {str(n + 1) for n in range(len(course.pieces))} <= set(words(picture))


def test_the_map_fits_both_screens_and_names_every_spot() -> None:
    layout = job(demo().read_text(encoding="utf-8")).layout
    dug = as_dug(layout, read_shots(demo_shots().read_bytes(), layout.design)).areas[0]
    wide, narrow = map_pictures(layout, dug)
    assert wide.box.width <= WIDE
    assert narrow.box.width <= NARROW
    spots = {f"H{n}" for n in range(1, len(dug.high.worst) + 1)}
    assert spots <= set(words(wide)) & set(words(narrow))


def test_what_came_stands_beside_what_is_needed() -> None:
    layout = job(demo().read_text(encoding="utf-8")).layout
    rows = arrived(layout, read_tickets("2026-04-02,stone-57,20 yd3,").tickets)
    picture = arrived_figure(rows, "ft-in", 106.0, 2.6)
    assert picture is not None
    assert picture.box.width <= NARROW
    said = words(picture)
    assert show_volume(rows[0].needed_m3, "ft-in") in said
    assert "20.00 yd³" in said
    assert "nothing" in said
    assert arrived_figure((), "ft-in", NARROW, 2.6) is None
