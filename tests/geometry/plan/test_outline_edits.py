"""Edits of outlines that share walls: what holds of any right-angled or slanting outline."""

from math import hypot

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st
from shapely import Polygon

from geometry.plan import edits
from geometry.plan.edits import EditError, Outline, length_of, right_angled, simple
from tests.dice import Drawn
from tests.whole import outlines as shapes

FOOT = 0.3048
# Feet, invented: an L, and a garage that stands on two of its walls.
HOUSE: Outline = ((0, 0), (42, 0), (42, 18), (26, 18), (26, 32), (0, 32))
GARAGE: Outline = ((26, 18), (42, 18), (42, 42), (26, 42), (26, 32))
BOTH = (HOUSE, GARAGE)


@st.composite
def houses(draw: st.DrawFn) -> Outline:
    """Return a rectangle, L, T or U with its walls along x and y, in either order."""
    make = draw(st.sampled_from((shapes.rectangle, shapes.ell, shapes.tee, shapes.you)))
    corners = tuple((float(x), float(y)) for x, y in make(Drawn(draw)))
    return corners[::-1] if draw(st.booleans()) else corners


@st.composite
def sides(draw: st.DrawFn) -> tuple[Outline, int, float]:
    outline = draw(houses())
    return outline, draw(st.integers(0, len(outline) - 1)), draw(st.floats(0.5, 30))


@given(sides())
def test_a_typed_side_is_exact_and_its_near_corner_stays(case: tuple[Outline, int, float]) -> None:
    outline, side, size = case
    (found,) = edits.with_length((outline,), 0, side, size)
    assert length_of(found, side) == pytest.approx(size, abs=1e-9)
    assert found[side] == outline[side]
    assert right_angled(found)


@given(sides())
def test_a_longer_side_keeps_the_outline_simple(case: tuple[Outline, int, float]) -> None:
    outline, side, size = case
    (found,) = edits.with_length((outline,), 0, side, length_of(outline, side) + size)
    assert simple(found)


@given(sides())
def test_only_the_wall_after_the_next_gives_or_takes(case: tuple[Outline, int, float]) -> None:
    outline, side, size = case
    (found,) = edits.with_length((outline,), 0, side, size)
    count = len(outline)
    stayed = sum(a == b for a, b in zip(found, outline, strict=True))
    # Else more had to move for the outline to stay simple, or it cannot.
    assume(stayed == count - 2 and simple(found))
    changed = {side, (side + 2) % count}
    for n in set(range(count)) - changed:
        assert length_of(found, n) == pytest.approx(length_of(outline, n), abs=1e-9)
    grown = [_run(found, n) - _run(outline, n) for n in changed]
    assert abs(sum(grown)) < 1e-9


def _run(outline: Outline, side: int) -> complex:
    return complex(*outline[(side + 1) % len(outline)]) - complex(*outline[side])


def test_lengths_typed_round_the_house_in_turn_stay() -> None:
    rough: Outline = ((0, 0), (30, 0), (30, 9), (20, 9), (20, 30), (0, 30))
    outlines: edits.Outlines = (rough,)
    for side, size in enumerate((42, 18, 16, 14)):
        outlines = edits.with_length(outlines, 0, side, size)
    assert outlines == (HOUSE,)


def test_a_wall_that_two_areas_share_moves_in_both() -> None:
    house, garage = edits.with_length(BOTH, 0, 0, 45.0)
    assert house[1:3] == ((45, 0), (45, 18))
    # The garage's wall hangs on that corner and goes with it, so it stays square.
    assert garage[1:3] == ((45, 18), (45, 42))
    house, garage = edits.with_length(BOTH, 0, 1, 20.0)
    assert house[2:4] == ((42, 20), (26, 20))
    assert garage[:2] == ((26, 20), (42, 20))
    assert all(map(right_angled, (house, garage)))


@given(sides(), st.integers(-200, 200), st.integers(-200, 200))
def test_a_moved_corner_moves_wherever_it_is_shared(
    case: tuple[Outline, int, float], dx: int, dy: int
) -> None:
    outline, corner, _ = case
    start, end = outline[corner], outline[(corner + 1) % len(outline)]
    near = (start[0] + 4e-4, start[1])
    other = (near, end, (end[0] + 50, end[1] + 70))
    to = (start[0] + dx / 100, start[1] + dy / 100)
    found, beside = edits.moved((outline, other), 0, corner, to)
    assert found[corner] == beside[0] == to
    assert [c for n, c in enumerate(found) if n != corner] == [
        c for n, c in enumerate(outline) if n != corner
    ]


def test_a_corner_within_a_wall_that_turns_stays_on_it() -> None:
    porch = ((12.0, 0.0), (20.0, 0.0), (20.0, -8.0), (12.0, -8.0))
    house, porch = edits.moved((HOUSE, porch), 0, 1, (42.0, 4.2))
    for x, y in porch[:2]:
        assert x / 10 == pytest.approx(y)
    assert house[1] == (42, 4.2)


def test_a_corner_is_added_to_all_that_share_the_wall_and_taken_out_of_them() -> None:
    more, numbers = edits.with_corner(BOTH, 0, 2, (34.0, 18.0))
    assert numbers == [3, 1]
    assert more[0][3] == more[1][1] == (34, 18)
    less, numbers = edits.without_corner(more, 0, 3)
    assert (less, numbers) == (BOTH, [3, 1])
    less, numbers = edits.without_corner(BOTH, 0, 0)
    assert numbers == [0, -1]
    assert less == (HOUSE[1:], GARAGE)


def test_a_corner_that_another_area_has_is_not_added_to_it_again() -> None:
    more, _ = edits.with_corner(BOTH, 0, 2, (34.0, 18.0))
    assert edits.with_corner((HOUSE, more[1]), 0, 2, (34.0, 18.0)) == (more, [3, -1])


@pytest.mark.parametrize(("corner", "beside"), [(2, -1), (3, 0), (4, -1)])
def test_another_area_loses_a_corner_where_both_its_walls_are_shared(
    corner: int, beside: int
) -> None:
    """Of the three corners that both have, the one between two shared walls."""
    less, numbers = edits.without_corner(BOTH, 0, corner)
    assert numbers == [corner, beside]
    assert [len(outline) for outline in less] == [5, 5 if beside < 0 else 4]
    # An outline of three corners keeps them.
    slip = (HOUSE[2], HOUSE[3], HOUSE[4])
    assert edits.without_corner((HOUSE, slip), 0, 3)[1] == [3, -1]


def test_a_slanting_next_wall_is_held_at_its_other_end() -> None:
    slant: Outline = ((0, 0), (10, 0), (14, 8), (0, 8))
    (found,) = edits.with_length((slant,), 0, 0, 11.0)
    assert found == ((0, 0), (11, 0), (14, 8), (0, 8))
    (found,) = edits.with_length((slant,), 0, 1, 2.0)
    assert hypot(found[2][0] - 10, found[2][1]) == pytest.approx(2.0)


def test_what_cannot_be_is_refused_in_a_sentence() -> None:
    with pytest.raises(EditError, match="three corners"):
        edits.without_corner((((0, 0), (9, 0), (0, 9)),), 0, 1)
    with pytest.raises(EditError, match="needs a length"):
        edits.with_length(BOTH, 0, 0, 0.0)


@pytest.mark.parametrize("more", [-3.0, 5.0])
@pytest.mark.parametrize("area", [0, 1])
def test_areas_that_share_walls_still_do_whatever_side_is_typed(area: int, more: float) -> None:
    for side in range(len(BOTH[area])):
        found = edits.with_length(BOTH, area, side, length_of(BOTH[area], side) + more)
        assert all(map(right_angled, found))
        one, two = map(Polygon, found)
        assert one.intersection(two).area == pytest.approx(0.0, abs=1e-9)
        assert one.exterior.intersection(two.exterior).length > 10


def test_where_a_wall_would_run_through_another_all_beyond_it_moves_as_well() -> None:
    """A yard 10 ft wide, open to the north, made 25 ft wide: its west wing goes 15 ft west."""
    yard: Outline = ((0, 0), (30, 0), (30, 20), (20, 20), (20, 10), (10, 10), (10, 20), (0, 20))
    (found,) = edits.with_length((yard,), 0, 4, 25.0)
    assert found == (
        (-15, 0), (30, 0), (30, 20), (20, 20), (20, 10), (-5, 10), (-5, 20), (-15, 20),
    )  # fmt: skip
    # Made 15 ft wide the wing only narrows.
    (found,) = edits.with_length((yard,), 0, 4, 15.0)
    assert found == (*yard[:5], (5, 10), (5, 20), (0, 20))
    # An outline that slants anywhere is left as it was typed.
    slant = (*yard[:7], (-1, 20))
    (found,) = edits.with_length((slant,), 0, 4, 25.0)
    assert found == (*slant[:5], (-5, 10), (-5, 20), (-1, 20))


@pytest.mark.parametrize(("run", "square"), [(0.009, True), (0.011, False)])
def test_a_corner_is_square_within_a_millimetre_in_a_metre(run: float, square: bool) -> None:
    """A wall of 10 m that runs 9 or 11 mm off square."""
    outline = ((0.0, 0.0), (8.0, 0.0), (8.0 + run, 10.0), (run, 10.0))
    assert right_angled(outline) is square
    straight_on = (*outline[:1], (4.0, 0.0), *outline[1:])
    assert right_angled(straight_on) is square
