"""The pictures of the view "Water", each for a wide and for a narrow screen, kept by the text."""

from base64 import b64encode
from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass
from html import escape

import streamlit as st

from viz.drawing.alone import alone
from viz.drawing.figure import Figure
from viz.drawing.scale import Scale
from viz.export.svg import to_svg
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

Pair = tuple[Figure | None, Figure | None]
# Width and text height of a figure for a wide and for a narrow screen, mm.
WIDE, NARROW = (290.0, 3.0), (106.0, 2.6)
_WALL_WIDE, _WALL_NARROW = Scale("1:30", 30), Scale("1:40", 40)


@dataclass(frozen=True)
class Picture:
    """One picture as SVG for both screens, with what it is called, its file and what is told.

    told_narrow: under the narrow one, where that differs.
    """

    title: str
    name: str
    wide: str
    narrow: str
    told: str
    told_narrow: str = ""


@st.cache_data(max_entries=24, show_spinner=False)
def pictures(text: str, stage: str, number: int = 0) -> tuple[Picture, ...]:
    """Return the pictures of a stage; none where too little is known to draw them.

    number: of the drain that is looked at.
    """
    found = _DRAWN[stage](Looked(sound_job(text), number))
    return tuple(
        Picture(
            wide.title,
            wide.name,
            to_svg(alone(wide)),
            to_svg(alone(narrow)),
            wide.remark,
            narrow.remark,
        )
        for wide, narrow in found
        if wide is not None and narrow is not None
    )


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


def show(picture: Picture) -> None:
    """Show a picture as wide as its place; the style sheet shows the one that fits the screen."""
    images = "".join(
        f'<img class="{kind}" alt="{escape(picture.title)}" '
        f'src="data:image/svg+xml;base64,{b64encode(svg.encode()).decode()}">'
        for kind, svg in (("wide", picture.wide), ("narrow", picture.narrow))
    )
    st.html(f'<div class="sheet fit">{images}</div>')
    if picture.told != picture.told_narrow:
        rows = (("wide", picture.told), ("narrow", picture.told_narrow))
        st.html("".join(f'<p class="told {kind}">{escape(words)}</p>' for kind, words in rows))
    elif picture.told:
        st.caption(picture.told)
