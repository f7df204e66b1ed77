"""All faults of a read design, in an order in which each step can rely on the one before."""

from collections.abc import Iterator

from geometry.faults import drains, floors, ground, materials, outlines
from geometry.faults.common import At, Words
from geometry.layout.areas import AreaLayout, lay_areas
from geometry.layout.drain import lay_drain
from geometry.layout.ground import GroundLayout
from geometry.project import Design


def faults(design: Design) -> list[At]:
    """Return every fault that shows once the file is read."""
    words = Words(design.project.units)
    found = list(outlines.outline_faults(design, words))
    found += materials.material_faults(design)
    found += drains.numbers_faults(design)
    if found:
        return found + list(_thicknesses(design, words))
    found += outlines.overlap_faults(design)
    areas = lay_areas(design)
    numbers = {a.name: n for n, a in enumerate(design.areas)}
    for area in areas:
        found += _area(numbers[area.name], area, words)
    found += outlines.sharing_faults(areas, numbers)
    found += drains.working_faults(design, areas, words)
    if design.drain:
        laid = _area_of(areas, design.drain.area)
        wrap = materials.MATERIALS[design.drain.wrap.material]
        found += drains.section_faults(
            design.drain, getattr(wrap, "thickness_m", 0.0), laid.footing.width, words
        )
    return found + ([] if found else list(_together(design, areas, words)))


def _thicknesses(design: Design, words: Words) -> Iterator[At]:
    for number, area in enumerate(design.areas):
        bare = AreaLayout(
            area, design.footing_of(area), design.wall_of(area), design.floor_of(area), *_NO_PLAN
        )
        yield from floors.layer_faults(number, bare, words)
        if area.floor is None:
            return


_NO_PLAN = (
    outlines.polygon(((0, 0), (1, 0), (0, 1))),
    outlines.polygon(((0, 0), (1, 0), (0, 1))),
    (),
)


def _area(number: int, area: AreaLayout, words: Words) -> list[At]:
    found = list(outlines.footing_faults(number, area, words))
    layers = list(floors.layer_faults(number, area, words))
    if not layers:
        layers += floors.pier_faults(number, area, words)
        layers += floors.edge_faults(number, area, words)
    return found + layers


def _together(design: Design, areas: tuple[AreaLayout, ...], words: Words) -> Iterator[At]:
    """Yield faults that show only when all parts are sound by themselves."""
    land = GroundLayout(design, areas, None, None)
    yield from ground.ground_faults(design, land, words)
    laid = None
    if design.drain:
        area = _area_of(areas, design.drain.area)
        route = list(drains.route_faults(design, area, words))
        yield from route
        if route:
            return
        laid = lay_drain(design.drain, area, design.sump.at if design.sump else None)
        yield from drains.conflict_faults(areas, laid, land, words)
    if design.sump:
        yield from drains.sump_faults(design, _area_of(areas, design.sump.area), laid, words)


def _area_of(areas: tuple[AreaLayout, ...], name: str) -> AreaLayout:
    return next((a for a in areas if a.name == name), areas[0])
