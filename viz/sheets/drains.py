"""The drain's figures as asked for: profile whole or in parts, pipe, outlets, heights."""

from collections.abc import Callable
from dataclasses import replace
from functools import partial

from geometry.layout.drain import DrainLayout
from geometry.layout.lay import Layout
from geometry.units import System
from geometry.water.daylight import DaylightRun, daylight_runs
from viz.drawing.figure import Figure
from viz.drawing.page import Box
from viz.drawing.scale import SCALES, Scale
from viz.figures.heights.heights import heights_figure
from viz.figures.outlet.outlet import outlet_figure
from viz.figures.pipe.pipe import pipe_figure
from viz.figures.profile.profile import profile_figure, profile_parts
from viz.figures.section.setting import Labelling
from viz.sheets.compose import Wanted, cased

# The ratio beyond which the profile gains nothing, and the one at which it is easily read.
_PROFILE = (48, 128)
_PIPE = (4, 5)
_HEIGHTS = (8, 20)
_OUTLET = (48, 128)
# The profile's and the outlet's own ways of labelling: in full, then with little beside.
_WAYS: tuple[Labelling, ...] = ("words", "narrow")


def drain_wanted(layout: Layout, room: Box, text: float) -> tuple[Wanted, ...]:
    """Return every drain's profile, its pipe across where that differs, and outlets to daylight.

    room: for figures, mm. A profile is whole where it fits at a scale easily read; else each
    branch is drawn alone.
    """
    found: list[Wanted] = []
    made: list[tuple[object, ...]] = []
    for view in layout.views():
        drain = view.drain
        if drain is None:
            continue
        found += _profiles(view, drain, room, text)
        way = (drain.pipe, drain.drain.holes, drain.drain.stone, drain.drain.wrap)
        if way not in made:
            made.append(way)
            size = 3 * drain.pipe.outside_diameter_m
            title = f"The pipe{_which(layout, drain)}"
            draw = partial(_pipe, view, text)
            found.append(Wanted(title, (size, size), draw, *_PIPE, ("words",)))
    return (*found, *outlets_wanted(layout, room, text))


def _which(layout: Layout, drain: DrainLayout) -> str:
    """Return words that tell a drain from others, after a comma; empty for an only one."""
    return f", {drain.title}" if len(layout.drains) > 1 else ""


def outlets_wanted(layout: Layout, room: Box, text: float) -> tuple[Wanted, ...]:
    """Return the drawing of every outlet to daylight of the house's drains.

    One is left out where the paper is too small for it at every scale.
    """
    system = layout.design.project.units
    scales = [s for s in SCALES[system] if s.ratio >= _OUTLET[0]]
    found = []
    for drain, run, number in _runs(layout):
        draw = partial(_outlet, layout, drain, run, number, room.width, text)
        if any(_fits_at(draw, s, room, text, system) for s in reversed(scales)):
            title = f"The outlet to daylight{f' {number}' if number else ''}"
            size = (run.reach_m, run.start_m - run.end_invert_m)
            found.append(Wanted(title, size, draw, *_OUTLET, _WAYS))
    return tuple(found)


def _runs(layout: Layout) -> list[tuple[DrainLayout, DaylightRun, int]]:
    """Return every outlet that can be drawn, with its drain and its number; 0 for the only one."""
    found = [(d, run) for d in layout.drains for run in daylight_runs(d) if not run.at_once]
    return [(d, run, n if len(found) > 1 else 0) for n, (d, run) in enumerate(found, 1)]


def heights_wanted(layout: Layout, room: Box, text: float) -> tuple[Wanted, ...]:
    """Return every height of each drain at once, with the rules on them; none without a drain.

    Left out where the paper is too small for it at a scale easily read.
    """
    found = []
    system = layout.design.project.units
    scales = [s for s in SCALES[system] if _HEIGHTS[0] <= s.ratio <= _HEIGHTS[1]]
    for view in layout.views():
        drain, draw = view.drain, partial(_heights_at, view, text)
        if drain is None or not any(_fits_at(draw, s, room, text, system) for s in scales):
            continue
        across = drain.area.footing.width + drain.drain.stone.width
        size = (2 * across, drain.stone_top - drain.stone_bottom)
        title = f"The drain's heights{_which(layout, drain)}"
        found.append(Wanted(title, size, draw, *_HEIGHTS, ("words",)))
    return tuple(found)


def _profiles(layout: Layout, drain: DrainLayout, room: Box, text: float) -> tuple[Wanted, ...]:
    system, parts = layout.design.project.units, range(profile_parts(layout))
    high = drain.stone_top - drain.stone_bottom
    draw = partial(_profile, layout, room.width, text, None)
    if len(parts) < 2 or _easily_read(draw, room, text, system):
        size = (drain.route.length, high)
        title = f"The drain's profile{_which(layout, drain)}"
        return (Wanted(title, size, draw, *_PROFILE, _WAYS),)
    size = (min(drain.branches()), high)
    return tuple(
        Wanted(
            f"The drain's profile{_which(layout, drain)}, part {part + 1}",
            size,
            partial(_profile, layout, room.width, text, part),
            *_PROFILE,
            _WAYS,
        )
        for part in parts
    )


def _easily_read(
    draw: Callable[[Scale, Labelling], Figure], room: Box, text: float, system: System
) -> bool:
    """Tell whether a profile with narrow sides fits at the smallest scale easily read."""
    scale = max((s for s in SCALES[system] if s.ratio <= _PROFILE[1]), key=lambda s: s.ratio)
    return _fits_at(draw, scale, room, text, system)


def _fits_at(
    draw: Callable[[Scale, Labelling], Figure], scale: Scale, room: Box, text: float, system: System
) -> bool:
    """Tell whether a figure with narrow sides fits the room at a scale."""
    taken = cased(draw(scale, "narrow"), text, system)
    return taken.width <= room.width and taken.height <= room.height


def _profile(
    layout: Layout, widest: float, text: float, part: int | None, scale: Scale, way: Labelling
) -> Figure:
    compact = way != "words"
    return _there(profile_figure(layout, scale, text, None, part, compact, widest))


def _pipe(layout: Layout, text: float, scale: Scale, _way: Labelling) -> Figure:
    return _told(layout, _there(pipe_figure(layout, scale, text)))


def _heights_at(layout: Layout, text: float, scale: Scale, _way: Labelling) -> Figure:
    return _told(layout, _there(heights_figure(layout, scale, text)))


def _outlet(
    layout: Layout, drain: DrainLayout, run: DaylightRun, number: int, widest: float, text: float,
    scale: Scale, way: Labelling,
) -> Figure:  # fmt: skip
    compact = way != "words"
    return _there(outlet_figure(layout, drain, run, scale, text, None, compact, widest, number))


def _told(layout: Layout, figure: Figure) -> Figure:
    """Return a figure of the drain in view under its title, where there are others."""
    drain = layout.drain
    if drain is None or len(layout.drains) < 2:
        return figure
    name = figure.name.replace("drain", drain.key.replace(" ", "-"), 1)
    return replace(figure, name=name, title=f"{figure.title}, {drain.title}")


def _there(figure: Figure | None) -> Figure:
    if figure is None:
        raise ValueError("there is no drain to draw")
    return figure
