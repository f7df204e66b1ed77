"""Tables of the order: a dispatcher's list, concrete by the pour, cuts, allowances."""

from collections import Counter
from collections.abc import Iterator, Sequence
from math import ceil, floor

from geometry.materials.catalogue import find
from geometry.measures import show_density, show_tons
from geometry.parts.usual import Factor
from geometry.takeoff.row import CutList, Order, Part, Pour, Row, Stock
from geometry.units import INCH, System, show_area, show_length, show_volume, to_unit
from viz.tables.table import Cell, Table
from viz.words import material_name

_NONE = "–"
_VOLUMES = ("yd3", "m3")
_BULK = "stone and sand"
_CONCRETE = "concrete"
_AREAS = {"ft2": "ft²", "m2": "m²"}
# From here on metric lengths are said in metres.
_FAR_M = 3.0


def tables(order: Order, system: System) -> Iterator[tuple[str, Table]]:
    """Yield every table that has rows, with its title, as people read them."""
    for title, table in (
        ("Stone and sand", bulk(order, system)),
        ("Concrete, a pour at a time", concrete(order, system)),
        ("Boards, rolls, sticks, pieces", pieces(order, system)),
        ("Cuts", cuts(order, system)),
        ("Allowances and sizes", factors(order, system)),
    ):
        if table.rows:
            yield title, table


def workbook(order: Order, system: System) -> list[tuple[str, Table]]:
    """Return the tables of a workbook: as people read them, and the figures."""
    return [*tables(order, system), ("Figures", figures(order))]


def bulk(order: Order, system: System) -> Table:
    """Return stone, sand and soil: in place, loose, by weight, in loads."""
    rows = [row for row in order.rows if row.group == _BULK]
    head = ("Material", "In place", "Allowances", "Order loose", "Or by weight", "Loads", "Goes to")
    return _with_cost(head, rows, [_bulk(row, system) for row in rows], order)


def _bulk(row: Row, system: System) -> tuple[Cell, ...]:
    return (
        material_name(row.material), show_volume(row.in_place, system),
        _allowances(row, system), show_volume(row.to_buy, system), weight(row, system),
        str(row.trucks), _parts(row.parts, system),
    )  # fmt: skip


def _allowances(row: Row, system: System) -> str:
    shares = [f for f in row.factors if f.unit == "share"]
    return ", ".join(f"{f.name} {show_factor(f, system)}" for f in shares)


def weight(row: Row, system: System) -> str:
    """Return a row's weight with the loose weight it was reckoned by; a range where it is one."""
    if row.mass_kg is None:
        return "not known"
    low, high = (show_tons(mass, system) for mass in row.mass_kg)
    loose = [show_density(f.value, system) for f in row.factors if f.unit == "kg/m3"]
    span = high if low == high else f"{low.split()[0]} to {high}"
    return f"{span} at {_span(loose)}"


def _span(words: Sequence[str]) -> str:
    first, last = words[0], words[-1]
    return last if first == last else f"{first.split()[0]} to {last}"


def spoken(order: Order, system: System) -> list[str]:
    """Return a sentence for each loose material: how many yards or metres, and how many tons."""
    return [
        f"{material_name(row.material)}: {show_volume(row.to_buy, system)} loose, "
        f"{weight(row, system)}. Say the unit when you call."
        for row in order.rows
        if row.group == _BULK
    ]


def notes(order: Order) -> list[str]:
    """Return what the rows of stone, sand and concrete have to say besides, once each."""
    said = (row.note for row in order.rows if row.group in (_BULK, _CONCRETE) and row.note)
    return [f"{note[:1].upper()}{note[1:]}." for note in dict.fromkeys(said)]


def _parts(parts: Sequence[Part], system: System) -> str:
    return "; ".join(f"{p.name} {show_volume(p.in_place, system)}" for p in parts)


def concrete(order: Order, system: System) -> Table:
    """Return each pour: neat, what its thickness strays, loss, order, trucks, a step thicker."""
    head = (
        "Pour", "Concrete", "Neat", "Forms, thickness", "Loss", "Order", "Trucks", "Each step more",
    )  # fmt: skip
    rows = [row for row in order.rows if row.group == _CONCRETE]
    cells = [_pour(pour, system) for pour in order.pours]
    return _with_cost(head, rows, cells, order)


def _pour(pour: Pour, system: System) -> tuple[Cell, ...]:
    name = f"{pour.name}, {pour.area}" if pour.area else pour.name
    return (
        name, material_name(pour.material), show_volume(pour.neat_m3, system),
        f"+ {show_volume(pour.variation_m3, system)}", f"+ {show_volume(pour.loss_m3, system)}",
        show_volume(pour.ordered_m3, system), loads(pour.loads_m3, system),
        thicker(pour, system),
    )  # fmt: skip


def loads(brought_m3: Sequence[float], system: System) -> str:
    """Return what the trucks bring, equal ones counted: `2 of 9 yd³, 4.5 yd³`."""
    counted = Counter(show_volume(load, system) for load in brought_m3)
    return ", ".join(f"{n} of {load}" if n > 1 else load for load, n in counted.items())


def thicker(pour: Pour, system: System) -> str:
    """Return what so much more of a slab's thickness takes, in words; a dash for other pours."""
    if pour.step_m is None or pour.step_m3 is None or pour.step_share is None:
        return _NONE
    step = show_length(pour.step_m, system)
    return f"{step} is {show_volume(pour.step_m3, system)}, {pour.step_share * 100:.1f} %"


def pieces(order: Order, system: System) -> Table:
    """Return what is sold by the board, roll, stick and piece."""
    rows = [row for row in order.rows if row.group not in (_BULK, _CONCRETE)]
    head = ("For", "Item", "Material", "In place", "Order", "Note")
    return _with_cost(head, rows, [_piece(row, system) for row in rows], order)


def _piece(row: Row, system: System) -> tuple[Cell, ...]:
    item = f"{row.item}, {row.area}" if row.area else row.item
    material = material_name(row.material) if find(row.material) else _NONE
    return (
        row.group.capitalize(), item, material, measured(row, system), _sold(row),
        row.note or _NONE,
    )  # fmt: skip


def measured(row: Row, system: System) -> str:
    """Return what lies in place, in the row's unit."""
    if row.unit == "m3":
        return show_volume(row.in_place, system)
    if row.unit == "m2":
        return show_area(row.in_place, system)
    return _long(row.in_place, system) if row.unit == "m" else f"{row.in_place:g}"


def _long(metres: float, system: System) -> str:
    if system == "metric":
        return f"{metres:,.1f} m"
    return f"{to_unit(metres, 'm', 'ft'):,.0f} ft"


def _sold(row: Row) -> str:
    if row.sold in _AREAS:
        return f"{row.count:,.0f} {_AREAS[row.sold]}"
    many = "es" if row.sold.endswith("ch") else "s"
    return f"{row.count:g} {row.sold}{'' if row.count == 1 else many}"


def cuts(order: Order, system: System) -> Table:
    """Return how sticks and rolls are cut, those cut alike together."""
    rows = [row for listed in order.cuts for row in _cuts(listed, system)]
    return Table(("Item", "Material", "From", "How many", "Cut into", "Left"), tuple(rows))


def _cuts(listed: CutList, system: System) -> Iterator[tuple[Cell, ...]]:
    alike = Counter(_pattern(stock, system) for stock in listed.stocks)
    whole = _long(listed.stock_m, system)
    for (pattern, left), count in alike.items():
        yield listed.item, material_name(listed.material), whole, count, pattern, left


def _pattern(stock: Stock, system: System) -> tuple[str, str]:
    if len(stock.cuts) == 1 and stock.left_m < 1e-6:
        return "whole lengths of the runs", _NONE
    alike = Counter(f"{cut.what}: {sawn(cut.length_m, system)}" for cut in stock.cuts)
    words = "; ".join(f"{said} ({n} times)" if n > 1 else said for said, n in alike.items())
    return words, sawn(stock.left_m, system, up=False)


def sawn(metres: float, system: System, up: bool = True) -> str:
    """Return a length to saw in whole sixteenths of an inch or millimetres, up or down to one."""
    step = 0.001 if system == "metric" else INCH / 16
    count = ceil(metres / step - 1e-6) if up else floor(metres / step + 1e-6)
    return show_length(count * step, system)


def factors(order: Order, system: System) -> Table:
    """Return every figure between in place and to buy, once, with its source."""
    found: dict[tuple[str, str, str, str], None] = {}
    for row in order.rows:
        name = material_name(row.material) if row.group == _BULK else row.group.capitalize()
        for factor in row.factors:
            shown = show_factor(factor, system)
            found[(name, factor.name.capitalize(), shown, factor.source)] = None
    rows = sorted(found, key=lambda cells: list(dict.fromkeys(c[0] for c in found)).index(cells[0]))
    return Table(("For", "Figure", "Value", "Source"), tuple(rows))


def show_factor(factor: Factor, system: System) -> str:
    """Return a factor's value in words."""
    value = factor.value
    if factor.unit == "share":
        return f"{value * 100:.3g} %"
    if factor.unit == "m":
        far = system == "metric" and value >= _FAR_M
        return f"{value:g} m" if far else show_length(value, system)
    if factor.unit == "m3":
        return show_volume(value, system)
    if factor.unit == "kg":
        return show_tons(value, system)
    if factor.unit == "kg/m3":
        return show_density(value, system)
    return f"{value:g} {factor.unit}" if factor.unit == "diameters" else f"{value:g}"


def _with_cost(
    head: tuple[str, ...], rows: Sequence[Row], cells: Sequence[tuple[Cell, ...]], order: Order
) -> Table:
    """Return the table, with a column of costs where a price was entered."""
    if all(row.cost is None for row in rows):
        return Table(head, tuple(cells))
    priced = ((*c, cost(row.cost, order.currency)) for c, row in zip(cells, rows, strict=True))
    return Table((*head, "Cost"), tuple(priced))


def cost(money: tuple[float, float] | None, currency: str) -> str:
    """Return a cost, or its range, with the builder's own word for the currency."""
    if money is None:
        return _NONE
    low, high = (f"{amount:,.2f}" for amount in money)
    return f"{low if low == high else f'{low} to {high}'} {currency}".strip()


def figures(order: Order) -> Table:
    """Return the order for other programs: SI, and the units in which it is sold."""
    head = (
        "group", "item", "material", "area", "in_place", "unit", "to_buy", "sold_by", "count",
        "loose_m3", "loose_yd3", "least_kg", "most_kg", "least_short_tons", "most_short_tons",
        "loads", "least_cost", "most_cost", "currency", "note",
    )  # fmt: skip
    return Table(head, tuple(_figures(row, order.currency) for row in order.rows))


def _figures(row: Row, currency: str) -> tuple[Cell, ...]:
    volume = row.to_buy if row.sold in _VOLUMES else None
    masses = row.mass_kg or (None, None)
    return (
        row.group, row.item, row.material, row.area, _exact(row.in_place), row.unit,
        _exact(row.to_buy), row.sold, _exact(row.count), _exact(volume),
        _exact(volume, "m**3", "yd**3"), *(_exact(m) for m in masses),
        *(_exact(m, "kg", "short_ton") for m in masses), row.trucks,
        *(row.cost or (None, None)), currency if row.cost else "", row.note,
    )  # fmt: skip


def _exact(value: float | None, unit: str = "", to: str = "") -> float | None:
    if value is None:
        return None
    return round(to_unit(value, unit, to) if unit else value, 6) + 0.0
