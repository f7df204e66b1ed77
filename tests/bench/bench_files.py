"""Files of the 3D model: GLB also by pygltflib, IFC, the page to turn; each with its size.

pygltflib is given the same meshes and writes the least a file can hold: no names of materials, no
colours, nothing of what each part is.
"""

from collections.abc import Sequence
from io import BytesIO

import numpy as np
import pygltflib as gltf
import trimesh

from geometry.solids.solid import Solid
from tests.bench.row import Beside, Row
from tests.bench.suites import EXAMPLE
from tests.bench.timing import beside, timed, told
from viz.export.glb import Y_UP, to_glb
from viz.export.ifc.house import to_ifc
from viz.job import job
from viz.viewer.page import viewer_page

KILO = 1e3
_ARRAY, _ELEMENTS = 34962, 34963
_FLOAT, _UNSIGNED = 5126, 5125


def rows(quick: bool) -> list[Row | Beside]:
    """Return all lines."""
    repeats = 3 if quick else 9
    work = job(EXAMPLE.read_text(encoding="utf-8"))
    solids, layout = work.foundation.solids, work.layout
    ours, bare = to_glb(solids), bare_glb(solids)
    assert triangles(ours) == triangles(bare), "the two files hold other triangles"
    agree = f"{len(bare) / KILO:,.0f} kB for {len(ours) / KILO:,.0f} kB, triangles the same"
    ifc, page = to_ifc(layout, work.foundation), viewer_page(work)
    return [
        *beside(f"GLB of {len(solids)} solids, {triangles(ours):,} triangles",
                lambda: to_glb(solids), {"pygltflib, bare": (lambda: bare_glb(solids), agree)},
                repeats),
        told("IFC of the same", timed(lambda: to_ifc(layout, work.foundation), repeats)),
        told("page to turn, of the same", timed(lambda: viewer_page(work), repeats)),
        Row("bytes: GLB", len(ours) / KILO, "kB"),
        Row("bytes: IFC", len(ifc) / KILO, "kB"),
        Row("bytes: page to turn", len(page.encode()) / KILO, "kB"),
    ]  # fmt: skip


def triangles(glb: bytes) -> int:
    """Return how many triangles a file holds, as trimesh reads it."""
    scene = trimesh.load(BytesIO(glb), file_type="glb")
    return sum(len(mesh.faces) for mesh in scene.geometry.values())


def bare_glb(solids: Sequence[Solid]) -> bytes:
    """Write the meshes by pygltflib, corners about each one's middle, as ours."""
    file, blob = gltf.GLTF2(scenes=[gltf.Scene()], scene=0), bytearray()

    def add(array: np.ndarray, target: int, kind: str, component: int) -> int:
        view, raw = len(file.bufferViews), array.tobytes()
        start = len(blob)
        blob.extend(raw)
        file.bufferViews.append(
            gltf.BufferView(buffer=0, byteOffset=start, byteLength=len(raw), target=target)
        )
        flat = array.reshape(len(array), -1)
        file.accessors.append(gltf.Accessor(
            bufferView=view, componentType=component, count=len(array), type=kind,
            min=flat.min(axis=0).tolist(), max=flat.max(axis=0).tolist(),
        ))  # fmt: skip
        return len(file.accessors) - 1

    for number, solid in enumerate(solids):
        corners = solid.vertices @ Y_UP.T
        middle = (corners.min(axis=0) + corners.max(axis=0)) / 2
        at = add((corners - middle).astype(np.float32), _ARRAY, "VEC3", _FLOAT)
        ids = add(solid.faces.astype(np.uint32).ravel(), _ELEMENTS, "SCALAR", _UNSIGNED)
        piece = gltf.Primitive(attributes=gltf.Attributes(POSITION=at), indices=ids)
        file.meshes.append(gltf.Mesh(primitives=[piece]))
        file.nodes.append(gltf.Node(mesh=number, translation=middle.tolist()))
        file.scenes[0].nodes.append(number)
    file.buffers = [gltf.Buffer(byteLength=len(blob))]
    file.set_binary_blob(bytes(blob))
    return b"".join(file.save_to_bytes())
