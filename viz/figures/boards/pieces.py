"""The pieces of a course of boards in the order they are laid, and the boards they are cut from."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

import numpy as np
import shapely
from numpy.typing import NDArray
from shapely.geometry.base import BaseGeometry

from geometry.takeoff.aligned import Aligned
from geometry.takeoff.boards import BoardLayout

# Sizes nearer than this are one size; a piece that fills less of its rectangle is notched.
_SAME_M = 1e-5
_GRID_M = 1e-6
_NOTCH_M2 = 1e-4


@dataclass(frozen=True, eq=False)
class Piece:
    """One place a board goes to.

    number: in the order of laying, from 1. region: on the plan. board: letters of the board it is
    cut from; empty for a whole one. short, long: sides of the rectangle it is cut out of, metres.
    """

    number: int
    region: BaseGeometry
    board: str
    short: float
    long: float
    notched: bool


def pieces(course: BoardLayout) -> tuple[Piece, ...]:
    """Return the pieces row by row from the start wall, along each row."""
    regions = _clean(course)
    boxes = _boxes(course, regions)
    order = sorted(
        range(len(course.pieces)), key=lambda n: (course.pieces[n].row, round(boxes[n][0], 6))
    )
    letters = _letters([course.pieces[n].board for n in order if not course.pieces[n].whole])
    found = []
    for number, place in enumerate(order, 1):
        piece, (x0, y0, x1, y1) = course.pieces[place], boxes[place]
        short, long = sorted((float(x1 - x0), float(y1 - y0)))
        notched = float(regions[place].area) < short * long - _NOTCH_M2
        board = "" if piece.whole else letters[piece.board]
        found.append(Piece(number, regions[place], board, short, long, notched))
    return tuple(found)


def _clean(course: BoardLayout) -> NDArray[np.object_]:
    """Return the pieces' regions without slivers where a joint lies along a wall."""
    regions = np.array([piece.region for piece in course.pieces], dtype=object)
    cleaned: NDArray[np.object_] = shapely.set_precision(regions, _GRID_M)
    return cleaned


def _boxes(course: BoardLayout, regions: NDArray[np.object_]) -> NDArray[np.float64]:
    """Return (n, 4) bounds of the pieces in the frame whose rows lie level."""
    for across in (False, True):
        bounds = shapely.bounds(_turned(regions, Aligned(course.region, across)))
        if (bounds[:, 3] - bounds[:, 1]).max() <= course.width + _SAME_M:
            break
    found: NDArray[np.float64] = bounds
    return found


def _turned(regions: NDArray[np.object_], frame: Aligned) -> NDArray[np.object_]:
    axes = frame.back(np.array([shapely.Point(1, 0), shapely.Point(0, 1)], dtype=object))
    turn = np.array([(p.x, p.y) for p in axes])
    turned: NDArray[np.object_] = shapely.transform(regions, lambda xy: xy @ turn.T)
    return turned


def _letters(boards: Sequence[int]) -> dict[int, str]:
    """Return letters for boards, A for the one that is cut first."""
    return {board: _letter(n) for n, board in enumerate(dict.fromkeys(boards))}


def _letter(number: int) -> str:
    more, last = divmod(number, 26)
    return (_letter(more - 1) if more else "") + chr(ord("A") + last)


def cut_boards(found: Sequence[Piece]) -> Iterator[tuple[str, tuple[Piece, ...]]]:
    """Yield each board that is cut, by its letters, with its pieces, the longest first."""
    for board in dict.fromkeys(piece.board for piece in found if piece.board):
        mine = [piece for piece in found if piece.board == board]
        yield board, tuple(sorted(mine, key=lambda p: (-p.long, -p.short, p.number)))
