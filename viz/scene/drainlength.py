"""Two pictures of a drain's length: its holes from below, and its wrap before it is closed."""

from collections.abc import Iterable
from dataclasses import dataclass

import shapely
from shapely import LineString, MultiPolygon, Polygon, affinity

from geometry.label import Label
from geometry.solids.solid import Solid
from viz.scene.pieces import bores, drawn_out, heap, pipe_length
from viz.scene.profile import Profile

# Lengths along the pipe, metres: bare pipe at least, stone past it, wrapped stone past that.
BARE_M, STONE_M, WRAP_M = 0.58, 0.13, 0.13
# The trench: pipe on its bedding, then with its stone; and what of ground and house is shown.
LAID_M, FILLED_M = 0.5, 0.6
BESIDE_M, BELOW_M, HOUSE_M, OVER_M = 0.42, 0.14, 0.3, 0.05
# A sheet of fabric is drawn at least so thick, and stands so far from what it lies on, metres.
SHEET_M = 0.004
# Degrees an upright flap leans away from the trench, the first that clears the ground.
LEANS = (48.0, 30.0, 14.0, 0.0)


@dataclass(frozen=True, eq=False)
class Length:
    """Solids of one picture, which of them are loose stone, and which are drawn dark, by id."""

    solids: tuple[Solid, ...]
    loose: frozenset[str]
    dark: frozenset[str] = frozenset()


def from_below(profile: Profile, longer: float = 1.0) -> Length:
    """Return bare pipe, pipe in stone, and pipe in wrapped stone, one behind the other.

    longer: as many times the usual length is shown.
    """
    drain, key = profile.drain, profile.drain.key
    spacing = drain.drain.holes.spacing
    ahead = max(3, round(longer * BARE_M / spacing))
    bare = ahead * spacing
    total = ahead + max(1, round(longer * (STONE_M + WRAP_M) / spacing))
    stone, wrap = profile.labels[f"{key}/stone"], profile.labels[f"{key}/wrap"]
    pipe, end = pipe_length(profile.labels[f"{key}/pipe"], drain, profile.axis, 0.0, total)
    dark = _named(profile.labels[f"{key}/pipe"], f"{key}/holes", "Holes")
    cover = _around(profile)
    found = [
        pipe,
        bores(dark, drain, profile.axis, 0.0, ahead),
        *heap(stone, profile.stone, bare, end),
        drawn_out(wrap, cover, bare + (end - bare) / 2, end),
    ]
    return Length(_there(found), frozenset({stone.part}), frozenset({dark.part}))


def _around(profile: Profile) -> MultiPolygon:
    """The wrap as a closed ring that hugs the stone."""
    whole = Polygon(shapely.get_parts(profile.stone)[0].exterior)
    sheet = max(profile.drain.wrap_m, SHEET_M)
    return _polygons(whole.buffer(sheet, join_style="mitre").difference(whole))


def opened(profile: Profile, longer: float = 1.0) -> Length:
    """Return the trench with its fabric in and both flaps up, the pipe laid, stone half placed.

    longer: as many times the usual length is shown.
    """
    drain, key = profile.drain, profile.drain.key
    laid, end, labels = longer * LAID_M, longer * (LAID_M + FILLED_M), profile.labels
    stone, wrap = labels[f"{key}/stone"], labels[f"{key}/wrap"]
    rows = drain.drain.holes.spacing
    pipe, _ = pipe_length(
        labels[f"{key}/pipe"], drain, profile.axis, 0.02, max(1, int((end - 0.03) / rows))
    )
    inner, outer = flaps(profile)
    bedding = _polygons(profile.stone.intersection(_below(profile)))
    found = [
        pipe,
        *heap(stone, bedding, 0.0, laid),
        *heap(stone, profile.stone, laid, end, seed=8),
        drawn_out(wrap, _ribbon(trough(profile), profile, 1), 0.0, end),
        drawn_out(_named(wrap, f"{key}/flap inner", "Flap"), _ribbon(inner, profile, -1), 0.0, end),
        drawn_out(_named(wrap, f"{key}/flap outer", "Flap"), _ribbon(outer, profile, 1), 0.0, end),
        *_beside(profile, end),
    ]
    return Length(_there(found), frozenset({stone.part}))


def _below(profile: Profile) -> Polygon:
    """What lies lower than the pipe's underside."""
    left, low, right, _ = profile.stone.bounds
    return shapely.box(left, low, right, profile.axis[1] - profile.drain.radius)


def trough(profile: Profile) -> LineString:
    """Return the fabric's line under and beside the stone, from the house's side outward.

    In (x, z), metres; flaps go on from both its ends.
    """
    drain = profile.drain
    width, shelf = drain.drain.stone.width, drain.shelf
    top, bottom, tof = drain.stone_top, drain.stone_bottom, drain.area.tof
    ledge = [(-shelf, top), (-shelf, tof), (0.0, tof)]
    start = ledge if shelf > 0 and top > tof > bottom else [(0.0, top)]
    return LineString([*start, (0.0, bottom), (width, bottom), (width, top)])


def flaps(profile: Profile) -> tuple[LineString, LineString]:
    """Return the flaps as they stand: on the house's side, and on the trench's.

    Together they cover the stone's top once and the lap once more; the lap lies in its middle.
    """
    drain = profile.drain
    width, lap, top = drain.drain.stone.width, drain.drain.wrap.overlap, drain.stone_top
    line = list(trough(profile).coords)
    edge = line[0][0]
    begin = max(edge, (width - lap) / 2)
    inner = LineString([(edge, top), (edge, top + begin + lap - edge)])
    flat = LineString([(width, top), (width, top + width - begin)])
    leaning = [affinity.rotate(flat, -lean, origin=(width, top)) for lean in LEANS]
    clear = (one for one in leaning if one.intersection(profile.ground).length < SHEET_M)
    return inner, next(clear, flat)


def _ribbon(line: LineString, profile: Profile, side: int) -> MultiPolygon:
    """The sheet on one side of its line, seen along it: 1 its left, -1 its right."""
    sheet = side * max(profile.drain.wrap_m, SHEET_M)
    return _polygons(line.buffer(sheet, single_sided=True, join_style="mitre"))


def _beside(profile: Profile, end: float) -> list[Solid | None]:
    """Footing, wall, and the ground they stand in, as far as the picture goes."""
    drain = profile.drain
    inner, outer = flaps(profile)
    top = max(inner.bounds[3], outer.bounds[3]) + OVER_M
    right = max(drain.drain.stone.width, outer.bounds[2]) + BESIDE_M
    window = shapely.box(-drain.shelf - HOUSE_M, drain.stone_bottom - BELOW_M, right, top)
    found = [
        drawn_out(profile.labels[part], _polygons(shape.intersection(window)), 0.0, end)
        for part, shape in profile.shapes.items()
        if profile.labels[part].role in ("footing", "wall")
    ]
    earth = profile.labels.get("ground/excavation")
    if earth:
        found.append(drawn_out(earth, _polygons(profile.ground.intersection(window)), 0.0, end))
    return found


def _named(label: Label, part: str, name: str) -> Label:
    return Label(part, name, label.role, label.material, label.area, label.stage)


def _there(found: Iterable[Solid | None]) -> tuple[Solid, ...]:
    return tuple(solid for solid in found if solid is not None)


def _polygons(shape: shapely.Geometry) -> MultiPolygon:
    return MultiPolygon([p for p in shapely.get_parts(shape) if isinstance(p, Polygon)])
