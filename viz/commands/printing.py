"""Tables and findings on the terminal."""

import sys
from collections.abc import Iterable, Sequence

from rich import box
from rich.console import Console, JustifyMethod
from rich.padding import Padding
from rich.table import Table as RichTable
from rich.text import Text

from geometry.report import Found, Report
from viz.commands.saying import plain
from viz.tables.report_tables import by_gravity
from viz.tables.table import Cell, Table
from viz.words import SEVERITIES

# Wide enough for every column where no terminal tells its width.
_PIPED = 132
_FIGURES = {"From TOF", "Elevation", "Rod reading", "Thick below", "yd³", "ft³", "m³"}
_MARKS = {"fine": ("+", "green"), "look": ("?", "yellow"), "stop": ("!", "bold red")}


def console() -> Console:
    """Return a console on standard output that shows text as it is."""
    width = None if sys.stdout.isatty() else _PIPED
    return Console(file=sys.stdout, width=width, markup=False, highlight=False, emoji=False)


def table(shown: Table, title: str) -> None:
    """Print a table; a first column that repeats is printed once a run."""
    out = console()
    grid = RichTable(
        title=Text(_said(title, out), style="bold"), title_justify="left", box=box.SIMPLE_HEAD,
        pad_edge=False,
    )  # fmt: skip
    for name in shown.head:
        side: JustifyMethod = "right" if name in _FIGURES else "left"
        grid.add_column(_said(name, out), justify=side, overflow="fold")
    before: Cell = None
    for row in shown.rows:
        first = "" if row[0] == before else str(row[0])
        grid.add_row(*(Text(_said(str(cell), out)) for cell in (first, *row[1:])))
        before = row[0]
    out.print(grid)


def findings(report: Report, gravest_only: bool = False) -> None:
    """Print a report's findings in words, the gravest first."""
    found_list(report.findings, gravest_only)


def found_list(rows: Iterable[Found], gravest_only: bool = False) -> None:
    """Print findings in words, the gravest first."""
    out = console()
    for found in by_gravity(rows):
        if gravest_only and found.severity == "fine":
            continue
        out.print(_headline(found, out))
        lines = [found.found, found.advice, f"Asked: {found.asked} ({found.source})."]
        for line in lines[: 2 if found.severity == "fine" else 3]:
            out.print(Padding(Text(_said(line, out)), (0, 0, 0, 4), expand=False))


def _headline(found: Found, out: Console) -> Text:
    mark, style = _MARKS[found.severity]
    words = f"{mark} {SEVERITIES[found.severity]}: {found.subject}"
    return Text(_said(words, out), style=style)


def notes(lines: Iterable[str], head: str) -> None:
    """Print a short list under a head."""
    out = console()
    out.print(Text(_said(head, out), style="bold"))
    for line in lines:
        out.print(Padding(Text(_said(line, out)), (0, 0, 0, 2), expand=False))


def written(files: Sequence[object], left_out: Sequence[str] = ()) -> None:
    """Print what was written, and what was left out with its reason."""
    notes([str(file) for file in files], f"Wrote {len(files)} files:")
    if left_out:
        notes(left_out, "Left out:")


def cautions(report: Report) -> None:
    """Print the cautions, one a line."""
    notes([f"- {line}" for line in report.cautions], "Cautions")


def lines(texts: Sequence[str]) -> None:
    """Print lines as they are."""
    out = console()
    for text in texts:
        out.print(Text(_said(text, out)))


def _said(text: str, out: Console) -> str:
    return plain(text, out.encoding)
