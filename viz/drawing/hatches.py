"""Hatches, made at the scale of the paper: the same on every run, clipped exactly to the area.

A pattern is anchored to the corner of the sheet, not to the area, so neighbouring areas of one
material run through.
"""

from collections.abc import Callable
from dataclasses import dataclass
from itertools import pairwise
from typing import TypeAlias

import numpy as np
import shapely
from numpy.typing import NDArray

from viz.drawing.marks import Area, Hatch, Point, Strokes
from viz.style.lines import DOT, HATCH, THIN
from viz.style.materials import HatchName

Lines: TypeAlias = NDArray[np.float64]

# Squares in which an area is looked for before strokes are made, and how far a stroke reaches
# from the middle of its cell besides what the cell lets it wander, mm.
_SQUARE = 6.0
_STROKE = 1.7
# Of fewer cells than this all strokes are made: looking first would not pay.
_FEW = 400


@dataclass(frozen=True)
class Pattern:
    """One set of strokes. make: area -> (n, k, 2) float, mm. whole: drop what an edge cuts.

    The strokes made cover the area and may reach beyond it.
    """

    make: Callable[[Area], Lines]
    weight: float = HATCH
    whole: bool = False


def hatch_strokes(hatch: Hatch) -> tuple[Strokes, ...]:
    """Return the strokes of a hatch, clipped to its area."""
    if hatch.shape.is_empty:
        return ()
    area = _own(hatch.shape)
    return tuple(
        Strokes(clipped(pattern.make(area), area, pattern.whole),
                pattern.weight, hatch.colour, hatch.layer)
        for pattern in PATTERNS[hatch.name]
    )  # fmt: skip


def _own(shape: Area) -> Area:
    """Return a prepared copy: GEOS crashes where two threads ask one prepared area at once."""
    copied: Area = shapely.from_wkb(shapely.to_wkb(shape))
    shapely.prepare(copied)
    return copied


def clipped(lines: Lines, shape: Area, whole: bool = False) -> tuple[tuple[Point, ...], ...]:
    """Return the parts of (n, k, 2) polylines that lie inside the area."""
    if not len(lines) or shape.is_empty:
        return ()
    strings = shapely.linestrings(lines)
    inside = shapely.contains_properly(shape, strings)
    kept = _split(lines[inside].reshape(-1, 2), np.full(inside.sum(), lines.shape[1]))
    if whole:
        return kept
    edge = strings[~inside]
    edge = edge[shapely.intersects(shape, edge)]
    parts = shapely.get_parts(shapely.intersection(edge, shape))
    parts = parts[(shapely.get_type_id(parts) == _STRING) & (shapely.length(parts) > 0)]
    return kept + _split(shapely.get_coordinates(parts), shapely.get_num_coordinates(parts))


_STRING = shapely.GeometryType.LINESTRING.value


def _split(points: Lines, counts: NDArray[np.int_]) -> tuple[tuple[Point, ...], ...]:
    """Return (n, 2) points as polylines of so many points each."""
    spots = tuple(zip(points[:, 0].tolist(), points[:, 1].tolist(), strict=True))
    ends = np.cumsum(counts).tolist()
    return tuple(spots[start:end] for start, end in pairwise((0, *ends)))


def _cells(shape: Area, across: float, up: float) -> tuple[Lines, Lines]:
    """Return the column and row numbers of all cells whose strokes may touch the area."""
    left, low, right, high = shape.bounds
    columns = np.arange(np.floor(left / across) - 1, np.ceil(right / across) + 2)
    rows = np.arange(np.floor(low / up) - 1, np.ceil(high / up) + 2)
    column, row = (spread.ravel() for spread in np.meshgrid(columns, rows))
    if len(column) < _FEW:
        return column, row
    near = _near(shape, column, row, (across, up))
    return column[near], row[near]


def _near(shape: Area, column: Lines, row: Lines, size: Point) -> NDArray[np.bool_]:
    """Tell which cells may touch the area, by the squares of paper that the area touches."""
    left, low, right, high = shape.bounds
    wide, tall = (int(span // _SQUARE) + 1 for span in (right - left, high - low))
    x, y = np.meshgrid(left + _SQUARE * np.arange(wide), low + _SQUARE * np.arange(tall))
    # In every second row cells stand half a cell aside: 0.75 is the mean of both.
    across, up = 0.75 * size[0] + _STROKE, 0.5 * size[1] + _STROKE
    touched = shapely.intersects(
        shape, shapely.box(x - across, y - up, x + _SQUARE + across, y + _SQUARE + up)
    )
    places = ((column + 0.75) * size[0] - left, (row + 0.5) * size[1] - low)
    i, j = (
        np.clip(place // _SQUARE, 0, count - 1).astype(np.int_)
        for place, count in zip(places, (wide, tall), strict=True)
    )
    return np.asarray(touched[j, i], dtype=np.bool_)


def _chance(column: Lines, row: Lines, salt: int) -> Lines:
    """Return a number from 0 to 1 for each cell, scattered but always the same for the cell."""
    seed = (column.astype(np.int64) * 374761393 + row.astype(np.int64) * 668265263
            + salt * 2246822519) & 0xFFFFFFFF  # fmt: skip
    seed = ((seed ^ (seed >> 15)) * 2246822519) & 0xFFFFFFFF
    seed = ((seed ^ (seed >> 13)) * 3266489917) & 0xFFFFFFFF
    return np.asarray((seed ^ (seed >> 16)) / 2**32, dtype=np.float64)


def _scattered(shape: Area, across: float, up: float, loose: float) -> tuple[Lines, Lines, Lines]:
    """Return column, row and the (n, 2) middles of cells, each moved within a share of its cell."""
    column, row = _cells(shape, across, up)
    x = (column + 0.5 + 0.5 * (row % 2) + loose * (_chance(column, row, 1) - 0.5)) * across
    y = (row + 0.5 + loose * (_chance(column, row, 2) - 0.5)) * up
    return column, row, np.stack([x, y], axis=-1)


def _dashes(middles: Lines, half: float) -> Lines:
    """Return level strokes about their middles; with a round pen a very short one is a dot."""
    reach = np.array([half, 0.0])
    return np.stack([middles - reach, middles + reach], axis=1)


def _dots(across: float, loose: float) -> Callable[[Area], Lines]:
    def make(shape: Area) -> Lines:
        _, _, middles = _scattered(shape, across, across, loose)
        return _dashes(middles, 0.02)

    return make


def _triangles(shape: Area) -> Lines:
    column, row, middles = _scattered(shape, 5.2, 4.4, 0.75)
    size = 0.55 + 0.3 * _chance(column, row, 3)
    turn = 2 * np.pi * _chance(column, row, 4)
    corners = np.arange(4) * 2 * np.pi / 3
    return _around(middles, size, size, turn, corners)


def _pebbles(shape: Area) -> Lines:
    column, row, middles = _scattered(shape, 2.75, 1.85, 0.22)
    long = 1.0 + 0.28 * _chance(column, row, 3)
    short = 0.62 + 0.2 * _chance(column, row, 4)
    turn = 0.7 * (_chance(column, row, 5) - 0.5)
    return _around(middles, long, short, turn, np.linspace(0, 2 * np.pi, 12))


def _around(middles: Lines, long: Lines, short: Lines, turn: Lines, angles: Lines) -> Lines:
    """Return closed outlines: points at `angles` of ellipses with these half axes and turns."""
    x = long[:, None] * np.cos(angles)
    y = short[:, None] * np.sin(angles)
    cos, sin = np.cos(turn)[:, None], np.sin(turn)[:, None]
    return middles[:, None, :] + np.stack([x * cos - y * sin, x * sin + y * cos], axis=-1)


def _diagonals(spacing: float, rising: bool) -> Callable[[Area], Lines]:
    """Return lines at 45 degrees, `spacing` mm apart."""

    def make(shape: Area) -> Lines:
        left, low, right, high = shape.bounds
        way = 1.0 if rising else -1.0
        step = spacing * np.sqrt(2)
        ends = sorted((low - way * left, high - way * right, low - way * right, high - way * left))
        offset = np.arange(np.floor(ends[0] / step), np.ceil(ends[-1] / step) + 1) * step
        xs = np.broadcast_to(np.array([left - 1, right + 1]), (len(offset), 2))
        return np.stack([xs, way * xs + offset[:, None]], axis=-1)

    return make


def _bundles(shape: Area) -> Lines:
    """Return threes of strokes at 45 degrees, leaning to and fro like a chequerboard."""
    size = 5.6
    column, row = _cells(shape, size, size)
    middle = np.stack([(column + 0.5) * size, (row + 0.5) * size], axis=-1)
    way = np.where((column + row) % 2 == 0, 1.0, -1.0)
    strokes = []
    for aside in (-0.95, 0.0, 0.95):
        along = np.stack([np.ones_like(way), way], axis=-1) * 1.55
        beside = np.stack([np.ones_like(way), -way], axis=-1) * aside
        strokes.append(np.stack([middle + beside - along, middle + beside + along], axis=1))
    return np.concatenate(strokes)


def _sparse(shape: Area) -> Lines:
    column, row, middles = _scattered(shape, 6.4, 4.6, 0.5)
    turn = np.pi * _chance(column, row, 3)
    half = 0.9 + 0.5 * _chance(column, row, 4)
    way = np.stack([half * np.cos(turn), half * np.sin(turn)], axis=-1)
    return np.stack([middles - way, middles + way], axis=1)


def _upright(shape: Area) -> Lines:
    column, row, middles = _scattered(shape, 1.5, 2.6, 0.4)
    half = 0.45 + 0.45 * _chance(column, row, 3)
    way = np.stack([np.zeros_like(half), half], axis=-1)
    return np.stack([middles - way, middles + way], axis=1)


def _level(shape: Area) -> Lines:
    _, _, middles = _scattered(shape, 5.0, 1.6, 0.3)
    return _dashes(middles, 1.6)


PATTERNS: dict[HatchName, tuple[Pattern, ...]] = {
    "concrete": (Pattern(_dots(1.75, 0.9), DOT), Pattern(_triangles, THIN, whole=True)),
    "stone": (Pattern(_pebbles, THIN),),
    "sand": (Pattern(_dots(0.85, 0.7), DOT),),
    "cross": (Pattern(_diagonals(2.1, rising=True)), Pattern(_diagonals(2.1, rising=False))),
    "earth": (Pattern(_bundles, THIN),),
    "backfill": (Pattern(_sparse, THIN), Pattern(_dots(4.3, 0.9), DOT)),
    "topsoil": (Pattern(_upright, THIN),),
    "diagonal": (Pattern(_diagonals(0.9, rising=True)),),
    "steel": (Pattern(_diagonals(0.5, rising=True), DOT),),
    "dashes": (Pattern(_diagonals(1.4, rising=False), DOT),),
    "water": (Pattern(_level),),
    "solid": (),
    "blank": (),
}
