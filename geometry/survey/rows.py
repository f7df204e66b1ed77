"""Lines of a CSV file to columns; torn lines are named and left out, the rest is kept."""

import csv
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from geometry.survey.header import Header
from geometry.survey.shots import Ints, ShotFault

_NEWLINE = ord("\n")
Columns = Sequence[Sequence[str]]


@dataclass(frozen=True, eq=False)
class Lines:
    """The lines that say something, their numbers in the file, and the sign between cells."""

    text: Sequence[str]
    number: Ints
    divider: str

    @property
    def head(self) -> list[str]:
        """Cells of the first line."""
        return _cells(self.text[0], self.divider)


def lines_of(words: str) -> Lines:
    """Return a text's lines less those that are empty or a comment, which `#` begins."""
    # Not splitlines, which breaks at signs that may stand in a name.
    every = words.replace("\r\n", "\n").replace("\r", "\n").split("\n")
    kept = [n for n, line in enumerate(every) if (s := line.strip(" \t,;")) and s[0] != "#"]
    text = [every[n] for n in kept]
    divider = max(",;\t", key=text[0].count) if text else ","
    return Lines(text, np.array(kept, dtype=np.int64) + 1, divider)


def columns_of(lines: Lines, header: Header) -> tuple[Columns, Ints, list[ShotFault]]:
    """Return the columns below the header, the numbers of their rows, and faults of torn rows."""
    body, numbers = lines.text[1:], lines.number[1:]
    if _even(body, lines.divider, header.count):
        cells = lines.divider.join(body).split(lines.divider)
        return [cells[n :: header.count] for n in range(header.count)], numbers, []
    rows = _records(body, lines.divider)
    needed = 1 + max(header.place[c] for c in ("x", "y", header.height))
    kept, places, torn = [], [], []
    for place, row in enumerate(rows):
        if needed <= len(row) and not any(cell.strip() for cell in row[header.count :]):
            kept.append([*row[: header.count], *[""] * (header.count - len(row))])
            places.append(place)
        else:
            torn.append(_torn(len(row), header, int(numbers[place])))
    columns = [[row[n] for row in kept] for n in range(header.count)]
    return columns, numbers[places], torn


def _even(body: Sequence[str], divider: str, count: int) -> bool:
    """Tell whether every line has as many cells as the header, none in quotes: most files do."""
    whole = "\n".join(body)
    if '"' in whole:
        return False
    signs = np.frombuffer(f"{whole}\n".encode(), np.uint8)
    marks = np.flatnonzero((signs == ord(divider)) | (signs == _NEWLINE))
    if len(marks) != count * len(body):
        return False
    ends = signs[marks].reshape(len(body), count)
    return bool((ends[:, -1] == _NEWLINE).all())


def _records(lines: Sequence[str], divider: str) -> list[list[str]]:
    """Return the cells of each line; a quote left open tears its own line only."""
    try:
        rows = list(csv.reader(lines, delimiter=divider, skipinitialspace=True))
        if len(rows) == len(lines):
            return rows
    except csv.Error:
        pass
    return [_cells(line, divider) for line in lines]


def _cells(line: str, divider: str) -> list[str]:
    try:
        return next(csv.reader([line], delimiter=divider, skipinitialspace=True))
    except csv.Error:
        return []


def _torn(cells: int, header: Header, number: int) -> ShotFault:
    advice = " (a comma within a number or a name needs quotes)" if cells > header.count else ""
    words = f"it has {cells} {'cell' if cells == 1 else 'cells'}, the header {header.count}"
    return ShotFault(f"torn: {words}{advice}; left out", number)
