"""Tables as a workbook for spreadsheets (Office Open XML), one sheet a table."""

from collections.abc import Iterable
from datetime import datetime
from io import BytesIO

import xlsxwriter

from viz.tables.table import Cell, Table

# Text stays text: nothing in a design file may become a formula or a link.
_OPTIONS = {
    "in_memory": True, "strings_to_formulas": False, "strings_to_urls": False,
    "strings_to_numbers": False, "nan_inf_to_errors": True,
}  # fmt: skip
_NARROW, _WIDE = 8, 60
_LONGEST_NAME = 31
_NO_NAME = str.maketrans(dict.fromkeys("[]:*?/\\'", " "))
# The same tables give the same file.
_NO_DAY = datetime(2000, 1, 1)


def to_xlsx(tables: Iterable[tuple[str, Table]]) -> bytes:
    """Return named tables as one workbook: heads bold and kept in view, figures as figures."""
    out = BytesIO()
    book = xlsxwriter.Workbook(out, _OPTIONS)
    book.set_properties({"created": _NO_DAY})
    head = book.add_format({"bold": True, "bottom": 1, "text_wrap": True, "valign": "top"})
    body = book.add_format({"text_wrap": True, "valign": "top"})
    for number, (title, table) in enumerate(tables, 1):
        name = title.translate(_NO_NAME).strip()[:_LONGEST_NAME] or f"Table {number}"
        sheet = book.add_worksheet(name)
        sheet.freeze_panes(1, 0)
        sheet.set_landscape()
        sheet.fit_to_pages(1, 0)
        for column, word in enumerate(table.head):
            sheet.set_column(column, column, _width(table, column))
            sheet.write_string(0, column, word, head)
        for row, cells in enumerate(table.rows, 1):
            for column, cell in enumerate(cells):
                _write(sheet, row, column, cell, body)
    book.close()
    return out.getvalue()


def _write(
    sheet: xlsxwriter.worksheet.Worksheet, row: int, column: int, cell: Cell, form: object
) -> None:
    if cell is None:
        sheet.write_blank(row, column, None, form)
    elif isinstance(cell, str):
        sheet.write_string(row, column, cell, form)
    else:
        sheet.write_number(row, column, cell, form)


def _width(table: Table, column: int) -> int:
    longest = max(len(str(row[column])) for row in (table.head, *table.rows))
    return min(_WIDE, max(_NARROW, longest + 2))
