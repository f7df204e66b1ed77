import io
import json
import struct

import numpy as np
import pytest
import trimesh

from geometry.label import Label, Role
from geometry.layout.lay import lay_out
from geometry.solids.foundation import build
from geometry.solids.kernel import Mesh
from geometry.solids.solid import Solid
from tests.whole.networks import network
from viz.export.glb import to_glb

# x stays, what lies deeper in plan becomes minus z, level becomes y (glTF 2.0, 3.4).
Y_UP = np.array([[1.0, 0.0, 0.0], [0.0, 0.0, 1.0], [0.0, -1.0, 0.0]])


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


def test_each_node_says_what_it_is_and_between_which_levels(header):
    told = {node["name"]: node["extras"] for node in header["nodes"] if "mesh" in node}
    assert told["retarder"] == {
        "part": "retarder", "name": "retarder", "role": "retarder", "material": "",
        "area": "basement", "stage": 1, "bottom_m": pytest.approx(0.05),
        "top_m": pytest.approx(0.050254),
    }  # fmt: skip
    assert (told["piers"]["bottom_m"], told["piers"]["top_m"]) == pytest.approx((-0.1, 2.0))


def test_a_whole_house_comes_back_with_its_names_materials_places_and_volumes():
    """Numbers of glTF have 24 bits: 1 micrometre in 13 m, a part in 10 000 of a thin fabric."""
    foundation = build(lay_out(network("one side, two outlets")))
    data = to_glb(foundation.solids)
    assert data == to_glb(foundation.solids)
    scene = trimesh.load(io.BytesIO(data), file_type="glb")
    solids = {s.label.part: s for s in foundation.solids}
    assert set(scene.graph.nodes_geometry) == set(solids)
    for part, solid in solids.items():
        place, name = scene.graph[part]
        mesh = scene.geometry[name]
        assert mesh.visual.material.name == solid.label.material
        assert mesh.volume == pytest.approx(Mesh(solid.vertices, solid.faces).volume, rel=1e-4)
        back = trimesh.transform_points(mesh.vertices, place) @ Y_UP  # z up again
        assert back.min(axis=0) == pytest.approx(solid.vertices.min(axis=0), abs=2e-6)
        assert back.max(axis=0) == pytest.approx(solid.vertices.max(axis=0), abs=2e-6)


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
