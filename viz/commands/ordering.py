"""The command `order`: the dispatcher's list, as tables, as CSV, as a workbook."""

import json
import sys
from collections.abc import Iterator
from pathlib import Path

from geometry.designfile import load, save
from geometry.errors import BedcourseError
from geometry.materials.catalogue import AGGREGATES, nearest
from geometry.takeoff.deliveries import arrived, strange, top_up
from geometry.takeoff.row import Order
from geometry.takeoff.tickets import read_tickets, with_ticket
from geometry.units import System
from viz.commands import printing, saying
from viz.commands.asking import design_text
from viz.export.csvfile import to_csv
from viz.export.xlsxfile import to_xlsx
from viz.job import job
from viz.tables import delivery_tables, order_tables


def show_order(design: str, csv: Path | None, xlsx: Path | None, as_json: bool) -> None:
    """Print the order or its figures, and write them as files where asked.

    Raises BedcourseError for two files of one name, FileError.
    """
    if csv is not None and csv == xlsx:
        raise BedcourseError(f"--csv and --xlsx both name {csv}; give each a file of its own")
    work = job(design_text(design))
    report = work.report
    order = report.order
    if as_json:
        figures = report.figures("design", "units", "order")
        sys.stdout.write(json.dumps(figures, indent=2) + "\n")
    else:
        for title, table in order_tables.tables(order, work.system):
            printing.table(table, f"{work.name}: {title[:1].lower()}{title[1:]}")
        if order.cost is not None:
            printing.lines([f"Together: {order_tables.cost(order.cost, order.currency)}"])
        printing.notes(order_tables.spoken(order, work.system), "For the call:")
        printing.lines(order_tables.notes(order))
        printing.notes([f"- {line}" for line in order.left_out], "Not counted:")
    for file, data in _files(work.system, order, csv, xlsx):
        save(file, data)
        saying.tell(f"Wrote {file}.")


def _files(
    system: System, order: Order, csv: Path | None, xlsx: Path | None
) -> Iterator[tuple[Path, str | bytes]]:
    if csv is not None:
        yield csv, to_csv(order_tables.figures(order))
    if xlsx is not None:
        yield xlsx, to_xlsx(order_tables.workbook(order, system))


def show_deliveries(design: str, tickets: Path, add: str | None, instead: str | None) -> None:
    """Print what has arrived against the order; first put one more ticket on the list.

    instead: a material to make up shortfalls with. Raises BedcourseError, FileError.
    """
    work = job(design_text(design))
    text = load(tickets) if add is None or tickets.exists() else ""
    if add is not None:
        try:
            text = with_ticket(text, add)
        except ValueError as error:
            raise BedcourseError(f"--add: {error}") from None
        save(tickets, text)
        saying.tell(f"Wrote {tickets}.")
    read = read_tickets(text)
    rows = arrived(work.layout, read.tickets)
    printing.table(delivery_tables.arrivals(rows, work.system), f"{work.name}: what has arrived")
    printing.lines([row.mixed_up for row in rows if row.mixed_up])
    if instead is not None:
        made = [top_up(work.layout.design, row, _sold_loose(instead)) for row in rows]
        shown = delivery_tables.top_ups([row for row in made if row], work.system)
        printing.table(shown, "To make up what is short")
    odd = [f"- {delivery_tables.not_needed(key)}" for key in strange(work.layout, read.tickets)]
    odd += [f"- line {broken.line}: {broken.sentence}" for broken in read.broken]
    if odd:
        printing.notes(odd, "Left aside:")


def _sold_loose(key: str) -> str:
    if key not in AGGREGATES:
        close = nearest(key, AGGREGATES) or "stone-57"
        raise BedcourseError(f"--instead: {key!r} is no stone or sand here; did you mean {close}?")
    return key
