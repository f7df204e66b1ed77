"""Rectangles cut out of boards, offcuts used again: first fit, the smallest that holds a piece."""

from collections.abc import Sequence
from typing import NamedTuple

SAME_M = 1e-9
# A strip of board narrower than this goes to waste (2 in).
KEPT_M = 0.05

Size = tuple[float, float]


class Offcut(NamedTuple):
    """A rectangle left of a board: its sides in metres and the board's number."""

    width: float
    length: float
    board: int


def boards_of(pieces: Sequence[Size], board: Size) -> list[int]:
    """Return for each piece the number of the board it is cut from, from 0.

    Pieces are cut in order of size, the largest first, each from the smallest offcut that holds
    it, turned if need be, else from a new board; every cut runs right through. A piece must fit
    a whole board. No width of the saw is lost.
    """
    left: list[Offcut] = []
    came_from = [0] * len(pieces)
    count = 0
    for number in sorted(range(len(pieces)), key=lambda n: -pieces[n][0] * pieces[n][1]):
        found = min(
            (o for o in left if fits(pieces[number], (o.width, o.length))),
            key=lambda o: o.width * o.length,
            default=None,
        )
        if found is None:
            found = Offcut(*board, count)
            count += 1
        else:
            left.remove(found)
        came_from[number] = found.board
        left += _rest(pieces[number], found)
    return came_from


def fits(piece: Size, hole: Size) -> bool:
    """Say whether a piece fits into a rectangle, either way round."""
    return _upright(piece, hole) or _upright(piece[::-1], hole)


def _upright(piece: Size, hole: Size) -> bool:
    return piece[0] <= hole[0] + SAME_M and piece[1] <= hole[1] + SAME_M


def _rest(piece: Size, hole: Offcut) -> list[Offcut]:
    """Return the two offcuts of the cut that leaves the larger one."""
    ways = []
    for wide, long in (piece, piece[::-1]):
        if _upright((wide, long), (hole.width, hole.length)):
            beside, above = hole.width - wide, hole.length - long
            ways += [
                ((beside, hole.length), (wide, above)),
                ((beside, long), (hole.width, above)),
            ]
    best = max(ways, key=lambda pair: max(a * b for a, b in pair))
    return [Offcut(a, b, hole.board) for a, b in best if min(a, b) >= KEPT_M]
