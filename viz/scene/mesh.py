"""Arithmetic on triangle meshes: what lies behind a plane, and which edges to ink."""

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

Array = NDArray[np.float64]
Index = NDArray[np.int64]

SHARP = float(np.cos(np.radians(40)))  # less than this bend is a facet of a round thing
FLAT = float(np.cos(np.radians(2)))


@dataclass(frozen=True, eq=False)
class Plane:
    """A vertical plane; what lies on the side its normal points to is kept."""

    origin: Array
    normal: Array

    def ahead(self, points: Array) -> Array:
        """Distance of (n, 3) points behind the cut, metres; a hair is taken for nothing."""
        away = (points - self.origin) @ self.normal
        return np.where(np.abs(away) < 1e-9, 0.0, away)


def clipped(vertices: Array, faces: Index, plane: Plane) -> tuple[Array, Index]:
    """The surface behind the plane, left open at the plane. Same shapes as given."""
    away = plane.ahead(vertices)
    kept = (away >= 0)[faces]
    count = kept.sum(axis=1)
    one = _turned(faces[count == 1], kept[count == 1].argmax(axis=1))
    two = _turned(faces[count == 2], (~kept[count == 2]).argmax(axis=1))
    new = [
        _crossing(vertices, away, tri[:, 0], tri[:, other])
        for tri in (one, two)
        for other in (1, 2)
    ]
    ids = np.split(np.arange(2 * len(one) + 2 * len(two)) + len(vertices), _ends(new))
    pieces = [
        faces[count == 3],
        np.column_stack([one[:, 0], ids[0], ids[1]]),
        np.column_stack([ids[2], two[:, 1], two[:, 2]]),
        np.column_stack([ids[2], two[:, 2], ids[3]]),
    ]
    return np.vstack([vertices, *new]), np.vstack(pieces)


def clipped_lines(starts: Array, ends: Array, plane: Plane) -> tuple[Array, Array]:
    """The pieces behind the plane of (n, 3) segments, metres."""
    first, last = plane.ahead(starts), plane.ahead(ends)
    seen = (first >= 0) | (last >= 0)
    starts, ends, first, last = starts[seen], ends[seen], first[seen], last[seen]
    span = np.where(first == last, 1.0, first - last)
    cross = starts + (first / span)[:, None] * (ends - starts)
    return np.where((first < 0)[:, None], cross, starts), np.where((last < 0)[:, None], cross, ends)


def inked_edges(vertices: Array, faces: Index, forward: Array) -> tuple[Array, Array]:
    """Sharp edges and outlines seen along `forward`: (n, 3) starts and ends, metres."""
    corners = vertices[faces]
    normals = np.cross(corners[:, 1] - corners[:, 0], corners[:, 2] - corners[:, 0])
    normals /= np.maximum(np.linalg.norm(normals, axis=1, keepdims=True), 1e-30)
    edges = np.sort(faces[:, [0, 1, 1, 2, 2, 0]].reshape(-1, 2), axis=1)
    order = np.lexsort((edges[:, 1], edges[:, 0]))
    edges, owner = edges[order], order // 3
    twin = np.flatnonzero((edges[:-1] == edges[1:]).all(axis=1))
    one, two = normals[owner[twin]], normals[owner[twin + 1]]
    bend = (one * two).sum(axis=1)
    turns_away = ((one @ forward) * (two @ forward) < 0) & (bend < FLAT)
    ink = edges[twin][(bend < SHARP) | turns_away]
    return vertices[ink[:, 0]], vertices[ink[:, 1]]


def _turned(faces: Index, first: Index) -> Index:
    """Each triangle's corners, cycled so that the given one comes first."""
    steps = (first[:, None] + np.arange(3)) % 3
    return np.take_along_axis(faces, steps, axis=1)


def _crossing(vertices: Array, away: Array, start: Index, end: Index) -> Array:
    """Where the edges from start to end meet the plane."""
    share = away[start] / (away[start] - away[end])
    return np.asarray(vertices[start] + share[:, None] * (vertices[end] - vertices[start]))


def _ends(pieces: list[Array]) -> Index:
    """Where each piece but the last ends when they are laid end to end."""
    return np.cumsum([len(piece) for piece in pieces])[:-1]
