"""Foam: which boards make a layer, courses laid over each area, boards and tape to buy."""

from collections.abc import Iterator
from functools import lru_cache
from math import ceil

import numpy as np
import shapely
from shapely.geometry.base import BaseGeometry

from geometry.layout.bodies import Body
from geometry.layout.lay import Layout
from geometry.materials.catalogue import BOARDS
from geometry.parts.usual import GIVEN, Factor
from geometry.plan.outline import GRID_M, polygons
from geometry.takeoff.boards import BoardLayout, lay_boards
from geometry.takeoff.offcuts import Size
from geometry.takeoff.row import Cut, Part, Row
from geometry.takeoff.sticks import cut_runs
from geometry.takeoff.tape import tape_row
from geometry.takeoff.usual import factor

_SAME_M = 1e-4
_MOST_COURSES = 3


def board_layouts(layout: Layout) -> Iterator[tuple[Body, tuple[BoardLayout, ...]]]:
    """Yield each foam layer with its courses from the bottom up, ready to be drawn on the plan."""
    for body in layout.floors:
        if body.label.role == "insulation" and body.prisms:
            yield body, _courses(layout, body)


@lru_cache(maxsize=16)
def _courses(layout: Layout, body: Body) -> tuple[BoardLayout, ...]:
    """Lay the courses; every other one is shifted by a quarter, so that no joint goes through."""
    count, (width, length) = len(_thicknesses(body)), board_size(layout, body)
    reuse, region = layout.design.order.board.reuse, covered(body)
    laid = [lay_boards(region, width, length, reuse, n / 4) for n in range(min(2, count))]
    return tuple(laid[n % 2] for n in range(count))


def board_size(layout: Layout, body: Body) -> Size:
    """Return width and length of a board, metres: the design's, or the catalogue's."""
    row, asked = BOARDS[body.label.material], layout.design.order.board
    return asked.width or row.width_m, asked.length or row.length_m


def covered(body: Body) -> BaseGeometry:
    """Return the plan a layer covers anywhere in its thickness."""
    regions = [p.region for p in body.prisms]
    return regions[0] if len(regions) == 1 else shapely.union_all(regions, grid_size=GRID_M)


def _thicknesses(body: Body) -> tuple[float, ...]:
    return courses(body.top - body.bottom, BOARDS[body.label.material].thicknesses_m)


def courses(thickness_m: float, sold_m: tuple[float, ...]) -> tuple[float, ...]:
    """Return the fewest boards one on another that make a thickness, the thickest first.

    A thickness that no three of those sold make is a board of its own.
    """
    sums: list[tuple[float, ...]] = [(t,) for t in sold_m]
    for _ in range(_MOST_COURSES):
        exact = [s for s in sums if abs(sum(s) - thickness_m) < _SAME_M]
        if exact:
            return max(exact)
        sums = [(*s, t) for s in sums for t in sold_m if t <= s[-1]]
    return (thickness_m,)


def foam_rows(layout: Layout) -> Iterator[Row]:
    """Yield the boards of each layer, edge boards, and tape for the joints of each top course."""
    joints: list[Part] = []
    for body, laid in board_layouts(layout):
        yield _boards(layout, body, laid)
        joints.append(Part(body.label.area, laid[-1].joints_m))
    for body in layout.floors:
        if body.label.role == "edge board" and body.prisms:
            yield _edge(layout, body)
    if sum(p.in_place for p in joints) > 0:
        yield tape_row(layout.design, "foam", joints)


def _boards(layout: Layout, body: Body, laid: tuple[BoardLayout, ...]) -> Row:
    label, spare = body.label, factor(layout.design, "board.spare")
    needed = sum(course.boards for course in laid)
    first = laid[0]
    bought = ceil(needed * (1 + spare.value) - 1e-9)
    return Row(
        "foam", label.name, label.material, label.area, float(first.region.area), "m2",
        (*_sides(layout, body), spare), bought * first.width * first.length, "board",
        bought, note=_said(body, laid),
    )  # fmt: skip


def _sides(layout: Layout, body: Body) -> tuple[Factor, ...]:
    asked = layout.design.order.board
    row = BOARDS[body.label.material]
    printed = str((row.source, *row.also)[-1])
    width, length = board_size(layout, body)
    return (
        Factor("board width", width, "m", GIVEN if asked.width else printed),
        Factor("board length", length, "m", GIVEN if asked.length else printed),
    )


def _said(body: Body, laid: tuple[BoardLayout, ...]) -> str:
    first, many = laid[0], len(laid)
    words = [f"{first.whole} laid whole, {first.cut} cut" + (" in a course" if many > 1 else "")]
    words.append(
        f"{sum(c.boards for c in laid)} boards with offcuts used, "
        f"{sum(c.without_reuse for c in laid)} without, {sum(c.least for c in laid)} by area alone"
    )
    words += [f"{many} courses"] if many > 1 else []
    sold = BOARDS[body.label.material].thicknesses_m
    if all(abs(_thicknesses(body)[0] - t) > _SAME_M for t in sold):
        words.append("no board known to be sold makes this thickness")
    return "; ".join(words)


def _edge(layout: Layout, body: Body) -> Row:
    """Boards ripped into strips as high as the edge; strips cut to the walls, ends used again."""
    label, area = body.label, layout.area(body.label.area)
    width, length = board_size(layout, body)
    high = body.top - body.bottom
    lanes = max(1, int(width / high + 1e-9))
    walls = [Cut("wall", float(step)) for p in polygons(area.room) for step in _steps(p.exterior)]
    strips = cut_runs(walls, length).stocks
    boards = ceil(len(strips) / lanes)
    spare = factor(layout.design, "board.spare")
    return Row(
        "foam", label.name, label.material, label.area, sum(w.length_m for w in walls), "m",
        (*_sides(layout, body), spare), len(strips) * length, "board",
        ceil(boards * (1 + spare.value) - 1e-9),
        note=f"{len(strips)} strips, {lanes} from a board",
    )  # fmt: skip


def _steps(ring: BaseGeometry) -> list[float]:
    return list(np.hypot(*np.diff(np.asarray(ring.coords), axis=0).T))
