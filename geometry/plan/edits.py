"""Edits of outlines that may share walls: a corner moved, added or taken out, a side's length.

Outlines are tuples of corners, metres, in any order round; corner and side numbers count from 0,
side n runs from corner n to the next. A place two outlines share (within 1 mm) stays shared.

The rule of a typed length: the side's near corner stays, its far corner moves along the side. Every
wall that stands square to that move at a corner that moves goes with it, whole, in every area;
the walls at its other end grow or shrink. All other walls stay. So a right-angled outline stays
right-angled, and lengths typed round the house in turn stay as they were typed but for the last
two, which close the outline. Where an outline would cross itself so, all that lies beyond the
moved wall moves as well. A slanting next wall is held at its other end.
"""

from collections.abc import Callable, Sequence
from math import hypot

import numpy as np
import shapely

from geometry.errors import BedcourseError
from geometry.plan.outline import SAME_POINT_M, Point, crossing_sides, repeated_corners

Outline = tuple[Point, ...]
Outlines = tuple[Outline, ...]
FEWEST = 3
# A wall counts as square or straight on within 1 mm in 1 m.
SQUARE = 1e-3
Mover = Callable[[Point], Point]


class EditError(BedcourseError):
    """An edit an outline does not allow, in one sentence."""


def length_of(outline: Sequence[Point], side: int) -> float:
    """Return a side's length, metres."""
    (x, y), (to_x, to_y) = outline[side], outline[(side + 1) % len(outline)]
    return hypot(to_x - x, to_y - y)


def right_angled(outline: Sequence[Point]) -> bool:
    """Whether every corner is square, or runs straight on."""
    turns = [_turn(outline, n) for n in range(len(outline))]
    return all(min(abs(along), abs(across)) < SQUARE for along, across in turns)


def simple(outline: Sequence[Point]) -> bool:
    """Whether no two corners are one and no two sides cross or touch."""
    return repeated_corners(outline) is None and crossing_sides(outline) is None


def moved(outlines: Outlines, area: int, corner: int, to: Point) -> Outlines:
    """Return the outlines with one corner elsewhere, in every area that has it.

    A corner of another area that stands within a side that moves is put back onto that side.
    """
    before = outlines[area]
    after = _with(before, corner, to)
    sides = [(corner - 1) % len(before), corner]
    ends = [(_side(before, n), _side(after, n)) for n in sides]

    def follow(place: Point) -> Point:
        if _same(place, before[corner]):
            return to
        for was, now in ends:
            if _within(place, was) and not _within(place, now):
                return _nearest(place, now)
        return place

    return _each(outlines, follow)


def with_length(outlines: Outlines, area: int, side: int, length_m: float) -> Outlines:
    """Return the outlines with one side of exactly this length, by the rule above.

    Raises EditError for a length under 1 mm, or a side whose two corners are one.
    """
    before = outlines[area]
    start, end = _side(before, side)
    old = length_of(before, side)
    if length_m < SAME_POINT_M or old < SAME_POINT_M:
        raise EditError("a side needs a length; take its corner out instead")
    ahead = ((end[0] - start[0]) / old, (end[1] - start[1]) / old)
    far = _along(start, ahead, length_m)
    move = (far[0] - end[0], far[1] - end[1])
    going = _walls_that_go(outlines, end, ahead)
    found = _slid(outlines, move, lambda at: any(_within(at, wall) for wall in going))
    if simple(found[area]) or not simple(before) or not _all_square(outlines):
        return found
    edge = _measure(end, ahead)
    beyond = _slid(outlines, move, lambda at: _measure(at, ahead) > edge - SAME_POINT_M)
    return beyond if simple(beyond[area]) else found


def with_corner(outlines: Outlines, area: int, side: int, at: Point) -> tuple[Outlines, list[int]]:
    """Return the outlines with one corner more on a side, and its number in each area.

    It is added to every area whose side runs through the same place; -1 marks an area without.
    """
    found, numbers = [], []
    for number, outline in enumerate(outlines):
        own = side if number == area else _side_through(outline, at)
        taken = number != area and any(_same(at, corner) for corner in outline)
        place = -1 if own is None or taken else own + 1
        found.append(outline if place < 0 else (*outline[:place], at, *outline[place:]))
        numbers.append(place)
    return tuple(found), numbers


def without_corner(outlines: Outlines, area: int, corner: int) -> tuple[Outlines, list[int]]:
    """Return the outlines less one corner, and its number in each area that loses it, or -1.

    Another area loses it as well where both of its sides there are shared. Raises EditError for
    an outline of three corners.
    """
    before = outlines[area]
    if len(before) <= FEWEST:
        raise EditError("an outline needs three corners; move this one instead of taking it out")
    ends = {n: before[n % len(before)] for n in (corner - 1, corner + 1)}.values()
    found, numbers = [], []
    for number, outline in enumerate(outlines):
        place = corner if number == area else _loses(outline, before[corner], list(ends))
        found.append(outline if place < 0 else outline[:place] + outline[place + 1 :])
        numbers.append(place)
    return tuple(found), numbers


def _loses(outline: Outline, at: Point, ends: list[Point]) -> int:
    """Return which corner stands at a place between the same neighbours; -1 where none does."""
    for n, corner in enumerate(outline):
        if len(outline) > FEWEST and _same(corner, at):
            beside = (outline[n - 1], outline[(n + 1) % len(outline)])
            if all(any(_same(one, end) for one in beside) for end in ends):
                return n
    return -1


def _walls_that_go(outlines: Outlines, corner: Point, ahead: Point) -> list[tuple[Point, Point]]:
    """Return the corner and all walls square to a move that hang on it, in every area."""
    square = [
        wall
        for outline in outlines
        for wall in (_side(outline, n) for n in range(len(outline)))
        if _is_square(wall, ahead)
    ]
    going = [(corner, corner)]
    for wall in going:
        hung = [other for other in square if _touch(wall, other)]
        going += hung
        square = [other for other in square if other not in hung]
    return going


def _is_square(wall: tuple[Point, Point], ahead: Point) -> bool:
    (x, y), (to_x, to_y) = wall
    run = hypot(to_x - x, to_y - y)
    along = (to_x - x) * ahead[0] + (to_y - y) * ahead[1]
    return run > SAME_POINT_M and abs(along) < SQUARE * run


def _touch(one: tuple[Point, Point], two: tuple[Point, Point]) -> bool:
    return bool(shapely.LineString(one).distance(shapely.LineString(two)) < SAME_POINT_M)


def _slid(outlines: Outlines, move: Point, goes: Callable[[Point], bool]) -> Outlines:
    return _each(outlines, lambda at: (at[0] + move[0], at[1] + move[1]) if goes(at) else at)


def _all_square(outlines: Outlines) -> bool:
    return all(map(right_angled, outlines))


def _each(outlines: Outlines, follow: Mover) -> Outlines:
    return tuple(tuple(follow(place) for place in outline) for outline in outlines)


def _with(outline: Outline, corner: int, to: Point) -> Outline:
    return (*outline[:corner], to, *outline[corner + 1 :])


def _side(outline: Sequence[Point], side: int) -> tuple[Point, Point]:
    return outline[side], outline[(side + 1) % len(outline)]


def _side_through(outline: Outline, at: Point) -> int | None:
    found = (n for n in range(len(outline)) if _within(at, _side(outline, n)))
    return next(found, None)


def _within(at: Point, side: tuple[Point, Point]) -> bool:
    """Whether a place stands on a side, its ends counted."""
    return _same(at, _nearest(at, side))


def _nearest(at: Point, side: tuple[Point, Point]) -> Point:
    (x, y), (to_x, to_y) = side
    run_x, run_y = to_x - x, to_y - y
    square = run_x * run_x + run_y * run_y
    if square == 0.0:
        return x, y
    share = ((at[0] - x) * run_x + (at[1] - y) * run_y) / square
    share = min(max(share, 0.0), 1.0)
    return x + share * run_x, y + share * run_y


def _same(one: Point, two: Point) -> bool:
    return hypot(one[0] - two[0], one[1] - two[1]) < SAME_POINT_M


def _along(start: Point, ahead: Point, far: float) -> Point:
    return start[0] + far * ahead[0], start[1] + far * ahead[1]


def _measure(at: Point, ahead: Point) -> float:
    return at[0] * ahead[0] + at[1] * ahead[1]


def _turn(outline: Sequence[Point], corner: int) -> tuple[float, float]:
    """Return cosine and sine of the turn at a corner; (0, 0) where a side has no length."""
    here = np.asarray(outline[corner])
    before = here - np.asarray(outline[corner - 1])
    after = np.asarray(outline[(corner + 1) % len(outline)]) - here
    size = float(np.linalg.norm(before) * np.linalg.norm(after))
    if size == 0.0:
        return 0.0, 0.0
    cross = float(before[0] * after[1] - before[1] * after[0])
    return float(before @ after) / size, cross / size
