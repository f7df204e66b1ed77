"""What a section dimensions: stops read off its cut faces, metres."""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass

import shapely
from shapely import Polygon

from geometry.label import Role
from geometry.sections.face import CutFace
from geometry.units import INCH
from viz.figures.section.view import Window, checked

Stops = tuple[float, ...]
_LAYERS: tuple[Role, ...] = ("base", "blinding", "retarder", "insulation", "slab", "fill")
# A retarder's thickness is in its label; no string has room for it.
_THINNEST_M = 2e-3
# Stone of two drains at one footing lies about as near to it on either side.
_AT_IT_M = 1 * INCH


@dataclass(frozen=True)
class Strings:
    """Stops of the strings on each side of a section, the nearest string first.

    below: distances along the cut; left, right: levels.
    """

    below: tuple[Stops, ...] = ()
    left: tuple[Stops, ...] = ()
    right: tuple[Stops, ...] = ()


def whole_strings(faces: Sequence[CutFace]) -> Strings:
    """Return the strings of a cut through the whole house: walls, footings' ends, heights."""
    walls = _pieces(faces, ("wall",))
    footings = _pieces(faces, ("footing",))
    xs = _ends(walls, 0)
    below = (xs, (xs[0], xs[-1])) if len(xs) > 2 else (xs,)
    first = min(walls, key=lambda p: p.bounds[0], default=None)
    under = _pierced(footings)
    left = _ends([*([under] if under else []), first], 1) if first is not None else ()
    return Strings(below, (left,))


def detail_strings(faces: Sequence[CutFace], window: Window, layers: bool = False) -> Strings:
    """Return the strings of a detail: footing and drain, or pad, or pit, and the floor.

    layers: dimension every layer of the floor, not only its height over and under the footing.
    A detail of the pit leaves footing and trench to their own. Raises BedcourseError for a window
    whose sides are the wrong way round.
    """
    left, low, right, high = checked(window)
    footing = _pierced(_pieces(faces, ("footing",), window))
    across, upright, inner = _footing_stops(faces, footing, window) if footing else ([], [], [])
    pad = _first(_pieces(faces, ("pad",), window))
    if pad is not None:
        column = _nearest(_pieces(faces, ("column",), window), pad)
        pier = [pad, *([column] if column else [])]
        across.append(_ends(pier, 0))
        upright.append(_ends(pier, 1))
    pit = _whole(faces, ("basin", "pit stone"), ("basin",), window)
    if pit:
        across, upright, inner = [_ends(pit, 0)], [_ends(pit, 1)], []
    floor = _ends(_pieces(faces, _LAYERS, window), 1)
    if not layers:
        floor = _sorted([*floor[:1], *([footing.bounds[3]] if footing else []), *floor[-1:]])
    return Strings(
        tuple(_kept(across, left, right)),
        tuple(_kept(upright, low, high)),
        tuple(_kept([_thick(floor), *inner], low, high)),
    )


def _footing_stops(
    faces: Sequence[CutFace], footing: Polygon, window: Window
) -> tuple[list[Stops], list[Stops], list[Stops]]:
    """Return strings across and upright of the footing, the drains beside it, the wall on it.

    Upright at the left; at the right those of a drain inside, where another lies outside.
    """
    wall = _nearest(_pieces(faces, ("wall",), window), footing)
    own = [footing, *([wall] if wall else [])]
    trenches = list(_trenches(faces, footing, window))
    if not trenches:
        return [_ends(own, 0)], [_ends([footing], 1)], []
    beside, inner = [], []
    upright: dict[bool, list[Stops]] = {True: [], False: []}
    for trench, pipe in trenches:
        outward = trench[0] < footing.bounds[0]
        outer = trench[0] if outward else trench[2]
        middles = [(pipe[0] + pipe[2]) / 2] if pipe else []
        beside += [outer, *middles]
        inner += [outer, footing.bounds[0] if outward else footing.bounds[2]]
        left = len(trenches) == 1 or trench[0] + trench[2] < footing.bounds[0] + footing.bounds[2]
        upright[left].append(_sorted([trench[1], trench[3], *([pipe[1], pipe[3]] if pipe else [])]))
    across = [_sorted([*_ends(own, 0), *beside]), _sorted([*inner, *_ends([footing], 0)])]
    return across, [*upright[True], _ends([footing], 1)], upright[False]


def _trenches(
    faces: Sequence[CutFace], footing: Polygon, window: Window
) -> Iterator[tuple[Window, Window | None]]:
    """Yield the bounds of each drain's wrap beside a footing, with those of its pipe.

    The nearest drain comes first; others are only those as near as it.
    """
    found = []
    for key in dict.fromkeys(f.label.part.split("/")[0] for f in faces if _is_stone(f)):
        mine = [f for f in faces if f.label.part.split("/")[0] == key]
        stone = _nearest(_pieces(mine, ("drain stone",), window), footing)
        if stone is not None:
            found.append((stone.distance(footing), key, mine, stone))
    found.sort(key=lambda one: one[:2])
    for distance, _, mine, stone in found:
        if distance <= found[0][0] + _AT_IT_M:
            wrap = _pieces(mine, ("wrap",), window) or [stone]
            yield shapely.union_all(wrap).bounds, _pipe_in(mine, stone, window)


def _is_stone(face: CutFace) -> bool:
    return face.label.role == "drain stone"


def _pipe_in(faces: Sequence[CutFace], stone: Polygon, window: Window) -> Window | None:
    """Return the bounds of the pipe cut across in the stone, whole or in pieces between holes."""
    around = shapely.box(*stone.bounds)
    beside = [p for p in _pieces(faces, ("pipe",), window) if around.contains(p.centroid)]
    if not beside:
        return None
    left, low, right, high = shapely.union_all(beside).bounds
    # A pipe cut along its run is no ring: its middle says nothing.
    return (left, low, right, high) if abs((right - left) - (high - low)) < 0.01 else None


def _pieces(
    faces: Sequence[CutFace], roles: Sequence[Role], window: Window | None = None
) -> list[Polygon]:
    """Return the polygons of all faces of these roles, within a window."""
    shapes = [f.shape for f in faces if f.label.role in roles]
    if window is not None:
        shapes = [shapely.clip_by_rect(shape, *window) for shape in shapes]
    parts = shapely.get_parts(shapely.GeometryCollection(shapes))
    polygons = [p for part in parts for p in shapely.get_parts(part)]
    return sorted(
        (p for p in polygons if isinstance(p, Polygon) and not p.is_empty),
        key=lambda p: p.bounds[0],
    )


def _pierced(pieces: Sequence[Polygon]) -> Polygon | None:
    """Return the first piece, joined with those a sleeve parts from it, as an upright box."""
    first = _first(pieces)
    if first is None:
        return None
    left, _, right, _ = first.bounds
    over = [p for p in pieces if p.bounds[0] < right - 1e-3 and p.bounds[2] > left + 1e-3]
    return shapely.box(*shapely.union_all(over).bounds)


def _whole(
    faces: Sequence[CutFace], roles: Sequence[Role], core: Sequence[Role], window: Window
) -> list[Polygon]:
    """Return boxes round all that is of a core and round it with what stands about it."""
    inner = _pieces(faces, core, window)
    if not inner:
        return []
    middle = shapely.union_all(inner)
    near = [p for p in _pieces(faces, roles, window) if p.distance(middle) < 1e-3]
    about = [p for p in near if p.bounds[1] <= middle.bounds[1] + 1e-3]
    return [shapely.box(*middle.bounds), *(shapely.box(*p.bounds) for p in about)]


def _first(pieces: Sequence[Polygon]) -> Polygon | None:
    return pieces[0] if pieces else None


def _nearest(pieces: Sequence[Polygon], to: Polygon | None) -> Polygon | None:
    if to is None:
        return None
    return min(pieces, key=lambda p: p.distance(to), default=None)


def _ends(pieces: Iterable[Polygon], axis: int) -> Stops:
    """Return where pieces begin and end along an axis."""
    return _sorted(p.bounds[end] for p in pieces for end in (axis, axis + 2))


def _sorted(stops: Iterable[float]) -> Stops:
    kept: list[float] = []
    for stop in sorted(stops):
        if not kept or stop - kept[-1] > 1e-4:
            kept.append(stop)
    return tuple(kept)


def _thick(levels: Stops) -> Stops:
    """Return levels without those of sheets too thin for a figure: the upper face stays."""
    kept: list[float] = []
    for level in levels:
        if kept and level - kept[-1] < _THINNEST_M:
            kept.pop()
        kept.append(level)
    return tuple(kept)


def _kept(strings: Iterable[Stops], low: float, high: float) -> Iterator[Stops]:
    """Yield the strings that have two stops within the window, each once."""
    seen = set()
    for stops in strings:
        inside = tuple(s for s in stops if low + 1e-6 < s < high - 1e-6)
        if len(inside) > 1 and inside not in seen:
            seen.add(inside)
            yield inside
