"""What must be seen before it is covered, stage by stage, with this job's figures; and photos."""

from collections.abc import Iterable, Iterator

from geometry.layout.areas import AreaLayout
from geometry.layout.lay import Layout
from geometry.report import Report
from geometry.site import seen_inside, seen_outside
from geometry.site.drains import called
from geometry.site.seen import HoldKey, HoldPoint, Line
from geometry.sources import Source

NOT_CHECKED = (
    "bearing", "frost", "bars", "wall_steel", "waterproofing", "plumbing", "radon", "electric",
    "concrete", "compaction", "shoring",
)  # fmt: skip
"""Keys of what neither the sheet nor the program looks at."""

_IRC = Source("IRC", clause="R109.1.1")
_WALL = Source("inspection lists of Henrico VA and Durham NC")
_UNDER = Source("inspection lists of Stevens Point WI and Chisago County MN")
_FLOOR = Source("IRC R506 and the inspection list of Durham NC")
_SOURCES: dict[HoldKey, Source] = {
    "subgrade": _IRC, "footing": _IRC, "wall": _WALL, "drain": _WALL, "pit": _UNDER,
    "base": _FLOOR, "foam": _FLOOR, "slab": _FLOOR,
}  # fmt: skip


def inspection(layout: Layout, report: Report) -> tuple[HoldPoint, ...]:
    """Return the hold points in the order of the build."""
    found = [_point("subgrade", seen_outside.subgrade(layout), seen_outside.SUBGRADE_PHOTOS)]
    for area in layout.areas:
        photos = (*seen_outside.FOOTING_PHOTOS, *((Line("pad"),) if area.area.piers else ()))
        found.append(_point("footing", seen_outside.footing(layout, area), photos, area.name))
    found.append(_point("wall", seen_outside.walls(layout), seen_outside.WALL_PHOTOS))
    for drain in layout.drains:
        which = called(drain, layout.drains)
        checks, photos = seen_outside.drain(layout, drain), tuple(seen_outside.drain_photos(drain))
        found.append(_point("drain", checks, photos, drain.area.name, which))
    if layout.sump:
        found.append(
            _point("pit", seen_inside.pit(layout), seen_inside.PIT_PHOTOS, layout.sump.area.name)
        )
    for area in layout.areas:
        found += _floor(layout, report, area)
    return tuple(found)


def _point(
    key: HoldKey, checks: Iterable[Line], photos: tuple[Line, ...], area: str = "", drain: str = ""
) -> HoldPoint:
    return HoldPoint(key, tuple(checks), photos, _SOURCES[key], area, drain)


def _floor(layout: Layout, report: Report, area: AreaLayout) -> Iterator[HoldPoint]:
    """Yield the floor's holds: stone and retarder, foam, and the last look before the pour."""
    roles = {layer.role for layer in area.floor.layers}
    under = tuple(seen_inside.under(layout, area))
    if under:
        photos = (*((Line("base"),) if "base" in roles else ()),
                  *((Line("laps"), Line("seals")) if "retarder" in roles else ()))  # fmt: skip
        yield _point("base", under, photos, area.name)
    if "insulation" in roles:
        photos = (Line("boards"), Line("board_mark"), Line("board_edge"))
        yield _point("foam", seen_inside.foam(layout, report, area), photos, area.name)
    photos = (Line("before_pour"), Line("thickness"), Line("openings"))
    yield _point("slab", seen_inside.slab(layout, report, area), photos, area.name)
