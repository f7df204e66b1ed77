"""How far the drain's pipe, and others of its size, flatten under the fill and a wheel.

Covers in metres from the finished ground to the crown, pressures in Pa, deflections as a share of
the diameter. The equation gives a size, not a prediction: see `formulas/buried_pipe.py`.
"""

from dataclasses import dataclass, replace
from functools import lru_cache
from math import sqrt

import numpy as np
import shapely
from numpy.typing import NDArray

from geometry.formulas.buried_pipe import (
    USUAL_BEDDING,
    deflection,
    dimension_ratio,
    pipe_stiffness,
    soil_modulus_for,
)
from geometry.formulas.pipe_loads import impact_factor, middle_pressure, prism_load
from geometry.layout.drain import DrainLayout
from geometry.layout.lay import Layout
from geometry.materials.catalogue import AGGREGATES, PIPES
from geometry.materials.kinds import Pipe, ReactionClass
from geometry.materials.reaction import Compaction, reaction_modulus
from geometry.parts.loads import Loads
from geometry.sources import Source
from geometry.units import INCH, to_unit
from geometry.water.backfill import USUAL_WEIGHT, backfill, weight

CONTACT_PA = to_unit(3000.0, "lbf", "N") / (4.5 * INCH) ** 2
"""A wheel stands on a square so large that it presses with this."""
CONTACT_SOURCE = Source(
    "IBC",
    clause="Table 1607.1, garages for passenger cars: 3,000 lb on 4 1/2 in square",
    sure="second-hand",
)
EMBEDMENT: dict[ReactionClass, str] = {
    "crushed rock": "class I",
    "clean coarse": "class II",
    "coarse with fines": "class III",
    "lean fine": "class IV",
    "none": "not to be used",
}
"""Bedding by the classes of ASTM D2321 (from memory)."""

# Pipes whose inside differs by less are of one nominal size; places looked at are this far apart.
_SAME_SIZE_M = 15e-3
_STEP_M = 0.5
_OTHERS = 4


@dataclass(frozen=True)
class Buried:
    """The pipe at one place: cover, its part in stone, loads at the crown, what they do to it.

    soil_pa: of the fill, and of the even load on it. wheel_pa: a wheel right above, impact in it;
    0 without a wheel or without cover. `flattened` under soil_pa alone, `with_wheel` under both.
    modulus_needed_pa: least E' that keeps both within the limit.
    """

    place: str
    station_m: float
    cover_m: float
    stone_m: float
    soil_pa: float
    wheel_pa: float
    flattened: float
    with_wheel: float
    modulus_needed_pa: float


@dataclass(frozen=True)
class PipeStrength:
    """One pipe of the catalogue at the deepest and at the shallowest place."""

    pipe: str
    chosen: bool
    outside_diameter_m: float
    stiffness_pa: float
    places: tuple[Buried, ...]

    @property
    def worst(self) -> float:
        """The greatest share it flattens under the fill alone."""
        return max(place.flattened for place in self.places)

    @property
    def worst_with_wheel(self) -> float:
        """The greatest share it flattens under fill and wheel."""
        return max(place.with_wheel for place in self.places)


@dataclass(frozen=True)
class DrainStrength:
    """This drain's pipe first, then others of its size; what was counted for all of them."""

    stone: str
    embedment: str
    compaction: Compaction
    soil_modulus_pa: float
    bedding: float
    limit: float
    wheel_n: float
    surcharge_pa: float
    fill: str
    fill_weight_n_m3: float
    fill_assumed: bool
    pipes: tuple[PipeStrength, ...]


@dataclass(frozen=True)
class _Place:
    name: str
    station: float
    crown: float
    surface: float


@lru_cache(maxsize=8)
def pipe_strength(layout: Layout, loads: Loads | None = None) -> DrainStrength | None:
    """Return how far the pipe flattens; None without a drain.

    loads: bedding and loads on the ground, those of the design unless given.
    """
    drain = layout.drain
    if drain is None:
        return None
    stone, fill = AGGREGATES[drain.drain.stone.material], backfill(layout.design)
    kind = stone.reaction_class or "none"
    loads = layout.design.loads if loads is None else loads
    modulus, heavy = reaction_modulus(kind, loads.bedding), weight(fill)
    shown = DrainStrength(
        stone.key, EMBEDMENT[kind], loads.bedding, modulus, USUAL_BEDDING,
        loads.deflection_limit, loads.wheel, loads.surcharge, fill.key,
        USUAL_WEIGHT if heavy is None else heavy, heavy is None, (),
    )  # fmt: skip
    places = _extremes(layout, drain)
    pipes = tuple(_strength(pipe, drain, places, shown) for pipe in of_one_size(drain.pipe))
    return replace(shown, pipes=pipes)


def of_one_size(pipe: Pipe) -> tuple[Pipe, ...]:
    """Return a pipe, then up to four others of its nominal size, the nearest inside first."""
    inside = pipe.inside_diameter_m

    def off(other: Pipe) -> float:
        return abs(other.inside_diameter_m - inside)

    others = [p for p in PIPES.values() if p is not pipe and off(p) < _SAME_SIZE_M]
    return pipe, *sorted(others, key=off)[:_OTHERS]


def stiffness(pipe: Pipe) -> float:
    """Return a pipe's stiffness, Pa: its standard's, else from wall and plastic.

    Raises ValueError for a row with neither.
    """
    if pipe.stiffness_kpa is not None:
        return pipe.stiffness_kpa * 1000
    if pipe.modulus_kpa is None:
        raise ValueError(f"{pipe.key} has neither stiffness nor modulus")
    ratio = dimension_ratio(pipe.outside_diameter_m, pipe.wall_m)
    return pipe_stiffness(pipe.modulus_kpa * 1000, ratio)


def _extremes(layout: Layout, drain: DrainLayout) -> tuple[_Place, _Place]:
    route = drain.route
    steps = np.linspace(0.0, route.length, max(2, int(route.length / _STEP_M) + 1))
    stations = sorted({*steps.tolist(), *route.stations.tolist(), *drain.falls.stations})
    places = np.array([route.at(station) for station in stations])
    crowns = [drain.centre(station) + drain.radius for station in stations]
    rows = zip(surface(layout, places).tolist(), stations, crowns, strict=True)
    covers = [(top - crown, station, crown) for top, station, crown in rows]
    deep, shallow = max(covers), min(covers)
    return (
        _Place("deepest", deep[1], deep[2], deep[0] + deep[2]),
        _Place("shallowest", shallow[1], shallow[2], shallow[0] + shallow[2]),
    )


def surface(layout: Layout, places: NDArray[np.float64]) -> NDArray[np.float64]:
    """Return the levels of what one walks on over (n, 2) places: finished grade, or a floor.

    A drain beside a basement may run under the slab of the garage next to it.
    """
    found = layout.ground.grades(places)
    for area in sorted(layout.areas, key=lambda a: a.finished_floor):
        under = shapely.contains_xy(area.outline, places)
        found = np.where(under, area.finished_floor, found)
    return found


def _strength(
    pipe: Pipe, drain: DrainLayout, places: tuple[_Place, ...], shown: DrainStrength
) -> PipeStrength:
    hard = stiffness(pipe)
    rows = tuple(_buried(place, drain, hard, shown) for place in places)
    return PipeStrength(pipe.key, pipe is drain.pipe, pipe.outside_diameter_m, hard, rows)


def _buried(place: _Place, drain: DrainLayout, hard: float, shown: DrainStrength) -> Buried:
    """Every pipe is looked at under the chosen pipe's crown: sizes differ by a finger's width."""
    cover = max(0.0, place.surface - place.crown)
    stone = min(cover, max(0.0, drain.stone_top - place.crown))
    weights = weight(AGGREGATES[shown.stone]), shown.fill_weight_n_m3
    soil = prism_load(stone, weights[0] or USUAL_WEIGHT) + prism_load(cover - stone, weights[1])
    soil += shown.surcharge_pa
    wheel = _wheel(shown.wheel_n, cover)
    alone, both = (
        deflection(soil, live, hard, shown.soil_modulus_pa, shown.bedding) for live in (0.0, wheel)
    )
    needed = soil_modulus_for(shown.limit, soil, wheel, hard, shown.bedding)
    return Buried(place.name, place.station, cover, stone, soil, wheel, alone, both, needed)


def _wheel(wheel_n: float, cover: float) -> float:
    if wheel_n <= 0 or cover <= 0:
        return 0.0
    side = sqrt(wheel_n / CONTACT_PA)
    return impact_factor(cover) * middle_pressure(CONTACT_PA, side, side, cover)
