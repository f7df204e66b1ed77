"""Tables and cards on paper: columns as wide as their words ask, rows that stay whole."""

import textwrap
from collections.abc import Iterator, Sequence
from itertools import zip_longest

from reportlab.lib.colors import HexColor
from reportlab.platypus import Flowable, Paragraph, Table, TableStyle

from geometry.checks.finding import Severity
from viz.findings.document import Card, Grid, unbroken
from viz.findings.typeface import BAND, BODY, INK, LEAST, LINE, TABLE, cell, style, text, width
from viz.words import SEVERITIES

_PAD = 3.0
_EDGE: dict[Severity, tuple[str, float]] = {
    "fine": ("#4f6a5c", 2.5), "look": ("#a5761f", 4.0), "stop": ("#8f2f24", 6.0),
}  # fmt: skip
_CAPTION = 54.0
# Title, heads and two rows stand together; of a card its head and the first row.
_TOGETHER = 4
# Letters of a cell that no page is too low for.
_LONGEST = 1100
_ENDLESS = 1e6
_STEP = 0.35
# A cell longer than this asks for no more width while others ask, points.
_MOST_ASKED = 230.0


def grid_flow(grid: Grid, room: float) -> Flowable:
    """Return a table with its title over it, on every page it goes on; room: points across."""
    size, widths = _fitted(grid, room)
    head = [Paragraph(text(words), cell(size, bold=True)) for words in grid.head]
    rows = [[Paragraph(text(words), cell(size)) for words in row] for row in shorter(grid.rows)]
    note = [_across(grid.note, "note", grid)] if grid.note else []
    made = Table(
        [_across(grid.title, "head", grid), head, *rows, *note], colWidths=widths, repeatRows=2,
        hAlign="LEFT", spaceBefore=7, spaceAfter=11,
    )  # fmt: skip
    made.setStyle(_ruled(len(rows), len(note)))
    return made


def shorter(rows: Sequence[tuple[str, ...]]) -> Iterator[tuple[str, ...]]:
    """Yield rows none of which is higher than a page: what is too long goes on in the next row."""
    for row in rows:
        pieces = [_pieces(words) for words in row]
        yield from zip_longest(*pieces, fillvalue="")


def _pieces(words: str) -> list[str]:
    return textwrap.wrap(words, _LONGEST) if len(words) > _LONGEST else [words]


def least_height(made: Table, room: float) -> float:
    """Return the height of the rows of a table that stay together at its top, points."""
    made.wrap(room, _ENDLESS)
    return float(sum(made._rowHeights[:_TOGETHER]))


def _across(words: str, name: str, grid: Grid) -> list[Flowable | str]:
    """Return a row of one cell."""
    return [Paragraph(text(words), style(name)), *[""] * (len(grid.head) - 1)]


def _ruled(rows: int, notes: int) -> TableStyle:
    pads = [(side, (0, 0), (-1, -1), _PAD) for side in ("LEFTPADDING", "RIGHTPADDING")]
    pads += [(side, (0, 0), (-1, -1), 2.2) for side in ("TOPPADDING", "BOTTOMPADDING")]
    last = 1 + rows
    across = [("SPAN", (0, 0), (-1, 0)), ("LEFTPADDING", (0, 0), (-1, 0), 0)]
    if notes:
        across += [("SPAN", (0, -1), (-1, -1)), ("LEFTPADDING", (0, -1), (-1, -1), 0)]
    # The head stays with two rows, the last two with each other and with the note.
    whole = [
        ("NOSPLIT", (0, 0), (-1, min(_TOGETHER - 1, last))),
        ("NOSPLIT", (0, -2 - notes), (-1, -1)),
    ]
    return TableStyle([
        ("VALIGN", (0, 0), (-1, 1), "BOTTOM"), ("VALIGN", (0, 2), (-1, -1), "TOP"),
        ("BACKGROUND", (0, 1), (-1, 1), BAND), ("LINEBELOW", (0, 1), (-1, 1), 1.0, INK),
        ("LINEBELOW", (0, 2), (-1, last), 0.4, LINE), *pads, *across, *whole,
    ])  # fmt: skip


def _fitted(grid: Grid, room: float) -> tuple[float, list[float]]:
    """Return the size of letters at which every word fits its column, and the columns' widths."""
    size = TABLE
    while size > LEAST and sum(_least(grid, size)) > room:
        size -= _STEP
    least, asked = _least(grid, size), _asked(grid, size)
    if sum(least) >= room:
        return size, [room * one / sum(least) for one in least]
    if sum(asked) > room:
        return size, _grown(least, asked, room)
    return size, _grown(asked, _asked(grid, size, room), room)


def _grown(narrow: list[float], wide: list[float], room: float) -> list[float]:
    """Return columns between two widths that fill the room as far as they want it."""
    wanted = [b - a for a, b in zip(narrow, wide, strict=True)]
    share = min(1.0, (room - sum(narrow)) / max(sum(wanted), 1e-6))
    return [a + share * w for a, w in zip(narrow, wanted, strict=True)]


def _columns(grid: Grid) -> Iterator[tuple[str, Sequence[str]]]:
    yield from ((head, [row[n] for row in grid.rows]) for n, head in enumerate(grid.head))


def _least(grid: Grid, size: float) -> list[float]:
    """Return the width of the longest word in each column."""
    return [
        2 * _PAD + 1 + max(
            *(width(word, size, bold=True) for word in head.split()), 0.0,
            *(width(word, size) for words in cells for word in unbroken(words).split(" ")),
        )
        for head, cells in _columns(grid)
    ]  # fmt: skip


def _asked(grid: Grid, size: float, most: float = _MOST_ASKED) -> list[float]:
    """Return the width of each column's longest cell, at most so many points."""
    return [
        2 * _PAD + 1 + max(
            width(head, size, bold=True),
            *(min(most, width(words, size)) for words in cells),
        )
        for head, cells in _columns(grid)
    ]  # fmt: skip


def card_flow(card: Card, room: float) -> Flowable:
    """Return a finding as a card that may go on over a page under its own head."""
    said, (edge, wide) = SEVERITIES[card.severity].upper(), _EDGE[card.severity]
    head = Paragraph(
        f'<font size="{BODY - 1.5}" color="{edge}">{said}</font>&nbsp;&nbsp;{text(card.subject)}',
        cell(BODY, bold=True),
    )
    rows = [
        [Paragraph(text(caption), style("note")), Paragraph(text(words), cell(BODY - 0.5))]
        for caption, words in shorter(card.rows)
    ]
    made = Table([[head, ""], *rows], colWidths=[_CAPTION, room - _CAPTION], repeatRows=1,
                 spaceBefore=4, spaceAfter=5)  # fmt: skip
    made.setStyle(TableStyle([
        ("SPAN", (0, 0), (1, 0)), ("VALIGN", (0, 0), (-1, -1), "TOP"),
        ("BOX", (0, 0), (-1, -1), 0.4, LINE),
        ("LINEBEFORE", (0, 0), (0, -1), wide, HexColor(edge)),
        ("LEFTPADDING", (0, 0), (0, -1), 9), ("LEFTPADDING", (1, 0), (1, -1), 4),
        ("TOPPADDING", (0, 0), (-1, -1), 1.6), ("BOTTOMPADDING", (0, 0), (-1, -1), 1.6),
        ("NOSPLIT", (0, 0), (-1, 1)), ("NOSPLIT", (0, -2), (-1, -1)),
    ]))  # fmt: skip
    return made
