"""Border and title block of a sheet; what they leave is the room for figures.

Large sheets bear the block as a strip at the right with a space for the department's stamp above
it; small ones as a strip along the bottom.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise

from viz.drawing.fonts import shortened, wrap
from viz.drawing.marks import Line, Mark, Text
from viz.drawing.page import Box, Paper
from viz.sheets import words
from viz.style.lines import BORDER, QUIET, SEEN
from viz.style.text import HEAD, PITCH, SMALLEST, TITLE

# The space for a stamp: 3 3/4 by 5 3/4 in, as one department asks (Honolulu DPP, published list).
STAMP_SPACE = (95.25, 146.05)
_PAD = 2.5
_STRIP_WIDE = STAMP_SPACE[0] + 2 * _PAD
_STRIP_HIGH = 22.0
_LARGE_FROM = 550.0
# Distance between the frame and the figures.
_INSIDE = 5.0
# Share of the first of two fields in a row.
_FIRST = 0.6
# Height of one field with its caption.
_FIELD = 11.0


@dataclass(frozen=True)
class TitleBlock:
    """What a title block says; empty words leave a line to write on."""

    project: str
    address: str
    parcel: str
    drawn_for: str
    prepared_by: str
    date: str
    revision: str
    code: str
    title: str = ""
    number: str = ""
    scale: str = ""
    count: str = ""


def is_large(paper: Paper) -> bool:
    """Tell whether the title block stands as a strip at the right."""
    return paper.width > _LARGE_FROM


def frame(paper: Paper) -> Box:
    """Return the border's box."""
    return Box(paper.border, paper.border, paper.width - paper.border, paper.height - paper.border)


def _strip(paper: Paper) -> Box:
    around = frame(paper)
    if is_large(paper):
        return Box(around.right - _STRIP_WIDE, around.low, around.right, around.high)
    return Box(around.left, around.low, around.right, around.low + _STRIP_HIGH)


def room(paper: Paper) -> Box:
    """Return the box for figures."""
    around, strip = frame(paper), _strip(paper)
    right = strip.left if is_large(paper) else around.right
    low = around.low if is_large(paper) else strip.high
    return Box(around.left + _INSIDE, low + _INSIDE, right - _INSIDE, around.high - _INSIDE)


def title_block(paper: Paper, block: TitleBlock) -> Iterator[Mark]:
    """Yield border and title block."""
    strip = _strip(paper)
    yield Line(_corners(frame(paper)), BORDER, layer="frame")
    yield Line(_corners(strip), BORDER, layer="frame")
    if is_large(paper):
        yield from _upright(strip, block, paper)
    else:
        yield from _level(strip, block, paper)


def _upright(strip: Box, block: TitleBlock, paper: Paper) -> Iterator[Mark]:
    """Yield the strip at the right, from the top down: stamp, project, fields, title, number."""
    top = strip.high - 2 * _PAD - STAMP_SPACE[1]
    yield Text((strip.left + _PAD, strip.high - _PAD - SMALLEST), words.STAMP_SPACE, SMALLEST,
               colour=QUIET, layer="title")  # fmt: skip
    yield _rule(strip, top)
    project = Box(strip.left, top - 30.0, strip.right, top)
    yield from _heading(project, block)
    low = project.low
    for row in _fields(block):
        yield _rule(strip, low)
        yield from _row(Box(strip.left, low - _FIELD, strip.right, low), row)
        low -= _FIELD
    yield _rule(strip, low)
    number = Box(strip.left, strip.low, strip.right, strip.low + 26.0)
    title = Box(strip.left, number.high, strip.right, number.high + 26.0)
    yield from _small_print(Box(strip.left, title.high, strip.right, low), paper)
    yield _rule(strip, title.high)
    yield from _titled(title, block)
    yield _rule(strip, number.high)
    yield from _numbered(number, block)


def _level(strip: Box, block: TitleBlock, paper: Paper) -> Iterator[Mark]:
    """Yield the strip along the bottom: project, fields, small print, title, number."""
    shares = (0.0, 0.17, 0.61, 0.74, 0.9, 1.0)
    edges = [strip.left + share * strip.width for share in shares]
    cells = [Box(a, strip.low, b, strip.high) for a, b in pairwise(edges)]
    for cell in cells[1:]:
        yield Line(((cell.left, cell.low), (cell.left, cell.high)), SEEN, layer="frame")
    yield from _heading(cells[0], block)
    wide = cells[1].width / 3
    for number, row in enumerate(_fields(block)):
        column, place = divmod(number, 2)
        left, top = cells[1].left + column * wide, strip.high - place * _STRIP_HIGH / 2
        yield from _row(Box(left, top - _STRIP_HIGH / 2, left + wide, top), row)
    yield from _small_print(cells[2], paper)
    yield from _titled(cells[3], block)
    yield from _numbered(cells[4], block)


def _fields(block: TitleBlock) -> tuple[tuple[tuple[str, str], ...], ...]:
    """Return the rows of fields, each a caption and what it says."""
    return (
        ((words.DRAWN_FOR, block.drawn_for),),
        ((words.PREPARED_BY, block.prepared_by),),
        ((words.SIGNATURE, ""),),
        ((words.DATE, block.date), (words.REVISION, block.revision)),
        ((words.PARCEL, block.parcel),),
        ((words.CODE, block.code),),
    )


def _row(cell: Box, fields: Sequence[tuple[str, str]]) -> Iterator[Mark]:
    """Yield fields beside each other; of two the first, a date, needs more room."""
    shares = (1.0,) if len(fields) == 1 else (_FIRST, 1 - _FIRST)
    left = cell.left
    for share, (caption, said) in zip(shares, fields, strict=True):
        x, wide = left + _PAD, share * cell.width - _PAD
        left += share * cell.width
        high = cell.high - 1.2 - SMALLEST
        yield Text((x, high), caption, SMALLEST, colour=QUIET, layer="title")
        line = shortened(said, wide, SMALLEST)
        if line:
            yield Text((x, high - 1.6 * SMALLEST), line, SMALLEST, layer="title")
        else:
            foot = high - 1.9 * SMALLEST
            yield Line(((x, foot), (x + wide - _PAD, foot)), SEEN, layer="title")


def _heading(cell: Box, block: TitleBlock) -> Iterator[Text]:
    """Yield the project's name in at most two lines, and its address in what is left of three."""
    x, width = cell.left + _PAD, cell.width - 1.5 * _PAD
    size = HEAD if cell.width > 90 else SMALLEST + 0.5
    y = cell.high - _PAD
    name = _lines(block.project, width, size, 2, bold=True)
    for line in name:
        y -= size * 1.1
        yield Text((x, y), line, size, bold=True, layer="title")
        y -= size * 0.6
    y -= 0.5
    for line in _lines(block.address, width, SMALLEST, 3 - len(name)):
        y -= SMALLEST
        yield Text((x, y), line, SMALLEST, layer="title")
        y -= SMALLEST * (PITCH - 1)


def _titled(cell: Box, block: TitleBlock) -> Iterator[Text]:
    """Yield the sheet's title, smaller where it would not fit whole, and its scale under it."""
    x, width = cell.left + _PAD, cell.width - 2 * _PAD
    foot = _lines(block.scale, width, SMALLEST, 2)
    room = cell.height - 2 * _PAD - len(foot) * SMALLEST * 1.6
    sizes = (HEAD, SMALLEST + 0.5, SMALLEST)
    most = {size: max(1, int(room / (1.6 * size) + 0.2)) for size in sizes}
    whole = [s for s in sizes if len(wrap(block.title, width, s, bold=True)) <= most[s]]
    size = (whole or [SMALLEST])[0]
    y = cell.high - _PAD
    for line in _lines(block.title, width, size, most[size], bold=True):
        y -= size * 1.1
        yield Text((x, y), line, size, bold=True, layer="title")
        y -= size * 0.5
    for number, line in enumerate(reversed(foot)):
        at = (x, cell.low + _PAD + 0.6 + number * SMALLEST * 1.6)
        yield Text(at, line, SMALLEST, layer="title")


def _numbered(cell: Box, block: TitleBlock) -> Iterator[Text]:
    middle = (cell.left + cell.right) / 2
    size = 2 * TITLE if cell.width > 60 else TITLE
    at = (middle, (cell.low + cell.high) / 2 - size / 2 + 2.5)
    yield Text(at, block.number, size, bold=True, anchor="middle", layer="title")
    foot = (middle, cell.low + 3.0)
    yield Text(foot, block.count, SMALLEST, anchor="middle", layer="title")


def _small_print(cell: Box, paper: Paper) -> Iterator[Text]:
    """Yield the stamp line, and as much of the notes under it as the cell holds whole."""
    x, width, y = cell.left + _PAD, cell.width - 2 * _PAD, cell.high - _PAD
    for line in wrap(words.STAMP, width, SMALLEST, bold=True):
        y -= SMALLEST
        yield Text((x, y), line, SMALLEST, bold=True, layer="title")
        y -= SMALLEST * 0.6
    for note in (words.LOCAL_CODE, words.true_scale(paper.name, paper.size)):
        lines = wrap(note, width, SMALLEST)
        need = 1.5 + len(lines) * SMALLEST * 1.6
        if y - need < cell.low + 1.0:
            break
        y -= 1.5
        for line in lines:
            y -= SMALLEST
            yield Text((x, y), line, SMALLEST, layer="title")
            y -= SMALLEST * 0.6


def _lines(said: str, width: float, size: float, most: int, bold: bool = False) -> list[str]:
    """Return text in at most so many lines, the last one shortened."""
    lines = list(wrap(said, width, size, bold)) if said.strip() else []
    if len(lines) <= most:
        return lines
    rest = " ".join(lines[most - 1 :])
    return [*lines[: most - 1], shortened(rest, width, size, bold)]


def _rule(strip: Box, y: float) -> Line:
    return Line(((strip.left, y), (strip.right, y)), SEEN, layer="frame")


def _corners(around: Box) -> tuple[tuple[float, float], ...]:
    left, low, right, high = around.left, around.low, around.right, around.high
    return ((left, low), (right, low), (right, high), (left, high), (left, low))
