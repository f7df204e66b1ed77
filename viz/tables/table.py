"""A table: headings, and rows of cells."""

from dataclasses import dataclass

Cell = str | float | None


@dataclass(frozen=True)
class Table:
    """Headings, and rows of as many cells."""

    head: tuple[str, ...]
    rows: tuple[tuple[Cell, ...], ...]
