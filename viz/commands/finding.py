"""The command `findings`: the findings for inspector and engineer, as PDF or as one page."""

from pathlib import Path
from typing import Annotated

import typer

from viz.commands import saying
from viz.commands.options import Design, SmallPaper
from viz.commands.saying import careful


def add(app: typer.Typer) -> None:
    """Add the command to the command line."""
    app.command()(findings)


@careful
def findings(
    design: Design,
    out: Annotated[Path, typer.Option("--out", "-o", help="the .pdf or .html to write")],
    paper: SmallPaper = None,
) -> None:
    """Write what was found, on what it rests, and what was not checked, for inspector and engineer.

    As PDF on paper, or as one page for a browser, without a network.
    """
    from viz.commands.finding_files import write_findings

    saying.say(f"Wrote {out}, {write_findings(design, out, paper)}.")
