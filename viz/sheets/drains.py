"""The drain's figures as they are asked for: the profile whole or in parts, pipe, heights."""

from collections.abc import Callable, Iterator
from functools import partial

from geometry.layout.drain import DrainLayout
from geometry.layout.lay import Layout
from geometry.units import System
from viz.drawing.figure import Figure
from viz.drawing.page import Box
from viz.drawing.scale import SCALES, Scale
from viz.figures.heights.heights import heights_figure
from viz.figures.pipe.pipe import pipe_figure
from viz.figures.profile.profile import profile_figure, profile_parts
from viz.figures.section.setting import Labelling
from viz.sheets.compose import GAP, Wanted, cased

# The ratio beyond which the profile gains nothing, and the one at which it is easily read.
_PROFILE = (48, 128)
_PIPE = (4, 5)
_HEIGHTS = (8, 20)
# The profile's own ways of labelling: in full, then with narrow sides.
_WAYS: tuple[Labelling, ...] = ("words", "narrow")


def drain_wanted(layout: Layout, room: Box, text: float) -> tuple[Wanted, ...]:
    """Return the profile, the pipe across and the drain's heights, none without a drain.

    room: for figures, mm. The profile is whole where it fits at a scale easily read; else each
    branch is drawn alone. The heights are left out where the paper is too small for them.
    """
    drain = layout.drain
    if drain is None:
        return ()
    size = 3 * drain.pipe.outside_diameter_m
    pipe = Wanted("The pipe", (size, size), partial(_pipe, layout, text), *_PIPE, ("words",))
    return (*_profiles(layout, drain, room, text), pipe, *_heights(layout, drain, room, text))


def _heights(layout: Layout, drain: DrainLayout, room: Box, text: float) -> Iterator[Wanted]:
    """Yield every height of the drain at once, where it fits at a scale easily read.

    Where it has no place beside the pipe it has a row to itself, and may as well be large.
    """
    system, draw = layout.design.project.units, partial(_heights_at, layout, text)
    scales = [s for s in SCALES[system] if _HEIGHTS[0] <= s.ratio <= _HEIGHTS[1]]
    fitting = [s for s in scales if _fits_at(draw, s, room, text, system)]
    if not fitting:
        return
    pipe = next(s for s in reversed(SCALES[system]) if s.ratio <= _PIPE[1])
    pair = (_pipe(layout, text, pipe, "words"), draw(fitting[-1], "words"))
    beside = sum(cased(figure, text, system).width for figure in pair) + GAP <= room.width
    across = drain.area.footing.width + drain.drain.stone.width
    size = (2 * across, drain.stone_top - drain.stone_bottom)
    enough = fitting[-1 if beside else 0].ratio
    yield Wanted("The drain's heights", size, draw, _HEIGHTS[0], enough, ("words",))


def _profiles(layout: Layout, drain: DrainLayout, room: Box, text: float) -> tuple[Wanted, ...]:
    system, parts = layout.design.project.units, range(profile_parts(layout))
    high = drain.stone_top - drain.stone_bottom
    draw = partial(_profile, layout, room.width, text, None)
    if len(parts) < 2 or _easily_read(draw, room, text, system):
        size = (drain.route.length, high)
        return (Wanted("The drain's profile", size, draw, *_PROFILE, _WAYS),)
    size = (min(drain.branches()), high)
    return tuple(
        Wanted(
            f"The drain's profile, part {part + 1}",
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
    return _there(pipe_figure(layout, scale, text))


def _heights_at(layout: Layout, text: float, scale: Scale, _way: Labelling) -> Figure:
    return _there(heights_figure(layout, scale, text))


def _there(figure: Figure | None) -> Figure:
    if figure is None:
        raise ValueError("there is no drain to draw")
    return figure
