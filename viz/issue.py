"""Issue the set: every product of one design, as files."""

import json
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from pathlib import Path

from geometry.designfile import save
from geometry.errors import BedcourseError
from geometry.project import Design
from geometry.report import Report
from viz import tables
from viz.drawing.page import PaperName
from viz.export.csvfile import to_csv
from viz.export.png import to_png
from viz.export.svg import to_svg
from viz.job import Job, job
from viz.pictures import Cutting, detail_window, section_of, still_view
from viz.scene.errors import NoPictures
from viz.scene.view import Kind
from viz.words import CUTS

STILLS: tuple[Kind, ...] = ("whole", "cutaway", "exploded")
STILL_SIZE = (1600, 1200)


@dataclass(frozen=True)
class Product:
    """One file of the set."""

    name: str
    data: bytes


@dataclass(frozen=True)
class Issued:
    """What was written, what could not be drawn and why, and the report."""

    files: tuple[Path, ...]
    notes: tuple[str, ...]
    report: Report


def issue(text: str, folder: Path, tell: Callable[[str], None] = lambda _: None) -> Issued:
    """Write the whole set into a folder, each file whole or not at all.

    tell: hears the name of each product before it is made. Raises DesignError, FileError.
    """
    work = job(text)
    files, notes = [], []
    for made in products(work, tell):
        if isinstance(made, str):
            notes.append(made)
            continue
        save(folder / made.name, made.data)
        files.append(folder / made.name)
    return Issued(tuple(files), tuple(notes), work.report)


def products(work: Job, tell: Callable[[str], None]) -> Iterator[Product | str]:
    """Yield the files of the set; where one cannot be made, the sentence that says why."""
    tell("the report and its tables")
    yield Product("design.toml", work.text.encode())
    yield from (Product(name, words.encode()) for name, words in papers(work).items())
    yield from _sections(work, tell)
    yield from _models(work, tell)
    yield from _stills(work, tell)


def papers(work: Job) -> dict[str, str]:
    """Return report, tables and schemas by file name."""
    return {
        "report.json": work.report.to_json(),
        "levels.csv": to_csv(tables.level_figures(work.report)),
        "volumes.csv": to_csv(tables.volume_figures(work.report)),
        "findings.csv": to_csv(tables.findings(work.report)),
        "design.schema.json": _schema(Design.model_json_schema(by_alias=True)),
        "report.schema.json": _schema(Report.model_json_schema(mode="serialization")),
    }


def _schema(schema: dict[str, object]) -> str:
    dialect = {"$schema": "https://json-schema.org/draft/2020-12/schema"}
    return json.dumps({**dialect, **schema}, indent=2) + "\n"


def _sections(work: Job, tell: Callable[[str], None]) -> Iterator[Product | str]:
    for name, asked in sections(work).items():
        tell(f"the drawing {name}")
        try:
            svg = to_svg(section_of(work.layout, work.foundation, asked))
        except BedcourseError as error:
            yield f"{name} was left out: {error}"
            continue
        yield Product(f"{name}.svg", svg.encode())
        yield Product(f"{name}.png", to_png(svg))


def sections(work: Job) -> dict[str, Cutting]:
    """Return the sections of the set by file name: whole cuts, and details at footing and drain."""
    large, small = papers_for(work)
    found = {}
    for name, line in work.cuts.items():
        found[f"section-{name}"] = Cutting(CUTS[name], line, large)
        window = detail_window(work.layout, work.foundation, line)
        if window and name != "pier":
            title = "Detail at footing and drain" if name == "across" else "Detail at the sump"
            found[f"detail-{name}"] = Cutting(title, line, small, window=window)
    return found


def papers_for(work: Job) -> tuple[PaperName, PaperName]:
    """Return the paper of whole sections and of details, by the units people work in."""
    return ("A1", "A3") if work.system == "metric" else ("ARCH C", "ANSI B")


def _models(work: Job, tell: Callable[[str], None]) -> Iterator[Product]:
    from viz.export.glb import to_glb
    from viz.scene.orbit import orbit_page

    tell("the model")
    solids = work.foundation.solids
    yield Product("model.glb", to_glb(solids))
    yield Product("model.html", orbit_page(solids, work.name).encode())


def _stills(work: Job, tell: Callable[[str], None]) -> Iterator[Product | str]:
    for kind in STILLS:
        tell(f"the picture {kind}")
        try:
            yield Product(f"{kind}.png", still_of(work, kind))
        except NoPictures as error:
            yield str(error)
            return
        except BedcourseError as error:
            yield f"{kind}.png was left out: {error}"


def still_of(work: Job, kind: Kind, size: tuple[int, int] = STILL_SIZE) -> bytes:
    """Return one still as PNG, cut where the house shows most. Raises NoPictures."""
    from viz.scene.worker import still

    line = next(iter(work.cuts.values()))
    view = still_view(work.layout, work.foundation, kind, line)
    solids = (*work.foundation.solids, work.foundation.excavation)
    return still(solids, view, size)
