"""Pictures in two forms, for a wide and for a narrow screen; the style sheet shows the one."""

from base64 import b64encode
from collections.abc import Iterable
from dataclasses import dataclass
from html import escape

import streamlit as st

from viz.drawing.alone import alone
from viz.drawing.figure import Figure
from viz.export.svg import to_svg
from viz.panels.spoken import escaped, said

# Width and text height of a figure for a wide and for a narrow screen, mm.
WIDE, NARROW = (290.0, 3.0), (106.0, 2.6)


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
    told_narrow: str


def picture(wide: Figure, narrow: Figure) -> Picture:
    """Return both forms of a figure as one picture."""
    forms = (to_svg(alone(wide)), to_svg(alone(narrow)))
    return Picture(wide.title, wide.name, *forms, wide.remark, narrow.remark)


def pictures_of(pairs: Iterable[tuple[Figure | None, Figure | None]]) -> tuple[Picture, ...]:
    """Return the pictures of those pairs of which both forms could be drawn."""
    return tuple(picture(wide, narrow) for wide, narrow in pairs if wide and narrow)


def show(one: Picture) -> None:
    """Show a picture under its title, as wide as its place, with what is told below it."""
    st.html(f'<b class="figure-title">{escape(said(one.title))}</b>')
    images = "".join(
        f'<img class="{kind}" alt="{escape(one.title)}" '
        f'src="data:image/svg+xml;base64,{b64encode(svg.encode()).decode()}">'
        for kind, svg in (("wide", one.wide), ("narrow", one.narrow))
    )
    st.html(f'<div class="sheet fit">{images}</div>')
    if one.told != one.told_narrow:
        rows = (("wide", one.told), ("narrow", one.told_narrow))
        st.html("".join(f'<p class="told {kind}">{escape(words)}</p>' for kind, words in rows))
    elif one.told:
        st.caption(escaped(one.told))
