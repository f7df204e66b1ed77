"""What rows cost at the prices the builder entered; nothing where none was."""

from collections.abc import Sequence
from dataclasses import replace

from geometry.parts.order import Price
from geometry.takeoff.row import Row
from geometry.units import to_unit

Cost = tuple[float, float]


def priced(row: Row, prices: Sequence[Price]) -> Row:
    """Return the row with its cost: by a price for the item, else by one for its material."""
    named = [p for p in prices if p.of == row.item] + [p for p in prices if p.of == row.material]
    costs = (_cost(row, price) for price in named)
    return replace(row, cost=next((c for c in costs if c is not None), None))


def unused(rows: Sequence[Row], prices: Sequence[Price]) -> list[str]:
    """Return a sentence for each price that no row of the order can be reckoned with."""
    return [
        f"The price of {price.of} per {price.per} fits nothing in this order."
        for price in prices
        if all(_cost(row, price) is None for row in rows if price.of in (row.item, row.material))
    ]


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
