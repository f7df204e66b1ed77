"""The pictures of the view "Water", each for a wide and for a narrow screen, kept by the text."""

from collections.abc import Callable, Iterator, Mapping

from viz.drawing.figure import Figure
from viz.drawing.scale import Scale
from viz.figures.ground.cleanouts import cleanouts_figure
from viz.figures.ground.grading import grading_figure
from viz.figures.ground.strength import strength_figure
from viz.figures.ground.wrap import wrap_figure
from viz.figures.heights.screen import heights_pictures
from viz.figures.outlet.screen import outlet_pictures
from viz.figures.pit.alone import pit_pictures
from viz.figures.pressure.pressure import pressure_figure
from viz.panels.cached import sound_job
from viz.panels.looked import Looked
from viz.panels.pairs import NARROW, WIDE, Picture, pictures_of
from viz.panels.shared import shared

Pair = tuple[Figure | None, Figure | None]
_WALL_WIDE, _WALL_NARROW = Scale("1:30", 30), Scale("1:40", 40)


@shared(96)
def pictures(text: str, stage: str, number: int = 0) -> tuple[Picture, ...]:
    """Return the pictures of a stage; none where too little is known to draw them.

    number: of the drain that is looked at.
    """
    return pictures_of(_DRAWN[stage](Looked(sound_job(text), number)))


def _heights(at: Looked) -> Iterator[Pair]:
    yield heights_pictures(at.layout) or (None, None)


def _outlet(at: Looked) -> Iterator[Pair]:
    yield from outlet_pictures(at.layout)


def _soil(at: Looked) -> Iterator[Pair]:
    filters = at.filters
    wide, narrow = (grading_figure(at.layout, filters, *size) for size in (WIDE, NARROW))
    yield wide, narrow
    wide, narrow = (wrap_figure(filters.wrap, at.system, *size) for size in (WIDE, NARROW))
    yield wide, narrow


def _strength(at: Looked) -> Iterator[Pair]:
    drain = at.drain
    shown = drain.strength if drain else None
    wide, narrow = (strength_figure(shown, at.system, *size) for size in (WIDE, NARROW))
    yield wide, narrow


def _wall(at: Looked) -> Iterator[Pair]:
    wide = pressure_figure(at.layout, _WALL_WIDE, WIDE[1])
    yield wide, pressure_figure(at.layout, _WALL_NARROW, NARROW[1], stacked=True)


def _cleanouts(at: Looked) -> Iterator[Pair]:
    drain = at.drain
    found = drain.cleanouts if drain else None
    wide, narrow = (cleanouts_figure(found, at.system, *size) for size in (WIDE, NARROW))
    yield wide, narrow


def _pit(at: Looked) -> Iterator[Pair]:
    yield pit_pictures(at.layout) or (None, None)


_DRAWN: Mapping[str, Callable[[Looked], Iterator[Pair]]] = {
    "Heights": _heights,
    "Outlet": _outlet,
    "Soil and filter": _soil,
    "Pipe strength": _strength,
    "Wall": _wall,
    "Cleanouts": _cleanouts,
    "Pit and storm": _pit,
}
