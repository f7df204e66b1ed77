"""The document on upright paper as PDF: tables that go on over pages, pages counted, bookmarks."""

from collections.abc import Iterator
from io import BytesIO
from typing import Any

from reportlab.lib.units import mm
from reportlab.platypus import (
    BaseDocTemplate,
    CondPageBreak,
    Flowable,
    Frame,
    KeepTogether,
    PageTemplate,
    Paragraph,
    Table,
)

from viz.drawing.fonts import shortened
from viz.export.paths import printable
from viz.export.pdf import DocumentInfo, Undated
from viz.findings.document import Block, Card, Document, Grid, Items, Section
from viz.findings.grids import card_flow, grid_flow, least_height
from viz.findings.typeface import BOLD, INK, LINE, PLAIN, QUIET, style, text
from viz.sheets.upright import SmallName, upright

_SIDE, _TOP, _BOTTOM = 18 * mm, 21 * mm, 18 * mm
_SMALL = 7.5
# Room for the number of all pages.
_COUNT = 10.0
# Capitals of that size, mm, as `shortened` counts.
_CAPITALS = _SMALL * 0.75 / mm
# A card higher than this may go on over a page.
_WHOLE: float = 105 * mm
# What follows a heading's first paragraph has room to begin.
_LINES: float = 18 * mm
_ENDLESS = 1e6
# The number of all pages is known when the last is written, and drawn on each by this name.
_ALL = "pages"


def findings_pdf(document: Document, paper: SmallName) -> bytes:
    """Return the document as PDF; the same document gives the same bytes."""
    file = BytesIO()
    stood = upright(paper)
    made = _Pages(file, document, (stood.width * mm, stood.height * mm))
    made.build([*_flow(document, made.room), _Last()])
    return file.getvalue()


class _Pages(BaseDocTemplate):  # type: ignore[misc]
    """Pages with project and title over them, and their number of how many under them."""

    def __init__(self, file: BytesIO, document: Document, size: tuple[float, float]) -> None:
        super().__init__(file, pagesize=size, invariant=1, pageCompression=1, lang="en")
        self.room, self._said = size[0] - 2 * _SIDE, document
        frame = Frame(
            _SIDE, _BOTTOM, self.room, size[1] - _TOP - _BOTTOM,
            leftPadding=0, rightPadding=0, topPadding=0, bottomPadding=0,
        )  # fmt: skip
        self.addPageTemplates(PageTemplate("page", [frame], onPage=self._dressed))

    def beforeDocument(self) -> None:  # noqa: N802
        """Say what the document is, without a date: the same findings are the same file."""
        canvas, said = self.canv, self._said
        about = DocumentInfo(f"{said.project}: {said.title}", "", said.dated, "", said.language)
        canvas._doc.info = Undated(about)
        canvas.setViewerPreference("DisplayDocTitle", "true")
        canvas.showOutline()

    def afterFlowable(self, flowable: Flowable) -> None:  # noqa: N802
        """Set a bookmark where a heading stands."""
        if isinstance(flowable, _Heading):
            self.canv.bookmarkPage(flowable.key)
            self.canv.addOutlineEntry(flowable.said, flowable.key, flowable.level, closed=True)

    def _dressed(self, canvas: Any, _: BaseDocTemplate) -> None:
        said, right = self._said, self.pagesize[0] - _SIDE
        top, low = self.pagesize[1] - 14 * mm, 11 * mm
        canvas.setFillColor(QUIET)
        canvas.setStrokeColor(LINE)
        canvas.setLineWidth(0.6)
        over = " · ".join(filter(None, (printable(said.project), said.dated)))
        text(over)
        canvas.setFont(PLAIN, _SMALL)
        room = self.room / mm
        canvas.drawString(_SIDE, top, shortened(over, room - 30.0, _CAPITALS))
        canvas.drawRightString(right, top, said.title)
        canvas.line(_SIDE, top - 4, right, top - 4)
        canvas.drawString(_SIDE, low, said.foot)
        canvas.setFont(BOLD, _SMALL)
        canvas.setFillColor(INK)
        canvas.drawRightString(right - _COUNT, low, f"{canvas.getPageNumber()} of ")
        canvas.saveState()
        canvas.translate(right - _COUNT, low)
        canvas.doForm(_ALL)
        canvas.restoreState()


class _Last(Flowable):  # type: ignore[misc]
    """Nothing to be seen at the end of the last page: says how many there are."""

    def wrap(self, *_: float) -> tuple[float, float]:
        return 0.0, 0.0

    def draw(self) -> None:
        canvas = self.canv
        count = canvas.getPageNumber()
        canvas.beginForm(_ALL, 0, -3, _COUNT, _SMALL)
        canvas.setFont(BOLD, _SMALL)
        canvas.setFillColor(INK)
        canvas.drawString(0, 0, str(count))
        canvas.endForm()


class _Heading(Paragraph):  # type: ignore[misc]
    """A heading with a bookmark. level: from 0."""

    def __init__(self, words: str, name: str, key: str, level: int) -> None:
        super().__init__(text(words), style(name))
        self.said, self.key, self.level = printable(words), key, level


def _flow(document: Document, room: float) -> Iterator[Flowable]:
    yield Paragraph(text(document.title), style("note"))
    yield Paragraph(text(document.project), style("title"))
    if document.dated:
        yield Paragraph(text(document.dated), style("note"))
    for section in document.sections:
        yield from _section(section, room, 0)


def _section(section: Section, room: float, level: int) -> Iterator[Flowable]:
    flows = [flow for block in section.blocks for flow in _block(block, room)]
    for part in section.parts:
        flows += _section(part, room, level + 1)
    head = _Heading(section.title, ("h2", "h3")[level], section.key, level)
    yield CondPageBreak(_least([head, *flows], room))
    yield head
    yield from flows


def _least(flows: list[Flowable], room: float) -> float:
    """Return the height a heading asks for: itself and what begins under it."""
    high = 0.0
    for one in flows:
        if isinstance(one, CondPageBreak):
            continue
        if isinstance(one, Table):
            return high + float(least_height(one, room))
        if isinstance(one, KeepTogether):
            return high + _card_height(one._content[0], room)
        high += float(one.wrap(room, _ENDLESS)[1])
        high += float(one.style.spaceBefore + one.style.spaceAfter)
        if not isinstance(one, _Heading) and one.style.name != "note":
            break
    return high + _LINES


def _card_height(card: Table, room: float) -> float:
    """Return the height a card asks for: all of it unless it may go on over a page."""
    whole = float(card.wrap(room, _ENDLESS)[1])
    return whole if whole <= _WHOLE else float(least_height(card, room))


def _block(block: Block, room: float) -> Iterator[Flowable]:
    if isinstance(block, Grid):
        yield grid_flow(block, room)
    elif isinstance(block, Card):
        yield KeepTogether([card_flow(block, room)], maxHeight=_WHOLE)
    elif isinstance(block, Items):
        for term, said in block.rows:
            named = f"<b>{text(term)}:</b> " if term else ""
            yield Paragraph(f"{named}{text(said)}", style("item"), bulletText="•")
    else:
        # What opens a list stays with its first line.
        opens = block.words.endswith(":")
        yield Paragraph(text(block.words), style("opening" if opens else block.look))
