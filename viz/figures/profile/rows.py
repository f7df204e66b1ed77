"""The band under the profile: one column of figures for every place, tied to where it lies."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from geometry.project import Datum
from geometry.units import System, show_elevation, show_length, show_level, show_rod
from viz.drawing.fonts import text_width
from viz.drawing.marks import Line, Mark, Text
from viz.figures.profile.places import Place
from viz.figures.profile.view import rank
from viz.style.lines import DIMENSION, SEEN
from viz.style.text import DESCENT

_GAP = 3.0
_AIR = 1.4
# Between baselines of one cell, in text heights.
_LINE = 1.6


@dataclass(frozen=True)
class Row:
    """One row of the band: its heading, and a few lines of words for every place."""

    heading: str
    cells: tuple[tuple[str, ...], ...]


def rows(
    places: Sequence[Place], start: str, datum: Datum, system: System, noted: bool
) -> tuple[Row, ...]:
    """Return the band's rows; start: where distances are counted from.

    noted: what else stands at a place is told under its name. The rod reading is given only where
    the survey has a laser.
    """
    elevations = [datum.top_of_footing + place.invert for place in places]
    found = [
        Row("Place", tuple((*p.names, *(_noted(p) if noted else ())) for p in places)),
        Row(f"From {start}", tuple(_distances(place, system) for place in places)),
        Row("Invert from TOF", tuple((show_level(p.invert, system),) for p in places)),
        Row("Invert, elevation", tuple((show_elevation(e, system),) for e in elevations)),
    ]
    if datum.instrument is not None:
        rods = (datum.instrument - e for e in elevations)
        cells = tuple(("above the laser" if r < 0 else show_rod(r, system),) for r in rods)
        found.append(Row("Rod reading", cells))
    return tuple(found)


def _noted(place: Place) -> Iterator[str]:
    return (line for note in place.notes for line in note)


def _distances(place: Place, system: System) -> tuple[str, ...]:
    # A tape along a trench is not read finer than a quarter inch or a millimetre.
    shown = [show_length(round(far, 3), "metric") if system == "metric" else
             show_length(far, system, 4) for far in place.from_low]  # fmt: skip
    return (shown[0], *(f"or {words}" for words in shown[1:]))


def band(
    table: Sequence[Row], xs: Sequence[float], top: float, left: float, text: float
) -> Iterator[Mark]:
    """Yield the rows under the picture, tied to their places.

    xs: where the places stand on paper. top: where the ties may turn aside. left: the headings end
    left of here.
    """
    widths = [_width(table, number, text) for number in range(len(xs))]
    middles = rank(list(zip(xs, widths, strict=True)), _GAP)
    ties, head = tied(xs, middles, top)
    yield from ties
    edge = min(left, middles[0] - widths[0] / 2) - _GAP
    start = edge - max(text_width(row.heading, text, bold=True) for row in table)
    right = middles[-1] + widths[-1] / 2 + _GAP / 2
    y = head
    yield Line(((start, y), (right, y)), SEEN, layer="labels")
    for row in table:
        yield from _row(row, middles, y, start, text)
        y -= _height(row, text)
        yield Line(((start, y), (right, y)), DIMENSION, layer="labels")


def tied(
    xs: Sequence[float], middles: Sequence[float], top: float
) -> tuple[tuple[Line, ...], float]:
    """Return ties from places at the height `top` down to their columns, and where they end, mm."""
    aside = max(abs(a - b) for a, b in zip(xs, middles, strict=True))
    turn = top - max(2.0, min(14.0, 0.35 * aside))
    head = turn - 2.0
    ties = (((x, top), (m, turn), (m, head)) for x, m in zip(xs, middles, strict=True))
    return tuple(Line(points, DIMENSION, layer="leaders") for points in ties), head


def _width(table: Sequence[Row], number: int, text: float) -> float:
    return max(
        text_width(w, text, bold=not n) for row in table for n, w in enumerate(row.cells[number])
    )


def _row(row: Row, middles: Sequence[float], y: float, start: float, text: float) -> Iterator[Mark]:
    first = y - _AIR - text
    yield Text((start, first), row.heading, text, bold=True, layer="labels")
    for middle, cell in zip(middles, row.cells, strict=True):
        for number, words in enumerate(cell):
            at = (middle, first - number * _LINE * text)
            bold = number == 0 and row.heading in ("Place", "Invert from TOF")
            yield Text(at, words, text, bold, "middle", layer="labels")


def _height(row: Row, text: float) -> float:
    lines = max(map(len, row.cells))
    return 2 * _AIR + text + (lines - 1) * _LINE * text + DESCENT * text
