"""Pipework as meshes: drilled sticks, mitred bends, the tee, risers, sleeve and solid pipe."""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import NamedTuple

import numpy as np
from shapely import Polygon

from geometry.layout.bleeders import Bleeder
from geometry.layout.bodies import Bore
from geometry.layout.drain import DrainLayout
from geometry.layout.fittings import CAP_M, PIPE_SIDES, Fitting, Straight
from geometry.layout.leads import LeadLayout
from geometry.solids.carving import carved, remembered, welded_together
from geometry.solids.drilled import Section, pipe_ring, ring_cap, tiled
from geometry.solids.kernel import (
    Floats,
    Mesh,
    joined,
    raised,
    skin_faces,
    swept,
    swept_round,
)

# Tools that cut a bore reach this far past the end they cut through.
PAST_M = 0.02


@dataclass(frozen=True, eq=False)
class Frame:
    """A cut across the run: centre (x, y, z), plan vector to the left, vertical stretch."""

    centre: Floats
    left: Floats
    stretch: float

    def ring(self, radius: float) -> Floats:
        """Return (n, 3) corners of the pipe's surface in this cut."""
        flat = pipe_ring(radius)
        out = np.empty((PIPE_SIDES, 3))
        out[:, :2] = self.centre[:2] + flat[:, :1] * self.left
        out[:, 2] = self.centre[2] + flat[:, 1] * self.stretch
        return out


def frame_on_straight(drain: DrainLayout, station: float, stretch: float) -> Frame:
    """Return the square cut at a station that lies on a straight."""
    (x, y), along = drain.route.at(station), drain.route.heading(station)
    return Frame(np.array((x, y, drain.centre(station))), np.array((-along[1], along[0])), stretch)


def fitting_frames(drain: DrainLayout, fitting: Fitting) -> list[Frame]:
    """Return the three cuts of a fitting: before, middle (a bend's mitre), after."""
    first, last = _stretches_beside(drain, fitting)
    before = frame_on_straight(drain, fitting.station - fitting.reach, first)
    after = frame_on_straight(drain, fitting.station + fitting.reach, last)
    if fitting.kind != "bend":
        middle = frame_on_straight(drain, fitting.station, (first + last) / 2)
        return [before, middle, after]
    across = before.left + after.left
    mitre = 2 * across / (across @ across)
    x, y = drain.route.points[fitting.corner or 0]
    centre = np.array((x, y, drain.centre(fitting.station)))
    return [before, Frame(centre, mitre, (first + last) / 2), after]


def _stretches_beside(drain: DrainLayout, fitting: Fitting) -> tuple[float, float]:
    """Return the stretches of the sticks that end and begin at a fitting.

    Its ends are cut as they are, wherever inside it the fall turns: all fit one bore in the stone.
    """
    after = drain.fittings.index(fitting) + (0 if drain.route.closed else 1)
    before = _stick_stretch(drain, drain.sticks[after - 1])
    return before, _stick_stretch(drain, drain.sticks[after])


def stick_frames(drain: DrainLayout, stick: Sequence[Straight]) -> list[Frame]:
    """Return the cuts of a stick: its ends, and where its fall turns."""
    stretch = _stick_stretch(drain, stick)
    return [frame_on_straight(drain, s, stretch) for s in (stick[0].start, *(t.end for t in stick))]


def _stick_stretch(drain: DrainLayout, stick: Sequence[Straight]) -> float:
    """Return how much taller than round a vertical cut of a stick is, from its steepest fall."""
    slopes = [(drain.invert(t.end) - drain.invert(t.start)) / (t.end - t.start) for t in stick]
    return float(np.hypot(1, np.max(np.abs(slopes))))


def run_mesh(drain: DrainLayout) -> Mesh:
    """Return the whole run as one solid without bore: what pipe and fittings displace."""
    rings = []
    pieces: list[tuple[float, list[Frame]]] = [
        (s[0].start, stick_frames(drain, s)) for s in drain.sticks
    ]
    pieces += [(f.station - f.reach, fitting_frames(drain, f)) for f in drain.fittings]
    for _, frames in sorted(pieces, key=lambda piece: piece[0]):
        rings += [f.ring(drain.radius) for f in frames[:-1]]
    if drain.route.closed:
        return swept_round(np.stack(rings))
    last = sorted(pieces, key=lambda piece: piece[0])[-1][1][-1]
    return swept(np.stack([*rings, last.ring(drain.radius)]))


def perforated_pipe(drain: DrainLayout) -> Mesh:
    """Return all sticks of pipe with every hole drilled."""
    holes = drain.drain.holes
    section = Section(drain.radius, drain.bore, holes.rows, holes.diameter / 2)
    sticks = tuple(_stick(drain, stick, holes.spacing) for stick in drain.sticks)
    key = ("perforated pipe", section, sticks)
    return remembered(key, lambda: joined(_drilled(section, stick) for stick in sticks))


class _Stick(NamedTuple):
    """A stick to be drilled: its runs as in `tiled`, and how it lies.

    start: of the axis on the plan; along, left: vectors for a metre on the axis and to its left;
    stretch: of a vertical cut; stations along it and the axis's levels there, metres.
    """

    runs: tuple[tuple[float, int, float], ...]
    start: tuple[float, ...]
    along: tuple[float, ...]
    left: tuple[float, ...]
    stretch: float
    stations: tuple[float, ...]
    levels: tuple[float, ...]


def _stick(drain: DrainLayout, stick: Sequence[Straight], spacing: float) -> _Stick:
    runs = []
    for straight in stick:
        runs += [(straight.plain, straight.holes, spacing), (straight.plain, 0, spacing)]
    start = frame_on_straight(drain, stick[0].start, _stick_stretch(drain, stick))
    end = frame_on_straight(drain, stick[-1].end, start.stretch)
    along = (end.centre - start.centre)[:2] / (stick[-1].end - stick[0].start)
    stations = (stick[0].start, *(t.end for t in stick))
    return _Stick(
        tuple(runs), tuple(start.centre[:2]), tuple(along), tuple(start.left), start.stretch,
        tuple(s - stick[0].start for s in stations), tuple(map(drain.centre, stations)),
    )  # fmt: skip


def _drilled(section: Section, stick: _Stick) -> Mesh:
    points, faces = tiled(section, list(stick.runs))
    start, along, left = (np.array(v) for v in (stick.start, stick.along, stick.left))
    vertices = np.empty_like(points)
    vertices[:, :2] = start + points[:, 2:] * along + points[:, :1] * left
    levels = np.interp(points[:, 2], stick.stations, stick.levels)
    vertices[:, 2] = levels + points[:, 1] * stick.stretch
    return Mesh(vertices, faces)


def tube(frames: Sequence[Frame], outer: float, inner: float) -> Mesh:
    """Return a hollow pipe through cuts."""
    rings = np.stack([np.vstack((f.ring(outer), f.ring(inner))) for f in frames])
    count = len(frames)
    skin = skin_faces(count, PIPE_SIDES)
    row = skin // PIPE_SIDES
    outside = skin + row * PIPE_SIDES
    inside = outside[:, ::-1] + PIPE_SIDES
    caps = np.vstack((ring_cap(0, False), ring_cap((count - 1) * 2 * PIPE_SIDES, True)))
    return Mesh(rings.reshape(-1, 3), np.vstack((outside, inside, caps)))


def solid(frames: Sequence[Frame], radius: float) -> Mesh:
    """Return the solid through cuts."""
    return swept(np.stack([f.ring(radius) for f in frames]))


def axis_frames(bore: Bore, past: float = 0.0) -> list[Frame]:
    """Return square cuts at both ends of a straight axis, or a distance past them on the plan."""
    start, end = np.array(bore.start), np.array(bore.end)
    run = float(np.hypot(*(end - start)[:2]))
    along = (end - start) / run
    left, stretch = np.array((-along[1], along[0])), float(np.linalg.norm(along))
    ends = (start - along * past, end + along * past)
    return [Frame(centre, left, stretch) for centre in ends]


def bar(bore: Bore) -> Mesh:
    """Return a round bar as long as its axis."""
    return solid(axis_frames(bore), bore.radius)


def bore_tool(bore: Bore) -> Mesh:
    """Return a round bar to cut a bore with, a little past both its ends."""
    return solid(axis_frames(bore, PAST_M), bore.radius)


def bleeder_tube(bleeder: Bleeder) -> Mesh:
    """Return a pipe through the footing."""
    frames = axis_frames(bleeder.outside)
    return tube(frames, bleeder.radius, bleeder.pipe.inside_diameter_m / 2)


def lead_frames(lead: LeadLayout, distances: Sequence[float]) -> list[Frame]:
    """Return square cuts of the pipe to the sump."""
    left = np.array((-lead.along[1], lead.along[0]))
    return [Frame(np.array(lead.at(d)), left, lead.stretch) for d in distances]


def tee_mesh(drain: DrainLayout, lead: LeadLayout, fitting: Fitting) -> Mesh:
    """Return the tee: run and leg joined outside, then both bores cut."""
    frames = fitting_frames(drain, fitting)
    leg = lead_frames(lead, (0.0, lead.begin))
    body = welded_together([solid(frames, drain.radius), solid(leg, lead.outer)])
    past = lead_frames(lead, (0.0, lead.begin + PAST_M))
    return carved(body, [solid(_longer(frames), drain.bore), solid(past, lead.inner)])


def _longer(frames: Sequence[Frame]) -> list[Frame]:
    first, *middle, last = frames
    back = first.centre - frames[1].centre
    on = last.centre - frames[-2].centre
    return [
        Frame(first.centre + back * PAST_M / np.linalg.norm(back), first.left, first.stretch),
        *middle,
        Frame(last.centre + on * PAST_M / np.linalg.norm(on), last.left, last.stretch),
    ]


def bend_mesh(drain: DrainLayout, fitting: Fitting, riser_bore: Mesh | None) -> Mesh:
    """Return a bend, opened to a riser's bore if a cleanout stands on it."""
    mesh = tube(fitting_frames(drain, fitting), drain.radius, drain.bore)
    return carved(mesh, [riser_bore] if riser_bore else [])


def cap_meshes(drain: DrainLayout) -> list[Mesh]:
    """Return the caps on an open run's closed ends."""
    found = []
    first, last = drain.sticks[0], drain.sticks[-1]
    ends = ((first, first[0].start, -1), (last, last[-1].end, 1))
    for stick, station, way in (e for e, capped in zip(ends, drain.capped, strict=True) if capped):
        near = frame_on_straight(drain, station, _stick_stretch(drain, stick))
        away = np.array((near.left[1], -near.left[0], 0.0)) * way * CAP_M
        pair = [near, Frame(near.centre + away, near.left, near.stretch)]
        found.append(solid(pair if way > 0 else pair[::-1], drain.radius))
    return found


def riser_tools(point: tuple[float, float], radius: float, bottom: float, top: float) -> Mesh:
    """Return a vertical round bar to cut with."""
    return raised(Polygon(pipe_ring(radius) + np.asarray(point)), bottom, top)


def riser_tube(point: tuple[float, float], drain: DrainLayout, bottom: float, top: float) -> Mesh:
    """Return a vertical pipe of the drain's kind."""
    outer, inner = (pipe_ring(r) + np.asarray(point) for r in (drain.radius, drain.bore))
    return raised(Polygon(outer, [inner]), bottom, top)
