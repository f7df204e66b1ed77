"""The usual pictures of one design: sections with labels and levels, and stills."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

import numpy as np
import shapely
from shapely.ops import substring

from geometry.layout.areas import AreaLayout
from geometry.layout.lay import Layout
from geometry.sections.bars import BarMark, bar_marks
from geometry.sections.cut import cut
from geometry.sections.face import CutFace, CutLine
from geometry.solids.foundation import Foundation
from geometry.units import FOOT, INCH
from viz.drawing.page import Drawing, PaperName
from viz.drawing.scale import Scale
from viz.scene.view import Kind, View
from viz.sheets.level_mark import LevelMark
from viz.sheets.section import section_drawing
from viz.sheets.view import Window
from viz.words import part_words

# How much of wall, floor and ground a detail shows around the footing and its drain.
_AROUND_M = 6 * INCH
_FLOOR_SHOWN_M = 3 * FOOT
_WALL_SHOWN_M = 18 * INCH
# Farther than any house reaches.
_FAR_M = 1000.0

NOTES = (
    "All levels are against top of footing (TOF) of the lowest area.",
    "Hold point: drain, base and retarder are inspected before they are covered.",
)


@dataclass(frozen=True)
class Cutting:
    """How a section is asked for: its title, its cut, paper, scale and part shown."""

    title: str
    line: CutLine
    paper: PaperName = "ARCH C"
    scale: Scale | None = None
    window: Window | None = None
    subtitle: str = ""


def section_of(layout: Layout, foundation: Foundation, asked: Cutting) -> Drawing:
    """Return a section on its sheet. Raises BedcourseError where the paper cannot hold it."""
    about = layout.design.project
    faces = faces_of(foundation, asked.line)
    return section_drawing(
        faces,
        levels_at(layout, asked.line, asked.window),
        part_words(layout, foundation, _crossed(layout, _track(asked.line))),
        system=about.units,
        project=about.name,
        title=asked.title,
        subtitle=asked.subtitle or about.address,
        notes=NOTES,
        bars=_in_concrete(bar_marks(layout, asked.line), faces),
        paper=asked.paper,
        scale=asked.scale,
        window=asked.window,
    )


def _in_concrete(bars: Sequence[BarMark], faces: Sequence[CutFace]) -> list[BarMark]:
    """Return the bars that lie in the footing's cut face, not in a sleeve's bore."""
    concrete = shapely.union_all([f.shape for f in faces if f.label.role == "footing"])
    return [b for b in bars if concrete.contains(shapely.Point(b.distance, b.level))]


def faces_of(foundation: Foundation, line: CutLine) -> tuple[CutFace, ...]:
    """Return the cut faces of all parts and of the hole they stand in."""
    return cut((*foundation.solids, foundation.excavation), line)


def detail_window(layout: Layout, foundation: Foundation, line: CutLine) -> Window | None:
    """Return the part of a cut round its first footing, drain and pit; None without a footing."""
    shown = {f.label.role: f.shape for f in reversed(faces_of(foundation, line))}
    if "footing" not in shown:
        return None
    footing = min(shapely.get_parts(shown["footing"]), key=lambda part: part.bounds[0])
    beside = shapely.get_parts(shown.get("drain stone", footing))
    drain = min(beside, key=lambda part: part.distance(footing))
    pit = [shown[role] for role in ("basin", "pit stone") if role in shown]
    near = [p for p in pit if p.distance(footing) < _FLOOR_SHOWN_M]
    left, low, right, high = shapely.union_all([footing, drain, *near]).bounds
    high = max(layout.areas[0].finished_floor, high) + _WALL_SHOWN_M
    beyond = _AROUND_M if near else _FLOOR_SHOWN_M
    return (left - _AROUND_M, low - _AROUND_M, right + beyond, high)


def levels_at(layout: Layout, line: CutLine, window: Window | None) -> tuple[LevelMark, ...]:
    """Return the levels a cut's sheet names: of the areas it crosses, the drain and the ground."""
    track = _track(line, window)
    crossed = _crossed(layout, track)
    many = len(crossed) > 1
    found = dict(_ground(layout))
    for area in crossed:
        found |= {f"{name}, {area.name}" if many else name: z for name, z in _area(area)}
    found |= dict(_drain(layout, track, line)) | dict(_sump(layout, track))
    datum = layout.design.datum.top_of_footing
    return tuple(LevelMark(name, z, datum + z) for name, z in found.items())


def _track(line: CutLine, window: Window | None = None) -> shapely.LineString:
    """Return a cut on the plan, or the stretch of it that a window shows."""
    whole = shapely.LineString((line.start, line.end))
    return substring(whole, max(0.0, window[0]), window[2]) if window else whole


def _crossed(layout: Layout, track: shapely.LineString) -> list[AreaLayout]:
    return [a for a in layout.areas if a.outline.intersection(track).length > 0]


def _area(area: AreaLayout) -> Iterator[tuple[str, float]]:
    yield "Top of wall", area.wall_top
    yield "Finished floor", area.finished_floor
    foam = [n for n, layer in enumerate(area.floor.layers) if layer.role == "insulation"]
    if foam:
        yield "Foam top", area.stack.levels[foam[-1] + 1]
    yield "Top of footing", area.tof
    yield "Subgrade", area.subgrade
    yield "Footing bottom", area.footing_bottom


def _ground(layout: Layout) -> Iterator[tuple[str, float]]:
    yield "Finished grade at the wall", layout.ground.at_wall


def _drain(layout: Layout, track: shapely.LineString, line: CutLine) -> Iterator[tuple[str, float]]:
    """Yield the pipe's invert wherever the cut crosses it, from the left."""
    drain = layout.drain
    if drain is None:
        return
    points = shapely.get_coordinates(drain.route.line.intersection(track))
    if len(points) == 0:
        return
    points = sorted(points, key=lambda p: float(np.hypot(*np.subtract(p, line.start))))
    names = ["Drain invert"] if len(points) == 1 else [f"Drain invert {n}" for n in _COUNTED]
    for name, (x, y) in zip(names, points, strict=False):
        yield name, drain.invert(drain.route.station_of((float(x), float(y))))
    yield "Drain trench bottom", drain.stone_bottom


_COUNTED = ("at the left", "further right", "third", "fourth")


def _sump(layout: Layout, track: shapely.LineString) -> Iterator[tuple[str, float]]:
    pit = layout.sump
    if pit and pit.inner_circle.intersects(track):
        yield "Sump inside bottom", pit.floor


def still_view(layout: Layout, foundation: Foundation, kind: Kind, line: CutLine) -> View:
    """Return the usual still of a kind; only what is cut or pulled apart bears labels."""
    words = {} if kind == "whole" else part_words(layout, foundation)
    return View(kind, cut=_larger_half_kept(layout, line), labels=words)


def _larger_half_kept(layout: Layout, line: CutLine) -> CutLine:
    """Return the cut so turned that the larger part of the house lies behind it: to its left."""
    start, run = np.asarray(line.start), np.subtract(line.end, line.start)
    along = run / np.hypot(*run) * _FAR_M
    left = np.array((-along[1], along[0]))
    corners = (start - along, start + along, start + along + left, start - along + left)
    behind = layout.ground.house.intersection(shapely.Polygon(corners))
    return line if 2 * behind.area >= layout.ground.house.area else CutLine(line.end, line.start)
