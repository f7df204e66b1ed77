"""The heights of the drain without the rules, for a wide and for a narrow screen."""

from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import replace

import shapely
from shapely import LineString, MultiPolygon, Polygon, box

from geometry.layout.lay import Layout
from geometry.units import show_level
from viz.drawing.figure import Figure, extent, figure, moved
from viz.drawing.marks import Area, Fill, Hatch, Line, Mark, Strokes
from viz.drawing.page import Box
from viz.figures.heights.frame import Frame
from viz.figures.heights.heights import Shown, floor_taken, section_marks, shown_of, water_shown
from viz.figures.heights.labels import (
    HEADS,
    RINGS,
    Lettering,
    Row,
    called,
    column_marks,
    number_mark,
    reference_rows,
    room_height,
    room_marks,
)
from viz.figures.heights.picture import picture_marks, shown_levels, water_marks, zigzag
from viz.figures.tables.figure import Signs, table_figures
from viz.figures.watertable import table_of, told_outside
from viz.style.lines import SEEN
from viz.tables.table import Table

TITLE = "Heights of the drain"
# Ratios tried, the largest picture first; widths and text heights of the two pictures, mm.
_RATIOS = (12, 14, 16, 18, 20, 24, 28, 32, 36, 40, 48)
_WIDE, _WIDE_TEXT, _NARROW, _NARROW_TEXT = 336.0, 3.0, 108.0, 2.6
_Drawn = tuple[list[Mark], str]
# Between the two ends, and over the key, mm.
_APART = 5.0


def heights_pictures(layout: Layout) -> tuple[Figure, Figure] | None:
    """Return the section lettered in words for a wide screen, its two ends by numbers for a narrow.

    The numbers' key under the narrow one gives the heights at both ends. None without a drain.
    """
    shown = shown_of(layout, 1.0)
    return None if shown is None else (_wide(shown), _narrow(shown))


def _largest(shown: Shown, drawn: Callable[[Shown], _Drawn], most: float) -> Shown:
    """Return what is drawn at the largest scale that keeps a width, mm; else at the smallest.

    Words keep their size and the rest follows the scale, so two scales tell the width at any.
    """
    (one, first), (two, second) = (
        (ratio, extent(drawn(replace(shown, per_metre=1000 / ratio))[0]).width)
        for ratio in (_RATIOS[0], _RATIOS[-1])
    )
    growth = (first - second) / (1 / one - 1 / two)
    fixed = first - growth / one
    fitting = [ratio for ratio in _RATIOS if fixed + growth / ratio <= most]
    return replace(shown, per_metre=1000 / next(iter(fitting), _RATIOS[-1]))


def _wide(shown: Shown) -> Figure:
    lettering = Lettering(_WIDE_TEXT, shown.layout.design.project.units)
    largest = _largest(shown, lambda one: section_marks(one, lettering), _WIDE)
    marks, told = section_marks(largest, lettering)
    return figure("drain-heights", TITLE, marks, None, f"Floor shortened. {told}".strip())


def _narrow(shown: Shown) -> Figure:
    largest = _largest(shown, _ends, _NARROW)
    marks, told = _ends(largest)
    marks += _key(largest, extent(marks))
    return figure("drain-heights", TITLE, marks, None, f"Floor cut off. {told}".strip())


def _ends(shown: Shown) -> _Drawn:
    """Return the low point's half of the section over the high point's, lettered by numbers."""
    drain, system = shown.drain, shown.layout.design.project.units
    lettering = Lettering(_NARROW_TEXT, system, _keys(shown))
    rows = reference_rows(shown.figures, drain.area.tof, system)
    marks: list[Mark] = []
    for head, invert, levels in (
        (HEADS[-1], drain.outlet_invert, shown.figures.low_m),
        (HEADS[1], drain.high_invert, shown.figures.high_m),
    ):
        frame = _frame(shown, invert, rows, lettering)
        half = [*_half(frame, shown, rows, lettering, levels, head)]
        down = extent(marks).low - _APART - extent(half).high if marks else 0.0
        marks += moved(half, 0.0, down)
    bounds = shown_levels(_frame(shown, drain.outlet_invert, rows, lettering))
    return marks, told_outside(table_of(shown.layout), *bounds, drain.area.tof, system)


def _frame(shown: Shown, invert: float, rows: list[Row], lettering: Lettering) -> Frame:
    """Return the frame of one end; its room is so wide that the break lies beyond what is kept."""
    area, drain = shown.drain.area, shown.drain
    half = _kept(rows, lettering) + floor_taken(drain) * shown.per_metre
    plain = Frame(drain, shown.per_metre, half, 0.0, (invert, invert))
    over = plain.y(area.finished_floor) + room_height(rows, lettering)
    return replace(plain, top=max(over, plain.y(drain.stone_top)) + 3.0)


def _kept(rows: list[Row], lettering: Lettering) -> float:
    """Return how much of the floor is kept from the footing's inner edge, mm."""
    return (len(rows) + 0.6) * RINGS * lettering.text


def _half(
    frame: Frame, shown: Shown, rows: list[Row], lettering: Lettering,
    levels: Mapping[str, float], head: str,
) -> Iterator[Mark]:  # fmt: skip
    water = water_shown(shown, frame)
    picture = [*picture_marks(frame), *water_marks(frame, table_of(shown.layout))]
    edge = -frame.inner + _kept(rows, lettering)
    yield from _left_of(picture, edge)
    high = frame.y(frame.drain.area.finished_floor) + 1.5
    yield Line(zigzag(edge, frame.low - 1.0, high), SEEN, layer="outline")
    yield from room_marks(frame, rows, lettering)
    yield from column_marks(frame, -1, {**levels, **water}, lettering, head)


def _left_of(marks: Iterable[Mark], edge: float) -> Iterator[Mark]:
    """Yield what of the marks lies left of an edge."""
    room = box(-1e4, -1e4, edge, 1e4)
    for mark in marks:
        match mark:
            case Fill() | Hatch():
                shape = _polygons(mark.shape.intersection(room))
                if not shape.is_empty:
                    yield replace(mark, shape=shape)
            case Line():
                for points in _parts(mark.points, room):
                    yield replace(mark, points=points)
            case Strokes():
                lines = [points for line in mark.lines for points in _parts(line, room)]
                if lines:
                    yield replace(mark, lines=tuple(lines))


def _polygons(shape: shapely.Geometry) -> Area:
    return MultiPolygon([p for p in shapely.get_parts(shape) if isinstance(p, Polygon)])


def _parts(
    points: tuple[tuple[float, float], ...], room: Polygon
) -> Iterator[tuple[tuple[float, float], ...]]:
    for part in shapely.get_parts(LineString(points).intersection(room)):
        if isinstance(part, LineString) and part.length > 0:
            yield tuple((x, y) for x, y in part.coords)


def _named(shown: Shown) -> list[Row | str]:
    """Return what bears a number: levels of floor and footing, then the drain's from the top."""
    system = shown.layout.design.project.units
    drained = sorted(shown.figures.high_m, key=lambda name: -shown.figures.high_m[name])
    rows = reference_rows(shown.figures, shown.drain.area.tof, system)
    return [*rows, *drained, *_water(shown)]


def _water(shown: Shown) -> dict[str, float]:
    return water_shown(shown, Frame(shown.drain, shown.per_metre, 0.0, 0.0))


def _keys(shown: Shown) -> dict[str, int]:
    named = (one if isinstance(one, str) else one.name for one in _named(shown))
    return {name: number for number, name in enumerate(named, start=1)}


def _key(shown: Shown, above: Box) -> list[Mark]:
    """Return the key of the numbers under the section: each with its height at both ends."""
    text, rows = _NARROW_TEXT, [_key_row(shown, one) for one in _named(shown)]
    table = Table(("From top of footing", "Low point", "High point"), tuple(rows))
    signs = Signs(
        "", 2.4 * text, [2.2 * text] * len(rows),
        lambda row, place: number_mark(row + 1, _middle(place), text),
    )  # fmt: skip
    (key,) = table_figures("heights", "", table, text, _NARROW, signs=signs)
    return [*moved(key.marks, above.left - key.box.left, above.low - _APART - key.box.high)]


def _key_row(shown: Shown, one: Row | str) -> tuple[str, str, str]:
    if isinstance(one, Row):
        return one.name, one.shown, one.shown
    water, system = _water(shown), shown.layout.design.project.units
    low, high = (
        show_level((ends | water)[one] - shown.drain.area.tof, system)
        for ends in (shown.figures.low_m, shown.figures.high_m)
    )
    return called(one), low, high


def _middle(place: Box) -> tuple[float, float]:
    return (place.left + place.right) / 2, (place.low + place.high) / 2
