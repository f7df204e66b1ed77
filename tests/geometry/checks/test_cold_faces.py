"""Cold concrete from the layout against the faces that the solids themselves share."""

from pathlib import Path

import numpy as np
import pytest
import shapely
from shapely.geometry.base import BaseGeometry

from geometry.checks.cold import cold_concrete
from geometry.designfile import read_design
from geometry.layout.lay import lay_out
from geometry.solids.foundation import Foundation, build
from geometry.solids.solid import Solid

EXAMPLES = Path(__file__).parents[3] / "assets/examples"


def flat_faces(solid: Solid, upward: bool) -> dict[int, BaseGeometry]:
    """Union of a mesh's level triangles by level (in micrometres)."""
    a, b, c = (solid.vertices[solid.faces[:, i]] for i in range(3))
    normal = np.cross(b - a, c - a)
    level = np.abs(normal[:, :2]).max(axis=1) < 1e-12
    chosen = level & ((normal[:, 2] > 0) == upward)
    by_level: dict[int, list[BaseGeometry]] = {}
    for p, q, r in zip(a[chosen], b[chosen], c[chosen], strict=True):
        by_level.setdefault(round(p[2] * 1e6), []).append(shapely.Polygon((p[:2], q[:2], r[:2])))
    return {z: shapely.union_all(shapes) for z, shapes in by_level.items()}


def shared(upper: Solid, lower: Solid) -> BaseGeometry:
    """Plan of the faces with which one solid lies on another."""
    tops, undersides = flat_faces(lower, upward=True), flat_faces(upper, upward=False)
    found = [
        shape.intersection(top)
        for z, shape in undersides.items()
        for level, top in tops.items()
        if abs(level - z) <= 1
    ]
    return shapely.union_all(found)


def opened(name: str) -> tuple[Foundation, dict[str, float], float]:
    layout = lay_out(read_design((EXAMPLES / name).read_text(encoding="utf-8")))
    cold = cold_concrete(layout, layout.areas[0])
    return build(layout), {f.contact: f.area_m2 for f in cold.faces}, cold.floor_m2


def test_foam_stopped_at_the_footing_leaves_a_ledge() -> None:
    solids, cold, _ = opened("foam-stopped.toml")
    slab, sheet = solids.named("basement/slab"), solids.named("basement/retarder")
    ledge = shared(slab, sheet).intersection(shared(sheet, solids.named("footing")))
    assert cold["slab on footing"] == pytest.approx(ledge.area, rel=1e-9)
    # By hand: the ledge is 6 in wide inside an 8 in wall of 40 x 26 ft.
    inside = (40 - 4 / 3) * (26 - 4 / 3)
    by_hand = (inside - (40 - 7 / 3) * (26 - 7 / 3)) * 0.3048**2
    assert ledge.area == pytest.approx(by_hand, rel=1e-9)


def test_pads_under_the_sheet_are_cold_and_columns_too() -> None:
    solids, cold, _ = opened("foam-stopped.toml")
    slab, sheet = solids.named("basement/slab"), solids.named("basement/retarder")
    pads = [solids.named(f"basement/pier P{n} pad") for n in (1, 2)]
    under = shared(slab, sheet).intersection(shapely.union_all([shared(sheet, p) for p in pads]))
    assert cold["slab on pier"] == pytest.approx(under.area, rel=1e-9)
    # By hand: two pads of 3 x 3 ft less a 1 x 1 ft column each.
    assert under.area == pytest.approx(2 * (9 - 1) * 0.3048**2, rel=1e-9)
    assert cold["pier through foam"] == pytest.approx(2 * 1 * 0.3048**2, rel=1e-9)


def test_foam_over_the_footing_leaves_the_piers_only() -> None:
    solids, cold, floor = opened("l-basement.toml")
    on_foam = shared(solids.named("basement/slab"), solids.named("basement/foam"))
    columns = 2 * 0.3048**2 + np.pi / 4 * 0.3048**2
    pit = np.pi / 4 * (18.5 * 0.0254) ** 2
    assert set(cold) == {"pier through foam", "slab edge at wall"}
    assert cold["pier through foam"] == pytest.approx(columns, rel=1e-9)
    assert on_foam.area == pytest.approx(floor - columns - pit, rel=1e-9)
