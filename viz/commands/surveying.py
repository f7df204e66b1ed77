"""The command `survey`: shots of the dug ground and of concrete against a design."""

import json
import sys
from collections.abc import Iterator
from dataclasses import asdict, dataclass
from pathlib import Path

from geometry.checks.finding import Finding
from geometry.checks.survey import survey_findings
from geometry.designfile import load_bytes, save
from geometry.errors import BedcourseError, LengthError
from geometry.project import Design
from geometry.report import CAUTIONS, Found
from geometry.survey.asdug import AreaDug, AsDug, as_dug
from geometry.survey.reading import LARGEST_BYTES, read_shots
from geometry.survey.reported import survey_figures
from geometry.units import read_length
from viz.commands import asking, printing, saying
from viz.drawing.scale import SCALES, Scale
from viz.export.csvfile import to_csv
from viz.export.png import to_png
from viz.export.svg import to_svg
from viz.figures.survey.alone import map_alone
from viz.job import Job, job
from viz.tables import survey_tables

# The map's usual scale: of a quarter inch to the foot, or its metric like.
_USUAL = {"ft-in": 64, "metric": 50}


@dataclass(frozen=True)
class Asked:
    """The survey as it was typed."""

    shots: Path
    out: Path | None
    csv: Path | None
    area: str
    least: str | None
    scale: str | None
    dpi: float
    as_json: bool


def show_survey(design: str, asked: Asked) -> bool:
    """Print the survey and write its files; tell whether nothing says stop.

    Raises BedcourseError with every fault where the shots make no surface and no check.
    """
    _endings(asked)
    work = job(asking.design_text(design))
    shots = read_shots(load_bytes(asked.shots, LARGEST_BYTES), work.layout.design)
    dug = as_dug(work.layout, shots, _least(asked.least, work.layout.design))
    if not dug.areas and not dug.tops:
        raise BedcourseError("\n".join(_said(asked.shots, dug)))
    found = [_found(f) for f in survey_findings(work.layout, dug)]
    if asked.as_json:
        figures = {**survey_figures(dug), "findings": [f.model_dump() for f in found]}
        sys.stdout.write(json.dumps(figures, indent=2) + "\n")
    else:
        _print(work, asked.shots, dug, found)
    for file, data in _files(work, dug, asked):
        save(file, data)
        saying.tell(f"Wrote {file}.")
    return all(f.severity != "stop" for f in found)


def _endings(asked: Asked) -> None:
    if asked.out is not None and asked.out.suffix.lower() not in {".svg", ".png"}:
        raise BedcourseError(
            f"{asked.out} should end in .svg or .png; the ending says what to write"
        )
    if asked.csv is not None and asked.csv in {asked.out, asked.shots}:
        raise BedcourseError(f"--csv names {asked.csv}, which is another file here")


def _least(text: str | None, design: Design) -> float | None:
    if text is None:
        return None
    try:
        least = read_length(text, design.project.numbers)
    except LengthError as error:
        raise BedcourseError(f"--least: {error}") from None
    if least <= 0:
        raise BedcourseError(f"--least is a thickness above nothing; {text} is not")
    return least


def _said(file: Path, dug: AsDug) -> list[str]:
    return [f"{file}: {fault}" for fault in dug.faults]


def _found(finding: Finding) -> Found:
    return Found(**{**asdict(finding), "source": str(finding.source)})


def _print(work: Job, file: Path, dug: AsDug, found: list[Found]) -> None:
    for title, table in survey_tables.tables(dug, work.system):
        printing.table(table, f"{work.name}: {title[:1].lower()}{title[1:]}")
    if dug.faults:
        printing.notes([f"- {fault}" for fault in dug.faults], f"In {file}:")
    printing.found_list(found)
    printing.notes([f"- {line}" for line in CAUTIONS], "Cautions")


def _files(work: Job, dug: AsDug, asked: Asked) -> Iterator[tuple[Path, str | bytes]]:
    if asked.csv is not None:
        yield asked.csv, to_csv(survey_tables.shot_figures(dug))
    if asked.out is not None:
        drawn = map_alone(work.layout, _area(dug, asked.area), _scale(work, asked.scale))
        svg = to_svg(drawn)
        yield asked.out, svg if asked.out.suffix.lower() == ".svg" else to_png(svg, asked.dpi)


def _area(dug: AsDug, name: str) -> AreaDug:
    named = {area.name: area for area in dug.areas}
    if not named:
        raise BedcourseError("there is no map: no floor has shots enough on its ground")
    if name and name not in named:
        raise BedcourseError(f"{name!r} was not shot; choose one of: {', '.join(named)}")
    return named[name] if name else dug.areas[0]


def _scale(work: Job, text: str | None) -> Scale:
    chosen = asking.scale(text, work.system)
    usual = next(s for s in SCALES[work.system] if s.ratio == _USUAL[work.system])
    return chosen or usual
