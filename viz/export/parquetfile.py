"""Tables as Apache Parquet: columns of numbers, or of text, with what is missing left empty."""

from io import BytesIO

import pyarrow as pa
from pyarrow import parquet

from viz.tables.table import Table


def to_parquet(table: Table) -> bytes:
    """Return a table as a Parquet file; a column of numbers alone is one of numbers."""
    columns = [[row[n] for row in table.rows] for n in range(len(table.head))]
    arrays = [_array(column) for column in columns]
    out = BytesIO()
    parquet.write_table(pa.table(arrays, names=list(table.head)), out)
    return out.getvalue()


def _array(column: list[str | float | None]) -> pa.Array:
    known = [cell for cell in column if cell is not None]
    if known and all(isinstance(cell, int) for cell in known):
        return pa.array(column, pa.int64())
    if known and all(isinstance(cell, int | float) for cell in known):
        return pa.array(column, pa.float64())
    return pa.array([None if cell is None else str(cell) for cell in column], pa.string())
