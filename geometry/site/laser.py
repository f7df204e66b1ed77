"""Every level to shoot from one height of the laser, in the order one walks."""

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Literal

from geometry.layout.areas import AreaLayout
from geometry.layout.bleeders import bleeder_invert
from geometry.layout.drain import DrainLayout
from geometry.layout.footings import pad_prism, pier_name
from geometry.layout.inverts import invert_rows
from geometry.layout.lay import Layout
from geometry.site.drains import called
from geometry.site.records import Place
from geometry.site.shots import place
from geometry.sources import Source
from geometry.survey.tolerances import FINE_GRADE, FOOTING_TOP, Tolerance, footing_tolerance
from geometry.units import INCH
from geometry.water.daylight import daylight_runs

LegKey = Literal["start", "concrete", "drain", "pit", "floor", "walls", "end"]
SLAB_TOP = Tolerance(
    0.75 * INCH, 0.75 * INCH, Source("ACI 117", clause="top of slab", sure="second-hand")
)
_HOLDS = {"base": FINE_GRADE, "slab": SLAB_TOP}
# With more corners than this, top of footing is one row to be shot at all of them.
MOST_CORNERS = 12
# An even step nearer than this to a place with a name is not shot as well.
NEAR_M = 0.75
# What is thinner than this has no reading of its own.
THIN_M = 5e-4


@dataclass(frozen=True)
class Reading:
    """One reading, metres. key: of what. name: of a layer or pier, in the file's own words.

    level: against the project's TOF, None where only the crew knows it. rod: None without a laser.
    along: distance from where the walk along a drain begins. tolerance: to hold, where one is
    published.
    """

    key: str
    level: float | None = None
    elevation: float | None = None
    rod: float | None = None
    name: str = ""
    places: tuple[Place, ...] = ()
    along: float | None = None
    tolerance: Tolerance | None = None


@dataclass(frozen=True)
class Leg:
    """One part of the walk. area: empty for the whole house. drain: as `drains.called` says."""

    key: LegKey
    readings: tuple[Reading, ...]
    area: str = ""
    drain: str = ""


def legs(layout: Layout) -> tuple[Leg, ...]:
    """Return the walk: benchmark, concrete that stands, drains, pit, floors, walls, benchmark."""
    check = (Reading("benchmark"),)
    walk = [Leg("start", check)]
    walk += [Leg("concrete", tuple(_concrete(layout, a)), a.name) for a in layout.areas]
    for drain in layout.drains:
        which = called(drain, layout.drains)
        walk.append(Leg("drain", tuple(_drain(layout, drain)), drain.area.name, which))
    if layout.sump:
        walk.append(Leg("pit", tuple(_pit(layout)), layout.sump.area.name))
    walk += [Leg("floor", tuple(_floor(layout, a)), a.name) for a in layout.areas]
    return (*walk, Leg("walls", tuple(_walls(layout))), Leg("end", check))


def _at(
    layout: Layout, key: str, level: float, name: str = "", tolerance: Tolerance | None = None,
    places: tuple[Place, ...] = (), along: float | None = None,
) -> Reading:  # fmt: skip
    datum = layout.design.datum
    elevation = datum.top_of_footing + level
    rod = None if datum.instrument is None else datum.instrument - elevation
    return Reading(key, level, elevation, rod, name, places, along, tolerance)


def _concrete(layout: Layout, area: AreaLayout) -> Iterator[Reading]:
    holds, corners = footing_tolerance(area.wall), len(area.area.corners)
    for number in range(1, corners + 1) if corners <= MOST_CORNERS else ():
        yield _at(layout, "footing_top", area.tof, "", holds, (Place("corner", number),))
    if corners > MOST_CORNERS:
        yield _at(layout, "footing_top", area.tof, "", holds, (Place("every_corner"),))
    for number, pier in enumerate(area.area.piers):
        top = pad_prism(area, pier).top
        yield _at(layout, "pad_top", top, pier_name(area, number), FOOTING_TOP)


def _drain(layout: Layout, drain: DrainLayout) -> Iterator[Reading]:
    yield _at(layout, "trench_bottom", drain.stone_bottom)
    rows = invert_rows(layout, drain)
    named = [row.along for row in rows if row.names]
    for row in rows:
        if not row.names and any(abs(row.along - along) < NEAR_M for along in named):
            continue
        places = tuple(map(place, row.names))
        yield _at(layout, "invert", row.level, places=places, along=row.along)
    if layout.bleeders_of(drain):
        yield _at(layout, "bleeders", bleeder_invert(drain))
    for run in daylight_runs(drain):
        if run.end_at_m is not None:
            yield _at(layout, "open_end", run.end_invert_m, along=run.end_at_m)
    yield _at(layout, "drain_stone_top", drain.stone_top)


def _pit(layout: Layout) -> Iterator[Reading]:
    pit = layout.sump
    if pit is None:
        return
    rows = (
        ("pocket", pit.pocket.bottom), ("pit_floor", pit.floor), ("pump_off", pit.pump_off),
        ("pump_on", pit.pump_on), ("alarm", pit.alarm),
        ("pit_invert", pit.lead.end_invert if pit.lead else None), ("rim", pit.rim),
    )  # fmt: skip
    for key, level in rows:
        if level is not None:
            yield _at(layout, key, level)


def _floor(layout: Layout, area: AreaLayout) -> Iterator[Reading]:
    yield _at(layout, "subgrade", area.subgrade, "", FINE_GRADE)
    layers = area.floor.layers
    for number, (layer, level) in enumerate(zip(layers, area.stack.levels[1:], strict=True)):
        top = number == len(layers) - 1
        if top or layer.thickness > THIN_M:
            key = "finished_floor" if top else "layer_top"
            yield _at(layout, key, level, layer.name, _HOLDS.get(layer.role))


def _walls(layout: Layout) -> Iterator[Reading]:
    for area in layout.areas:
        yield _at(layout, "wall_top", area.wall_top, area.name)
    yield _at(layout, "grade", layout.ground.at_wall)
