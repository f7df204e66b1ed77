"""The kernel beside libraries that do the same: VTK's booleans, triangulations, mesh volumes.

Results are held against each other first; a peer whose result is wrong is told and not timed.

VTK has two boolean filters. Both lose pieces where a hole meets the long triangles of a plain box
(tried: points merged, all triangulated, normals oriented, tolerances 1e-6 and 1e-4). With the
box's faces parted into a grid and the points merged after every hole `vtkLoopBoolean...` is exact
and closed, so it is the peer; `vtkBooleanOperation...`, which pyvista calls, stays open and off by
0.1 % from two holes on, and is only told.
"""

from typing import Any

import numpy as np
import pyvista as pv
import shapely
import trimesh
from scipy.spatial import Delaunay
from shapely import Polygon
from vtkmodules.vtkCommonCore import vtkObject
from vtkmodules.vtkFiltersGeneral import (
    vtkBooleanOperationPolyDataFilter,
    vtkLoopBooleanPolyDataFilter,
)

from geometry.designfile import read_design
from geometry.layout.lay import lay_out
from geometry.plan.outline import circle
from geometry.report import report
from geometry.solids.foundation import build
from geometry.solids.kernel import raised
from tests.bench.forgetting import forget
from tests.bench.row import Beside, Row
from tests.bench.suites import EXAMPLE
from tests.bench.timing import agreed, beside

WIDE, DEEP, HIGH = 12.0, 9.0, 0.1
SIDES = 48
# A share of the volume.
WRONG = 1e-6
CUT, PIERCED = (1, 2, 4, 9), (10, 100, 1_000)
# The box's faces are parted so often along each side.
PARTED = 9
LOOP, PLAIN = vtkLoopBooleanPolyDataFilter, vtkBooleanOperationPolyDataFilter


def rows(quick: bool) -> list[Row | Beside]:
    """Return all lines."""
    repeats = 3 if quick else 9
    vtkObject.GlobalWarningDisplayOff()
    return [*boolean_rows(repeats), *triangle_rows(repeats), *volume_rows(repeats)]


def floor(count: int) -> Polygon:
    """Return a floor with so many round holes on a grid, none of which meet."""
    across = int(np.ceil(np.sqrt(count)))
    middles = [
        (WIDE * (n % across + 0.5) / across, DEEP * (n // across + 0.5) / across)
        for n in range(count)
    ]
    holes = [circle(at, 0.3 * DEEP / across, SIDES).exterior.coords[:-1] for at in middles]
    return Polygon([(0, 0), (WIDE, 0), (WIDE, DEEP), (0, DEEP)], holes)


def tidy(mesh: Any) -> Any:
    """Return a mesh as VTK's filters want it: triangles, points merged, outward."""
    whole = mesh.triangulate().clean()
    return whole.compute_normals(
        auto_orient_normals=True, split_vertices=False, point_normals=False
    )


def vtk_slab(shape: Polygon, kind: Any) -> float:
    """Return the volume of a slab, its holes cut one after the other by a filter of VTK."""
    body = tidy(pv.Box((0, WIDE, 0, DEEP, 0, HIGH), level=PARTED, quads=True))
    for ring in shape.interiors:
        corners = np.array(ring.coords[:-1])
        flat = pv.PolyData(
            np.column_stack((corners, np.full(len(corners), -HIGH))),
            faces=[len(corners), *range(len(corners))],
        )
        cut = kind()
        cut.SetOperationToDifference()
        cut.SetInputData(0, body)
        cut.SetInputData(1, tidy(flat.extrude((0, 0, 3 * HIGH), capping=True)))
        cut.Update()
        body = pv.wrap(cut.GetOutput())
        if not body.n_cells:
            return 0.0
        body = tidy(body)
    return float(body.volume)


def boolean_rows(repeats: int) -> list[Beside]:
    """Return a slab with round openings: raised from its plan, and cut by VTK."""
    rows = []
    for count in CUT:
        shape, what = floor(count), f"slab, round openings cut: {count}"
        true, right, told = raised(shape, 0.0, HIGH).volume, {}, []
        for name, kind in (("VTK, loop boolean", LOOP), ("VTK, boolean", PLAIN)):
            found = vtk_slab(shape, kind)
            if abs(found / true - 1) < WRONG:
                result = f"volume {agreed(true, found)}"
                right[name] = (lambda s=shape, k=kind: vtk_slab(s, k), result)
            else:
                told.append((name, f"volume off by {100 * (found / true - 1):+.2g} %"))
        timed = beside(what, lambda s=shape: raised(s, 0.0, HIGH).volume, right, repeats)
        rows += [*timed, *(Beside(what, name, timed[0].own, (), how) for name, how in told)]
    return rows


def free_triangles(shape: Polygon) -> float:
    """Return a region's area by scipy's triangulation, which keeps no edges: kept by middles."""
    corners = shapely.get_coordinates(shape)
    faces = corners[Delaunay(corners).simplices]
    kept = faces[shapely.contains_xy(shape, faces.mean(axis=1))]
    one, other = kept[:, 1] - kept[:, 0], kept[:, 2] - kept[:, 0]
    return float(np.abs(one[:, 0] * other[:, 1] - one[:, 1] * other[:, 0]).sum() / 2)


def triangle_rows(repeats: int) -> list[Beside]:
    """Return a floor with round holes raised to a closed body, and only triangulated by peers."""
    rows = []
    for count in PIERCED:
        shape = floor(count)
        peers = {
            "shapely, constrained Delaunay":
                lambda s=shape: float(shapely.constrained_delaunay_triangles(s).area),
            "scipy, Delaunay": lambda s=shape: free_triangles(s),
        }  # fmt: skip
        rows += beside(
            f"floor raised, round holes: {count:,}; peers only triangulate it",
            lambda s=shape: raised(s, 0.0, 1.0).volume,
            {name: (work, f"area {agreed(shape.area, work())}") for name, work in peers.items()},
            repeats,
        )
    return rows


def volume_rows(repeats: int) -> list[Beside]:
    """Return every part's volume: closed form from the layout, and trimesh's from the solids."""
    layout = lay_out(read_design(EXAMPLE.read_text(encoding="utf-8")))
    house = build(layout)
    solids = {solid.label.part: solid for solid in house.solids}

    def measured() -> dict[str, float]:
        return {
            part: trimesh.Trimesh(s.vertices, s.faces, process=False).volume
            for part, s in solids.items()
        }

    ours = {row.part: row.volume_m3 for row in report(layout, house).volumes}
    theirs = measured()
    off = max(abs(theirs[part] / ours[part] - 1) for part in ours.keys() & theirs.keys())
    result = f"each part {agreed(1, 1 + off)}"
    return beside(
        f"volumes of {len(ours)} parts, layout given", lambda: report(layout, house).volumes,
        {"trimesh": (measured, result)}, repeats, forget,
    )  # fmt: skip
