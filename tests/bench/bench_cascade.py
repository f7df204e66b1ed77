"""Solids, volumes and sections beside Open CASCADE, a boundary-representation kernel.

Both raise the same outlines of the same house and are cut by the same planes; their volumes and
areas must agree before a time counts. Bodies with round holes are left to the pipe's row.
"""

from collections.abc import Sequence
from dataclasses import replace
from itertools import cycle
from typing import Any

import numpy as np
from shapely import Polygon

from geometry.designfile import read_design
from geometry.layout.bodies import Body
from geometry.layout.drain import DrainLayout
from geometry.layout.lay import Layout, lay_out
from geometry.plan.outline import polygons
from geometry.sections.cut import cut
from geometry.sections.face import CutLine
from geometry.solids.foundation import body_mesh, body_solid
from geometry.solids.pipes import perforated_pipe, run_mesh
from tests.bench.bench_engine import lines
from tests.bench.clock import now
from tests.bench.forgetting import forget
from tests.bench.row import MS, Beside, Row
from tests.bench.suites import EXAMPLE
from tests.bench.timing import agreed, beside, timed, told
from tests.whole import brep

PEER = "Open CASCADE"
SOLIDS, HOLES, SECTIONS = 20, 100, 20
# A cut larger than any house, metres.
WIDE_M = 500.0


def rows(quick: bool) -> list[Row | Beside]:
    """Return all lines."""
    repeats = 5 if quick else 15
    layout = lay_out(read_design(EXAMPLE.read_text(encoding="utf-8")))
    assert layout.drain is not None
    bodies = [body for body in layout.bodies if not body.bores]
    return [
        *flat_rows(bodies, repeats),
        *section_rows(layout, bodies, repeats),
        *pipe_rows(layout.drain, repeats),
    ]


def built(bodies: Sequence[Body]) -> list[Any]:
    """Raise every prism in the peer from its outline, holes cut; return its solids."""
    return [
        solid
        for body in bodies
        for prism in body.prisms
        for polygon in polygons(prism.region)
        for solid in _built(polygon, prism.bottom, prism.top).solids()
    ]


def _built(polygon: Polygon, bottom: float, top: float) -> Any:
    solid = brep.prism(list(polygon.exterior.coords)[:-1], bottom, top)
    for hole in polygon.interiors:
        solid -= brep.prism(list(hole.coords)[:-1], bottom, top)
    return solid


def flat_rows(bodies: Sequence[Body], repeats: int) -> list[Beside]:
    """Return bodies raised, and their volumes."""
    solids = built(bodies)

    def closed() -> float:
        # A copy has nothing reckoned yet.
        return sum(replace(body, taken=0.0).volume for body in bodies)

    def integrated() -> float:
        return sum(brep.volume(solid) for solid in solids)

    def raised() -> float:
        return sum(body_mesh(body).volume for body in bodies)

    same = agreed(raised(), integrated())
    return [
        *beside(f"{len(bodies)} flat bodies raised, with volumes", raised,
                {PEER: (lambda: sum(s.volume for s in built(bodies)), f"volume {same}")},
                repeats, forget, SOLIDS),
        *beside("volumes of these: closed form; the peer integrates", closed,
                {PEER: (integrated, f"volume {agreed(closed(), integrated())}")}, repeats, forget),
    ]  # fmt: skip


def section_rows(layout: Layout, bodies: Sequence[Body], repeats: int) -> list[Beside]:
    """Return these bodies cut by planes through the house, each time at another place."""
    own, theirs = [body_solid(body) for body in bodies], built(bodies)
    boxes = [solid.bounding_box() for solid in theirs]
    spans = [(box.min.X, box.max.X) for box in boxes]

    def area(line: CutLine) -> float:
        return sum(face.shape.area for face in cut(own, line))

    def sliced(line: CutLine) -> float:
        # Only what the plane meets is asked: the kinder way.
        low, high = sorted((line.start[0], line.end[0]))
        met = [s for s, (a, b) in zip(theirs, spans, strict=True) if a < high and b > low]
        return _sliced(met, line)

    places = list(lines(layout, 9))
    worst = max(abs(sliced(line) / area(line) - 1) for line in places)
    ones, others = cycle(places), cycle(places)
    return beside(
        f"{len(bodies)} flat bodies cut by a plane, closed faces", lambda: area(next(ones)),
        {PEER: (lambda: sliced(next(others)), f"areas {agreed(1, 1 + worst)}")}, repeats,
        aim=SECTIONS,
    )  # fmt: skip


def _sliced(solids: Sequence[Any], line: CutLine) -> float:
    """Return the area that a plane and the peer's solids share, m2."""
    from OCP.BRepAlgoAPI import BRepAlgoAPI_Common
    from OCP.BRepGProp import BRepGProp
    from OCP.GProp import GProp_GProps

    run = np.subtract(line.end, line.start)
    x, y = run / np.hypot(*run)
    plane = brep.kernel.Plane(origin=(*line.start, 0), x_dir=(x, y, 0), z_dir=(y, -x, 0))
    face = brep.kernel.Face.make_rect(WIDE_M, WIDE_M, plane).wrapped
    total = 0.0
    for solid in solids:
        found = GProp_GProps()
        BRepGProp.SurfaceProperties_s(BRepAlgoAPI_Common(solid.wrapped, face).Shape(), found)
        total += found.Mass()
    return total


def pipe_rows(drain: DrainLayout, repeats: int) -> list[Row]:
    """Return the perforated pipe. The peer drills a part of the holes; the rest is reckoned on."""
    every = drain.hole_count
    own = timed(lambda: (perforated_pipe(drain), run_mesh(drain)), repeats, forget)
    half, part = peer_pipe(drain, 40), peer_pipe(drain, 80)
    # Straight line through the two measured counts: kinder to the peer than its own growth.
    slope = max(0.0, (part[1] - half[1]) / 40)
    drilled = part[1] + slope * (every - 80)
    note = f"EXTRAPOLATED: 40 holes {half[1]:.0f} ms, 80 holes {part[1]:.0f} ms, on in a line"
    ratio = (part[0] + drilled) / own[1]
    return [
        told(f"pipe swept, {every:,} holes drilled", own),
        Row(f"run swept and bored, {PEER}", part[0]),
        Row(f"{every:,} holes drilled, {PEER}", drilled, note=note),
        Row(f"pipe: times as fast as {PEER}", ratio, "x", HOLES, True),
    ]


def peer_pipe(drain: DrainLayout, holes: int) -> tuple[float, float]:
    """Sweep the run and drill some holes in one straight; return (sweep, drill) milliseconds."""
    ground = zip(drain.route.points, drain.route.stations, strict=False)
    points = [(x, y, drain.centre(float(s))) for (x, y), s in ground]
    points.append(points[0])
    start = now()
    walls = zip(brep.legs(points, drain.radius), brep.legs(points, drain.bore), strict=True)
    for outer, inner in walls:
        outer - inner
    swept = (now() - start) * MS
    step, angles = drain.drain.holes.spacing, np.radians(drain.drain.holes.rows)
    count = holes // len(angles)
    far = (step * (count + 1), 0, 0)
    pipe = brep.bar((0, 0, 0), far, drain.radius) - brep.bar((0, 0, 0), far, drain.bore)
    reach = 2 * drain.radius
    axes = [
        ((step * n, 0, 0), (step * n, reach * np.sin(t), -reach * np.cos(t)))
        for n in range(1, count + 1)
        for t in angles
    ]
    start = now()
    brep.volume(brep.drilled(pipe, axes, drain.drain.holes.diameter / 2))
    return swept, (now() - start) * MS
