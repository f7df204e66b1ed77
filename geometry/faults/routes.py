"""Faults of the drain's way round the house and of what stands in it."""

from collections.abc import Iterator
from dataclasses import replace

import shapely
from shapely import LineString
from shapely.ops import substring

from geometry.faults.common import At, Words
from geometry.faults.drains import CLEAR_M
from geometry.faults.lines import Path
from geometry.layout.areas import AreaLayout
from geometry.layout.drain import DrainLayout
from geometry.layout.drain_route import lay_drain, side_lengths
from geometry.layout.drain_way import at_pipes_height
from geometry.layout.fittings import CAP_M
from geometry.layout.ground import GroundLayout
from geometry.parts.drain import Drain
from geometry.plan.outline import Point
from geometry.plan.route import lengths_along

# Perforated pipe shorter than this between two fittings cannot be laid.
SHORTEST_STICK_M = 0.05


def route_faults(
    path: Path, drain: Drain, area: AreaLayout, pit: Point | None, words: Words
) -> Iterator[At]:
    """Yield the first fault of the route: sides too short to turn round, or apart."""
    try:
        laid = lay_drain("drain", drain, area, pit)
    except (ValueError, IndexError, shapely.errors.GEOSException):
        sentence = "the drain finds no way round this outline; choose other sides"
        yield At((*path, "sides"), sentence)
        return
    for check in (_collapse, _facing, _scattered, _tight):
        found = check(path, laid, words)
        if found:
            yield found
            return


def _collapse(path: Path, laid: DrainLayout, _words: Words) -> At | None:
    outer = lengths_along(laid.base, laid.line_at(laid.drain.stone.width))
    far = replace(laid, drain=laid.drain.model_copy(update={"offset": laid.drain.stone.width}))
    sides = [*side_lengths(laid), *side_lengths(far)]
    short = sorted({side for side, length in sides if length <= 0})
    if not short and outer.min() > 0:
        return None
    where = f"side {', '.join(map(str, short))}" if short else "a short side"
    return At(
        (*path, "offset"),
        f"the drain collapses at {where}: too short for two bends; "
        "bring the drain nearer to the footing, narrow the stone, or leave that side off",
    )


def _facing(path: Path, laid: DrainLayout, _words: Words) -> At | None:
    if shapely.Polygon(laid.line_at(laid.drain.stone.width)).is_valid:
        return None
    sentence = "the drain stone of two facing sides runs into each other; narrow it"
    return At((*path, "stone", "width"), sentence)


def _scattered(path: Path, laid: DrainLayout, _words: Words) -> At | None:
    sides = laid.drain.sides
    if sides == "all" or len(laid.route.points) - 1 >= len(set(sides)):
        return None
    sentence = "the sides do not follow each other; name neighbouring sides, so that it is one run"
    return At((*path, "sides"), sentence)


def _tight(path: Path, laid: DrainLayout, words: Words) -> At | None:
    start, end = min(laid.gaps, key=lambda gap: gap[1] - gap[0])
    if end - start >= SHORTEST_STICK_M:
        return None
    lack = words.least(SHORTEST_STICK_M - (end - start))
    tee = _beside_tee(laid, start)
    tee = _beside_tee(laid, end) if tee is None else tee
    if tee is not None:
        return _tee_too_near(path, laid, tee, lack)
    return At(
        (*path, "offset"),
        f"two bends of the drain meet on a short side, where {lack} is lacking; "
        "bring the drain nearer to the footing or leave that side off",
    )


def _beside_tee(laid: DrainLayout, station: float) -> float | None:
    """Return the station of the tee whose fitting ends here, if one does."""
    length = laid.route.length
    for tee in (f for f in laid.fittings if f.kind == "tee"):
        gap = abs((station - tee.station + length / 2) % length - length / 2)
        if gap <= tee.reach + 1e-6:
            return tee.station
    return None


def _tee_too_near(path: Path, laid: DrainLayout, station: float, lack: str) -> At:
    number = laid.tees.index(station) - (len(laid.tees) - len(laid.drain.daylight))
    if number < 0:
        return At(
            ("sump", "at"),
            f"the pipe to the sump meets the drain {lack} too near to a bend or an end; "
            "move the sump along that side",
        )
    return At(
        (*path, "daylight", number, "toward"),
        f"the pipe to daylight leaves the drain {lack} too near to a bend, an end or another "
        "pipe; let it head to a place straight across from the middle of a side",
    )


def conflict_faults(
    path: Path,
    areas: tuple[AreaLayout, ...],
    drain: DrainLayout,
    ground: GroundLayout,
    words: Words,
) -> Iterator[At]:
    """Yield places where higher areas stand in the drain's way, and risers under a floor."""
    top = drain.stone_top + 2 * drain.wrap_m
    for area in () if drain.inside else areas:
        low = min(area.footing_bottom, area.subgrade)
        if area is not drain.area and low < top and _over(area, drain):
            yield At(
                (*path, "stone", "cover"),
                f'area "{area.name}" reaches down to {words.level(low)} into the drain stone, '
                f"whose top is at {words.level(top)}; "
                "leave those sides off the drain, lower the stone or raise the area",
            )
        elif area is not drain.area and _in_the_pipe(area, drain):
            yield At(
                (*path, "sides"),
                f'the drain pipe would run through the footing or wall of area "{area.name}"; '
                "leave that side off the drain",
            )
    yield from _cleanout_faults(path, drain, ground)
    if not drain.inside and drain.stone_top > ground.fill_top:
        yield At(
            (*path, "fall"),
            f"the drain stone would reach {words.level(drain.stone_top)}, above the ground at "
            f"{words.level(ground.fill_top)}; lower the outlet or lessen the fall",
        )


def _in_the_pipe(area: AreaLayout, drain: DrainLayout) -> bool:
    """Whether an area's footing, or a lower area's wall, stands where the pipe lies."""
    clear = _pipe_line(drain).buffer(drain.radius + CLEAR_M, cap_style="flat")
    if at_pipes_height(area, drain) and area.footings.intersects(clear):
        return True
    return area.tof < drain.area.tof and bool(area.outline.intersects(clear))


def _pipe_line(drain: DrainLayout) -> LineString:
    """Return the route as far as pipe and caps lie on it."""
    line = drain.route.line
    if drain.route.closed:
        return line
    ends = drain.sticks[0][0].start - CAP_M, drain.sticks[-1][-1].end + CAP_M
    return substring(line, *ends)


def _over(area: AreaLayout, drain: DrainLayout) -> bool:
    return bool(area.outline.intersection(drain.high_space).area > 1e-6)


def _cleanout_faults(path: Path, drain: DrainLayout, ground: GroundLayout) -> Iterator[At]:
    for corner in drain.drain.cleanouts:
        station = drain.corner_station(corner)
        point = shapely.Point(drain.route.at(station))
        if not drain.inside and ground.house.distance(point) < drain.radius + CLEAR_M:
            yield At(
                (*path, "cleanouts"),
                f"the cleanout at corner {corner} would come up under another area; "
                "choose another corner",
            )
        elif drain.bend_at(station) is None:
            yield At(
                (*path, "cleanouts"),
                f"corner {corner} is no bend of the drain; "
                "choose a corner between two of its sides",
            )
