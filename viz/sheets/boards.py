"""Boards and strips on the plan, a page each: as they are laid, with the list of cuts."""

from collections.abc import Callable, Iterator, Sequence
from dataclasses import replace

from shapely.geometry.base import BaseGeometry

from geometry.layout.lay import Layout
from geometry.takeoff.boards import BoardLayout
from geometry.takeoff.foam import board_layouts, covered
from geometry.takeoff.sheet import strip_layouts
from geometry.takeoff.strips import StripLayout
from geometry.takeoff.usual import factor
from geometry.units import System, show_length
from viz.drawing.figure import Figure, extent
from viz.drawing.page import Box
from viz.drawing.place import NoRoomError
from viz.drawing.scale import SCALES, Scale
from viz.figures.boards.boards import boards_figure
from viz.figures.boards.pieces import Piece, cut_boards, pieces
from viz.figures.boards.strips import strips_figure
from viz.figures.forms.entries import Column, Entry
from viz.figures.forms.form import Form
from viz.figures.forms.grid import Grid
from viz.language.reader import language
from viz.sheets.bound_forms import GAP, Head, bound_pages, heights
from viz.sheets.caption import captioned
from viz.sheets.sheet import Sheet
from viz.sheets.upright import SmallName
from viz.style.text import SMALLEST
from viz.words import material_name

_LIST = 2.8
# The drawing has at most this share of a page that bears a list as well.
_SHARE = 0.66
_NOTCHED = "*"


def board_sheets(layout: Layout, paper: SmallName) -> tuple[Sheet, ...]:
    """Return a page for each course of foam and each area's retarder; empty without any.

    Raises NoRoomError where no scale fits the paper.
    """
    return tuple(
        sheet for pages in (_foam(layout, paper), _retarders(layout, paper)) for sheet in pages
    )


def _foam(layout: Layout, paper: SmallName) -> Iterator[Sheet]:
    for body, courses in board_layouts(layout):
        for number, course in enumerate(courses, 1):
            which = f", course {number} of {len(courses)}" if len(courses) > 1 else ""
            title = f"Boards: {body.label.name}, {body.label.area}{which}"
            told = tuple(_board_words(layout, course, material_name(body.label.material)))
            yield from _board_page(layout, course, _head(layout, title, told), paper)


def _board_words(layout: Layout, course: BoardLayout, material: str) -> Iterator[str]:
    system = layout.design.project.units
    size = f"{show_length(course.width, system)} × {show_length(course.length, system)}"
    yield (
        f"{material}, {size}. {course.boards} boards: {course.whole} laid whole, {course.cut} cut "
        "places hatched. Numbers are the order of laying, row by row; joints are staggered."
    )
    if any(piece.notched for piece in pieces(course)):
        yield f"{_NOTCHED} Notched or cut to shape at wall, pier or pit: measure in place."


def _board_page(
    layout: Layout, course: BoardLayout, head: Head, paper: SmallName
) -> Iterator[Sheet]:
    first, rest, width = heights(head, paper)
    system = layout.design.project.units
    lists = _cut_lists(pieces(course), system, width)
    tall = max((form.pages(1e6)[0].box.height for form in lists), default=0.0)
    room = max(first - tall - GAP, (1 - _SHARE) * first) if lists else first

    def draw(scale: Scale) -> Figure:
        return boards_figure("boards", "Laying plan", course, scale, SMALLEST)

    drawn = _fitted(draw, width, room, system)
    left = first - drawn.box.height - GAP
    pages: list[tuple[Figure, ...]] = [(drawn,)]
    rows = _beside([form.pages(rest, left) for form in lists], width) if lists else []
    if rows:
        pages = [(drawn, rows[0]), *((row,) for row in rows[1:])]
    yield from bound_pages(head, pages, paper, language("en"))


def _cut_lists(found: Sequence[Piece], system: System, width: float) -> list[Form]:
    """Return the list of boards that are cut, in two columns."""
    entries = [Entry((board, _cut_words(mine, system))) for board, mine in cut_boards(found)]
    if not entries:
        return []
    columns = (Column("Board", 16), Column("Cut from it: place: size", 84))
    half, wide = -(-len(entries) // 2), (width - GAP) / 2
    return [
        Form(Grid(columns, _LIST, wide), tuple(part))
        for part in (entries[:half], entries[half:])
        if part
    ]


def _cut_words(mine: Sequence[Piece], system: System) -> str:
    return "; ".join(
        f"{p.number}: {show_length(p.short, system, 8)}×{show_length(p.long, system, 8)}"
        f"{_NOTCHED if p.notched else ''}"
        for p in mine
    )


def _beside(columns: Sequence[Sequence[Figure]], width: float) -> list[Figure]:
    """Return the pieces of two lists side by side, one figure for each page."""
    rows = []
    for number in range(max(map(len, columns))):
        row = [column[number] for column in columns if number < len(column)]
        step = (width + GAP) / 2
        marks = [
            mark
            for place, piece in enumerate(row)
            for mark in piece.at(place * step, -piece.box.height).marks
        ]
        tall = max(piece.box.height for piece in row)
        rows.append(Figure("cuts", "", tuple(marks), Box(0.0, -tall, width, 0.0)))
    return rows


def _retarders(layout: Layout, paper: SmallName) -> Iterator[Sheet]:
    system = layout.design.project.units
    for body, laid in strip_layouts(layout):
        title = f"Strips: {body.label.name}, {body.label.area}"
        told = tuple(_strip_words(layout, laid, material_name(body.label.material)))
        head = _head(layout, title, told)
        first, _, width = heights(head, paper)
        draw = _strips_at(laid, covered(body), system)
        figure = _fitted(draw, width, first, system)
        yield from bound_pages(head, [(figure,)], paper, language("en"))


def _strips_at(laid: StripLayout, floor: BaseGeometry, system: System) -> Callable[[Scale], Figure]:
    def draw(scale: Scale) -> Figure:
        return strips_figure("strips", "Strips", laid, floor, scale, SMALLEST, system)

    return draw


def _strip_words(layout: Layout, laid: StripLayout, material: str) -> Iterator[str]:
    keys = ("roll_width", "lap", "turn_up")
    wide, lap, up = (
        show_length(factor(layout.design, f"sheet.{key}").value, layout.design.project.units)
        for key in keys
    )
    yield (
        f"{material}, roll {wide} wide, strips: {len(laid.strips)}, with the lengths to cut. "
        f"Hatched: laps of {lap}, taped. Dashed: the floor's edge and openings; the sheet is "
        f"turned up {up} at walls. Trim and tape at piers and pit."
    )


def _head(layout: Layout, title: str, told: tuple[str, ...]) -> Head:
    about = layout.design.project
    return Head(about.name, title, told, (), about.date, about.revision)


def _fitted(draw: Callable[[Scale], Figure], width: float, height: float, system: System) -> Figure:
    """Return the figure at the greatest scale that fits, in the middle, its scale under it.

    Raises NoRoomError.
    """
    for scale in SCALES[system]:
        drawn = captioned(draw(scale), 1, SMALLEST, system)
        around = extent(drawn.marks)
        if around.width <= width and around.height <= height:
            middle = (width - around.width) / 2
            moved = replace(drawn, box=around).at(middle, 0.0)
            return replace(moved, box=Box(0.0, 0.0, width, around.height))
    raise NoRoomError("this paper is too small for the boards; choose a larger paper")
