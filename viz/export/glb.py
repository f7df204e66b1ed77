"""GLB (binary glTF 2.0): one named, coloured node a part, metres, y up as glTF asks.

Each node's `extras` say what the part is: part id, name, role, material key, area, stage, and its
lowest and highest level against the project's top of footing, metres.
"""

from collections.abc import Sequence
from dataclasses import asdict
from typing import Any

import numpy as np
import trimesh
from numpy.typing import NDArray

from geometry.label import Label
from geometry.solids.solid import Solid
from viz.style.materials import look_of

# glTF 2.0, 3.4 "Coordinate System and Units": y up, metres. Ours: z up.
Y_UP = np.array([[1.0, 0.0, 0.0], [0.0, 0.0, 1.0], [0.0, -1.0, 0.0]])


NO_THING = "excavation"  # the role of the hole, which is not a part


def to_glb(solids: Sequence[Solid]) -> bytes:
    """The solids as a GLB file; solids of one part share a node named after the part."""
    return bytes(y_up_scene(solids).export(file_type="glb"))  # type: ignore[no-untyped-call]


def y_up_scene(solids: Sequence[Solid]) -> trimesh.Scene:
    """The parts as a trimesh scene turned y up, metres; the hole is left out."""
    scene = trimesh.Scene()
    things = [solid for solid in solids if solid.label.role != NO_THING]
    for part in dict.fromkeys(solid.label.part for solid in things):
        _add(scene, part, [solid for solid in things if solid.label.part == part])
    return scene


def _add(scene: trimesh.Scene, part: str, solids: Sequence[Solid]) -> None:
    """Each part about its own middle: glTF's 32-bit numbers then keep a thin sheet's thickness."""
    vertices, faces = _joined(solids)
    middle = (vertices.min(axis=0) + vertices.max(axis=0)) / 2
    mesh = trimesh.Trimesh(vertices - middle, faces, process=False)
    mesh.visual = _paint(solids[0].label)
    place = np.eye(4)
    place[:3, 3] = middle
    low, high = float(vertices[:, 1].min()), float(vertices[:, 1].max())
    about = {**asdict(solids[0].label), "bottom_m": low, "top_m": high}
    scene.add_geometry(mesh, node_name=part, geom_name=part, transform=place, metadata=about)


def _paint(label: Label) -> Any:
    """The material of a part, matt and seen from both sides."""
    material: Any = trimesh.visual.material.PBRMaterial
    dress: Any = trimesh.visual.TextureVisuals
    return dress(
        material=material(
            name=label.material,
            baseColorFactor=[*_linear(look_of(label).solid), 255],
            metallicFactor=0.0,
            roughnessFactor=0.9,
            doubleSided=True,
        )
    )


def _linear(code: str) -> list[int]:
    """An sRGB colour `#rrggbb` as the linear light glTF asks, 0 to 255 (IEC 61966-2-1)."""
    tones = [int(code[i : i + 2], 16) / 255 for i in (1, 3, 5)]
    light = [t / 12.92 if t <= 0.04045 else ((t + 0.055) / 1.055) ** 2.4 for t in tones]
    return [round(255 * value) for value in light]


def _joined(solids: Sequence[Solid]) -> tuple[NDArray[np.float64], NDArray[np.int64]]:
    starts = np.cumsum([0, *(len(solid.vertices) for solid in solids)])
    vertices = np.vstack([solid.vertices for solid in solids]) @ Y_UP.T
    faces = np.vstack([s.faces + at for s, at in zip(solids, starts, strict=False)])
    return vertices, faces
