"""Meshes in few bytes: whole numbers of a fine step, told as differences, deflated."""

import base64
import zlib
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from geometry.solids.kernel import Mesh, manifold, mesh_of
from geometry.solids.solid import Solid

# Steps along each axis of a part: of a 60 ft drain one is half a micrometre, and its pipe's wall
# is 3 mm, so that volumes stay within 1e-4.
STEPS = 2**25
# A drilled pipe has many faces in one plane; joined to larger ones they are the same body.
MANY_FACES = 5000

Floats = NDArray[np.float64]
Ints = NDArray[np.int64]


@dataclass(frozen=True)
class Head:
    """How a part lies in the stream: counts, and per axis the origin and one step, metres."""

    vertices: int
    faces: int
    low: tuple[float, float, float]
    step: tuple[float, float, float]


def packed(solids: Sequence[Solid]) -> tuple[tuple[Head, ...], str]:
    """Return a head for each solid, and all of them as one text (base64)."""
    heads, streams = [], []
    for solid in solids:
        mesh = lighter(Mesh(solid.vertices, solid.faces))
        head, whole = _quantised(mesh)
        heads.append(head)
        streams += [np.diff(column, prepend=0) for column in whole.T]
        streams.append(np.diff(mesh.faces.ravel(), prepend=0))
    numbers = np.concatenate(streams) if streams else np.empty(0, dtype=np.int64)
    data = zlib.compress(_varied(numbers), 9)
    return tuple(heads), base64.b64encode(data).decode("ascii")


def unpacked(heads: Sequence[Head], text: str) -> tuple[Mesh, ...]:
    """Return the meshes of a packed text, as the page reads them."""
    numbers = _read(zlib.decompress(base64.b64decode(text)))
    meshes, at = [], 0
    for head in heads:
        columns = []
        for low, step in zip(head.low, head.step, strict=True):
            columns.append(low + step * np.cumsum(numbers[at : at + head.vertices]))
            at += head.vertices
        faces = np.cumsum(numbers[at : at + 3 * head.faces]).reshape(-1, 3)
        at += 3 * head.faces
        meshes.append(Mesh(np.column_stack(columns), faces))
    return tuple(meshes)


def lighter(mesh: Mesh) -> Mesh:
    """Return the same body with faces that lie in one plane joined, where there are many."""
    if len(mesh.faces) < MANY_FACES:
        return mesh
    return mesh_of(manifold(mesh).simplify(1e-9))


def _quantised(mesh: Mesh) -> tuple[Head, Ints]:
    low, high = mesh.vertices.min(axis=0), mesh.vertices.max(axis=0)
    step = np.where(high > low, (high - low) / STEPS, 1.0)
    whole = np.rint((mesh.vertices - low) / step).astype(np.int64)
    head = Head(len(mesh.vertices), len(mesh.faces), _three(low), _three(step))
    return head, whole


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
