"""What several views share: sheets of paper on the page, buttons that save, sentences."""

from base64 import b64encode
from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from contextlib import contextmanager
from html import escape

import streamlit as st
from streamlit.delta_generator import DeltaGenerator

from geometry.errors import BedcourseError
from geometry.report import Found
from geometry.units import System
from viz.drawing.scale import SCALES, Scale
from viz.issue import SHEET_DPI
from viz.panels import cached
from viz.panels.cells import cell
from viz.panels.figures import FINDINGS_IN_ENGLISH, verdict
from viz.panels.spoken import escaped, foreign, in_english, later, named, said
from viz.tables.report_tables import by_gravity
from viz.tables.table import Cell, Table

LARGE = "large sheet"
XLSX = "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet"
DRAWINGS_IN_ENGLISH = later("The drawings are in English, as on the sheets.")
GREATEST = later("Greatest that fits")
_DPI = later("{dpi} dots for every inch of paper")


def save_button(
    label: str, data: str | bytes | Callable[[], bytes], name: str, kind: str,
    more: str | None = None,
) -> None:  # fmt: skip
    """Show a button that saves a file; pressing it leaves the page as it is.

    data: what is costly is given as a function, called when the button is pressed. more: help.
    """
    st.download_button(
        escaped(label), data, name, kind, icon=":material/download:", on_click="ignore",
        key=f"save {name}", help=more,
    )  # fmt: skip


def save_drawing(svg: str, name: str) -> None:
    """Show buttons that save a drawing as SVG and as PNG."""
    save_button("SVG", svg, f"{name}.svg", "image/svg+xml")
    dots = said(_DPI, dpi=SHEET_DPI)
    save_button(f"PNG, {SHEET_DPI} dpi", lambda: cached.png(svg), f"{name}.png", "image/png", dots)


def sheet(svg: str, title: str) -> None:
    """Show a sheet as wide as its place, or at its size on paper, to be scrolled."""
    picture = b64encode(svg.encode()).decode()
    kind = "sheet large" if st.session_state.get(LARGE) else "sheet"
    image = f'<img alt="{escape(title)}" src="data:image/svg+xml;base64,{picture}">'
    st.html(f'<div class="{kind}" tabindex="0">{image}</div>')


def page(svg: str, title: str) -> None:
    """Show an upright page whole, or at its size on paper, to be scrolled."""
    picture = b64encode(svg.encode()).decode()
    kind = "sheet large" if st.session_state.get(LARGE) else "sheet fit upright"
    image = f'<img alt="{escape(title)}" src="data:image/svg+xml;base64,{picture}">'
    st.html(f'<div class="{kind}" tabindex="0">{image}</div>')


def rows(content: Table) -> None:
    """Show a table of words; on a narrow screen each row becomes a card with its headings.

    Headings and cells that are the app's own words are said in its language.
    """
    heads = [said(name) for name in content.head]
    head = "".join(f"<th>{escape(name)}</th>" for name in heads)
    tell = cell if foreign() else str
    body = "".join(f"<tr>{_cells(heads, row, tell)}</tr>" for row in content.rows)
    st.html(f'<table class="rows"><thead><tr>{head}</tr></thead><tbody>{body}</tbody></table>')


def _cells(head: Sequence[str], row: Sequence[Cell], tell: Callable[[str], str]) -> str:
    words = ("" if one is None else tell(str(one)) for one in row)
    return "".join(
        f'<td data-head="{escape(name)}"{_EMPTY if told in _NOTHING else ""}>{escape(told)}</td>'
        for name, told in zip(head, words, strict=True)
    )


# A cell that says nothing is left out of a card.
_NOTHING, _EMPTY = ("", "–"), ' class="none"'


def lines(title: str, sentences: Iterable[str]) -> None:
    """Show sentences as a list under a title; nothing without any."""
    listed = "".join(f"<li>{escape(words)}</li>" for words in sentences)
    if listed:
        st.html(f'<div class="asked"><b>{escape(said(title))}</b><ul>{listed}</ul></div>')


def stage_choice(names: Sequence[str], key: str) -> str:
    """Show a choice between a page's stages, the first at first; it outlasts another page."""
    outlasting = f"{key} chosen"
    if key not in st.session_state:
        before = st.session_state.get(outlasting)
        st.session_state[key] = before if before in names else names[0]
    chosen = st.segmented_control(
        said("Part of the page"),
        names,
        format_func=named(),
        key=key,
        required=True,
        wrap=True,
        label_visibility="collapsed",
    )
    found = str(chosen) if chosen in names else names[0]
    st.session_state[outlasting] = found
    return found


def large_toggle() -> None:
    """Show the switch between a sheet as wide as its place and one at its size on paper."""
    st.toggle(
        said("Large"), key=LARGE, help=said("As large as on paper; scroll inside the picture")
    )


def scale_choice(label: str, system: System, key: str) -> Scale | None:
    """Show a choice of scales; None leaves it to the paper."""
    scales: Mapping[str, Scale] = {scale.name: scale for scale in SCALES[system]}
    chosen = st.selectbox(
        said(label), [GREATEST, *scales], format_func=named(), key=f"{key} {system}", width=200
    )
    return scales.get(chosen)


def verdicts(found: Iterable[Found]) -> None:
    """Show findings in words, the gravest first; nothing without any."""
    if rows := by_gravity(found):
        in_english(FINDINGS_IN_ENGLISH)
        cards(rows)


def cards(found: Iterable[Found]) -> None:
    """Show findings in words, in their order."""
    st.html("".join(map(verdict, found)))


@contextmanager
def at_work() -> Iterator[Callable[[str], None]]:
    """Show what a long piece of work is at, as it tells, and a button that stops it.

    Pressing the button runs the page anew; the work ends where it next tells what it is at.
    """
    whole = st.empty()
    with whole.container(horizontal=True, vertical_alignment="center"):
        st.button(said("Stop"), icon=":material/stop_circle:", key="stop work")
        place = st.empty()
    yield lambda what: _tell(place, what)
    whole.empty()


def _tell(place: DeltaGenerator, what: str) -> None:
    place.markdown(said("Making {what} ...", what=escaped(what)))


def caution(*words: str) -> None:
    """Show the caution that belongs to a page, sentence by sentence."""
    told = " ".join(map(said, words))
    st.html(f'<p class="caution"><b>{said("Caution.")}</b> {escape(told)}</p>')


def say(error: BedcourseError) -> None:
    """Say what cannot be drawn, as one sentence."""
    st.warning(escaped(f"{str(error)[:1].upper()}{str(error)[1:]}."), icon=":material/info:")
