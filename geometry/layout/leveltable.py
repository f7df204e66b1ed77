"""The level table: every interface against top of footing, with thickness and elevation."""

from dataclasses import dataclass

from geometry.layout.areas import AreaLayout
from geometry.layout.bleeders import bleeder_invert
from geometry.layout.drain import DrainLayout
from geometry.layout.footings import column_prism, pad_prism, pier_name
from geometry.layout.lay import Layout
from geometry.layout.naming import named


@dataclass(frozen=True)
class LevelRow:
    """One level, metres: against the project's TOF, as elevation, as rod reading (None: no laser).

    group: "floor", "footing", "pier", "drain", "sump" or "ground". thickness_below: of what lies
    right under it, floor layers only.
    """

    area: str
    group: str
    interface: str
    level: float
    elevation: float
    rod: float | None
    thickness_below: float | None = None


def level_rows(layout: Layout) -> tuple[LevelRow, ...]:
    """Return all levels, each area's from the top down, then drain, sump and ground."""
    found = []
    for area in layout.areas:
        rows = [*_floor(area), *_footing(area), *_piers(area)]
        found += sorted(rows, key=lambda r: -r[2])
    found += [row for drain in layout.drains for row in _drain(layout, drain)]
    found += [*_sump(layout), *_ground(layout)]
    return tuple(_row(layout, *r) for r in found)


_Bare = tuple[str, str, float, str, float | None]


def _row(
    layout: Layout, area: str, group: str, level: float, name: str, below: float | None
) -> LevelRow:
    datum = layout.design.datum
    elevation = datum.top_of_footing + level
    rod = None if datum.instrument is None else datum.instrument - elevation
    return LevelRow(area, group, name, level, elevation, rod, below)


def _floor(area: AreaLayout) -> list[_Bare]:
    names, levels = area.stack.names, area.stack.levels
    rows: list[_Bare] = []
    for number, name in enumerate(names):
        last = number == len(names) - 1
        words = f"{name} top (finished floor)" if last else f"{name} top"
        rows.append(
            (area.name, "floor", levels[number + 1], words, levels[number + 1] - levels[number])
        )
    rows.append((area.name, "floor", levels[0], "subgrade", None))
    return rows


def _footing(area: AreaLayout) -> list[_Bare]:
    return [
        (area.name, "footing", area.wall_top, "top of wall", None),
        (area.name, "footing", area.tof, "top of footing", area.footing.thickness),
        (area.name, "footing", area.footing_bottom, "footing bottom", None),
    ]


def _piers(area: AreaLayout) -> list[_Bare]:
    rows: list[_Bare] = []
    for number, pier in enumerate(area.area.piers):
        name, pad, column = pier_name(area, number), pad_prism(area, pier), column_prism(area, pier)
        if column:
            rows.append((area.name, "pier", column.top, f"column {name} top", None))
        rows.append((area.name, "pier", pad.top, f"pad {name} top", pier.thickness))
        rows.append((area.name, "pier", pad.bottom, f"pad {name} bottom", None))
    return rows


def _drain(layout: Layout, drain: DrainLayout) -> list[_Bare]:
    which = named(drain, layout.drains)
    rows = [
        ("drain stone top (wrapped)", drain.stone_top),
        ("drain invert, high point", drain.high_invert),
    ]
    for fitting in drain.fittings:
        if fitting.kind == "bend":
            where = f"drain invert, corner {drain.outline_corner(fitting.corner or 0)}"
            rows.append((where, drain.invert(fitting.station)))
    rows.append(("drain invert, low point", drain.outlet_invert))
    rows.append(("drain trench bottom", drain.stone_bottom))
    bleeders = layout.bleeders_of(drain)
    if bleeders:
        rows.append(("bleeders' invert", bleeder_invert(drain)))
    return [(drain.area.name, "drain", level, words + which, None) for words, level in rows]


def _sump(layout: Layout) -> list[_Bare]:
    pit = layout.sump
    if pit is None:
        return []
    named = [
        ("sump rim", pit.rim),
        ("pipe invert at sump", pit.lead.end_invert if pit.lead else None),
        ("high-water alarm", pit.alarm),
        ("pump on", pit.pump_on),
        ("pump off", pit.pump_off),
        ("sump inside bottom", pit.floor),
        ("sump pocket bottom", pit.pocket.bottom),
    ]
    rows: list[_Bare] = [
        (pit.area.name, "sump", z, words, None) for words, z in named if z is not None
    ]
    return sorted(rows, key=lambda r: -r[2])


def _ground(layout: Layout) -> list[_Bare]:
    ground = layout.ground
    return [
        ("", "ground", ground.at_wall, "finished grade at the wall", None),
        ("", "ground", ground.existing, "ground before the dig", None),
    ]
