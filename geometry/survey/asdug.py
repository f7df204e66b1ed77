"""The as-dug survey of a design: each area's ground against its plan, and the concrete's tops."""

from dataclasses import dataclass

import numpy as np
import shapely

from geometry.layout.areas import AreaLayout
from geometry.layout.lay import Layout
from geometry.survey.bed import Bed, bed
from geometry.survey.foam import Foam, foam_on_footing, foam_on_ground
from geometry.survey.ground import Ground, OnFloor, measured, on_floor
from geometry.survey.outliers import outliers
from geometry.survey.ponds import Ponds, ponds
from geometry.survey.shots import Ints, ShotFault, Shots, SurveyError
from geometry.survey.spots import Spots, spots
from geometry.survey.surface import Surface, neighbourly, triangulate
from geometry.survey.tolerances import FINE_GRADE
from geometry.survey.tops import Top, tops
from geometry.units import FOOT, System, show_length

# Spots and ponds that are listed.
MOST = 8
# Ground so far off the planned subgrade is not what was dug for this floor (two feet).
FOREIGN_M = 2 * FOOT


@dataclass(frozen=True, eq=False)
class AreaDug:
    """One area as dug. surface: through all its shots. floor: the same on the floor.

    index: (n,) which shots the surface's points are. outside: shots beyond the floor's edge.
    """

    bed: Bed
    surface: Surface
    floor: OnFloor
    index: Ints
    outside: int
    ground: Ground
    high: Spots
    low: Spots
    ponds: Ponds
    foam: Foam

    @property
    def name(self) -> str:
        """The area's name."""
        return self.bed.area.name


@dataclass(frozen=True, eq=False)
class AsDug:
    """A survey against a design: areas with shots enough, tops of concrete, all faults."""

    shots: Shots
    areas: tuple[AreaDug, ...]
    tops: tuple[Top, ...]
    foam_on_footing: Foam
    faults: tuple[ShotFault, ...]


def as_dug(layout: Layout, shots: Shots, least_m: float | None = None) -> AsDug:
    """Return what the shots say about the design. least_m: least base; the source's unless given.

    Shots of the ground belong to the area whose outline they lie in or next to. Never raises for
    what the shots hold: see `faults`.
    """
    system = layout.design.project.units
    faults = list(shots.faults)
    found: list[AreaDug] = []
    ground = shots.of("ground")
    for area, index in zip(layout.areas, _owned(layout, shots, ground), strict=True):
        if not len(index):
            continue
        index = index[neighbourly(shots.x[index], shots.y[index])]
        try:
            _meant(area, shots, index, system)
            surface = triangulate(shots.x[index], shots.y[index], shots.level[index])
        except SurveyError as error:
            faults.append(ShotFault(f"{area.name} is not reckoned: {error}", weight="file"))
            continue
        faults += outliers(surface, shots, index, system)
        found.append(area_dug(layout, bed(layout, area, least_m), surface, shots, index))
    if not len(ground) and not any(f.weight == "file" for f in faults):
        faults.append(ShotFault("no shot of the ground is left", weight="file"))
    concrete, beside = tops(layout, shots)
    verdicts = foam_on_footing(layout, shots, concrete)
    return AsDug(shots, tuple(found), concrete, verdicts, (*faults, *beside))


def _meant(area: AreaLayout, shots: Shots, index: Ints, system: System) -> None:
    """Raise SurveyError where the shots can hardly be this area's dug ground."""
    off = float(np.median(shots.level[index])) - area.subgrade
    if abs(off) > FOREIGN_M:
        raise SurveyError(
            f"half of its {len(index):,} shots lie {show_length(abs(off), system)} or more "
            f"{'above' if off > 0 else 'below'} its planned subgrade; either it is not dug, or "
            "they belong elsewhere"
        )


def _owned(layout: Layout, shots: Shots, ground: Ints) -> list[Ints]:
    """Return the shots of the ground of each area: those in its outline, else nearest to it."""
    areas: tuple[AreaLayout, ...] = layout.areas
    if len(areas) == 1:
        return [ground]
    owner = np.full(len(ground), -1)
    x, y = shots.x[ground], shots.y[ground]
    for number, area in enumerate(areas):
        shapely.prepare(area.outline)
        owner[(owner < 0) & shapely.intersects_xy(area.outline, x, y)] = number
    lost = np.flatnonzero(owner < 0)
    spots_lost = shapely.points(x[lost], y[lost])
    away = np.stack([shapely.distance(a.outline, spots_lost) for a in areas])
    owner[lost] = away.argmin(axis=0)
    return [ground[owner == number] for number in range(len(areas))]


def area_dug(layout: Layout, planned: Bed, surface: Surface, shots: Shots, index: Ints) -> AreaDug:
    """Return one area's ground against its plan; index: (n,) which shots the points are."""
    floor, grade = on_floor(surface, planned.region), FINE_GRADE
    inside = floor.found.points
    return AreaDug(
        planned,
        surface,
        floor,
        index,
        int(np.count_nonzero(~inside)),
        measured(planned, floor),
        spots(floor.whole, planned.subgrade, grade.above, "high", MOST),
        spots(floor.whole, planned.subgrade, grade.below, "low", MOST),
        ponds(layout, planned, floor.between, inside, MOST),
        foam_on_ground(planned, shots, index, inside),
    )
