"""Tables as CSV (RFC 4180), safe to open in a spreadsheet."""

import csv
from io import StringIO

from viz.tables.table import Cell, Table

# A cell of text that begins so would be taken for a formula by a spreadsheet.
_FORMULA = ("=", "+", "-", "@", "\t", "\r")


def to_csv(table: Table) -> str:
    """Return a table as CSV text; figures stay figures."""
    out = StringIO()
    writer = csv.writer(out, lineterminator="\r\n")
    writer.writerow(table.head)
    writer.writerows([_plain(cell) for cell in row] for row in table.rows)
    return out.getvalue()


def _plain(cell: Cell) -> str | float:
    if cell is None:
        return ""
    if isinstance(cell, str) and cell.startswith(_FORMULA):
        return f"'{cell}"
    return cell
