"""The water level at which a floor floats: the bare slab, and the build-up on the lowest sheet.

No help is counted from walls and piers, nor any load; what has no density in the catalogue
(sheets, some foams) counts as weightless.
"""

from dataclasses import dataclass

from geometry.formulas.uplift import Lying, floating_level, safety
from geometry.layout.areas import AreaLayout
from geometry.layout.lay import Layout
from geometry.materials.catalogue import MATERIALS
from geometry.materials.kinds import Aggregate, Board, Concrete, Soil
from geometry.parts.fields import LevelAt
from geometry.parts.floor import Layer

BARE, WHOLE = "bare slab", "build-up"


@dataclass(frozen=True)
class Floating:
    """One body of an area's floor; levels against the project's TOF, m.

    safety: its weight over the uplift at the highest water table; None where that is not given or
    does not reach the underside.
    """

    area: str
    body: str
    underside_m: float
    floats_at_m: float
    table_m: float | None
    safety: float | None


def floating(layout: Layout) -> tuple[Floating, ...]:
    """Return slab and build-up of every area whose floor has a slab, areas from the lowest up."""
    return tuple(row for area in layout.areas for row in _of_area(area, water_table(layout)))


def water_table(layout: Layout) -> float | None:
    """Return the highest water table seen, against the project's TOF, m; None if not given."""
    return _level(layout, layout.design.water.water_table)


def low_water_table(layout: Layout) -> float | None:
    """Return the year's lowest water table, against the project's TOF, m; None if not given."""
    return _level(layout, layout.design.water.low_water_table)


def _level(layout: Layout, at: LevelAt | None) -> float | None:
    area = layout.drain.area if layout.drain else layout.areas[0]
    return None if at is None else area.level(at)


def density(key: str) -> float:
    """Return the least a material weighs as it lies, kg/m3; 0 where it is not known."""
    row = MATERIALS[key]
    if isinstance(row, Aggregate):
        return row.loose_density_low
    if isinstance(row, Concrete | Board | Soil):
        return row.density_kg_m3 or 0.0
    return 0.0


def _of_area(area: AreaLayout, table: float | None) -> list[Floating]:
    layers = area.floor.layers
    slabs = [n for n, layer in enumerate(layers) if layer.role == "slab"]
    if not slabs:
        return []
    shut = [n for n, layer in enumerate(layers) if layer.role in ("retarder", "insulation")]
    found = [_body(area, BARE, slabs[-1], table)]
    if shut and shut[0] < slabs[-1]:
        found.append(_body(area, WHOLE, shut[0], table))
    return found


def _body(area: AreaLayout, name: str, first: int, table: float | None) -> Floating:
    lying, under = [_lying(x) for x in area.floor.layers[first:]], area.stack.levels[first]
    return Floating(
        area.name,
        name,
        under,
        floating_level(under, lying),
        table,
        None if table is None else safety(table, under, lying),
    )


def _lying(layer: Layer) -> Lying:
    return Lying(layer.thickness, density(layer.material))
