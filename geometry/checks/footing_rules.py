"""Footings against the rules on their size, depth and bars."""

from collections.abc import Iterator

from geometry.checks.finding import Finding
from geometry.checks.footing_ground import ground_rulings
from geometry.checks.rulings import Ruling, in_area, ruling_findings
from geometry.layout.areas import AreaLayout
from geometry.layout.lay import Layout
from geometry.materials.catalogue import SOILS
from geometry.rules.footings import (
    COVER,
    DEPTH,
    STANDS_OUT,
    THICKNESS,
    WIDTH,
    TableSize,
    frost,
    projection,
    table_size,
)
from geometry.rules.limit import MET_WITHIN_M, Limit
from geometry.units import FOOT, System, show_length, to_unit

# A floor deeper under the grade than this is a basement's, for the footing's table.
_BASEMENT_M = 4 * FOOT
_USUAL_SNOW_PA = to_unit(30.0, "lbf/ft**2", "Pa")


def footing_findings(layout: Layout) -> Iterator[Finding]:
    """Yield what the rules on footings find."""
    rulings = [
        in_area(layout, area.name, one) for area in layout.areas for one in _rulings(layout, area)
    ]
    yield from ruling_findings(layout, "footing-rules", "footings", rulings)


def _rulings(layout: Layout, area: AreaLayout) -> Iterator[Ruling]:
    system, strip = layout.design.project.units, area.footing
    yield _size(WIDTH, strip.width, "footing {} wide", "Widen it.", system)
    yield _size(THICKNESS, strip.thickness, "footing {} thick", "Thicken it.", system)
    inward, outward = area.projection_in, area.projection_out
    least, most = min(inward, outward), max(inward, outward)
    words = "it stands out {} beyond the wall"
    yield _size(STANDS_OUT, least, words, "Widen it, or centre it under the wall.", system)
    limit = projection(strip.thickness)
    thicker = f"Make it {show_length(most, system)} thick at least, or ask an engineer for bars."
    yield _size(limit, most, words, thicker, system)
    yield from _depths(layout, area, system)
    yield from ground_rulings(layout, area)
    if strip.bars.count:
        yield _size(COVER, strip.bars.cover, "bars under {} of concrete", "Raise them.", system)
    if area is layout.areas[0]:
        yield from _table(layout, area, system)


def _size(limit: Limit, value: float, words: str, advice: str, system: System) -> Ruling:
    return Ruling(
        limit, limit.met(value), words.format(show_length(round(value, 4), system)), advice
    )


def _depths(layout: Layout, area: AreaLayout, system: System) -> Iterator[Ruling]:
    """Yield depth below the ground before the dig, and below the grade for frost."""
    ground = min(layout.ground.at_wall, layout.ground.existing)
    words = "its bottom {} below the ground as it was"
    yield _size(DEPTH, ground - area.footing_bottom, words, "Set it deeper.", system)
    depth = layout.design.site.frost_depth
    if depth is None:
        return
    grade = layout.ground.at_wall - area.footing_bottom
    words = "its bottom {} below the finished grade, frost " + show_length(depth, system)
    deeper = (
        "Set it deeper, or have it protected from frost by foam by the code's own design. On a "
        "slope, count from the lowest grade along the wall."
    )
    yield _size(frost(depth), grade, words, deeper, system)


def _table(layout: Layout, area: AreaLayout, system: System) -> Iterator[Ruling]:
    """Yield the lowest footing against the code's table, where stories and soil are said.

    What stands on higher areas, such as a garage, is not known.
    """
    needs = table_of(layout, area)
    if needs is None:
        return
    strip, wide = area.footing, show_length(needs.width_m, system)
    thick = needs.thickness_for(area.wall.thickness)
    title = f"footing {wide} wide and {show_length(thick, system)} thick by the code's table"
    trap = ""
    if thick > needs.thickness_m + MET_WITHIN_M:
        trap = (
            f" The table's own {show_length(needs.thickness_m, system)} would let it stand out "
            "farther than it is thick."
        )
    limit = Limit(
        "footing-table", title, f"The house's weight needs this much ground.{trap}", needs.source
    )
    met = strip.width >= needs.width_m - MET_WITHIN_M and strip.thickness >= thick - MET_WITHIN_M
    found = (
        f"{show_length(strip.width, system)} x {show_length(strip.thickness, system)} against "
        f"{wide} x {show_length(thick, system)} for {layout.design.site.stories} stories on "
        f"{needs.column} ground (table value)"
    )
    yield Ruling(limit, met, found, "Widen or thicken it, or have it engineered.")


def table_of(layout: Layout, area: AreaLayout) -> TableSize | None:
    """Return the table's size for an area; None where the table or what leads into it is lacking.

    Snow that is not given counts as the table's own 30 psf, the area's shorter side as the house's
    width.
    """
    site, bearing = layout.design.site, SOILS[layout.design.soil.group].bearing_pa
    if site.stories is None or bearing is None:
        return None
    deep = layout.ground.at_wall - area.finished_floor > _BASEMENT_M
    west, south, east, north = area.outline.bounds
    snow = _USUAL_SNOW_PA if site.snow is None else site.snow
    return table_size(
        site.stories, "basement" if deep else "slab", bearing, snow, min(east - west, north - south)
    )
