import io
import json
import struct

import numpy as np
import pytest
import trimesh

from geometry.label import Label, Role
from geometry.solids.solid import Solid
from viz.export.glb import to_glb


def block(part: str, role: Role, low, high) -> Solid:
    mesh = trimesh.creation.box(bounds=[low, high])
    label = Label(part, part, role, "", "basement", 1)
    return Solid(label, np.asarray(mesh.vertices, float), np.asarray(mesh.faces, np.int64))


SOLIDS = [
    block("wall", "wall", (0, 0, 0), (12, 0.2, 2.4)),
    block("retarder", "retarder", (0.2, 0.2, 0.05), (11.8, 7.8, 0.050254)),  # a 10-mil sheet
    block("piers", "column", (4, 4, -0.1), (4.3, 4.3, 2.0)),
    block("piers", "column", (8, 4, -0.1), (8.3, 4.3, 2.0)),
    block("hole", "excavation", (-2, -2, -1), (14, 10, 2)),
]
VOLUMES = {"wall": 12 * 0.2 * 2.4, "retarder": 11.6 * 7.6 * 0.000254, "piers": 2 * 0.09 * 2.1}


@pytest.fixture(scope="module")
def header():
    data = to_glb(SOLIDS)
    (length,) = struct.unpack("<I", data[12:16])
    return json.loads(data[20 : 20 + length])


def test_names_and_volumes_come_back():
    scene = trimesh.load(io.BytesIO(to_glb(SOLIDS)), file_type="glb")
    assert set(scene.graph.nodes_geometry) == set(VOLUMES)
    for node in scene.graph.nodes_geometry:
        _, geometry = scene.graph[node]
        assert scene.geometry[geometry].volume == pytest.approx(VOLUMES[node], rel=1e-6)


def test_up_is_y_and_lengths_are_metres():
    scene = trimesh.load(io.BytesIO(to_glb(SOLIDS[:1])), file_type="glb")
    # x stays, our level becomes y, what lies deeper in plan becomes minus z
    assert np.allclose(scene.bounds, [[0, 0, -0.2], [12, 2.4, 0]], atol=1e-6)


def test_one_node_a_part_with_its_own_colour_in_linear_light(header):
    named = [node["name"] for node in header["nodes"] if "mesh" in node]
    assert sorted(named) == sorted(VOLUMES)
    tones = {}
    for node in header["nodes"]:
        if "mesh" in node:
            primitive = header["meshes"][node["mesh"]]["primitives"][0]
            material = header["materials"][primitive["material"]]
            tones[node["name"]] = material["pbrMetallicRoughness"]["baseColorFactor"]
            assert material["doubleSided"] is True
    # the retarder's #2a2a2c: IEC 61966-2-1 gives 0.0232 and 0.0252 of full light
    assert tones["retarder"] == pytest.approx([0.0232, 0.0232, 0.0252, 1.0], abs=0.003)
    assert tones["wall"] != tones["retarder"]
