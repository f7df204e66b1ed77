"""The order sheet for the one who takes the call: tons and yards, loads, pours, boards as laid."""

from collections.abc import Iterator, Sequence

from geometry.materials.catalogue import AGGREGATES
from geometry.measures import show_tons
from geometry.takeoff.row import Order, Row
from geometry.units import System, show_volume, to_unit
from viz.drawing.figure import Figure
from viz.figures.forms.entries import Column, Entry
from viz.figures.forms.form import Form
from viz.figures.forms.grid import Grid
from viz.job import Job
from viz.language.reader import language
from viz.sheets.boards import board_sheets
from viz.sheets.bound_forms import Head, bound_pages, heights, stacked
from viz.sheets.sheet import Sheet
from viz.sheets.upright import SmallName
from viz.tables import order_tables
from viz.words import material_name

# Text heights, mm, from the largest down; and the pages wanted at the most.
_SIZES = (3.4, 3.2, 3.0, 2.8, 2.5)
_PAGES = 2

Pages = tuple[tuple[Figure, ...], ...]


def order_sheets(work: Job, paper: SmallName) -> tuple[Sheet, ...]:
    """Return what to order on one page where it fits, then boards and strips as they are laid."""
    order, system = work.report.order, work.system
    head = _head(work, order)
    first, rest, width = heights(head, paper)
    pages = _pages(order, system, (first, rest, width))
    said = bound_pages(head, pages, paper, language("en"))
    return (*said, *board_sheets(work.layout, paper))


def _pages(order: Order, system: System, room: tuple[float, float, float]) -> Pages:
    """Return the forms on one page where they fit, else pieces and what is left out on another.

    room: heights of the first page and of others, and the width, mm.
    """
    first, rest, width = room
    for text in _SIZES:
        pages = stacked(list(_forms(order, system, text, width)), first, rest)
        if len(pages) == 1:
            return pages
    for text in _SIZES:
        forms = list(_forms(order, system, text, width))
        heaps = [form for form in forms if form.grid.columns[0].kind != "box" and form.grid.headed]
        others = [form for form in forms if form not in heaps]
        pages = (*stacked(heaps, first, rest), *(stacked(others, rest, rest) if others else ()))
        if len(pages) <= _PAGES:
            break
    return pages


def _head(work: Job, order: Order) -> Head:
    about = work.layout.design.project
    told = [f"Deliver to: {about.address or '__________________________________'}"]
    told += _mixed_up(order, work.system)
    signs = ("Wanted on", "Ordered by", "Phone", "Order no.")
    return Head(about.name, "Order sheet", tuple(told), signs, about.date, about.revision)


def _mixed_up(order: Order, system: System) -> Iterator[str]:
    """Yield what happens if the largest heap's cubic measure is ordered as weight."""
    rows = [row for row in order.rows if row.group == "stone and sand" and row.mass_kg]
    if not rows:
        return
    row = max(rows, key=lambda row: row.to_buy)
    ton, cube, unit = ("t", "m**3", "tonne") if system == "metric" else (
        "tons", "yd**3", "short_ton"
    )  # fmt: skip
    count = round(to_unit(row.to_buy, "m**3", cube))
    mass = to_unit(float(count), unit, "kg")
    volumes = [mass * row.to_buy / kg for kg in reversed(row.mass_kg or ())]
    short, long = (show_volume(volume, system) for volume in volumes)
    span = short if short == long else f"{short.split()[0]} to {long}"
    name = "A ton is not a cubic yard" if system == "ft-in" else "A tonne is not a cubic metre"
    yield (
        f"{name}. {material_name(row.material)}: {show_volume(row.to_buy, system)} loose weigh "
        f"{_tons(row, system)}; {count} {ton} ordered instead would be only {span}. "
        "Say the unit, and have it said back."
    )


def _tons(row: Row, system: System) -> str:
    """Return least and most weight, as one where they are the same."""
    if row.mass_kg is None:
        return "not known: ask the yard for its loose weight"
    low, high = (show_tons(mass, system) for mass in row.mass_kg)
    return high if low == high else f"{low.split()[0]} to {high}"


def _forms(order: Order, system: System, text: float, width: float) -> Iterator[Form]:
    for columns, entries in (
        _bulk(order, system), _concrete(order, system), _pieces(order, system),
    ):  # fmt: skip
        if len(entries) > 1:
            yield Form(Grid(columns, text, width), tuple(entries))
    left = [Entry((words,), "note") for words in order.left_out]
    if left:
        head = Entry(("Not in this order",), "heading")
        yield Form(Grid((Column("", 1.0),), text, width, headed=False), (head, *left))


Part = tuple[tuple[Column, ...], list[Entry]]


def _bulk(order: Order, system: System) -> Part:
    """Return stone and sand: both measures, the loose weight between them, loads by the truck."""
    rows = [row for row in order.rows if row.group == "stone and sand"]
    priced = _is_priced(rows)
    columns = (
        Column("Product", 54), Column("Loose", 26, "strong"), Column("Weight", 45, "strong"),
        Column("Reckoned at, loose", 42), Column("Loads", 14, "figure"), *_cost_column(priced),
    )  # fmt: skip
    entries = [Entry(("Stone and sand", _trucks(rows, system)), "heading")]
    for row in rows:
        product = f"{material_name(row.material)}{_fines(row)}"
        cells = (product, show_volume(row.to_buy, system), _tons(row, system),
                 _density(row, system), str(row.trucks or ""))  # fmt: skip
        entries.append(Entry((*cells, *_cost(row, order, priced))))
        goes = "; ".join(f"{p.name} {show_volume(p.in_place, system)}" for p in row.parts)
        entries.append(Entry((f"In place: {goes}.",), "note"))
        entries.append(Entry(("Drop spot", "Supplier", "Ticket no."), "sign"))
    return columns, entries


def _trucks(rows: Sequence[Row], system: System) -> str:
    """Return what a load was taken to be: the body's volume and what it may weigh."""
    said = dict.fromkeys(
        f"{factor.name} {order_tables.show_factor(factor, system)}"
        for row in rows
        for factor in row.factors
        if factor.name.startswith("truck")
    )
    return f"Loads reckoned with: {', '.join(said)}; the lesser decides. Other trucks, other loads."


def _fines(row: Row) -> str:
    found = AGGREGATES.get(row.material)
    if found is None:
        return ""
    if found.with_fines:
        return ", WITH FINES"
    return ", WASHED, no fines" if found.kind == "stone" else ""


def _density(row: Row, system: System) -> str:
    said = order_tables.weight(row, system)
    return said.split(" at ", 1)[1] if " at " in said else ""


def _concrete(order: Order, system: System) -> Part:
    rows = [row for row in order.rows if row.group == "concrete"]
    priced = _is_priced(rows)
    columns = (
        Column("Pour", 60), Column("Order", 26, "strong"), Column("Loads", 52),
        Column("Each step thicker", 48), *_cost_column(priced),
    )  # fmt: skip
    head = "Order = forms, thickness and loss counted, rounded up to the supplier's step."
    entries = [Entry(("Concrete, a pour at a time", head), "heading")]
    for pour, row in zip(order.pours, rows, strict=True):
        where = f", {pour.area}" if pour.area else ""
        name = f"{pour.name}{where}: {material_name(pour.material)}"
        brought = order_tables.loads(pour.loads_m3, system)
        ordered = show_volume(pour.ordered_m3, system)
        cells = (name, ordered, brought, order_tables.thicker(pour, system))
        entries.append(Entry((*cells, *_cost(row, order, priced))))
        entries.append(Entry(("Reach", "Drop spot", "Pump / chute", "Slump, mix"), "sign"))
    return columns, entries


def _pieces(order: Order, system: System) -> Part:
    rows = [row for row in order.rows if row.group not in ("stone and sand", "concrete")]
    priced = _is_priced(rows)
    columns = (
        Column("", 7, "box"), Column("Item", 60), Column("Material", 84),
        Column("Order", 28, "strong"), *_cost_column(priced),
    )  # fmt: skip
    entries = [Entry(("Boards, rolls, pipe, bars",), "heading")]
    for row, cells in zip(rows, order_tables.pieces(order, system).rows, strict=True):
        _, item, material, _, count, *_ = map(str, cells)
        entries.append(Entry(("", item, material, count, *_cost(row, order, priced))))
    return columns, entries


def _is_priced(rows: Sequence[Row]) -> bool:
    return any(row.cost is not None for row in rows)


def _cost_column(priced: bool) -> tuple[Column, ...]:
    return (Column("Cost", 30, "figure"),) if priced else ()


def _cost(row: Row, order: Order, priced: bool) -> tuple[str, ...]:
    return (order_tables.cost(row.cost, order.currency),) if priced else ()
