"""All faults of a read design, in an order in which each step can rely on the one before."""

from collections.abc import Iterator

from geometry.faults import drains, floors, outlines, routes
from geometry.faults.climate import climate_faults
from geometry.faults.common import At, Words
from geometry.faults.ground import grading_faults, ground_faults, laser_faults
from geometry.faults.lines import Path
from geometry.faults.materials import material_faults
from geometry.faults.mending import stands
from geometry.faults.names import name_faults
from geometry.faults.order import order_faults
from geometry.faults.outlets import (
    crossing_faults,
    inside_faults,
    meeting_faults,
    outlet_faults,
)
from geometry.faults.piers import pier_faults
from geometry.faults.pumps import curve_faults
from geometry.faults.rules import own_rule_faults, rule_set_faults
from geometry.faults.sumps import pump_faults, sump_faults
from geometry.faults.vents import vent_faults
from geometry.faults.water import storm_faults, water_level_faults
from geometry.layout.areas import AreaLayout, lay_areas
from geometry.layout.drain import DrainLayout
from geometry.layout.ground import GroundLayout
from geometry.layout.lay import empties_into_pit, lay_drains
from geometry.layout.sump import lay_sump
from geometry.project import Design

_WATER = {"drain", "sump"}


def faults(design: Design) -> list[At]:
    """Return every fault that shows once the file is read."""
    words = Words(design.project.units)
    plan = list(outlines.outline_faults(design, words))
    plan += [] if plan else outlines.overlap_faults(design, words)
    named = [*name_faults(design), *drains.numbers_faults(design)]
    lacking = list(material_faults(design))
    if plan or named:
        others = [at for at in _by_value(design, words) if stands(at.path, [n.path for n in named])]
        return [*plan, *named, *lacking, *others]
    areas = lay_areas(design)
    land = GroundLayout(design, areas, (), None)
    outside = [*_alone(design, words), *ground_faults(design, land, words)]
    found = _by_area(design, areas, words)
    if not any(at.path[0] in _WATER for at in lacking):
        found += outlet_faults(design)
        for number, drain in enumerate(design.drains):
            found += drains.section_faults(("drain", number), drain, words)
    if not found and not outside and not lacking:
        found += _together(design, areas, land, words)
    return [*found, *outside, *lacking]


def own_faults(design: Design) -> list[At]:
    """Return the faults of single values, which hold whatever else in the file is wrong."""
    words = Words(design.project.units)
    return [
        *outlines.outline_faults(design, words),
        *name_faults(design),
        *drains.numbers_faults(design),
        *material_faults(design),
        *_by_value(design, words),
    ]


def _by_value(design: Design, words: Words) -> Iterator[At]:
    for number in range(len(design.areas)):
        floor = design.floor_of(design.areas[number])
        yield from floors.layer_faults(("area", number, "floor"), floor, words)
    yield from _alone(design, words)


def _alone(design: Design, words: Words) -> Iterator[At]:
    """Yield faults of laser, pump, storm and order, which hang on no part laid out."""
    yield from laser_faults(design, words)
    yield from grading_faults(design)
    yield from storm_faults(design.water)
    yield from order_faults(design, words)
    yield from rule_set_faults(design)
    yield from climate_faults(design)
    if design.sump:
        yield from pump_faults(design.sump, words)
        yield from curve_faults(design.sump, words)


def _by_area(design: Design, areas: tuple[AreaLayout, ...], words: Words) -> list[At]:
    numbers = {a.name: n for n, a in enumerate(design.areas)}
    found: list[At] = []
    for area in areas:
        found += _area(numbers[area.name], area, words)
    if not found:
        drained = _area_of(areas, design.drains[0].area if design.drains else "")
        found += own_rule_faults(design, drained, words)
    return found + list(outlines.sharing_faults(areas, numbers, words))


def _area(number: int, area: AreaLayout, words: Words) -> list[At]:
    path: Path = ("area", number, "floor")
    found = list(outlines.footing_faults(number, area, words))
    layers = list(floors.layer_faults(path, area.floor, words))
    if not layers:
        layers += floors.edge_faults(path, area, words)
        layers += pier_faults(number, area, words)
    return found + layers


def _together(
    design: Design, areas: tuple[AreaLayout, ...], land: GroundLayout, words: Words
) -> Iterator[At]:
    """Yield faults that show only when all parts are sound by themselves."""
    found = list(_routes(design, areas, words))
    yield from found
    if found:
        return
    laid = lay_drains(design, areas)
    for number, drain in enumerate(laid):
        path = ("drain", number)
        yield from routes.conflict_faults(path, areas, drain, land, words)
        yield from inside_faults(path, drain, words)
    yield from meeting_faults(laid, words)
    yield from crossing_faults(laid, areas, design.excavation)
    sump = design.sump
    if sump:
        yield from sump_faults(sump, _area_of(areas, sump.area), laid, words)
    yield from _vent(design, areas, laid)
    area = laid[0].area if laid else areas[0]
    yield from water_level_faults(design.water, area, land, words)


def _vent(
    design: Design, areas: tuple[AreaLayout, ...], laid: tuple[DrainLayout, ...]
) -> Iterator[At]:
    sump, vent = design.sump, design.vent
    if vent:
        into = next((d for d in laid if empties_into_pit(d.drain)), None)
        pit = lay_sump(sump, _area_of(areas, sump.area), into) if sump else None
        yield from vent_faults(vent, _area_of(areas, vent.area), pit, laid)


def _routes(design: Design, areas: tuple[AreaLayout, ...], words: Words) -> Iterator[At]:
    for number, drain in enumerate(design.drains):
        pit = design.sump.at if design.sump and empties_into_pit(drain) else None
        area = _area_of(areas, drain.area)
        yield from routes.route_faults(("drain", number), drain, area, pit, words)


def _area_of(areas: tuple[AreaLayout, ...], name: str) -> AreaLayout:
    return next((a for a in areas if a.name == name), areas[0])
