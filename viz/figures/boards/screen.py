"""Boards and strips as they are laid, for a wide and for a narrow screen, with the boards' cuts."""

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass, replace
from functools import partial

from shapely.geometry.base import BaseGeometry

from geometry.layout.lay import Layout
from geometry.takeoff.boards import BoardLayout
from geometry.takeoff.foam import board_layouts, covered
from geometry.takeoff.sheet import strip_layouts
from geometry.takeoff.strips import StripLayout
from geometry.units import System, show_length
from viz.drawing.figure import Figure
from viz.drawing.scale import Scale
from viz.figures.boards.boards import boards_figure
from viz.figures.boards.pieces import Piece, cut_boards, pieces
from viz.figures.boards.strips import strips_figure
from viz.tables.table import Table
from viz.words import material_name

# Widths, heights and text heights of the two pictures, mm; scales tried, the largest first.
_WIDE, _NARROW = (290.0, 190.0, 3.0), (106.0, 150.0, 2.6)
_SCALES = [
    Scale(f"1:{ratio}", ratio)
    for ratio in (24, 32, 40, 48, 64, 80, 96, 128, 160, 192, 240, 320, 480, 960, 1920)
]
_NOTCHED = "*"
_Draw = Callable[[Scale, float], Figure]


@dataclass(frozen=True)
class Laid:
    """A course of boards, or an area's strips: both pictures, and the boards that are cut."""

    wide: Figure
    narrow: Figure
    cuts: Table | None = None


def laid_pictures(layout: Layout) -> Iterator[Laid]:
    """Yield every course of foam and every area's retarder as it is laid."""
    system = layout.design.project.units
    for body, courses in board_layouts(layout):
        for number, course in enumerate(courses, 1):
            which = f", course {number} of {len(courses)}" if len(courses) > 1 else ""
            title = f"Boards: {body.label.name}, {body.label.area}{which}"
            name = f"boards-{body.label.area}-{number}"
            draw = partial(boards_figure, name, title, course)
            told = _board_words(course, material_name(body.label.material), system)
            yield _laid(draw, told, _cuts(course, system))
    for body, laid in strip_layouts(layout):
        title = f"Strips: {body.label.name}, {body.label.area}"
        name = f"strips-{body.label.area}"
        draw = partial(_strips, name, title, laid, covered(body), system)
        told = f"{material_name(body.label.material)}. Hatched: laps, taped. Dashed: floor's edge."
        yield _laid(draw, told, None)


def _strips(
    name: str, title: str, laid: StripLayout, floor: BaseGeometry, system: System, scale: Scale,
    text: float,
) -> Figure:  # fmt: skip
    return strips_figure(name, title, laid, floor, scale, text, system)


def _laid(draw: _Draw, told: str, cuts: Table | None) -> Laid:
    wide, narrow = (replace(_fitting(draw, *size), remark=told) for size in (_WIDE, _NARROW))
    return Laid(wide, narrow, cuts)


def _fitting(draw: _Draw, width: float, height: float, text: float) -> Figure:
    """Return the figure at the greatest scale that fits, else at the smallest."""
    for scale in _SCALES:
        made = draw(scale, text)
        if made.box.width <= width and made.box.height <= height:
            break
    return made


def _board_words(course: BoardLayout, material: str, system: System) -> str:
    size = f"{show_length(course.width, system)} × {show_length(course.length, system)}"
    notched = any(piece.notched for piece in pieces(course))
    more = f" {_NOTCHED} Cut to shape at wall, pier or pit: measure in place." if notched else ""
    return (
        f"{material}, {size}. {course.boards} boards: {course.whole} laid whole, {course.cut} cut "
        f"places hatched. Numbers are the order of laying; joints are staggered.{more}"
    )


def _cuts(course: BoardLayout, system: System) -> Table | None:
    rows = tuple((board, _cut_words(mine, system)) for board, mine in cut_boards(pieces(course)))
    return Table(("Board", "Cut from it: place: size"), rows) if rows else None


def _cut_words(mine: Sequence[Piece], system: System) -> str:
    return "; ".join(
        f"{p.number}: {show_length(p.short, system, 8)} × {show_length(p.long, system, 8)}"
        f"{_NOTCHED if p.notched else ''}"
        for p in mine
    )
