"""The drain's wrap as it is cut: developed width, a piece for each straight, and against a sock."""

from dataclasses import dataclass

from geometry.formulas.wrap import area_ratio, sock_area
from geometry.layout.drain import DrainLayout
from geometry.layout.drain_route import side_lengths
from geometry.layout.drain_stone import developed_width
from geometry.layout.lay import Layout
from geometry.plan.route import lengths_along


@dataclass(frozen=True)
class WrapPiece:
    """Fabric for one straight of the drain: the outline's side, and the length to cut, metres."""

    side: int
    length_m: float


@dataclass(frozen=True)
class WrapSheet:
    """The whole wrap. Lengths in metres, areas in m2, ratios to a sock of the same pipe length.

    girth_ratio: all the fabric round the stone over the sock. soil_ratio: only what lies against
    soil (under, outside and on top), not what lies against the footing and the wall.
    """

    width_m: float
    lap_m: float
    bend_lap_m: float
    pieces: tuple[WrapPiece, ...]
    length_m: float
    area_m2: float
    sock_area_m2: float
    girth_ratio: float
    soil_ratio: float


def wrap_sheet(layout: Layout, bend_lap_m: float | None = None) -> WrapSheet | None:
    """Return the drain's wrap; None without a drain.

    bend_lap_m: overlap of one piece on the next at a bend; the overlap on top unless given.
    """
    drain = layout.drain
    if drain is None:
        return None
    lap = drain.drain.wrap.overlap
    bend = lap if bend_lap_m is None else bend_lap_m
    pieces = wrap_pieces(drain, bend)
    width, length = developed_width(drain), sum(p.length_m for p in pieces)
    sock = sock_area(drain.pipe.outside_diameter_m)
    return WrapSheet(
        width, lap, bend, pieces, length, width * length, sock * drain.run_length,
        area_ratio(width - lap, sock), area_ratio(_against_soil(drain), sock),
    )  # fmt: skip


def wrap_pieces(drain: DrainLayout, bend_lap: float) -> tuple[WrapPiece, ...]:
    """Return each straight as long as its trench's longer edge, with the lap at its far bend."""
    outer = lengths_along(drain.base, drain.line_at(drain.drain.stone.width))
    inner = lengths_along(drain.base, drain.line_at(0.0))
    closed = drain.route.closed
    numbers = drain.corners if closed else drain.corners[:-1]
    sides = [side for side, _ in side_lengths(drain)]
    found = []
    for place, (side, number) in enumerate(zip(sides, numbers, strict=True)):
        number %= len(outer)
        lap = bend_lap if closed or place + 1 < len(numbers) else 0.0
        found.append(WrapPiece(side, float(max(outer[number], inner[number], 0.0)) + lap))
    return tuple(found)


def _against_soil(drain: DrainLayout) -> float:
    """Girth that meets soil, metres: the trench's bottom, its outer side, and the top."""
    width, tall = drain.drain.stone.width, drain.stone_top - drain.stone_bottom
    return width + tall + width + drain.shelf
