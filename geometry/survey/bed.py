"""What lies on the dug ground of an area: its lowest layer, between ground and its top."""

from dataclasses import dataclass

from shapely.geometry.base import BaseGeometry

from geometry.layout.areas import AreaLayout
from geometry.layout.bodies import Body, Prism, layered
from geometry.layout.floors import edge_prism
from geometry.layout.lay import Layout
from geometry.sources import Source
from geometry.units import INCH

# Ground this far under the subgrade still has the same openings above it, metres.
_DEEP = 100.0

LEAST_M = 4 * INCH
LEAST_SOURCE = Source("IRC, base course under slabs below grade", "2009", "R506.2.2", "second-hand")


@dataclass(frozen=True, eq=False)
class Bed:
    """The layer that takes up the ground's unevenness, and any fill under it.

    top, subgrade: planned levels, metres. region: the plan the ground is covered on. bands: the
    space above the ground by level, the lowest without end. planned_m3: in the design.
    pipe_m3: taken out by a pipe through it. least: thinnest it may be, metres.
    """

    area: AreaLayout
    layer: str
    top: float
    subgrade: float
    region: BaseGeometry
    bands: tuple[Prism, ...]
    planned_m3: float
    pipe_m3: float
    least: float


def bed(layout: Layout, area: AreaLayout, least_m: float | None) -> Bed:
    """Return the bed of an area. least_m: least thickness, else the source's, never over the plan.

    The lowest layer counts, and the fill under it where the design has one.
    """
    bottom, top = area.stack.levels[:2]
    layer = area.floor.layers[0]
    planned = _bodies(layout, area, f"{area.name}/{layer.name}")
    cuts = [_reaching(t, bottom) for t in layout.standing_in(area)]
    edge = edge_prism(area)
    cuts += [edge] if edge else []
    bands = layered(bottom - _DEEP, top, area.core, area.room, area.tof, cuts)
    solid = sum(p.volume for b in planned for p in b.prisms)
    volume = sum(b.volume for b in planned)
    thick = top - bottom
    least = min(LEAST_M, thick) if least_m is None else least_m
    region = next(b.region for b in bands if b.top > bottom + 1e-7)
    return Bed(area, layer.name, top, bottom, region, bands, volume, solid - volume, least)


def _reaching(taken: Prism, subgrade: float) -> Prism:
    """Return what stands in the floor with its foot in the ground, however deep that is dug."""
    return taken if taken.bottom > subgrade else taken._replace(bottom=subgrade - _DEEP)


def _bodies(layout: Layout, area: AreaLayout, part: str) -> list[Body]:
    wanted = {part, f"{area.name}/fill"}
    return [b for b in layout.floors if b.label.part in wanted]
