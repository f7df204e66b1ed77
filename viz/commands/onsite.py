"""Commands that print papers for the site: crew cards, pole, laser sheet, inspection sheet."""

from pathlib import Path
from typing import Annotated

import typer

from viz.commands import saying
from viz.commands.options import Design, Dpi, SmallPaper, Tongue
from viz.commands.saying import careful

Pdf = Annotated[Path, typer.Option("--out", "-o", help="the PDF to write")]


def add(app: typer.Typer) -> None:
    """Add the commands to the command line."""
    for command in (cards, pole, laser, inspection):
        app.command()(command)


@careful
def cards(
    design: Design,
    out: Annotated[Path, typer.Option("--out", "-o", help="a folder, or a file ending in .pdf")],
    paper: SmallPaper = None,
    language: Tongue = "en",
    dpi: Dpi = 150,
) -> None:
    """Print crew cards, a page a stage: picture, levels, amounts, hold point, cautions.

    Into a folder they come as one PDF and as SVG and PNG of every card.
    """
    from viz.commands import printing
    from viz.commands.carding import write_cards

    files = write_cards(design, out, paper, language, dpi)
    printing.written(files)


@careful
def pole(
    design: Design,
    out: Pdf,
    paper: SmallPaper = None,
    language: Tongue = "en",
) -> None:
    """Print a story pole of every area at full size, on pages that tape together."""
    from viz.commands.siting import Asked, write_pole

    count = write_pole(design, Asked(out, paper, language))
    saying.say(f"Wrote {out}, {count} pages. Print at full size; measure the bars on each page.")


@careful
def laser(
    design: Design,
    out: Pdf,
    instrument: Annotated[
        str | None, typer.Option(help='the laser\'s elevation, "416.60 ft"')
    ] = None,
    paper: SmallPaper = None,
    language: Tongue = "en",
) -> None:
    """Print every rod reading from one height of the laser, with room to write beside it."""
    from viz.commands.siting import Asked, write_laser

    count = write_laser(design, Asked(out, paper, language), instrument)
    saying.say(f"Wrote {out}, {count} pages.")


@careful
def inspection(
    design: Design,
    out: Pdf,
    paper: SmallPaper = None,
    language: Tongue = "en",
) -> None:
    """Print what must be seen before it is covered, with boxes to tick and photos to take."""
    from viz.commands.siting import Asked, write_inspection

    count = write_inspection(design, Asked(out, paper, language))
    saying.say(f"Wrote {out}, {count} pages.")
