"""Blocks of a card: each drawn from its own top left corner down, with the height it takes."""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass

from shapely import Polygon, box

from viz.drawing.figure import moved
from viz.drawing.fonts import text_width, wrap
from viz.drawing.marks import Fill, Line, Mark, Text
from viz.style.lines import INK, PAPER, SEEN
from viz.style.text import DESCENT

# Distance between baselines, in text heights; room inside a frame, mm.
LEAD = 1.42
PAD = 2.0
_FRAME = 1.1
# The least line to sign on, mm.
_LINE = 40.0
# Heights of a title to try, mm.
_TITLES = (9.0, 8.4, 7.6, 6.8, 6.0, 5.2)


@dataclass(frozen=True)
class Laid:
    """Marks from (0, 0) down and to the right, and the height they take, mm."""

    marks: tuple[Mark, ...]
    height: float

    def at(self, left: float, top: float) -> tuple[Mark, ...]:
        """Return the marks with the top left corner here."""
        return tuple(moved(self.marks, left, top))


@dataclass(frozen=True)
class Held:
    """What must be seen, by whom, and where it is written down."""

    words: str
    by: str
    sign: str


def paragraph(words: str, width: float, text: float, bold: bool = False) -> Laid:
    """Return words in lines of a width."""
    lines = wrap(words, width, text, bold)
    marks = tuple(
        Text((0.0, -text - n * text * LEAD), line, text, bold) for n, line in enumerate(lines)
    )
    return Laid(marks, len(lines) * text * LEAD)


def stacked(parts: Iterable[Laid], gap: float) -> Laid:
    """Return blocks under each other."""
    marks: list[Mark] = []
    y = 0.0
    for part in parts:
        y -= gap if marks else 0.0
        marks += part.at(0.0, y)
        y -= part.height
    return Laid(tuple(marks), -y)


def held(head: str, holds: Sequence[Held], width: float, text: float) -> Laid:
    """Return the hold points in a heavy frame, with a line to sign on for each."""
    inner = width - 2 * PAD
    band = text + 3.2
    parts: list[Laid] = []
    for hold in holds:
        parts += [Laid((), 1.4)] if parts else []
        parts += [paragraph(hold.words, inner, text), _signed(hold, inner, text)]
    body = stacked(parts, 1.2)
    high = band + 1.6 + body.height + PAD
    marks: tuple[Mark, ...] = (
        Fill(box(0, -band, width, 0), INK, "hold"),
        Text((PAD, -band + 1.7), head, text, bold=True, colour=PAPER, layer="hold"),
        *body.at(PAD, -band - 1.6),
        Line(((0, 0), (width, 0), (width, -high), (0, -high), (0, 0)), _FRAME, layer="hold"),
    )
    return Laid(marks, high)


def _signed(hold: Held, width: float, text: float) -> Laid:
    """Return who looks, and a line to sign on: beside it, or under it where there is no room."""
    by, sign = f"{hold.by}:", hold.sign
    base = -text - 1.6
    marks: list[Mark] = [Text((0, base), by, text, bold=True, layer="hold")]
    start = text_width(by, text, bold=True) + 3.0
    end = width - text_width(sign, text) - 2.0
    if end - start < _LINE:
        start, base = 0.0, base - text * LEAD - 1.6
    marks.append(Line(((start, base - 0.6), (end, base - 0.6)), SEEN, layer="hold"))
    marks.append(Text((width, base), sign, text, anchor="end", layer="hold"))
    return Laid(tuple(marks), -base + DESCENT * text)


def warned(cautions: Sequence[str], width: float, text: float) -> Laid:
    """Return the cautions, each after a triangle."""
    indent = text * 1.9
    parts = [paragraph(words, width - indent, text) for words in cautions]
    marks: list[Mark] = []
    y = 0.0
    for part in parts:
        marks += _triangle(text, y)
        marks += part.at(indent, y)
        y -= part.height + 0.9
    return Laid(tuple(marks), -y)


def _triangle(text: float, y: float) -> Iterator[Mark]:
    size = text * 1.15
    corners = ((0.0, y - size), (size, y - size), (size / 2, y + 0.1 * text))
    yield Fill(Polygon(corners), INK, "cautions")
    yield Line(((size / 2, y - 0.35 * size), (size / 2, y - 0.68 * size)), 0.5, PAPER,
               layer="cautions")  # fmt: skip
    yield Line(((size / 2, y - 0.83 * size), (size / 2, y - 0.85 * size)), 0.5, PAPER,
               layer="cautions")  # fmt: skip


def heading(number: int, title: str, below: str, width: float, text: float) -> Laid:
    """Return the head of a card: the stage's number in a square, its title, lines under it."""
    side, room = 20.0, width - 24.0
    size = next((h for h in _TITLES if text_width(title, h, True) <= room), _TITLES[-1])
    lines = paragraph(below, room, text)
    top = max(0.0, (side - size - 3.4 - lines.height) / 2)
    marks = (
        Fill(box(0, -side, side, 0), INK, "title"),
        Text((side / 2, -side / 2 - 5.2), str(number), 10.4, True, "middle", PAPER, "title"),
        Text((side + 4, -top - size), title, size, bold=True, layer="title"),
        *lines.at(side + 4, -top - size - 3.4),
    )
    return Laid(marks, max(side, top + size + 3.4 + lines.height))
