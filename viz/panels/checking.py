"""The page "Checks": what was found and on what it rests, as the findings document says it."""

from collections.abc import Callable
from html import escape

import streamlit as st

from geometry.checks.finding import Severity
from geometry.checks.subjects import SUBJECTS
from geometry.report import Found
from viz.export.csvfile import to_csv
from viz.findings.document import Block, Document, Grid, Items, Paragraph, Section
from viz.findings.found import grouped, in_all, most_grave
from viz.findings.loads import wall_grid
from viz.findings.page import findings_page
from viz.findings.paper import findings_pdf
from viz.findings.write import findings_document
from viz.job import Job
from viz.panels import cached, shown
from viz.panels.figures import FINDINGS_IN_ENGLISH
from viz.panels.shared import shared
from viz.panels.spoken import Told, in_english, named, said
from viz.sheets.upright import carried_paper
from viz.tables import report_tables
from viz.tables.table import Table

_KEY, _FILTER = "checks stage", "findings shown"
_SHOWN: dict[str, Severity | None] = {
    "All": None, "Stop": "stop", "Look again": "look", "Fine": "fine",
}  # fmt: skip


def checks_page(work: Job) -> None:
    """Show the counts, one stage of the findings, and their files."""
    stages: dict[str, Callable[[Job], None]] = {
        "Findings": _findings, "Alternatives": _alternatives, "Walls": _walls,
        "Inspections": _holds, "Not checked": _open,
    }  # fmt: skip
    cells = (f"<div><span>{said(what)}</span><b>{number}</b></div>"
             for what, number in in_all(work.report.findings))  # fmt: skip
    st.html(f'<div class="figures">{"".join(cells)}</div>')
    chosen = stages[shown.stage_choice(list(stages), _KEY)]
    in_english(FINDINGS_IN_ENGLISH)
    chosen(work)
    findings_files(work)


def findings_files(work: Job) -> None:
    """Show buttons that save the findings: on paper, as a page, as tables for other programs."""
    text = work.text
    st.markdown(said("The findings, for inspector and engineer:"))
    with st.container(horizontal=True):
        shown.save_button("PDF", lambda: _pdf(text), "findings.pdf", "application/pdf")
        shown.save_button(
            said("Page, HTML"), lambda: _page(text), "findings.html", "text/html",
            said("one file for any browser, without a network"),
        )  # fmt: skip
        csv = to_csv(report_tables.findings(work.report))
        shown.save_button("CSV", csv, "findings.csv", "text/csv")
        shown.save_button(
            said("Report, JSON"), lambda: cached.report_file(text), "report.json",
            "application/json",
        )  # fmt: skip


@shared(16, Told("Putting the findings together ..."))
def _document(text: str) -> Document:
    return findings_document(cached.sound_job(text))


@shared(4)
def _pdf(text: str) -> bytes:
    return findings_pdf(_document(text), carried_paper(cached.sound_job(text).system))


@shared(4)
def _page(text: str) -> bytes:
    return findings_page(_document(text)).encode()


def _findings(work: Job) -> None:
    """Show the findings by subject, those of the severity that is chosen."""
    found = work.report.findings
    with st.expander(said("What is to be stopped or looked at again, one line each")):
        shown.lines("The gravest first", most_grave(found))
    chosen = st.segmented_control(
        said("Findings shown"),
        list(_SHOWN),
        format_func=named(),
        default="All",
        key=_FILTER,
        required=True,
    )
    wanted = _SHOWN[chosen or "All"]
    some = [f for f in found if wanted in (None, f.severity)]
    if not some:
        st.info(said("None of these."))
    for subject, rows in grouped(some):
        _subject(SUBJECTS[subject], rows)


def _subject(title: str, rows: tuple[Found, ...]) -> None:
    _title(said(title))
    shown.cards(rows)


def _alternatives(work: Job) -> None:
    _blocks(_section(work, "alternatives"))


def _walls(work: Job) -> None:
    _grid(wall_grid(work))
    _blocks(_section(work, "walls"), skip=1)
    shown.caution("A wall's design belongs to the code's tables or an engineer. Nothing here says "
                  "that a wall is strong enough.")  # fmt: skip


def _holds(work: Job) -> None:
    section = _section(work, "holds")
    _blocks(section)
    for part in section.parts:
        _title(said(part.title))
        _blocks(part)


def _open(work: Job) -> None:
    _blocks(_section(work, "open"))


def _section(work: Job, key: str) -> Section:
    return _document(work.text).section(key)


def _blocks(section: Section, skip: int = 0) -> None:
    for block in section.blocks[skip:]:
        _block(block)


def _block(block: Block) -> None:
    if isinstance(block, Grid):
        _grid(block)
    elif isinstance(block, Items):
        shown.lines("", (f"{said(term)}: {words}" if term else words for term, words in block.rows))
    elif isinstance(block, Paragraph):
        (shown.caution if block.look == "caution" else _told)(block.words)


def _grid(grid: Grid) -> None:
    """Show a table under its title."""
    _title(said(grid.title))
    shown.rows(Table(grid.head, grid.rows))
    if grid.note:
        _told(grid.note)


def _title(words: str) -> None:
    """Show a heading that may hold names of the design: as text, never as markup."""
    st.html(f"<h3>{escape(words)}</h3>")


def _told(words: str) -> None:
    st.html(f'<p class="told">{escape(words)}</p>')
