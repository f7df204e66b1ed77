"""The command `compare`: two to four designs side by side."""

from collections.abc import Sequence
from pathlib import Path
from typing import Annotated

import typer

from viz.commands import saying
from viz.commands.saying import careful

Designs = Annotated[
    list[str], typer.Argument(metavar="DESIGN DESIGN [DESIGN ...]", help="two to four design files")
]


def add(app: typer.Typer) -> None:
    """Add the command to the command line."""
    app.command()(compare)


@careful
def compare(
    designs: Designs,
    out: Annotated[
        Path | None,
        typer.Option("--out", "-o", help="a .xlsx or .csv file, or pictures as .pdf, .svg, .png"),
    ] = None,
) -> None:
    """Print what differs between designs: file, levels, amounts, findings, warmth, drain.

    Differences are against the first design.
    """
    from geometry.variants.compare import compare as compared
    from viz.commands import printing
    from viz.commands.asking import design_text
    from viz.job import job
    from viz.variants import variant_tables, variant_words
    from viz.variants.variant_pictures import variant_of

    works = [job(design_text(design)) for design in designs]
    names = variant_tables.named_apart(_names(designs))
    found = compared([variant_of(n, work) for n, work in zip(names, works, strict=True)])
    system = works[0].system
    printing.lines(variant_words.summary(found, system))
    for title, table in variant_tables.tables(found, system):
        printing.table(table, title)
    printing.cautions(works[0].report)
    if out is not None:
        from geometry.designfile import save
        from viz.variants.variant_files import comparison_file

        save(out, comparison_file(works, found, out.suffix))
        saying.tell(f"Wrote {out}.")


def _names(designs: Sequence[str]) -> list[str]:
    """Return the files' names without their endings, or with their folders where they are alike."""
    stems = [Path(design).stem for design in designs]
    return stems if len(set(stems)) == len(stems) else [str(Path(design)) for design in designs]
