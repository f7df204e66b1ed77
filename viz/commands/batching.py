"""The command `batch`: many designs, or a grid of changes of one, into one table."""

import os
import sys
import time
from collections import Counter
from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from viz.commands import saying
from viz.commands.saying import careful

if TYPE_CHECKING:
    from viz.batch.designs import Asked
    from viz.batch.outcome import Outcome

# Where progress is no line that can be written over, it is told this often, s.
_TOLD_EVERY_S = 5.0


def add(app: typer.Typer) -> None:
    """Add the command to the command line."""
    app.command()(batch)


@careful
def batch(
    designs: Annotated[
        list[str], typer.Argument(metavar="DESIGNS...", help="design files, or folders of them")
    ],
    out: Annotated[Path, typer.Option("--out", "-o", help="the folder to write")],
    vary: Annotated[
        list[str] | None,
        typer.Option(help='a place and its values: "floor.layer[foam].thickness=1 in,2 in"'),
    ] = None,
    workers: Annotated[
        int | None, typer.Option(min=1, max=1024, help="processes; the cores unless given")
    ] = None,
    scheduler: Annotated[
        str, typer.Option(help="address of a Dask cluster that is to work instead")
    ] = "",
    limit: Annotated[float, typer.Option(min=0.1, help="seconds one design may take")] = 300.0,
    sets: Annotated[bool, typer.Option("--sets", help="write each permit set too")] = False,
) -> None:
    """Run many designs, or every combination of changes of one, into one table.

    What is finished is kept: the same command goes on where it was stopped. An entry of a list
    is told by its name, or by its number counted from 0.
    """
    from viz.batch.run import How, run
    from viz.batch.table import write_tables
    from viz.commands import printing

    asked = _asked(designs, vary or [])
    how = How(out, workers or os.cpu_count() or 1, limit, sets, scheduler)
    progress = Progress()
    try:
        lines = run(asked, how, progress)
    except KeyboardInterrupt:
        progress.end()
        saying.tell("What is finished is kept; the same command goes on from here.")
        raise
    progress.end()
    printing.written(list(write_tables(lines, out)))
    counted = Counter(line.outcome.status for line in lines)
    printing.lines([", ".join(f"{count:,} {status}" for status, count in counted.items()) + "."])


def _asked(designs: list[str], vary: list[str]) -> "tuple[Asked, ...]":
    from geometry.errors import BedcourseError
    from viz.batch.designs import asked_files, asked_grid
    from viz.commands.asking import design_path

    paths = [Path(d) if Path(d).is_dir() else design_path(d) for d in designs]
    found = asked_files(paths)
    if not vary:
        return found
    if len(found) != 1:
        raise BedcourseError(f"--vary changes one design; {len(found)} were named")
    if found[0].unread:
        raise BedcourseError(found[0].unread)
    return asked_grid(found[0], vary)


class Progress:
    """One line that is written over on a terminal; elsewhere a line every few seconds."""

    def __init__(self) -> None:
        """Begin now."""
        self._begun = self._told = time.monotonic()
        self._first = -1
        self._odd = 0
        self._over = sys.stderr.isatty()
        self._open = False

    def __call__(self, known: int, whole: int, last: "Outcome") -> None:
        """Hear of one more design that is known."""
        self._odd += last.status != "done"
        if self._first < 0:
            self._first = known - 1
        now = time.monotonic()
        if not self._over and now - self._told < _TOLD_EVERY_S:
            return
        self._told = now
        left = (now - self._begun) / max(1, known - self._first) * (whole - known)
        words = f"{known:,} of {whole:,} designs, {self._odd:,} not done, {left:,.0f} s left"
        if self._over:
            sys.stderr.write(f"\r{words:<70}")
            sys.stderr.flush()
            self._open = True
        else:
            saying.tell(words)

    def end(self) -> None:
        """Leave the line."""
        if self._open:
            sys.stderr.write("\n")
            self._open = False
