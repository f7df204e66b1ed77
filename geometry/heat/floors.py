"""Each area's heat through the ground: ISO 13370, the codes' factors beside it."""

from dataclasses import dataclass, replace

from geometry.formulas.ground_heat import (
    INSIDE_DOWN,
    OUTSIDE,
    characteristic_dimension,
    floor_thickness,
    floor_transmittance,
    wall_thickness,
    wall_transmittance,
)
from geometry.heat.buildup import Resisting, bare, insulation, resistance, resisting
from geometry.heat.f_factors import FFactor, f_factor
from geometry.heat.tubes import BelowTubes, below_tubes
from geometry.layout.areas import AreaLayout
from geometry.layout.lay import Layout
from geometry.materials.catalogue import CONCRETES, SOILS
from geometry.parts.floor import Floor
from geometry.water.wall import shared_sides

# What the standard takes where nothing is known of the ground: sand or gravel, W/mK.
UNKNOWN_GROUND = 2.0


@dataclass(frozen=True)
class FloorHeat:
    """One heated area; SI, temperatures in Celsius. Areas and edges by the walls' outside.

    exposed_m: edge towards ground, air and unheated areas. depth_m: the finished floor under the
    grade at the wall, 0 where it lies higher. resistance: of the build-up where nothing breaks it;
    mean_resistance: with the share of concrete that passes the boards. u_whole: the floor's U if
    nothing broke it; u_floor: as it is. u_wall: of the walls in the ground, None without depth.
    loss_w: at the temperatures given. wall_resistance: of the walls in the ground. below_tubes:
    what warm tubes send down, where there are tubes and both temperatures are given.
    """

    area: str
    layers: tuple[Resisting, ...]
    resistance: float
    cold_share: float
    mean_resistance: float
    floor_m2: float
    exposed_m: float
    dimension_m: float
    depth_m: float
    ground_w_mk: float
    ground_assumed: bool
    wall_resistance: float
    u_whole: float
    u_floor: float
    u_wall: float | None
    wall_m2: float
    floor_w_k: float
    wall_w_k: float
    inside_c: float | None
    outside_c: float | None
    loss_w: float | None
    by_edge: FFactor
    below_tubes: tuple[BelowTubes, ...] = ()

    @property
    def loss_w_k(self) -> float:
        """Floor and walls in the ground together, W/K."""
        return self.floor_w_k + self.wall_w_k


def floor_heat(layout: Layout, area: AreaLayout, cold_share: float) -> FloorHeat | None:
    """Return an area's heat; None for an unheated one, or one with no edge exposed.

    cold_share: part of its floor that stands on concrete or ground past the boards, 0 to 1.
    """
    climate = layout.design.climate
    outer, exposed = _edges(layout, area)
    if area.name in climate.unheated or exposed <= 0:
        return None
    layers, ground = resisting(area.floor), ground_conductivity(layout)
    whole = resistance(layers)
    mean = _mean(whole, bare(area.floor), min(1.0, cold_share))
    floor_m2 = float(area.outline.area)
    wide = characteristic_dimension(floor_m2, exposed)
    depth = max(0.0, layout.ground.at_wall - area.finished_floor)
    wall = area.wall.thickness
    thick = [floor_thickness(wall, ground, value) for value in (whole, mean)]
    u_whole, u_floor = (floor_transmittance(wide, t, ground, depth) for t in thick)
    in_wall = _wall_resistance(layout, area)
    u_wall, wall_m2 = None, outer * depth
    if wall_m2 > 0:
        u_wall = wall_transmittance(depth, wall_thickness(ground, in_wall), thick[1], ground)
    floor_w_k, wall_w_k = u_floor * floor_m2, (u_wall or 0.0) * wall_m2
    inside, outside = climate.inside, climate.outside
    known = inside is not None and outside is not None
    made = FloorHeat(
        area.name, layers, whole, cold_share, mean, floor_m2, exposed, wide, depth, ground,
        _assumed(layout), in_wall, u_whole, u_floor, u_wall, wall_m2, floor_w_k, wall_w_k,
        inside, outside,
        (floor_w_k + wall_w_k) * ((inside or 0.0) - (outside or 0.0)) if known else None,
        f_factor(insulation(area.floor), exposed, depth, warmed=area.floor.tubing is not None),
    )  # fmt: skip
    return replace(made, below_tubes=_below_tubes(area.floor, made))


def _below_tubes(floor: Floor, heat: FloorHeat) -> tuple[BelowTubes, ...]:
    """Return what goes down from the tubes in the topmost slab; none where too little is given."""
    slabs = [n for n, layer in enumerate(floor.layers) if layer.role == "slab"]
    inside, outside = heat.inside_c, heat.outside_c
    if floor.tubing is None or not slabs or inside is None or outside is None:
        return ()
    return below_tubes(heat.layers, slabs[-1], heat.u_floor, inside, outside)


def ground_conductivity(layout: Layout) -> float:
    """Return the ground's thermal conductivity, W/mK: as given, by its group, or as unknown."""
    given = layout.design.climate.ground_conductivity
    by_group = SOILS[layout.design.soil.group].conductivity_w_mk
    return given or by_group or UNKNOWN_GROUND


def _assumed(layout: Layout) -> bool:
    """Whether nothing is known of the ground."""
    known = SOILS[layout.design.soil.group].conductivity_w_mk
    return layout.design.climate.ground_conductivity is None and known is None


def _mean(whole: float, uninsulated: float, share: float) -> float:
    """Resistance of floor with and without board side by side, each with its surfaces."""
    films = INSIDE_DOWN + OUTSIDE
    passed = share / (films + uninsulated) + (1 - share) / (films + whole)
    return max(0.0, 1 / passed - films)


def _edges(layout: Layout, area: AreaLayout) -> tuple[float, float]:
    """Return an area's edge towards the ground outside, and all that is exposed, m."""
    outer = sum(shared_sides(area, layout.ground.house))
    cold = [a for a in layout.areas if a.name in layout.design.climate.unheated and a is not area]
    return outer, outer + sum(sum(shared_sides(area, a.outline)) for a in cold)


def _wall_resistance(layout: Layout, area: AreaLayout) -> float:
    """Resistance of an area's wall with what insulates it, m2K/W; masonry counts as nothing."""
    concrete = CONCRETES.get(area.wall.material)
    own = concrete.r_per_m * area.wall.thickness if concrete else 0.0
    return own + (layout.design.climate.wall_resistance or 0.0)
