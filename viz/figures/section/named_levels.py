"""The levels a section names: of the areas it crosses, the drain, the pit and the ground."""

from collections.abc import Iterator, Mapping

import numpy as np
import shapely
from shapely import MultiLineString

from geometry.layout.areas import AreaLayout
from geometry.layout.footings import pad_prism, pier_name
from geometry.layout.lay import Layout
from geometry.sections.face import CutLine
from viz.figures.section.level_mark import LevelMark
from viz.figures.section.view import Window
from viz.figures.watertable import table_of
from viz.words import told_apart

# Levels that only details name.
_CLOSE_ONLY = ("Foam top", "Subgrade", "Drain trench bottom", "Bleeder invert", "Pad ")
# Levels nearer than this are one; names of one level share a line up to so many letters.
_SAME_M = 5e-4
_LONGEST = 36


def levels_at(layout: Layout, line: CutLine, window: Window | None) -> tuple[LevelMark, ...]:
    """Return the levels a cut's sheet names: of the areas it crosses, the drain and the ground."""
    track = track_of(line, window)
    crossed = areas_crossed(layout, track)
    many = len(crossed) > 1
    found = dict(_ground(layout))
    for area in crossed:
        found |= {f"{name}, {area.name}" if many else name: z for name, z in _area(area, track)}
    pit = dict(_sump(layout, track, window is not None))
    found |= dict(_drains(layout, line, window)) | pit
    # The whole house leaves small levels to details, and the pit's detail the foam's to others.
    left = _CLOSE_ONLY if window is None else ("Foam top",) if pit else ()
    found = {name: z for name, z in found.items() if not name.startswith(left)}
    datum = layout.design.datum.top_of_footing
    return tuple(LevelMark(name, z, datum + z) for name, z in _together(found))


def _together(found: Mapping[str, float]) -> Iterator[tuple[str, float]]:
    """Yield names with their levels; names of one level together, where they stay short."""
    by_level: dict[float, list[str]] = {}
    for name, level in found.items():
        near = next((z for z in by_level if abs(z - level) < _SAME_M), level)
        by_level.setdefault(near, []).append(name)
    for level, names in by_level.items():
        line = names[0]
        for name in names[1:]:
            longer = f"{line}, {name[0].lower()}{name[1:]}"
            if len(longer) > _LONGEST:
                yield line, level
                line = name
            else:
                line = longer
        yield line, level


def track_of(line: CutLine, window: Window | None = None) -> MultiLineString:
    """Return a cut on the plan, or the stretch of it that a window shows."""
    return line.track(window[0], window[2]) if window else line.track()


def areas_crossed(layout: Layout, track: MultiLineString) -> list[AreaLayout]:
    """Return the areas a cut on the plan goes through."""
    return [a for a in layout.areas if a.outline.intersection(track).length > 0]


def _area(area: AreaLayout, track: MultiLineString) -> Iterator[tuple[str, float]]:
    """Yield an area's levels; those of its footing only where the cut goes through it."""
    yield "Top of wall", area.wall_top
    yield "Finished floor", area.finished_floor
    foam = [n for n, layer in enumerate(area.floor.layers) if layer.role == "insulation"]
    if foam:
        yield "Foam top", area.stack.levels[foam[-1] + 1]
    yield "Top of footing", area.tof
    yield "Subgrade", area.subgrade
    if area.footings.intersects(track):
        yield "Footing bottom", area.footing_bottom
    for number, pier in enumerate(area.area.piers):
        pad = pad_prism(area, pier)
        if pad.region.intersects(track):
            name = pier_name(area, number)
            yield f"Pad {name} top", pad.top
            yield f"Pad {name} bottom", pad.bottom


def _ground(layout: Layout) -> Iterator[tuple[str, float]]:
    yield "Finished grade at the wall", layout.ground.at_wall
    yield from table_of(layout).named


def _drains(layout: Layout, line: CutLine, window: Window | None) -> Iterator[tuple[str, float]]:
    """Yield the pipes' inverts wherever the cut crosses them, from the left, and a bleeder's."""
    low, high = (window[0], window[2]) if window else (0.0, line.length)
    bottoms: dict[str, float] = {}
    for drain in layout.drains:
        which = told_apart(drain, layout.drains)
        of = f", {which}" if which else ""
        crossed = [d for d in line.crossings(drain.route.line) if low <= d <= high]
        names = ["Drain invert"] if len(crossed) == 1 else [f"Drain invert {n}" for n in _COUNTED]
        if of and not drain.rise:
            crossed, names = crossed[:1], ["Drain invert"]
        elif of and window is None:
            # Of several drains the whole house names one invert each; details name them all.
            crossed = crossed[:1]
        for name, distance in zip(names, crossed, strict=False):
            yield f"{name}{of}", drain.invert(drain.route.station_of(line.place(distance)))
        if crossed:
            bottoms[of] = drain.stone_bottom
    one = bottoms and max(bottoms.values()) - min(bottoms.values()) < _SAME_M
    for of, level in bottoms.items():
        yield f"Drain trench bottom{'' if one else of}", level
    track = track_of(line, window)
    for bleeder in layout.bleeders:
        middle = shapely.Point(np.add(bleeder.outer_end, bleeder.inner_end)[:2] / 2)
        if track.distance(middle) < bleeder.radius:
            yield "Bleeder invert", bleeder.outer_end[2] - bleeder.pipe.inside_diameter_m / 2


_COUNTED = ("at the left", "further right", "third", "fourth")


def _sump(layout: Layout, track: MultiLineString, close: bool) -> Iterator[tuple[str, float]]:
    """Yield the pit's levels; a cut through the whole house names its bottom alone."""
    pit = layout.sump
    if pit is None or not pit.inner_circle.intersects(track):
        return
    yield "Sump inside bottom", pit.floor
    if not close:
        return
    if pit.lead:
        yield "Invert of the pipe into the pit", pit.lead.end_invert
    for name, level in (
        ("Pump off", pit.pump_off),
        ("Pump on", pit.pump_on),
        ("High-water alarm", pit.alarm),
    ):
        if level is not None:
            yield name, level
