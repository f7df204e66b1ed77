"""The as-dug survey: half a million shots, whole, beside their triangulation alone and beside VTK.

House and shots are invented.
"""

import numpy as np
from scipy.spatial import Delaunay
from shapely import Polygon, box

from geometry.layout.lay import Layout
from geometry.survey.asdug import as_dug
from geometry.survey.ground import on_floor
from geometry.survey.reading import read_shots
from geometry.survey.shots import Floats, Shots, ground_shots
from geometry.survey.surface import neighbourly, triangulate
from tests.bench.row import Beside, Row
from tests.bench.timing import agreed, beside, in_turns, timed, told
from tests.houses import house

MOST, FEWER = 500_000, 100_000
# VTK's triangulation takes far more than twice the time for twice the shots.
PEER_SHOTS = 20_000


def rows(quick: bool) -> list[Row | Beside]:
    """Return all lines."""
    return [*whole_rows(FEWER if quick else MOST), *volume_rows(3 if quick else 7)]


def shots(layout: Layout, count: int, noise: float) -> Shots:
    """Invented shots over the first area: waves, and the rod's own error, metres."""
    left, low, right, high = layout.areas[0].outline.bounds
    dice = np.random.default_rng(1)
    x, y = dice.uniform(left, right, count), dice.uniform(low, high, count)
    waves = 0.03 * np.sin(2.1 * x) * np.cos(1.9 * y) + dice.normal(0, noise, count)
    return ground_shots(x, y, layout.areas[0].subgrade + waves)


def as_text(taken: Shots) -> bytes:
    """Return shots as the file a builder would load."""
    columns: Floats = np.column_stack((taken.x, taken.y, taken.level))
    lines = [f"{n},{x:.4f},{y:.4f},{z:.4f}," for n, (x, y, z) in enumerate(columns.tolist(), 1)]
    return "\n".join(["point,x (m),y (m),level (m),what", *lines]).encode()


def whole_rows(count: int) -> list[Row]:
    """Return a survey of many shots, whole, and their triangulation alone."""
    layout = house()
    smooth, rough = (shots(layout, count, noise) for noise in (0.0, 0.004))
    text, few = as_text(rough), shots(layout, 100, 0.004)
    points = np.column_stack((rough.x, rough.y)) - (rough.x.mean(), rough.y.mean())
    ordered = points[neighbourly(rough.x, rough.y)]
    found = in_turns({
        "alone": lambda: Delaunay(points),
        "ordered": lambda: Delaunay(ordered),
        "smooth": lambda: as_dug(layout, smooth),
        "rough": lambda: as_dug(layout, rough),
    }, 3)  # fmt: skip
    alone, ordered_ms = found["alone"], found["ordered"][1]
    return [
        told(f"{count:,} places triangulated by scipy, nothing else", alone),
        told("the same, neighbours beside each other in memory", found["ordered"]),
        told(f"{count:,} shots of smooth ground, whole", found["smooth"]),
        Row("that over the triangulation alone", found["smooth"][1] / alone[1], "x", aim=1.3),
        told(f"{count:,} shots of rough ground, whole", found["rough"]),
        Row("that over the triangulation alone", found["rough"][1] / alone[1], "x", aim=1.3),
        Row("that over the triangulation in that order", found["rough"][1] / ordered_ms, "x"),
        told(f"{count:,} rows of CSV read", timed(lambda: read_shots(text, layout.design), 5)),
        told("100 shots, whole", timed(lambda: as_dug(layout, few), 9)),
    ]


def volume_rows(repeats: int) -> list[Beside]:
    """Return the room between shots and a level over a floor, also by VTK: clipped by planes."""
    layout = house()
    area = layout.areas[0]
    taken, top = shots(layout, PEER_SHOTS, 0.004), area.subgrade + 0.15
    region = box(*area.outline.bounds).buffer(-0.3, join_style="mitre")

    def own() -> float:
        order = neighbourly(taken.x, taken.y)
        surface = triangulate(taken.x[order], taken.y[order], taken.level[order])
        return on_floor(surface, region).between.below(top)

    def theirs() -> float:
        return vtk_room(taken, region, top)

    return beside(
        f"room over {PEER_SHOTS:,} shots: triangulated, clipped, measured", own,
        {"VTK": (theirs, f"volume {agreed(own(), theirs())}")}, repeats,
    )  # fmt: skip


def vtk_room(taken: Shots, region: Polygon, top: float) -> float:
    """Return the room under a level by VTK's Delaunay surface, clipped along a rectangle, m3."""
    # Here, for the curve of memory asks this module for its shots and has no need of it.
    import pyvista as pv

    left, low, right, high = region.bounds
    ground = pv.PolyData(np.column_stack((taken.x, taken.y, taken.level))).delaunay_2d()
    for place, inward in (
        ((left, 0, 0), (1, 0, 0)), ((right, 0, 0), (-1, 0, 0)),
        ((0, low, 0), (0, 1, 0)), ((0, high, 0), (0, -1, 0)),
    ):  # fmt: skip
        ground = ground.clip(normal=inward, origin=place, invert=False)
    corners = np.asarray(ground.points)[ground.triangulate().regular_faces]
    one, other = corners[:, 1] - corners[:, 0], corners[:, 2] - corners[:, 0]
    plan = np.abs(one[:, 0] * other[:, 1] - one[:, 1] * other[:, 0]) / 2
    return float((plan * (top - corners[:, :, 2].mean(axis=1))).sum())
