"""The usual pictures of one design: sections and details with labels and levels, and stills."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

import numpy as np
import shapely

from geometry.errors import BedcourseError
from geometry.layout.lay import Layout
from geometry.sections.bars import BarMark, bar_marks
from geometry.sections.cut import cut
from geometry.sections.face import CutFace, CutLine
from geometry.sections.telling import edge_cut
from geometry.solids.foundation import Foundation
from viz.figures.section.cut import Floats
from viz.figures.section.named_levels import areas_crossed, levels_at, track_of
from viz.figures.section.setting import Picture
from viz.figures.section.strings import detail_strings, whole_strings
from viz.figures.section.view import Window
from viz.figures.section.watertable import Standing
from viz.figures.section.windows import (
    detail_window,
    edge_window,
    floor_window,
    pier_window,
)
from viz.figures.watertable import table_of
from viz.job import Job
from viz.scene.view import Kind, View
from viz.words import CUTS, part_words

# Farther than any house reaches.
_FAR_M = 1000.0
_SMALL = ("lid", "fitting", "sleeve", "bleeder", "pit stone", "lead", "cleanout")


@dataclass(frozen=True)
class Shot:
    """One section or detail of the set: a file's name, a title, the cut, the part shown of it.

    layers: dimension every layer of the floor. note: a sentence under the title.
    """

    name: str
    title: str
    line: CutLine
    window: Window | None = None
    layers: bool = False
    note: str = ""


def section_shots(work: Job) -> tuple[Shot, ...]:
    """Return the cuts through the whole house; that at a bleeder is a detail alone."""
    whole = {name: line for name, line in work.cuts.items() if name != "bleeder"}
    return tuple(Shot(f"section-{name}", CUTS[name], line) for name, line in whole.items())


def detail_shots(work: Job) -> tuple[Shot, ...]:
    """Return the details: footing and drain, floor at the wall, pier, sump pit."""
    return tuple(shot for shot in _details(work) if shot.window)


def _details(work: Job) -> Iterator[Shot]:
    layout = work.layout
    for name, line in work.cuts.items():
        faces = faces_of(work.foundation, line)
        if name == "across":
            window = detail_window(layout, faces)
            yield Shot("detail-footing", "Footing and drain", line, window)
            yield floor_shot(work)
        elif name == "pier":
            yield Shot("detail-pier", "Pier", line, pier_window(layout, line))
        elif name == "sump":
            window = detail_window(layout, faces)
            yield Shot("detail-sump", "Sump pit", line, window)
        elif name == "bleeder":
            window = detail_window(layout, faces)
            yield Shot("detail-bleeder", "Bleeder through the footing", line, window)
    yield from _edges(work)


def _edges(work: Job) -> Iterator[Shot]:
    """Yield a detail of footing and floor for every area made otherwise than those before it."""
    first, *others = work.layout.areas
    seen = [(first.footing, first.wall, first.floor)]
    for number, area in enumerate(others, start=2):
        made = (area.footing, area.wall, area.floor)
        line = edge_cut(area)
        if made not in seen and line is not None:
            seen.append(made)
            title = f"Footing and floor, {area.name}"
            yield Shot(f"detail-area-{number}", title, line, edge_window(area, line))


def floor_shot(work: Job, title: str = "Floor at the wall", note: str = "") -> Shot:
    """Return the detail of the floor's layers at the first wall."""
    line = work.cuts["across"]
    return Shot("detail-floor", title, line, floor_window(work.layout, line), True, note)


def detail_of(work: Job, line: CutLine) -> Shot:
    """Return the detail at the first footing of any cut. Raises BedcourseError without one."""
    window = detail_window(work.layout, faces_of(work.foundation, line))
    if window is None:
        raise BedcourseError(
            "this cut goes through no footing; a detail needs one, move the cut or name a window"
        )
    return Shot("detail", "Detail at the footing", line, window)


def picture_of(work: Job, shot: Shot) -> Picture:
    """Return what a cut shows, ready to be drawn at any scale."""
    layout, line, window = work.layout, shot.line, shot.window
    faces = faces_of(work.foundation, line)
    strings = detail_strings(faces, window, shot.layers) if window else whole_strings(faces)
    return Picture(
        shot.name,
        shot.title,
        faces,
        levels_at(layout, line, window),
        _words(work, shot),
        layout.design.project.units,
        bars=tuple(_in_concrete(bar_marks(layout, line), faces)),
        strings=strings,
        steps=line.steps,
        floats=_floats(layout, line) if window else None,
        standing=_standing(layout, line),
        note=shot.note,
        window=window,
    )


def _floats(layout: Layout, line: CutLine) -> Floats | None:
    """Return the levels of the pump's switches where the cut goes through the pit."""
    pit = layout.sump
    if pit is None:
        return None
    inside = [(a, b) for a, b in line.spans(pit.inner_circle) if b > a]
    levels = tuple(z for z in (pit.pump_off, pit.pump_on, pit.alarm) if z is not None)
    return Floats(*inside[0], levels) if inside and levels else None


def _standing(layout: Layout, line: CutLine) -> Standing:
    """Return the water table, with the pit's inside where the cut goes through it."""
    pit = layout.sump
    inside = [(a, b) for a, b in line.spans(pit.inner_circle) if b > a] if pit else []
    if pit is None or not inside:
        return Standing(table_of(layout))
    (start, end), top = inside[0], pit.area.finished_floor
    return Standing(table_of(layout), (start, pit.floor, end, top))


def _words(work: Job, shot: Shot) -> dict[str, str]:
    """Return the wording of every part; small parts are named on details alone."""
    crossed = areas_crossed(work.layout, track_of(shot.line, shot.window))
    words = part_words(work.layout, work.foundation, crossed)
    if shot.window:
        return words
    small = {s.label.part for s in work.foundation.solids if s.label.role in _SMALL}
    return {part: wording for part, wording in words.items() if part not in small}


def _in_concrete(bars: Sequence[BarMark], faces: Sequence[CutFace]) -> list[BarMark]:
    """Return the bars that lie in the footing's cut face, not in a sleeve's bore."""
    concrete = shapely.union_all([f.shape for f in faces if f.label.role == "footing"])
    return [b for b in bars if concrete.contains(shapely.Point(b.distance, b.level))]


def faces_of(foundation: Foundation, line: CutLine) -> tuple[CutFace, ...]:
    """Return the cut faces of all parts and of the hole they stand in."""
    return cut((*foundation.solids, foundation.excavation), line)


def still_view(layout: Layout, foundation: Foundation, kind: Kind, line: CutLine) -> View:
    """Return the usual still of a kind; only what is cut or pulled apart bears labels."""
    words = {} if kind == "whole" else part_words(layout, foundation)
    return View(kind, cut=larger_half_kept(layout, line), labels=words, fitted=True)


def larger_half_kept(layout: Layout, line: CutLine) -> CutLine:
    """Return the cut so turned that the larger part of the house lies behind it: to its left."""
    start, run = np.asarray(line.start), np.subtract(line.end, line.start)
    along = run / np.hypot(*run) * _FAR_M
    left = np.array((-along[1], along[0]))
    corners = (start - along, start + along, start + along + left, start - along + left)
    behind = layout.ground.house.intersection(shapely.Polygon(corners))
    return line if 2 * behind.area >= layout.ground.house.area else CutLine(line.end, line.start)
