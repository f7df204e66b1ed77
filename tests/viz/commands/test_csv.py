"""CSV: what a spreadsheet or a program reads is what the table holds."""

import csv
import io

from viz.export.csvfile import to_csv
from viz.tables.table import Table


def test_cells_come_back_and_figures_stay_figures():
    table = Table(("name", "level_m"), (('slab, 4" thick', -0.165), ("two\nlines", None)))
    back = list(csv.reader(io.StringIO(to_csv(table), newline="")))
    assert back == [["name", "level_m"], ['slab, 4" thick', "-0.165"], ["two\nlines", ""]]


def test_text_that_a_spreadsheet_would_run_is_quoted():
    """Words of a design file must not become a formula where the table is opened."""
    rows = (("=HYPERLINK(1)",), ("+1",), ("-1",), ("@x",), ("plain",))
    back = list(csv.reader(io.StringIO(to_csv(Table(("name",), rows)))))
    assert [row[0] for row in back[1:]] == ["'=HYPERLINK(1)", "'+1", "'-1", "'@x", "plain"]
