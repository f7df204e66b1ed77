"""Tables of what has arrived: cover, shortfall in both units and in loads, top-up."""

from collections.abc import Sequence
from math import floor

from geometry.measures import show_tons
from geometry.takeoff.deliveries import Arrived, Span
from geometry.takeoff.row import Row
from geometry.units import INCH, System, show_length, show_volume
from viz.tables.order_tables import weight
from viz.tables.table import Cell, Table
from viz.words import material_name

_NONE = "–"
_UNKNOWN = "not known"


def arrivals(rows: Sequence[Arrived], system: System) -> Table:
    """Return each material's need, what came of it, how deep that lies, and what is short."""
    head = ("Material", "Needed loose", "Arrived", "Covers the floor", "Short", "Loads")
    return Table(head, tuple(_arrival(row, system) for row in rows))


def _arrival(row: Arrived, system: System) -> tuple[Cell, ...]:
    return (
        material_name(row.material), show_volume(row.needed_m3, system),
        _came(row, system), _depth(row, system),
        _short(row, system), _UNKNOWN if row.loads is None else str(row.loads),
    )  # fmt: skip


def both(volume: Span | None, mass: Span | None, system: System) -> str:
    """Return an amount by volume and by weight, each as a range where it is one."""
    said = [
        "volume not known" if volume is None else _range(*(show_volume(v, system) for v in volume)),
        "weight not known" if mass is None else _range(*(show_tons(m, system) for m in mass)),
    ]
    return ", ".join(said)


def _came(row: Arrived, system: System) -> str:
    if row.arrived_m3 == (0.0, 0.0) and row.arrived_kg == (0.0, 0.0):
        return "nothing"
    return both(row.arrived_m3, row.arrived_kg, system)


def _range(low: str, high: str) -> str:
    if low == high:
        return low
    number, unit = low.rsplit(" ", 1)
    return f"{number} to {high}" if high.endswith(f" {unit}") else f"{low} to {high}"


def _short(row: Arrived, system: System) -> str:
    if row.short_m3 is None:
        return _UNKNOWN
    return both(row.short_m3, row.short_kg, system) if row.short_m3[1] > 0 else "nothing"


def _depth(row: Arrived, system: System) -> str:
    if row.wanted_m is None:
        return _NONE
    if row.covers_m is None:
        return _UNKNOWN
    step = 0.001 if system == "metric" else INCH / 4
    low, high = (show_length(floor(d / step + 1e-6) * step, system) for d in row.covers_m)
    span = low if low == high else f"{low} to {high}"
    return f"{span} of {show_length(row.wanted_m, system)}"


def top_ups(rows: Sequence[Row], system: System) -> Table:
    """Return what it takes of another material to fill what is short."""
    head = ("Material", "For", "Short in place", "Order loose", "Or by weight", "Loads")
    return Table(
        head,
        tuple(
            (
                material_name(row.material), row.parts[0].name, show_volume(row.in_place, system),
                show_volume(row.to_buy, system), weight(row, system), str(row.trucks),
            )
            for row in rows
        ),
    )  # fmt: skip


def not_needed(key: str) -> str:
    """Return the sentence about a material that came and that nothing takes."""
    return f"{material_name(key)} came, and no part of this design takes it."
