"""The commands `section`, `sheets` and `model`: files whose kind is told by their ending."""

from dataclasses import dataclass
from pathlib import Path

from geometry.designfile import save
from geometry.errors import BedcourseError
from geometry.sections.face import CutLine
from viz.commands import asking, saying
from viz.export.png import to_png
from viz.export.svg import to_svg
from viz.issue import set_pdf, small_paper, usual_paper, write_sheets
from viz.job import Job, job
from viz.pictures import Shot, detail_of
from viz.sheets.permit import one_sheet
from viz.sheets.sheet import Sheet
from viz.stills import still_named, still_png
from viz.words import CUTS

DETAIL = "detail"


@dataclass(frozen=True)
class Asked:
    """A section as it was typed."""

    start: str | None
    end: str | None
    via: str | None
    cut: str
    scale: str | None
    paper: str | None
    window: str | None
    dpi: float


def draw_section(design: str, asked: Asked, out: Path) -> None:
    """Write a section as SVG, PNG or PDF. Raises BedcourseError in one sentence."""
    kind = _kind(out, ("svg", "png", "pdf"))
    work = job(asking.design_text(design))
    paper = asking.paper(asked.paper) or small_paper(work.system)
    shot = _shot(work, asked)
    sheets = one_sheet(work, shot, paper, asking.scale(asked.scale, work.system))
    save(out, _written(work, sheets, kind, asked.dpi))


def _written(work: Job, sheets: tuple[Sheet, ...], kind: str, dpi: float) -> str | bytes:
    if kind == "pdf":
        return set_pdf(work, sheets)
    svg = to_svg(sheets[0].drawing)
    return svg if kind == "svg" else to_png(svg, dpi)


def draw_sheets(
    design: str, out: Path, paper: str | None, scale: str | None, dpi: float
) -> tuple[Path, ...]:
    """Write the permit set. Raises BedcourseError in one sentence."""
    if out.suffix and not out.is_dir():
        _kind(out, ("pdf",))
    work = job(asking.design_text(design))
    chosen = asking.paper(paper) or usual_paper(work)
    return write_sheets(work, out, chosen, asking.scale(scale, work.system), dpi)


def _kind(out: Path, kinds: tuple[str, ...]) -> str:
    kind = out.suffix.lower().removeprefix(".")
    if kind not in kinds:
        endings = " or ".join(f".{k}" for k in kinds)
        raise BedcourseError(f"{out} should end in {endings}; the ending says what to write")
    return kind


def _shot(work: Job, asked: Asked) -> Shot:
    line, title = _line(work, asked), CUTS["own"] if asked.start else CUTS.get(asked.cut, "")
    if asked.window == DETAIL:
        return detail_of(work, line)
    window = asking.window(asked.window, work.layout.design.project.numbers)
    return Shot("section", title, line, window)


def _line(work: Job, asked: Asked) -> CutLine:
    if (asked.start is None) != (asked.end is None):
        raise BedcourseError("a cut has two ends: give both --from and --to")
    bare = work.layout.design.project.numbers
    if asked.start is not None and asked.end is not None:
        ends = asking.point(asked.start, "--from", bare), asking.point(asked.end, "--to", bare)
        if ends[0] == ends[1]:
            raise BedcourseError("--from and --to are the same place; a cut needs two")
        return CutLine(*ends, asking.points(asked.via, "--via", bare))
    if asked.via is not None:
        raise BedcourseError("--via gives the corners between --from and --to; give these too")
    if asked.cut not in work.cuts:
        names = ", ".join(work.cuts)
        raise BedcourseError(f"this house has no cut named {asked.cut!r}; choose one of: {names}")
    return work.cuts[asked.cut]


def write_model(design: str, view: str, out: Path) -> None:
    """Write the model as GLB, IFC, HTML or PNG. Raises BedcourseError in one sentence."""
    kind = _kind(out, ("glb", "ifc", "html", "png"))
    work = job(asking.design_text(design))
    if kind == "png":
        still = still_named(work, view)
        saying.tell(f"Making the picture {still.name} ...")
        save(out, still_png(work, still.name))
    elif kind == "glb":
        from viz.export.glb import to_glb

        save(out, to_glb(work.foundation.solids))
    elif kind == "ifc":
        from viz.export.ifc.house import to_ifc

        save(out, to_ifc(work.layout, work.foundation))
    else:
        from viz.viewer.page import viewer_page

        save(out, viewer_page(work))
