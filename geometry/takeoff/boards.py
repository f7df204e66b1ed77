"""Foam boards laid in running bond over a region, cut at its edges and openings."""

from collections.abc import Sequence
from dataclasses import dataclass
from functools import cached_property, lru_cache
from math import ceil

import numpy as np
import shapely
from numpy.typing import NDArray
from shapely import Polygon
from shapely.geometry.base import BaseGeometry

from geometry.plan.outline import polygons
from geometry.takeoff.aligned import Aligned
from geometry.takeoff.offcuts import Size, boards_of

SAME_M2 = 1e-9
_CRUMB_M2 = 1e-12
_SPIKE_M = 1e-6


@dataclass(frozen=True, eq=False)
class BoardPiece:
    """A board as it lies, or what is left of it at an edge.

    region: on the plan; parts of one board that a wall or a pier parts lie in one piece.
    row: from the start wall. whole: not cut. board: number of the board it is cut from.
    """

    region: BaseGeometry
    row: int
    whole: bool
    board: int


@dataclass(frozen=True, eq=False)
class BoardLayout:
    """A course of boards. width, length: of a whole board, metres. reuse: offcuts are laid."""

    region: BaseGeometry
    width: float
    length: float
    reuse: bool
    pieces: tuple[BoardPiece, ...]

    @property
    def whole(self) -> int:
        """Boards laid whole."""
        return sum(p.whole for p in self.pieces)

    @property
    def cut(self) -> int:
        """Places that take a cut board."""
        return len(self.pieces) - self.whole

    @property
    def boards(self) -> int:
        """Boards needed, as the layout uses offcuts or not."""
        return len({p.board for p in self.pieces})

    @property
    def without_reuse(self) -> int:
        """Boards needed if every place takes a board of its own."""
        return len(self.pieces)

    @property
    def least(self) -> int:
        """Boards that the bare area would take: no layout takes fewer."""
        return ceil(float(self.region.area) / (self.width * self.length) - SAME_M2)

    @cached_property
    def joints_m(self) -> float:
        """Length of all joints between pieces, metres: what is edge of a piece and not of all."""
        edges = sum(float(p.region.length) for p in self.pieces)
        return max(0.0, (edges - float(self.region.length)) / 2)

    @property
    def polygons(self) -> list[Polygon]:
        """Every piece's outlines, for a drawing."""
        return [polygon for piece in self.pieces for polygon in polygons(piece.region)]


@lru_cache(maxsize=16)
def lay_boards(
    region: BaseGeometry, width: float, length: float, reuse: bool = True, start: float = 0.0
) -> BoardLayout:
    """Lay boards over a region, along its longest side or across it, whichever takes fewer.

    start: share of a board's length by which the first row is shifted; every other row is
    shifted by half a board more. Of equals the one with fewer cuts, then along the side.
    """
    ways = [
        _laid(Aligned(region, across), (width, length), reuse, start) for across in (False, True)
    ]
    return min(ways, key=lambda way: (way.boards, way.cut))


def _laid(frame: Aligned, board: Size, reuse: bool, start: float) -> BoardLayout:
    cells, rows = _cells(frame.turned, board, start)
    shapely.prepare(frame.turned)
    met = shapely.intersects(frame.turned, cells)
    cells, rows = cells[met], rows[met]
    inside = shapely.contains_properly(frame.turned, cells)
    shares = cells.copy()
    shares[~inside] = shapely.intersection(cells[~inside], frame.turned)
    areas = shapely.area(shares)
    # A joint all but on a wall's line leaves a spike without width, which is no board.
    plain = shapely.set_precision(shares, _SPIKE_M)
    kept = shapely.area(plain) > _CRUMB_M2
    shares, rows, areas, plain = shares[kept], rows[kept], areas[kept], plain[kept]
    whole = areas > board[0] * board[1] - SAME_M2
    numbers = _numbers(plain, whole, board, reuse)
    placed = frame.back(shares)
    pieces = tuple(
        BoardPiece(shape, int(row), bool(uncut), number)
        for shape, row, uncut, number in zip(placed, rows, whole, numbers, strict=True)
    )
    return BoardLayout(frame.region, *board, reuse, pieces)


def _cells(
    region: BaseGeometry, board: Size, start: float
) -> tuple[NDArray[np.object_], NDArray[np.int64]]:
    """Return the boards of a running bond that cover a region's bounds, and their rows."""
    width, length = board
    x0, y0, x1, y1 = region.bounds
    rows = np.arange(max(1, ceil((y1 - y0) / width - SAME_M2)))
    columns = np.arange(ceil((x1 - x0) / length - SAME_M2) + 1)
    shift = ((start + 0.5 * (rows % 2)) % 1.0) * length
    left = x0 - shift[:, None] + columns[None] * length
    low = np.broadcast_to(y0 + rows[:, None] * width, left.shape)
    # Both edges of a row are computed alike in this row and the next: no gap, no overlap.
    right = x0 - shift[:, None] + (columns[None] + 1) * length
    high = np.broadcast_to(y0 + (rows[:, None] + 1) * width, left.shape)
    cells: NDArray[np.object_] = shapely.box(left, low, right, high)
    return cells.ravel(), np.repeat(rows, len(columns))


def _numbers(
    shares: NDArray[np.object_], whole: NDArray[np.bool_], board: Size, reuse: bool
) -> list[int]:
    """Return the board of each piece: whole ones first, then those the cut pieces come from."""
    count = int(whole.sum())
    cut = np.flatnonzero(~whole)
    found = _sizes(shares[cut])
    sizes = [(min(wide, board[0]), min(long, board[1])) for wide, long in found]
    sources = boards_of(sizes, board) if reuse else list(range(len(cut)))
    numbers = np.empty(len(shares), dtype=int)
    numbers[whole] = np.arange(count)
    numbers[cut] = count + np.asarray(sources, dtype=int)
    return [int(n) for n in numbers]


def _sizes(shares: NDArray[np.object_]) -> Sequence[Size]:
    bounds = shapely.bounds(shares).reshape(-1, 4)
    return [(float(y1 - y0), float(x1 - x0)) for x0, y0, x1, y1 in bounds]
