"""Boards of a plain room, worked by hand: courses, spare ones, strips of the edge board."""

from math import ceil

import pytest

from geometry.designfile import read_design
from geometry.layout.lay import lay_out
from geometry.parts.usual import GIVEN
from geometry.takeoff.foam import board_layouts, courses, foam_rows
from geometry.units import FOOT, INCH

# Invented: 24 ft by 16 ft outside, 8 in walls; inside 22'-8" by 14'-8", 74'-8" round.
TEXT = """
[project]
name = "Foam (invented)"
[wall]
thickness = "8 in"
height = "8 ft"
[floor]
tie = "foam bottom at TOF"
edge_board = { material = "xps-iv", thickness = "1 in" }
layer = [
    { name = "stone", material = "stone-57", thickness = "4 in", role = "base" },
    { name = "foam", material = "xps-iv", thickness = "FOAM", role = "insulation" },
    { name = "slab", material = "concrete", thickness = "4 in", role = "slab" },
]
[order.board]
width = "4 ft"
length = "8 ft"
spare = "10 %"
[[area]]
name = "room"
corners = ["0, 0", "24 ft, 0", "24 ft, 16 ft", "0, 16 ft"]
"""
INSIDE_M2 = (22 * FOOT + 8 * INCH) * (14 * FOOT + 8 * INCH)


def rows(foam):
    return {row.item: row for row in foam_rows(lay_out(read_design(TEXT.replace("FOAM", foam))))}


def needed(row):
    """Boards laid, as the row's note says; their offcuts are used."""
    return int(row.note.split(" boards with offcuts used")[0].rsplit(" ", 1)[-1])


def test_boards_cover_the_room_and_spare_ones_are_added():
    row = rows("2 in")["Foam"]
    # The edge board stands on the foam: the foam covers the whole room.
    assert row.in_place == pytest.approx(INSIDE_M2)
    least = ceil(INSIDE_M2 / (32 * FOOT**2))
    assert least == 11
    assert least <= needed(row) <= 16
    assert row.count == ceil(needed(row) * 1.1)
    assert row.to_buy == pytest.approx(row.count * 32 * FOOT**2)
    assert "courses" not in row.note
    assert f"{least} by area alone" in row.note


def test_thick_foam_is_laid_in_courses_and_both_are_counted():
    one, two = rows("3 in")["Foam"], rows("7 in")["Foam"]
    assert "2 courses" in two.note
    assert "in a course" in two.note
    assert "22 by area alone" in two.note
    assert needed(two) >= 2 * 11
    assert two.in_place == pytest.approx(one.in_place)


def test_courses_are_the_fewest_that_make_a_thickness():
    sold = (1 * INCH, 2 * INCH, 3 * INCH, 4 * INCH)
    assert courses(3 * INCH, sold) == (3 * INCH,)
    assert courses(7 * INCH, sold) == (4 * INCH, 3 * INCH)
    assert courses(2.7 * INCH, sold) == (2.7 * INCH,)


def test_edge_strips_are_ripped_from_boards():
    """4 in high: 12 strips from a board of 4 ft. 74'-8" of wall want ten strips of 8 ft."""
    row = rows("2 in")["Edge board"]
    assert row.in_place == pytest.approx(74 * FOOT + 8 * INCH)
    strips = int(row.note.split()[0])
    assert 10 <= strips <= 12
    assert row.note == f"{strips} strips, 12 from a board"
    assert row.to_buy == pytest.approx(strips * 8 * FOOT)
    assert row.count == ceil(1 * 1.1)


def test_a_thickness_nobody_sells_is_told():
    assert "no board known to be sold" in rows("2 3/4 in")["Foam"].note
    assert "no board known to be sold" not in rows("2 in")["Foam"].note


def test_every_other_course_is_shifted_and_the_third_lies_as_the_first():
    laid_out = lay_out(read_design(TEXT.replace("FOAM", "12 in")))
    ((_, courses_laid),) = board_layouts(laid_out)
    first, second, third = courses_laid

    def bounds(course):
        return sorted(piece.region.bounds for piece in course.pieces)

    assert bounds(third) == bounds(first)
    assert bounds(second) != bounds(first)


def test_a_size_given_is_told_apart_from_the_one_printed():
    given = {f.name: f for f in rows("2 in")["Foam"].factors}
    assert (given["board width"].source, given["board length"].source) == (GIVEN, GIVEN)
    plain = TEXT.replace("FOAM", "2 in").replace('width = "4 ft"\nlength = "8 ft"\n', "")
    assert plain != TEXT.replace("FOAM", "2 in")
    (foam, *_) = foam_rows(lay_out(read_design(plain)))
    printed = {f.name: f for f in foam.factors}
    assert GIVEN not in {printed["board width"].source, printed["board length"].source}
