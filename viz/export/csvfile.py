"""Tables as CSV (RFC 4180), safe to open in a spreadsheet."""

import csv
import re
from io import StringIO

from viz.tables.table import Cell, Table

# Text that begins so would be taken for a formula by a spreadsheet: in its cell, or behind what
# parts cells where the spreadsheet's country parts them by semicolons.
_FORMULA = re.compile(r"(^|[;\t\r\n])(\s*)(?=[=+\-@＝＋－＠])|^(?=[\t\r])")


def to_csv(table: Table) -> str:
    """Return a table as CSV text; figures stay figures."""
    out = StringIO()
    writer = csv.writer(out, lineterminator="\r\n")
    writer.writerows([_plain(cell) for cell in row] for row in (table.head, *table.rows))
    return out.getvalue()


def _plain(cell: Cell) -> str | float:
    if cell is None:
        return ""
    return _FORMULA.sub(r"\1\2'", cell) if isinstance(cell, str) else cell
