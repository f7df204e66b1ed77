"""What is asked of footings, walls and piers, and how a design stands to it."""

from collections.abc import Callable, Iterator

from geometry.checks.asked import (
    AUGUSTA,
    CROOKSTON,
    GRAND,
    HILLSBOROUGH,
    NEEDHAM,
    SEVERAL,
    Ask,
    Item,
)
from geometry.layout.areas import AreaLayout
from geometry.layout.lay import Layout
from geometry.materials.catalogue import CONCRETES, SOILS
from geometry.units import show_length

_FOOTING, _WALL, _PIER = "Footings", "Walls", "Piers"


def footing_items(layout: Layout) -> Iterator[Item]:
    """Yield the items on footings and the ground under them."""
    system, grade = layout.design.project.units, layout.ground.at_wall
    deep = _each(layout, lambda a: show_length(grade - a.footing_bottom, system))
    yield Ask(_FOOTING, "width and thickness", NEEDHAM).shown("plan, sections, footing schedule")
    yield Ask(_FOOTING, "depth below finished grade", SEVERAL).shown(f"sections; {deep}")
    yield _frost(layout)
    if len({area.tof for area in layout.areas}) > 1:
        yield Ask(_FOOTING, "steps", HILLSBOROUGH).shown("plan, sections")
    yield _bars(layout)
    yield _strength(layout)
    yield _soil(layout)
    yield Ask(_FOOTING, "soil bearing, assumed or tested", GRAND).outside(
        "add it from a soils report or the local code"
    )


def _frost(layout: Layout) -> Item:
    ask, depth = Ask(_FOOTING, "frost depth", SEVERAL), layout.design.site.frost_depth
    if depth is None:
        return ask.outside("ask the department; hold the depth below grade against it")
    local = show_length(depth, layout.design.project.units)
    return ask.stated(f"{local}; held against the depth below grade")


def _coating(layout: Layout) -> Item:
    ask = Ask(_WALL, "damp-proofing or waterproofing, and its limits", NEEDHAM)
    kinds = dict.fromkeys(area.wall.coating for area in layout.areas if area.wall.coating)
    if not kinds:
        return ask.outside("add kind, from where to where, and its protection")
    return ask.stated(f"{', '.join(kinds)}; add from where to where, and its protection")


def _each(layout: Layout, words: Callable[[AreaLayout], str]) -> str:
    return ", ".join(f"{area.name} {words(area)}" for area in layout.areas)


def _bars(layout: Layout) -> Item:
    ask = Ask(_FOOTING, "size and place of bars", HILLSBOROUGH)
    bare = [a.name for a in layout.areas if not a.footing.bars.count]
    if bare:
        return ask.empty("[footing] bars", f"none in {', '.join(bare)}; ")
    return ask.shown("sections, footing schedule")


def _strength(layout: Layout) -> Item:
    ask = Ask(_FOOTING, "concrete strength f'c of all parts", SEVERAL)
    unsaid = sorted({name for name, key in _concretes(layout) if _open(key)})
    if unsaid:
        field = "a material that names its strength, such as concrete-3000"
        return ask.empty(field, f"none for {', '.join(unsaid)}; ")
    return ask.stated("schedules, notes")


def _concretes(layout: Layout) -> Iterator[tuple[str, str]]:
    for area in layout.areas:
        yield "footings", area.footing.material
        yield "walls", area.wall.material
        yield from (("piers", pier.material) for pier in area.area.piers)
        yield from (("slabs", x.material) for x in area.floor.layers if x.role == "slab")


def _open(key: str) -> bool:
    """Tell whether a concrete has no stated strength; masonry and the like are not asked."""
    row = CONCRETES.get(key)
    return row is not None and row.strength_kpa is None


def _soil(layout: Layout) -> Item:
    row = SOILS.get(layout.design.soil.group)
    ask = Ask(_FOOTING, "soil class", SEVERAL)
    named = row.name if row is not None and row.group is not None else ""
    return ask.given(f"{named}; not tested" if named else "", "[soil] group")


def wall_items(layout: Layout) -> Iterator[Item]:
    """Yield the items on walls and the ground against them."""
    system, grade = layout.design.project.units, layout.ground.at_wall
    fill = _each(layout, lambda a: show_length(max(0.0, grade - a.finished_floor), system))
    lowest = min(layout.areas, key=lambda a: a.wall_top)
    above = lowest.wall_top - grade
    yield Ask(_WALL, "thickness, height and kind", NEEDHAM).shown("sections, wall schedule")
    yield Ask(_WALL, "reinforcement, or the table it is taken from", HILLSBOROUGH).outside(
        "add bars, or the number of the code's table"
    )
    yield Ask(_WALL, "greatest unbalanced fill", CROOKSTON).shown(
        f"wall schedule; grade above finished floor: {fill}"
    )
    yield Ask(_WALL, "wall above finished grade", NEEDHAM).shown(
        f"sections; least {show_length(above, system)}, {lowest.name}"
    )
    yield _coating(layout)
    yield Ask(_WALL, "anchor bolts, size and spacing", NEEDHAM).outside("add them")
    yield Ask(_WALL, "openings, window wells, ledges, pockets", SEVERAL).outside(
        "walls are plain here; add them"
    )
    yield Ask(_WALL, "when to backfill", SEVERAL).shown("notes")
    yield Ask(_WALL, "framing and the loads it brings down", SEVERAL).outside(
        "see the framing drawings"
    )


def pier_items(layout: Layout) -> Iterator[Item]:
    """Yield the item on piers."""
    ask = Ask(_PIER, "place, pad and column of each", AUGUSTA)
    if any(area.area.piers for area in layout.areas):
        yield ask.shown("plan, pier schedule")
    else:
        yield ask.empty("[[area.pier]] where posts stand", "no piers; ")
