"""What the 3D page holds of a design: bodies read back, stages, levels, words in all languages."""

import itertools
import json
import zlib

import numpy as np
import pytest

from geometry.solids.kernel import Mesh
from geometry.takeoff.volumes import earthwork_volumes, part_volumes
from geometry.units import show_level
from viz.carried import demo, examples
from viz.job import job
from viz.language.reader import codes
from viz.style.materials import HatchName
from viz.viewer.ground import BELOW_M, BESIDE_M, PART, undisturbed
from viz.viewer.message import message
from viz.viewer.model import model, shown_solids
from viz.viewer.packing import Head, packed, unpacked
from viz.viewer.tiles import tile

WORK = job(demo().read_text(encoding="utf-8"))
RECORD = model(WORK)


def closed(mesh: Mesh) -> bool:
    """Every edge is met as often one way as the other."""
    edges = np.vstack([mesh.faces[:, [0, 1]], mesh.faces[:, [1, 2]], mesh.faces[:, [2, 0]]])
    count = len(mesh.vertices)
    there = np.sort(edges[:, 0] * count + edges[:, 1])
    back = np.sort(edges[:, 1] * count + edges[:, 0])
    return bool(np.array_equal(there, back))


@pytest.mark.parametrize("name", [
    "l-basement", *(pytest.param(n, marks=pytest.mark.slow) for n in [*examples()][1:])
])  # fmt: skip
def test_bodies_read_back_keep_their_volumes(name: str) -> None:
    work = job(examples()[name].read_text(encoding="utf-8"))
    solids = shown_solids(work.layout, work.foundation)
    meshes = unpacked(*packed(solids))
    reckoned = (*part_volumes(work.layout), *earthwork_volumes(work.foundation))
    volumes = {part.label.part: part.volume for part in reckoned}
    for solid, mesh in zip(solids, meshes, strict=True):
        assert closed(mesh), solid.label.part
        exact = Mesh(solid.vertices, solid.faces).volume
        assert mesh.volume == pytest.approx(exact, rel=1e-5), solid.label.part
        if solid.label.part in volumes:
            assert mesh.volume == pytest.approx(volumes[solid.label.part], rel=1e-4)


def test_a_part_that_only_moved_is_known_by_its_shape() -> None:
    wall = WORK.foundation.named("basement/wall")
    moved = type(wall)(wall.label, wall.vertices + np.array((1.5, -2.0, 0.25)), wall.faces)
    (one, other), texts = packed([wall, moved])
    assert one.shape == other.shape
    assert len(texts) == 1
    back = unpacked([other], texts)[0]
    assert np.abs(back.vertices - moved.vertices).max() < 1e-6
    higher = type(wall)(wall.label, wall.vertices * np.array((1.0, 1.0, 1.01)), wall.faces)
    assert packed([higher])[0][0].shape != one.shape


def test_a_message_brings_what_is_not_held_and_no_more() -> None:
    every = set(RECORD["shapes"])
    held = sorted(every)[::2]
    told = json.loads(zlib.decompress(message(RECORD, held, "es")))
    assert set(told["model"]["shapes"]) == every - set(held)
    assert told["model"]["shapes"].items() <= RECORD["shapes"].items()
    assert {part["mesh"]["shape"] for part in told["model"]["parts"]} == every
    assert told["language"] == "es"
    assert len(message(RECORD, every)) < len(message(RECORD, ()))


def test_whole_numbers_of_any_size_and_sign_survive() -> None:
    points = np.array([[0.0, -3.0, 1e-4], [12.8, 7.0, 0.0], [1e-6, 5.0, 3e-4], [6.4, -2.9, 2e-4]])
    faces = np.array([[0, 2, 1], [0, 1, 3], [1, 2, 3], [2, 0, 3]])
    label = WORK.foundation.solids[0].label
    solid = type(WORK.foundation.solids[0])(label, points, faces)
    (head,), text = packed([solid])
    assert isinstance(head, Head)
    (mesh,) = unpacked([head], text)
    assert np.array_equal(mesh.faces, faces)
    assert np.abs(mesh.vertices - points).max() < 1e-6


def test_a_drilled_pipe_goes_in_few_bytes() -> None:
    pipe = WORK.foundation.named("drain/pipe")
    (head,), texts = packed([pipe])
    assert head.faces == len(pipe.faces)
    assert len(texts[head.shape]) < head.faces / 4


def test_the_ground_round_the_hole_is_a_block_less_the_hole() -> None:
    ground = undisturbed(WORK.layout, WORK.foundation)
    assert ground is not None
    hole = WORK.foundation.excavation
    low, high = hole.vertices.min(axis=0), hole.vertices.max(axis=0)
    wide, deep = high[:2] - low[:2] + 2 * BESIDE_M
    tall = WORK.layout.ground.existing - low[2] + BELOW_M
    dug = Mesh(hole.vertices, hole.faces).volume
    assert Mesh(ground.vertices, ground.faces).volume == pytest.approx(wide * deep * tall - dug)


def test_every_part_is_begun_once_and_in_the_order_of_the_stages() -> None:
    last = len(RECORD["stages"]) - 1
    rows = {part["id"]: part for part in RECORD["parts"]}
    assert rows.keys() >= {s.label.part for s in WORK.foundation.solids}
    for number, stage in enumerate(RECORD["stages"]):
        for part in set(stage["parts"]) & rows.keys():
            assert -1 <= rows[part]["from"] <= number
    assert all(part["from"] <= part["whole"] <= last for part in rows.values())
    assert rows["footing"]["from"] == -1
    assert rows["drain/wrap"]["from"] < rows["drain/pipe"]["from"] < rows["drain/stone"]["whole"]
    assert rows["basement/foam"]["from"] < rows["basement/slab"]["from"]
    drain = WORK.layout.drain
    assert drain is not None
    assert drain.stone_bottom < rows["drain/stone"]["partTop"] < drain.stone_top


def test_names_and_words_are_there_in_every_language() -> None:
    def words(found: object) -> list[dict[str, str]]:
        if isinstance(found, dict):
            spoken = found.keys() == set(codes())
            return [found] if spoken else [w for value in found.values() for w in words(value)]
        return [w for value in found for w in words(value)] if isinstance(found, list) else []

    parts = RECORD["parts"]
    assert all(set(part["full"]) == set(codes()) and all(part["full"].values()) for part in parts)
    full = [part["full"]["en"] for part in parts]
    assert len(set(full)) == len(full)
    stages = words(RECORD["stages"])
    assert len(stages) > 3 * len(RECORD["stages"])
    assert any(one["en"] != one["es"] for one in stages)
    assert RECORD["words"]["en"].keys() == RECORD["words"]["es"].keys()


def test_levels_stand_from_the_top_down_as_the_layout_has_them() -> None:
    heights = [level["z"] for level in RECORD["levels"]]
    assert heights == sorted(heights, reverse=True)
    assert all(high - low > 5e-4 for high, low in itertools.pairwise(heights))
    area, drain = WORK.layout.areas[0], WORK.layout.drain
    assert drain is not None
    wanted = (area.finished_floor, area.tof, area.subgrade, area.footing_bottom,
              drain.outlet_invert)  # fmt: skip
    for level in wanted:
        row = min(RECORD["levels"], key=lambda found: abs(found["z"] - level))
        assert row["text"] == show_level(level, WORK.system)


def test_parts_pulled_apart_clear_each_other_and_the_ground_stays() -> None:
    rows = {part["id"]: part for part in RECORD["parts"]}
    solids = {s.label.part: s for s in WORK.foundation.solids}

    def low(part: str) -> float:
        return float(solids[part].vertices[:, 2].min()) + rows[part]["lift"]

    def high(part: str) -> float:
        return float(solids[part].vertices[:, 2].max()) + rows[part]["lift"]

    layers = [f"basement/{name}" for name in ("stone", "sand", "retarder", "foam", "slab")]
    assert all(low(upper) > high(lower) for lower, upper in itertools.pairwise(layers))
    assert rows[PART]["lift"] == 0.0


@pytest.mark.parametrize("name", ["concrete", "stone", "sand", "backfill", "topsoil", "earth"])
def test_a_scattered_hatch_is_as_dense_at_its_edges_as_within(name: HatchName) -> None:
    found = tile(name)
    wide = found["size"][0]
    lines = [np.array(line).reshape(-1, 2) for _, line in found["strokes"]]
    middles = np.array([(line.min(axis=0)[0] + line.max(axis=0)[0]) / 2 for line in lines])
    bands = np.histogram(middles, bins=4, range=(0.0, wide))[0]
    assert bands.min() > 0.6 * bands.max()


@pytest.mark.parametrize("name", ["cross", "diagonal", "steel", "dashes"])
def test_ruled_lines_run_on_from_tile_to_tile(name: HatchName) -> None:
    found = tile(name)
    size = np.array(found["size"])
    ends = np.array([line for _, line in found["strokes"]]).reshape(-1, 2)
    for axis, other in ((0, 1), (1, 0)):
        out = ends[np.abs(ends[:, axis] - size[axis]) < 0.02, other]
        back = ends[np.abs(ends[:, axis]) < 0.02, other]
        assert len(out) > 5
        gaps = np.abs(out[:, None] - back) % size[other]
        assert np.minimum(gaps, size[other] - gaps).min(axis=1).max() < 0.03
