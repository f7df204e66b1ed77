"""Tables of designs side by side: a column for each, differences from the first in brackets."""

from collections.abc import Callable, Iterator, Sequence

from geometry.heat.words import show_loss, show_resistance, show_transmittance
from geometry.parts.order import Unit
from geometry.units import FOOT, System, show_fall, show_length, show_level, show_volume
from geometry.variants.compare import Comparison
from geometry.variants.rows import (
    DrainRow,
    FindingRow,
    HeatRow,
    LevelRow,
    OrderRow,
    Values,
    VolumeRow,
    moves,
)
from viz.tables.order_tables import cost
from viz.tables.report_tables import YARDS
from viz.tables.table import Cell, Table
from viz.words import SEVERITIES, material_name

NONE = "–"
_OF_THE_HOUSE = "house"
_UNITS: dict[Unit, str] = {
    "yd3": "yd³", "m3": "m³", "ft2": "ft²", "m2": "m²", "ton": "tons", "t": "t",
}  # fmt: skip
_HEAT = {"loss": "heat to the ground", "u": "U of the floor", "resistance": "resistance, on mean"}
_HEAT_UNITS = {"loss": "W/K", "u": "W/m2K", "resistance": "m2K/W"}
_DRAIN = {
    "room over the fall": "height left over the fall",
    "low invert": "invert at the low point",
    "high invert": "invert at the high point",
    "fall": "fall",
    "longest": "longest branch",
    "length": "length",
}
_LEVELS = ("low invert", "high invert")


def tables(found: Comparison, system: System) -> Iterator[tuple[str, Table]]:
    """Yield every table that has rows, with its title, what matters most first."""
    for title, table in (
        ("Findings that come, go or change", findings(found)),
        ("What the files say otherwise", written(found)),
        ("Levels", levels(found, system)),
        ("Order", order(found)),
        ("Materials in place", materials(found, system)),
        ("Warmth", warmth(found, system)),
        ("Drain", drains(found, system)),
        ("Parts in place", volumes(found, system)),
    ):
        if table.rows:
            yield title, table


def workbook(found: Comparison, system: System) -> list[tuple[str, Table]]:
    """Return the tables of a workbook: as people read them, and the figures."""
    return [*tables(found, system), ("Figures", figures(found))]


def written(found: Comparison) -> Table:
    """Return the places of the design files that differ, in the files' own writing."""
    rows = tuple((row.place, *row.words) for row in found.written)
    return Table(("Place in the file", *found.names), rows)


def levels(found: Comparison, system: System) -> Table:
    """Return the levels that differ, against TOF, the farthest moved first."""
    rows = tuple(_level(row, system) for row in found.levels)
    return Table(("Area", "Level of", *found.names), rows)


def _level(row: LevelRow, system: System) -> tuple[Cell, ...]:
    cells = _cells(
        row.levels_m, lambda z: show_level(z, system), lambda d: signed_length(d, system)
    )
    return (row.area or _OF_THE_HOUSE, row.interface, *cells)


def signed_length(metres: float, system: System) -> str:
    """Print a difference of lengths with its sign: `+1"`, `-25 mm`; `0` where it is none."""
    text = show_length(metres, system)
    if text in ('0"', "0 mm", "-0 mm"):
        return "0"
    return text if text.startswith("-") else f"+{text}"


def materials(found: Comparison, system: System) -> Table:
    """Return each material's volume in all where it differs, earth left out."""
    rows = tuple((material_name(r.material), *_sizes(r, system)) for r in found.materials)
    return Table(("Material", *found.names), rows)


def volumes(found: Comparison, system: System) -> Table:
    """Return the volume of each part that differs, earthworks too."""
    rows = tuple(
        (r.area or _OF_THE_HOUSE, r.name, material_name(r.material), *_sizes(r, system))
        for r in found.volumes
    )
    return Table(("Area", "Part", "Material", *found.names), rows)


def _sizes(row: VolumeRow, system: System) -> tuple[str, ...]:
    return _cells(
        row.volumes_m3, lambda v: show_volume(v, system), lambda d: signed_volume(d, system)
    )


def signed_volume(cubic_metres: float, system: System) -> str:
    """Print a difference of volumes with its sign; what is too small to print is said so."""
    shown = show_volume(abs(cubic_metres), system)
    if float(shown.split()[0].replace(",", "")) == 0:
        return f"{'less' if cubic_metres < 0 else 'more'} by nothing one can measure"
    return f"{'-' if cubic_metres < 0 else '+'}{shown}"


def order(found: Comparison) -> Table:
    """Return the lines of the order that differ: units sold, and costs where prices are given."""
    priced = any(any(row.costs) for row in found.order) or any(found.costs)
    head: tuple[str, ...] = ("For", "Item", "Material", *found.names)
    rows: list[tuple[Cell, ...]] = [_order(row) for row in found.order]
    if priced:
        head += tuple(f"Cost, {name}" for name in found.names)
        rows = [
            (*cells, *_costs(row, found.currency))
            for cells, row in zip(rows, found.order, strict=True)
        ]
        whole = tuple(cost(money, found.currency) for money in found.costs)
        rows.append(("All", "the whole order", "", *[""] * len(found.names), *whole))
    return Table(head, tuple(rows))


def _order(row: OrderRow) -> tuple[Cell, ...]:
    item = f"{row.item}, {row.area}" if row.area else row.item
    name = material_name(row.material)
    bulk = row.item == row.material
    return (row.group.capitalize(), name if bulk else item, NONE if bulk else name, *_counts(row))


def _counts(row: OrderRow) -> tuple[str, ...]:
    """Return what each design buys; differences where both buy by the same unit."""
    cells = []
    for number, (unit, count) in enumerate(zip(row.sold, row.counts, strict=True)):
        first, before = row.sold[0], row.counts[0]
        if unit is None or count is None:
            cells.append(NONE)
        elif number and unit == first and before is not None and count != before:
            cells.append(f"{sold(count, unit)} ({_amount(count - before, unit, '+')})")
        else:
            cells.append(sold(count, unit))
    return tuple(cells)


def _amount(count: float, unit: Unit, sign: str = "") -> str:
    exact = unit in ("yd3", "m3", "ton", "t")
    return f"{count:{sign},.2f}" if exact else f"{count:{sign},.0f}"


def sold(count: float, unit: Unit) -> str:
    """Print how many of what is bought: `34 boards`, `85.19 yd³`."""
    if unit in _UNITS:
        return f"{_amount(count, unit)} {_UNITS[unit]}"
    many = "es" if unit.endswith("ch") else "s"
    return f"{_amount(count, unit)} {unit}{'' if count == 1 else many}"


def _costs(row: OrderRow, currency: str) -> tuple[str, ...]:
    return tuple(cost(money, currency) for money in row.costs)


def findings(found: Comparison) -> Table:
    """Return the findings that differ, the gravest first, with what is found at its worst."""
    rows = tuple(
        (about(row), *(SEVERITIES[s] if s else NONE for s in row.severities), _worst(row))
        for row in found.findings
    )
    return Table(("About", *found.names, "Found at its worst"), rows)


def about(row: FindingRow) -> str:
    """Return what a finding is about; that on the foam bears the area's name alone."""
    foam = row.id == "foam-meets-tof"
    return f"foam and top of footing, {row.subject}" if foam else row.subject


def _worst(row: FindingRow) -> str:
    """Return what is said where a finding is gravest."""
    ranks = list(SEVERITIES)
    graves = [-1 if s is None else ranks.index(s) for s in row.severities]
    return row.found[graves.index(max(graves))]


def warmth(found: Comparison, system: System) -> Table:
    """Return the figures of each area's warmth that differ."""
    rows = tuple((row.area, _HEAT[row.what], *_heat(row, system)) for row in found.warmth)
    return Table(("Area", "Of its warmth", *found.names), rows)


def _heat(row: HeatRow, system: System) -> tuple[str, ...]:
    shown: Callable[[float], str] = {
        "loss": lambda v: show_loss(v, system),
        "u": lambda v: show_transmittance(v, system),
        "resistance": lambda v: show_resistance(v, system),
    }[row.what]
    first = row.values[0]
    return _cells(row.values, shown, lambda d: f"{d / first:+.1%}" if first else NONE)


def drains(found: Comparison, system: System) -> Table:
    """Return the drains' heights and lengths that differ."""
    rows = tuple((row.drain, _DRAIN[row.what], *_drain(row, system)) for row in found.drains)
    return Table(("Drain", "Of it", *found.names), rows)


def _drain(row: DrainRow, system: System) -> tuple[str, ...]:
    if row.what == "fall":
        return tuple(NONE if v is None else show_fall(v, system) for v in row.values)

    def shown(value: float) -> str:
        of = show_level if row.what in _LEVELS else show_length
        return of(value, system)

    return _cells(row.values, shown, lambda d: signed_length(d, system))


def _cells(
    values: Values, shown: Callable[[float], str], by: Callable[[float], str]
) -> tuple[str, ...]:
    """Return each figure in words, those after the first with how far they differ from it."""
    cells = []
    for number, (value, moved) in enumerate(zip(values, moves(values), strict=True)):
        if value is None:
            cells.append(NONE)
        elif number and moved:
            cells.append(f"{shown(value)} ({by(moved)})")
        else:
            cells.append(shown(value))
    return tuple(cells)


def figures(found: Comparison) -> Table:
    """Return all that differs in figures, for other programs: SI, and what is sold."""
    head = ("list", "area", "what", "material", "unit", *found.names)
    rows: list[tuple[Cell, ...]] = [
        (*told, *(None if v is None else round(v, 6) + 0.0 for v in values))
        for *told, values in _figures(found)
    ]
    return Table(head, tuple(rows))


def _figures(found: Comparison) -> Iterator[tuple[str, str, str, str, str, Values]]:
    for level in found.levels:
        yield "level", level.area, level.interface, "", "m", level.levels_m
        feet = tuple(None if v is None else v / FOOT for v in level.levels_m)
        yield "level", level.area, level.interface, "", "ft", feet
    for volume in found.volumes:
        named = ("volume", volume.area, volume.name, volume.material)
        yield (*named, "m3", volume.volumes_m3)
        yards = tuple(None if v is None else v * YARDS for v in volume.volumes_m3)
        yield (*named, "yd3", yards)
    for row in found.order:
        unit = next((u for u in row.sold if u), "")
        alike = len({u for u in row.sold if u}) == 1
        counts = row.counts if alike else row.to_buy
        named = ("order", row.area, row.item, row.material)
        yield (*named, unit if alike else "SI", counts)
        if any(row.costs):
            yield (*named, found.currency or "cost", row.middles)
    for heat in found.warmth:
        yield "warmth", heat.area, _HEAT[heat.what], "", _HEAT_UNITS[heat.what], heat.values
    for drain in found.drains:
        unit = "m/m" if drain.what == "fall" else "m"
        yield "drain", drain.drain, _DRAIN[drain.what], "", unit, drain.values


def named_apart(names: Sequence[str]) -> tuple[str, ...]:
    """Return names that differ: a repeated one gets a number behind it.

    What no text can hold, such as a file's name in another encoding, becomes a question mark.
    """
    found: list[str] = []
    for name in names:
        written = name.encode("utf-8", "replace").decode()
        number, made = 1, written
        while made in found:
            number += 1
            made = f"{written} {number}"
        found.append(made)
    return tuple(found)
