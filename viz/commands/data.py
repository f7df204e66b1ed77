"""The command `data`: one design's figures and model for other programs, into a folder."""

from pathlib import Path
from typing import Annotated

import typer

from viz.commands import saying
from viz.commands.options import Design
from viz.commands.saying import careful


def add(app: typer.Typer) -> None:
    """Add the command to the command line."""
    app.command()(data)


@careful
def data(
    design: Design, out: Annotated[Path, typer.Option("--out", "-o", help="the folder to write")]
) -> None:
    """Write report, tables (CSV and a workbook), GLB and IFC for other programs."""
    from viz.commands import printing
    from viz.commands.asking import design_text
    from viz.issue import write_data

    issued = write_data(design_text(design), out, lambda what: saying.tell(f"Making {what} ..."))
    printing.written(issued.files, issued.notes)
    printing.cautions(issued.report)
