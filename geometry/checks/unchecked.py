"""What was not checked: what this design leaves open, and what no design file can tell.

A thing the design gives is not on the list. What it could give and does not comes first, with the
key that would tell it; what lies outside the program's limits follows.
"""

from collections.abc import Iterator

from geometry.checks.beyond import beyond
from geometry.checks.open_point import OpenPoint
from geometry.checks.wall_rules import outer_walls
from geometry.layout.lay import Layout
from geometry.materials.catalogue import CONCRETES, SOILS
from geometry.rules.editions import EDITIONS, editions
from geometry.water.backfill import pushing_soil
from geometry.water.uplift import water_table


def unchecked(layout: Layout, given: frozenset[str] = frozenset()) -> tuple[OpenPoint, ...]:
    """Return everything that was not checked, each with why and who would answer it.

    given: keys the design file states, such as "loads.wheel": a load that is stated to be none is
    answered, and looks in a layout like one that is not stated.
    """
    return (
        *_ground(layout), *_place(layout), *_structure(layout), *_loads(layout, given),
        *_water(layout), *beyond(layout),
    )  # fmt: skip


def _ground(layout: Layout) -> Iterator[OpenPoint]:
    design = layout.design
    if SOILS[design.soil.group].bearing_pa is None:
        yield OpenPoint(
            "bearing", "Bearing capacity of the ground under footings and pads",
            "No soil is named, so no bearing value of any table can be taken.",
            "geotechnical engineer", "soil.group",
        )  # fmt: skip
    pushing = pushing_soil(design)
    if pushing.friction_angle_deg is None and outer_walls(layout):
        yield OpenPoint(
            "wall-push", "Push of the fill on the walls",
            "The soil against the wall is not named, so its weight and friction are not known.",
            "geotechnical engineer", "soil.group or backfill.material",
        )  # fmt: skip
    if layout.drains and not design.soil.grading:
        yield OpenPoint(
            "grading", "The soil's own grading against the drain's fabric",
            "No sieve test is given; the fabric was held against the soil's group alone, where "
            "one is named.",
            "geotechnical engineer", "soil.grading",
        )  # fmt: skip
    if design.excavation.existing is None:
        yield OpenPoint(
            "ground-before", "Level of the ground before the dig",
            "It is not given; the finished grade is taken to meet it at the end of its fall.",
            "surveyor", "excavation.existing",
        )  # fmt: skip


def _place(layout: Layout) -> Iterator[OpenPoint]:
    """Yield what the local office, or a map, would tell."""
    design, site = layout.design, layout.design.site
    if site.frost_depth is None:
        yield OpenPoint(
            "frost", "Frost depth",
            "The local depth is not given, so the footing's depth was not held against it.",
            "building department", "site.frost_depth",
        )  # fmt: skip
    if len(editions(design.rules.codes)) == len(EDITIONS):
        yield OpenPoint(
            "edition", "Which edition of the code is in force",
            "None is named, so all editions known here were held side by side.",
            "building department", "rules.sets",
        )  # fmt: skip
    if site.termites is None:
        yield OpenPoint(
            "termites", "Termites",
            "The probability on the code's map is not given; foam in the ground hides their way.",
            "pest control professional", "site.termites",
        )  # fmt: skip
    if site.radon_vent is None:
        yield OpenPoint(
            "radon-vent", "Whether a vent for soil gas (radon) is to be built in",
            "Nothing is said of it, so base and laps were not held against its rules.",
            "building department", "site.radon_vent",
        )  # fmt: skip
    if design.climate.inside is None or design.climate.outside is None:
        yield OpenPoint(
            "climate", "Heat the floor loses in this climate",
            "Temperatures are not given, so the loss is told for each degree alone.",
            "owner or builder", "climate.inside, climate.outside",
        )  # fmt: skip


def _structure(layout: Layout) -> Iterator[OpenPoint]:
    design = layout.design
    if design.site.stories is None:
        yield OpenPoint(
            "stories", "Footing's width for the house's weight",
            "The number of stories is not given, so the code's table of widths was not entered.",
            "owner and structural engineer", "site.stories",
        )  # fmt: skip
    if not design.backfill.state.said:
        yield OpenPoint(
            "backfill-day", "What holds the walls on the day of backfill",
            "It is not said whether deck, slab or braces are in by then.",
            "owner or builder", "backfill.state",
        )  # fmt: skip
    if any(run.asks and layout.area(run.area).wall.foot is None for run in outer_walls(layout)):
        yield OpenPoint(
            "wall-foot", "What holds the wall's foot against the fill",
            "Slab, keyway or dowels: none is said to, so only the slab's edge was looked at.",
            "structural engineer", "wall.foot",
        )  # fmt: skip
    if any(area.wall.coating is None for area in layout.areas):
        yield OpenPoint(
            "coating", "Damp-proofing or waterproofing of the walls",
            "No coating is named for every wall.",
            "owner or builder", "wall.coating",
        )  # fmt: skip
    if any(area.floor.joints is None for area in layout.areas if _has_slab(area.floor.layers)):
        yield OpenPoint(
            "joints", "Joints of the slab",
            "Their spacing is not given for every floor.",
            "owner or builder", "floor.joints",
        )  # fmt: skip
    open_ = [key for key in _concretes(layout) if key in CONCRETES]
    if any(CONCRETES[key].strength_kpa is None for key in open_):
        yield OpenPoint(
            "strength", "Strength class of the concrete",
            "A part's concrete names no strength; the weakest the code allows was taken where "
            "one is needed.",
            "structural engineer", "material, such as concrete-3000",
        )  # fmt: skip


def _has_slab(layers: tuple[object, ...]) -> bool:
    return any(getattr(layer, "role", "") == "slab" for layer in layers)


def _concretes(layout: Layout) -> Iterator[str]:
    for area in layout.areas:
        yield from (area.footing.material, area.wall.material)
        yield from (pier.material for pier in area.area.piers)
        yield from (layer.material for layer in area.floor.layers if layer.role == "slab")


def _loads(layout: Layout, given: frozenset[str]) -> Iterator[OpenPoint]:
    loads = layout.design.loads
    if layout.drains and not loads.wheel and "loads.wheel" not in given:
        yield OpenPoint(
            "wheel", "Vehicles over the drain", "No wheel is given; the pipe was held under its "
            "fill alone.", "owner or builder", "loads.wheel",
        )  # fmt: skip
    if not loads.surcharge and "loads.surcharge" not in given:
        yield OpenPoint(
            "surcharge", "Loads on the ground beside the walls: drives, stacks, other buildings",
            "None is given; the walls' push is that of the fill alone.",
            "owner or builder", "loads.surcharge",
        )  # fmt: skip
    if loads.floor is None:
        yield OpenPoint(
            "floor-load", "Live load on the floor",
            "None is given; that of rooms was taken where foam lies under a slab.",
            "owner or builder", "loads.floor",
        )  # fmt: skip
    if not loads.point and "loads.point" not in given:
        yield OpenPoint(
            "point-load", "Posts, tanks or wheels standing on the slab",
            "None is given; the slab was held under an even load alone.",
            "owner or builder", "loads.point",
        )  # fmt: skip


def _water(layout: Layout) -> Iterator[OpenPoint]:
    water, pit = layout.design.water, layout.design.sump
    if water_table(layout) is None:
        yield OpenPoint(
            "water-table", "Highest water table",
            "It is not given: neither uplift nor the kind of coating was held against it.",
            "geotechnical engineer", "water.water_table",
        )  # fmt: skip
    if layout.drains and (water.storm is None or water.rain is None or water.share is None):
        yield OpenPoint(
            "rain", "Rain that comes to the drain",
            "The storm, its depth or the share that soaks in is not given.",
            "town or county (stormwater)", "water.storm, water.rain, water.share",
        )  # fmt: skip
    if pit and (pit.pump is None or not (pit.pump.flow or pit.pump.curve)):
        yield OpenPoint(
            "pump-flow", "What the pump throws", "Neither a flow nor a maker's curve is given.",
            "pump supplier", "sump.pump",
        )  # fmt: skip
    if pit and (pit.pump is None or pit.pump.discharge is None):
        yield OpenPoint(
            "discharge", "The pump's discharge pipe",
            "Its length and size are not given, so its friction was left out.",
            "plumber and building department", "sump.pump.discharge",
        )  # fmt: skip
