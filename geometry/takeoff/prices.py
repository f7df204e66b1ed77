"""What rows cost at the prices the builder entered; nothing where none was."""

from collections.abc import Sequence
from dataclasses import replace

from geometry.parts.order import Price
from geometry.takeoff.row import Row
from geometry.units import to_unit

Cost = tuple[float, float]


def priced(row: Row, prices: Sequence[Price]) -> Row:
    """Return the row with its cost, by the first price that names it in a unit it has."""
    costs = (_cost(row, price) for price in prices if price.of in (row.material, row.item))
    return replace(row, cost=next((c for c in costs if c is not None), None))


def _cost(row: Row, price: Price) -> Cost | None:
    if price.per in ("ton", "t"):
        unit = "short_ton" if price.per == "ton" else "tonne"
        if row.mass_kg is None:
            return None
        low, high = (to_unit(m, "kg", unit) * price.each for m in row.mass_kg)
        return low, high
    if price.per in ("yd3", "m3"):
        if row.sold not in ("yd3", "m3"):
            return None
        volume = row.count * to_unit(1.0, _power(row.sold), _power(price.per))
        return volume * price.each, volume * price.each
    return (row.count * price.each,) * 2 if price.per == row.sold else None


def _power(unit: str) -> str:
    return "yd**3" if unit == "yd3" else "m**3"


def total(rows: Sequence[Row]) -> Cost | None:
    """Return least and most of all costs; None where no row has one."""
    costs = [row.cost for row in rows if row.cost is not None]
    return (sum(c[0] for c in costs), sum(c[1] for c in costs)) if costs else None
