"""What the fill pushes on each area's outer wall, drained and flooded, and the state it is met in.

Per metre of wall, the ground level and the wall smooth. It informs: the wall's design belongs to
the code's tables or an engineer, and nothing here says that a wall is strong enough.
"""

from collections.abc import Iterator
from dataclasses import dataclass, replace
from functools import lru_cache
from typing import Literal

import shapely
from shapely import LineString
from shapely.geometry.base import BaseGeometry

from geometry.formulas.earth_pressure import at_rest, coefficient_of_fluid, rankine_active
from geometry.formulas.wall_pressure import PressureDiagram, Thrust, pressure_diagram, thrust
from geometry.layout.areas import AreaLayout
from geometry.layout.lay import Layout
from geometry.materials.catalogue import SOILS
from geometry.materials.kinds import Soil
from geometry.parts.ground import BackfillState
from geometry.plan.route import corners_of, straightened
from geometry.sources import Source
from geometry.units import FOOT
from geometry.water.backfill import pushing_soil, saturated_weight, weight

Case = Literal["active", "code's table", "at rest"]

ASK_M = 4 * FOOT
ASK_SOURCE = Source(
    "IRC", clause="R404.1.3 (over 48 in of unbalanced fill without lateral support top and bottom, "
    "or water pressure: engineered); R404.1.7 (brace before backfill, 4 ft)", sure="memory",
)  # fmt: skip
OUTSIDE = "ground"
"""What stands behind an outer wall."""
SURE_OF_SHARED_M = 1e-4


@dataclass(frozen=True)
class Push:
    """One case of soil pressure, drained and with water up to a depth.

    coefficient: sideways over downward pressure of the soil. Ratios are flooded over drained, of
    the thrust and of its moment about the foot.
    """

    case: Case
    coefficient: float
    drained: PressureDiagram
    flooded: PressureDiagram
    drained_thrust: Thrust
    flooded_thrust: Thrust
    force_ratio: float
    moment_ratio: float

    @property
    def surcharge_pa(self) -> float:
        """The even load on the ground, which alone pushes at its top."""
        return self.drained.total_pa[0] / self.coefficient


@dataclass(frozen=True)
class WallRun:
    """One area's wall against the ground outside, or against the fill under a higher floor. Metres.

    behind: OUTSIDE, or the name of the area whose floor lies on the fill; what stands on that floor
    is not counted. length_m, longest_m: along the wall, in all and of the longest straight. Fill
    from its top (the finished grade at the wall, or the higher floor) down to the finished floor,
    to the underside of the slab, and to the foot: the wall's base, or the ground inside where that
    stands higher; each 0 where the top lies lower. unbraced: from the floor (slab laid) or from
    the foot (no slab yet) to the top of the wall, where the deck holds it. pushes: over the foot,
    none for soil that is not known or without fill. water_depth_m: of the flooded case, under the
    fill's top. surcharge_pa: even load on the ground outside.
    """

    area: str
    behind: str
    length_m: float
    longest_m: float
    wall_m: float
    fill_to_floor_m: float
    fill_to_slab_m: float
    fill_to_foot_m: float
    unbraced_with_slab_m: float
    unbraced_without_slab_m: float
    soil: str
    water_depth_m: float
    surcharge_pa: float
    pushes: tuple[Push, ...]

    @property
    def asks(self) -> bool:
        """Whether the fill is so high that the code's table or an engineer must speak."""
        return self.fill_to_floor_m > ASK_M


@lru_cache(maxsize=16)
def wall_runs(layout: Layout) -> tuple[WallRun, ...]:
    """Return each area's outer wall, then its walls to areas with a higher floor.

    The flooded case's water and the load on the ground outside are the design's.
    """
    fill, load = layout.design.backfill, layout.design.loads.surcharge
    grade, outside = layout.ground.at_wall, layout.ground.house
    found = []
    for area in layout.areas:
        behind = [(OUTSIDE, outside, min(grade, area.wall_top))]
        higher = [a for a in layout.areas if a.finished_floor > area.finished_floor]
        behind += [(a.name, a.outline, min(a.finished_floor, area.wall_top)) for a in higher]
        for name, shape, top in behind:
            sides = shared_sides(area, shape)
            if sides:
                run = _run(area, name, sides, top, pushing_soil(layout.design))
                found.append(pushed(run, fill.water_depth, load if name == OUTSIDE else 0.0))
    return tuple(found)


def shared_sides(area: AreaLayout, other: BaseGeometry) -> tuple[float, ...]:
    """Return how much of each side of an area runs along another outline, metres; no zeros."""
    rim = shapely.boundary(other).buffer(SURE_OF_SHARED_M)
    corners = corners_of(straightened(area.outline))
    sides = [LineString((corners[n - 1], corners[n])) for n in range(len(corners))]
    lengths = [float(side.intersection(rim).length) for side in sides]
    return tuple(length for length in lengths if length > 100 * SURE_OF_SHARED_M)


def highest(runs: tuple[WallRun, ...]) -> WallRun | None:
    """Return the outer wall with the most fill over its foot; None without such walls or fill."""
    filled = [run for run in runs if run.behind == OUTSIDE and run.fill_to_foot_m > 0]
    return max(filled, key=lambda run: run.fill_to_foot_m, default=None)


def pushes(
    soil: Soil, height_m: float, water_depth_m: float = 0.0, surcharge_pa: float = 0.0
) -> tuple[Push, ...]:
    """Return the cases known for a soil; none for unknown soil or no fill."""
    heavy, wet = weight(soil), saturated_weight(soil)
    if height_m <= 0 or heavy is None or wet is None:
        return ()
    found = []
    for case, coefficient in coefficients(soil, heavy):
        dry = pressure_diagram(height_m, coefficient, heavy, surcharge_pa=surcharge_pa)
        flooded = pressure_diagram(
            height_m, coefficient, heavy, wet, water_depth_m, surcharge_pa=surcharge_pa
        )
        one, other = thrust(dry), thrust(flooded)
        ratios = other.force_n_m / one.force_n_m, other.moment_n / one.moment_n
        found.append(Push(case, coefficient, dry, flooded, one, other, *ratios))
    return tuple(found)


def coefficients(soil: Soil, weight_n_m3: float) -> tuple[tuple[Case, float], ...]:
    """Return the known ratios of sideways to downward pressure by their case."""
    found: list[tuple[Case, float]] = []
    if soil.friction_angle_deg is not None:
        found.append(("active", rankine_active(soil.friction_angle_deg)))
    if soil.wall_table_load_n_m3 is not None:
        by_table = coefficient_of_fluid(soil.wall_table_load_n_m3, weight_n_m3)
        found.append(("code's table", by_table))
    if soil.friction_angle_deg is not None:
        found.append(("at rest", at_rest(soil.friction_angle_deg)))
    return tuple(found)


def _run(
    area: AreaLayout, behind: str, sides: tuple[float, ...], top: float, soil: Soil
) -> WallRun:
    foot = max(area.tof, area.subgrade)
    levels = (area.finished_floor, _slab_bottom(area), foot)
    to_floor, to_slab, to_foot = (max(0.0, top - level) for level in levels)
    return WallRun(
        area.name, behind, sum(sides), max(sides), area.wall.thickness, to_floor, to_slab, to_foot,
        max(0.0, area.wall_top - area.finished_floor), max(0.0, area.wall_top - foot),
        soil.key, 0.0, 0.0, (),
    )  # fmt: skip


def pushed(run: WallRun, water_depth_m: float, surcharge_pa: float) -> WallRun:
    """Return the wall with what pushes on it."""
    found = pushes(SOILS[run.soil], run.fill_to_foot_m, water_depth_m, surcharge_pa)
    return replace(run, water_depth_m=water_depth_m, surcharge_pa=surcharge_pa, pushes=found)


def _slab_bottom(area: AreaLayout) -> float:
    """Level of the topmost slab's underside; the finished floor where there is no slab."""
    slabs = [n for n, layer in enumerate(area.floor.layers) if layer.role == "slab"]
    return area.stack.levels[slabs[-1]] if slabs else area.finished_floor


def state_words(run: WallRun, state: BackfillState) -> tuple[str, ...]:
    """Return what the state at the moment of backfill means for a wall, never that it is safe."""
    words = [*_held_words(state), *_braced_words(state)]
    if state.deck and state.slab:
        words.append("Held at top and foot, as the code's tables suppose.")
    if run.asks or not (state.deck and state.slab):
        words.append("Ask an engineer, or hold it against the code's table for this wall.")
    return tuple(words)


def _held_words(state: BackfillState) -> Iterator[str]:
    """Yield what it means that deck or slab are lacking, or that nothing is said of them."""
    alone = "it stands as a post fixed at its foot alone."
    keyed = "only the footing's keyway and friction do."
    if state.deck is None:
        yield f"Not said whether a deck holds the wall's top: without one {alone}"
    elif not state.deck:
        yield f"No deck holds the wall's top: {alone}"
    if state.slab is None:
        yield f"Not said whether a slab holds the wall's foot: without one {keyed}"
    elif not state.slab:
        yield f"No slab holds the wall's foot: {keyed}"


def _braced_words(state: BackfillState) -> Iterator[str]:
    """Yield what braces mean, there, lacking or not spoken of."""
    stay = "do not backfill, and let nobody work beside it."
    if state.braced:
        yield "Braces hold as well as their feet in the ground: who designed them?"
    elif state.braced is None and not state.deck:
        yield f"Not said whether it is braced: with neither deck nor braces {stay}"
    elif state.deck is None:
        yield f"Without a deck nothing braces it: {stay}"
    elif not state.deck:
        yield f"Nothing braces it: {stay}"
