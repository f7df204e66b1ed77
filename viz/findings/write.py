"""The findings of a design as one document: what it says, in the order it is read."""

from collections.abc import Iterator
from importlib.metadata import version

from viz.findings.cautions import cautions
from viz.findings.document import Document, Items, Paragraph, Section, filled
from viz.findings.found import by_subject, summary
from viz.findings.holds import hold_points
from viz.findings.inputs import inputs
from viz.findings.loads import loads
from viz.findings.open_points import open_points
from viz.job import Job
from viz.sheets.words import LOCAL_CODE

TITLE = "Findings"
INFORMS = "Our figures inform; no engineer's stamp stands behind them."
_HOW = (
    "Figures are computed from the design file alone. Every rule stands with the document it is "
    "from and how sure we are of it: what is marked from memory or second-hand is to be confirmed "
    "against the text before anything hangs on it. Levels count from the top of footing (TOF)."
)


def findings_document(work: Job) -> Document:
    """Return the findings on a sound design, for inspector and engineer."""
    sections = (
        _what(work), summary(work), by_subject(work), inputs(work), loads(work),
        hold_points(work), open_points(work), cautions(work),
    )  # fmt: skip
    numbered = tuple(
        Section(one.key, f"{number}. {one.title}", one.blocks, one.parts)
        for number, one in enumerate(sections, 1)
    )
    about = work.layout.design.project
    dated = ", ".join(filter(None, (about.date, about.revision and f"revision {about.revision}")))
    return Document(TITLE, work.name, dated, f"{INFORMS} Local code governs.", numbered)


def _what(work: Job) -> Section:
    return Section(
        "what", "What this is",
        filled(
            Items(tuple(_facts(work))),
            Paragraph(INFORMS, "caution"),
            Paragraph(LOCAL_CODE),
            Paragraph(_HOW, "note"),
        ),
    )  # fmt: skip


def _facts(work: Job) -> Iterator[tuple[str, str]]:
    about = work.layout.design.project
    for caption, said in (
        ("Project", about.name), ("Address", about.address), ("Parcel", about.parcel),
        ("Drawn for", about.drawn_for), ("Prepared by", about.prepared_by),
        ("Date of the design", about.date), ("Revision", about.revision),
        ("Code, as the design names it", about.code), ("Note", about.note),
    ):  # fmt: skip
        if said or caption in ("Date of the design", "Code, as the design names it"):
            yield caption, said or "not given"
    areas = ", ".join(area.name for area in work.layout.areas)
    yield "Areas", areas
    yield "Units", "feet and inches" if work.system == "ft-in" else "metric"
    yield "Made with", f"Bedcourse {version('bedcourse')}"
