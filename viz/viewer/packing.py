"""Meshes in few bytes: whole numbers of a fine step, told as differences, deflated."""

import base64
import zlib
from collections.abc import Mapping, Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from geometry.solids.kept import Kept, content
from geometry.solids.kernel import Mesh
from geometry.solids.solid import Solid

# Steps along each axis of a part: of a 60 ft drain one is half a micrometre, and its pipe's wall
# is 3 mm, so that volumes stay within 1e-4.
STEPS = 2**25
# Shapes that differ by less than a nanometre are one shape.
GRID_M = 1e-9
# Bytes of packed shapes kept for designs to come; a house has about a hundred thousand.
ROOM = 10_000_000

Floats = NDArray[np.float64]
Ints = NDArray[np.int64]


@dataclass(frozen=True)
class Head:
    """A part's shape by its name, its counts, and per axis the origin and one step, metres."""

    shape: str
    vertices: int
    faces: int
    low: tuple[float, float, float]
    step: tuple[float, float, float]


@dataclass(frozen=True)
class Shape:
    """A mesh about its own lowest corner, packed: name, counts, steps in metres, base64 text."""

    name: str
    vertices: int
    faces: int
    step: tuple[float, float, float]
    text: str


_SHAPES = Kept[Shape](ROOM, lambda shape: len(shape.text))


def packed(solids: Sequence[Solid]) -> tuple[tuple[Head, ...], dict[str, str]]:
    """Return a head for each solid, and their shapes' texts (base64) by name."""
    heads, texts = [], {}
    for solid in solids:
        low = solid.vertices.min(axis=0)
        shape = _shape(solid, low)
        heads.append(Head(shape.name, shape.vertices, shape.faces, _three(low), shape.step))
        texts[shape.name] = shape.text
    return tuple(heads), texts


def unpacked(heads: Sequence[Head], texts: Mapping[str, str]) -> tuple[Mesh, ...]:
    """Return the meshes of packed solids, as the page reads them."""
    return tuple(_read_mesh(head, texts[head.shape]) for head in heads)


def _read_mesh(head: Head, text: str) -> Mesh:
    numbers = _read(zlib.decompress(base64.b64decode(text)))
    columns = numbers[: 3 * head.vertices].reshape(3, -1).cumsum(axis=1)
    points = np.array(head.low) + np.array(head.step) * columns.T
    return Mesh(points, numbers[3 * head.vertices :].cumsum().reshape(-1, 3))


def _shape(solid: Solid, low: Floats) -> Shape:
    """Return a solid's shape; one that has only moved since it was packed is known again."""
    grid = np.rint((solid.vertices - low) / GRID_M).astype(np.int64)
    key = content(grid, solid.faces)
    return _SHAPES.get(key, lambda: _packed(key.hex(), grid, solid.faces))


def _packed(name: str, grid: Ints, faces: Ints) -> Shape:
    step, whole = _quantised(GRID_M * grid.astype(np.float64))
    # A drilled pipe repeats itself, corner by corner and face by face: told as differences it
    # deflates to a few kilobytes, and to thirty times that once its even faces are joined.
    streams = [np.diff(column, prepend=0) for column in (*whole.T, faces.ravel())]
    data = zlib.compress(_varied(np.concatenate(streams)), 9)
    text = base64.b64encode(data).decode("ascii")
    return Shape(name, len(grid), len(faces), step, text)


def _quantised(vertices: Floats) -> tuple[tuple[float, float, float], Ints]:
    high = vertices.max(axis=0)
    step = np.where(high > 0, high / STEPS, 1.0)
    return _three(step), np.rint(vertices / step).astype(np.int64)


def _three(values: Floats) -> tuple[float, float, float]:
    x, y, z = values.tolist()
    return x, y, z


def _varied(numbers: Ints) -> bytes:
    """Return whole numbers as bytes of seven bits, the lowest first; the lowest bit is the sign."""
    left = np.where(numbers < 0, -2 * numbers - 1, 2 * numbers)
    groups = []
    while True:
        groups.append(left & 127)
        left = left >> 7
        if not left.any():
            break
    table = np.stack(groups, axis=1)
    last = np.where(table.any(axis=1), table.shape[1] - 1 - (table[:, ::-1] != 0).argmax(axis=1), 0)
    place = np.arange(table.shape[1])
    table += 128 * (place < last[:, None])
    return bytes(table[place <= last[:, None]].astype(np.uint8).tobytes())


def _read(data: bytes) -> Ints:
    raw = np.frombuffer(data, dtype=np.uint8).astype(np.int64)
    ends = np.flatnonzero(raw < 128)
    starts = np.concatenate(([0], ends[:-1] + 1))
    place = np.arange(len(raw)) - np.repeat(starts, ends - starts + 1)
    values = np.add.reduceat((raw & 127) << (7 * place), starts)
    return np.where(values % 2, -(values + 1) // 2, values // 2)
