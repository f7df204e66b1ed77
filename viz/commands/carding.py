"""The command `cards`: a page for every stage, as one PDF, or as PDF, SVG and PNG into a folder."""

from collections.abc import Iterator
from pathlib import Path

from geometry.designfile import save
from viz.commands.asking import design_text
from viz.commands.siting import upright_paper
from viz.export.png import to_png
from viz.export.svg import to_svg
from viz.issue import set_pdf
from viz.job import job
from viz.language.reader import language
from viz.sheets.cards import card_sheets
from viz.sheets.sheet import Sheet


def write_cards(
    design: str, out: Path, paper: str | None, tongue: str, dpi: float
) -> tuple[Path, ...]:
    """Write the crew cards; return the files. Raises BedcourseError, FileError."""
    said = language(tongue)
    work = job(design_text(design))
    made = card_sheets(work, upright_paper(paper, work.system), said)
    whole = set_pdf(work, made, said.code)
    if out.suffix.lower() == ".pdf":
        save(out, whole)
        return (out,)
    files = [(out / "crew-cards.pdf", whole), *_pictures(made, out, dpi)]
    for file, data in files:
        save(file, data)
    return tuple(file for file, _ in files)


def _pictures(made: tuple[Sheet, ...], folder: Path, dpi: float) -> Iterator[tuple[Path, bytes]]:
    for number, sheet in enumerate(made, 1):
        svg = to_svg(sheet.drawing)
        yield folder / f"card-{number:02d}.svg", svg.encode()
        yield folder / f"card-{number:02d}.png", to_png(svg, dpi)
