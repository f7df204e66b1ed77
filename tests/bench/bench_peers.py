"""The kernel beside libraries that do the same: VTK's booleans, and two triangulations.

Run it with `python -m tests.bench.bench_peers`; add `--quick` for fewer repeats. Triangles
must have the same area before their time counts; how far VTK's volume is off, and where it fails,
is told. Runs take turns, so that a busy machine slows all.
"""

import argparse
import gc
from collections.abc import Callable
from statistics import median

import numpy as np
import pyvista as pv
import shapely
from pyvista.core.errors import NotAllTrianglesError
from scipy.spatial import Delaunay
from shapely import Polygon
from vtkmodules.vtkCommonCore import vtkObject

from geometry.plan.outline import circle
from geometry.solids.kernel import raised
from tests.bench.clock import now
from tests.bench.row import MS, Row

WIDE, DEEP, HIGH = 12.0, 9.0, 0.1
SIDES = 48
# A share of the volume.
FAILED = 0.01
CUT, PIERCED = (1, 2, 4), (10, 100, 1_000)


def middles(count: int) -> list[tuple[float, float]]:
    """Return places on a grid over the floor."""
    across = int(np.ceil(np.sqrt(count)))
    return [
        (WIDE * (n % across + 0.5) / across, DEEP * (n // across + 0.5) / across)
        for n in range(count)
    ]


def floor(count: int) -> Polygon:
    """Return a floor with so many round holes, none of which meet."""
    radius = 0.3 * DEEP / np.ceil(np.sqrt(count))
    holes = [circle(at, radius, SIDES).exterior.coords[:-1] for at in middles(count)]
    return Polygon([(0, 0), (WIDE, 0), (WIDE, DEEP), (0, DEEP)], holes)


def in_turns(
    works: dict[str, Callable[[], float]], repeats: int, off: float = 1e-6
) -> dict[str, float]:
    """Return the median milliseconds of each, taken in turns.

    off: the share by which their results may differ.
    """
    sizes = {name: work() for name, work in works.items()}
    own = next(iter(sizes.values()))
    for name, size in sizes.items():
        assert abs(size - own) < off * own, f"{name} disagrees: {size} for {own}"
    times: dict[str, list[float]] = {name: [] for name in works}
    for _ in range(repeats):
        for name, work in works.items():
            gc.collect()
            start = now()
            work()
            times[name].append((now() - start) * MS)
    return {name: median(found) for name, found in times.items()}


def vtk_slab(shape: Polygon) -> float:
    """Return the volume of a slab, its holes cut one after the other by VTK's boolean filter."""
    body = pv.Box((0, WIDE, 0, DEEP, 0, HIGH)).triangulate()
    for ring in shape.interiors:
        corners = np.array(ring.coords[:-1])
        flat = pv.PolyData(
            np.column_stack((corners, np.full(len(corners), -HIGH))),
            faces=[len(corners), *range(len(corners))],
        )
        tool = flat.extrude((0, 0, 3 * HIGH), capping=True).triangulate()
        body = body.boolean_difference(tool.compute_normals(auto_orient_normals=True))
    return float(body.volume)


def vtk_error(shape: Polygon) -> float:
    """Return the share by which VTK's volume is off, -1 where it gives no body."""
    try:
        return vtk_slab(shape) / raised(shape, 0.0, HIGH).volume - 1
    except NotAllTrianglesError:
        return -1.0


def free_triangles(shape: Polygon) -> float:
    """Return a region's area by scipy's triangulation, which keeps no edges: kept by middles."""
    corners = shapely.get_coordinates(shape)
    faces = corners[Delaunay(corners).simplices]
    kept = faces[shapely.contains_xy(shape, faces.mean(axis=1))]
    one, other = kept[:, 1] - kept[:, 0], kept[:, 2] - kept[:, 0]
    return float(np.abs(one[:, 0] * other[:, 1] - one[:, 1] * other[:, 0]).sum() / 2)


def boolean_rows(repeats: int) -> list[Row]:
    """Return a slab with round openings: raised from its plan, and cut by VTK."""
    rows = []
    for count in CUT:
        shape, what = floor(count), f"slab with {count} openings"
        works = {"engine": lambda s=shape: raised(s, 0.0, HIGH).volume}
        wrong = vtk_error(shape)
        if abs(wrong) > FAILED:
            note = f"VTK's volume is off by {100 * wrong:+.0f} %: not timed"
            rows.append(Row(f"{what}, engine", in_turns(works, repeats)["engine"], note=note))
            continue
        took = in_turns({**works, "VTK": lambda s=shape: vtk_slab(s)}, repeats, off=FAILED)
        note = f"volume off by {100 * wrong:+.3f} %"
        rows += [
            Row(f"{what}, engine", took["engine"]),
            Row(f"{what}, VTK booleans", took["VTK"], note=note),
            Row(f"{what}: times faster than VTK", took["VTK"] / took["engine"], "x"),
        ]
    return rows


def triangle_rows(repeats: int) -> list[Row]:
    """Return a floor with round holes raised to a closed body, and triangulated alone by peers."""
    rows = []
    for count in PIERCED:
        shape = floor(count)
        took = in_turns({
            "raised to a closed body, engine": lambda s=shape: raised(s, 0.0, 1.0).volume,
            "triangulated, shapely (constrained Delaunay)":
                lambda s=shape: float(shapely.constrained_delaunay_triangles(s).area),
            "triangulated, scipy (Delaunay, no edges kept)": lambda s=shape: free_triangles(s),
        }, repeats)  # fmt: skip
        own, *peers = took.values()
        rows += [Row(f"{count:,} holes: {name}", ms) for name, ms in took.items()]
        rows.append(Row(f"{count:,} holes: best peer's time over the engine's",
                        min(peers) / own, "x"))  # fmt: skip
    return rows


def rows(quick: bool) -> list[Row]:
    """Return all lines of the table."""
    repeats = 3 if quick else 9
    vtkObject.GlobalWarningDisplayOff()
    return [*boolean_rows(repeats), *triangle_rows(repeats)]


def main() -> None:
    """Print the table."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--quick", action="store_true", help="fewer repeats")
    print(*rows(parser.parse_args().quick), sep="\n")


if __name__ == "__main__":
    main()
