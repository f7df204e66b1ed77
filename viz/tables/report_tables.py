"""Tables of a report, for the terminal, the app and CSV files alike."""

from collections import defaultdict
from collections.abc import Iterable, Mapping

from geometry.report import Found, Report, Volume
from geometry.units import (
    FOOT,
    System,
    show_elevation,
    show_level,
    show_rod,
    show_thickness,
    show_volume,
)
from viz.tables.table import Cell, Table
from viz.words import SEVERITIES, material_name

# Bodies of earth and the hole are counted apart: they are moved, not bought.
EARTH = ("ground/backfill", "ground/grading", "ground/excavation")
_OF_THE_HOUSE = "house"


def levels(report: Report, system: System) -> Table:
    """Return the level table as people read it; the rod reading only where a laser is given."""
    laser = any(row.rod_reading_m is not None for row in report.levels)
    head = ("Area", "Level of", "From TOF", "Elevation", "Rod reading", "Thick below")
    rows = [
        (
            row.area or _OF_THE_HOUSE,
            row.interface,
            show_level(row.level_m, system),
            show_elevation(row.elevation_m, system),
            "" if row.rod_reading_m is None else _rod(row.rod_reading_m, system),
            "" if row.thickness_below_m is None else show_thickness(row.thickness_below_m, system),
        )
        for row in report.levels
    ]
    return Table(head, tuple(rows)) if laser else _without(Table(head, tuple(rows)), 4)


def _rod(reading: float, system: System) -> str:
    """A level above the laser cannot be read on a rod that stands on it."""
    return "above the laser" if reading < 0 else show_rod(reading, system)


def _without(table: Table, column: int) -> Table:
    head, *rows = ((*r[:column], *r[column + 1 :]) for r in (table.head, *table.rows))
    return Table(tuple(map(str, head)), tuple(rows))


def level_figures(report: Report) -> Table:
    """Return the level table for other programs: metres, and decimal feet."""
    head = (
        "area", "group", "level_of", "level_m", "level_ft", "elevation_m", "elevation_ft",
        "rod_reading_m", "thickness_below_m",
    )  # fmt: skip
    rows = tuple(
        (
            row.area, row.group, row.interface, _exact(row.level_m), _exact(row.level_m / FOOT),
            _exact(row.elevation_m), _exact(row.elevation_m / FOOT), _exact(row.rod_reading_m),
            _exact(row.thickness_below_m),
        )
        for row in report.levels
    )  # fmt: skip
    return Table(head, rows)


def _exact(value: float | None) -> float | None:
    """To the micrometre (or its like in feet): a figure without the noise of binary arithmetic."""
    return None if value is None else round(value, 6) + 0.0


def materials(report: Report) -> Table:
    """Return the volume of each material in place, in three units, earth left out."""
    sums: dict[str, float] = defaultdict(float)
    for row in report.volumes:
        if row.part not in EARTH:
            sums[row.material] += row.volume_m3
    rows = [_three(material_name(key), total) for key, total in sums.items()]
    return Table(("Material", "yd³", "ft³", "m³"), tuple(rows))


def parts(report: Report) -> Table:
    """Return the volume of each part in place, materials together, in three units."""
    order = list(dict.fromkeys(row.material for row in report.volumes))
    rows = sorted(report.volumes, key=lambda row: (row.part in EARTH, order.index(row.material)))
    return Table(("Material", "Part", "Area", "yd³", "ft³", "m³"), tuple(map(_part, rows)))


def _part(row: Volume) -> tuple[Cell, ...]:
    _, *figures = _three("", row.volume_m3)
    return (material_name(row.material), row.name, row.area or _OF_THE_HOUSE, *figures)


def _three(name: str, cubic_metres: float) -> tuple[str, ...]:
    yards, feet = cubic_metres * YARDS, cubic_metres * FEET
    return name, f"{yards:,.2f}", f"{feet:,.1f}", f"{cubic_metres:,.3f}"


FEET = 1 / FOOT**3
YARDS = FEET / 27


def volume_figures(report: Report) -> Table:
    """Return the volume of each part for other programs."""
    head = ("part", "name", "area", "role", "material", "volume_m3", "volume_ft3", "volume_yd3")
    rows = tuple(
        (v.part, v.name, v.area, v.role, v.material, _exact(v.volume_m3), _exact(v.volume_ft3),
         _exact(v.volume_yd3))
        for v in report.volumes
    )  # fmt: skip
    return Table(head, rows)


def invert_figures(report: Report) -> Table:
    """Return every drain's inverts for other programs, in the order one walks along each."""
    head = (
        "drain", "area", "places", "along_m", "level_m", "level_ft", "elevation_m", "elevation_ft",
        "rod_reading_m",
    )  # fmt: skip
    rows = tuple(
        (
            drain.name, drain.area, ", ".join(row.names), _exact(row.along_m),
            _exact(row.level_m), _exact(row.level_m / FOOT), _exact(row.elevation_m),
            _exact(row.elevation_m / FOOT), _exact(row.rod_reading_m),
        )
        for drain in report.drains
        for row in drain.inverts
    )  # fmt: skip
    return Table(head, rows)


def findings(report: Report) -> Table:
    """Return the findings, the gravest first."""
    head = ("Verdict", "Subject", "Found", "Asked", "Source", "What to do")
    rows = tuple(
        (SEVERITIES[f.severity], f.subject, f.found, f.asked, f.source, f.advice)
        for f in by_gravity(report.findings)
    )
    return Table(head, rows)


def by_gravity(found: Iterable[Found]) -> list[Found]:
    """Return findings with "stop" first and "fine" last, else in their order."""
    order: Mapping[str, int] = {"stop": 0, "look": 1, "fine": 2}
    return sorted(found, key=lambda f: order[f.severity])


def total(report: Report, part: str, system: System) -> str:
    """Return one part's volume in words; a dash where the design has none."""
    sizes = [v.volume_m3 for v in report.volumes if v.part == part]
    return show_volume(sum(sizes), system) if sizes else "–"
