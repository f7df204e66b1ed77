"""Forms on upright paper: a head over the first page, and whose and which page every one is."""

from collections.abc import Generator, Iterator, Sequence
from dataclasses import dataclass

from viz.drawing.figure import Figure
from viz.drawing.fonts import shortened, text_width, wrap
from viz.drawing.marks import Line, Mark, Text
from viz.drawing.page import Box, Paper
from viz.figures.forms.drawn import sign_lines
from viz.figures.forms.form import Form
from viz.language.reader import Language
from viz.sheets.sheet import Sheet
from viz.sheets.upright import SmallName, drawing, inside, upright
from viz.style.lines import QUIET, SEEN
from viz.style.text import SMALLEST

# Between figures on a page.
GAP = 5.0
_TITLE = 6.0
_BODY = 3.2
_PITCH = 1.5
_FOOT = 6.0
# Under the line with project and page, and under the head.
_RUNNING = 8.0
_UNDER = 2.5
_SIGN = 10.0


@dataclass(frozen=True)
class Head:
    """What stands over a form: project, title, sentences, captions of lines to write on."""

    project: str
    title: str
    told: tuple[str, ...]
    signs: tuple[str, ...]
    date: str
    revision: str


def heights(head: Head, paper: SmallName) -> tuple[float, float, float]:
    """Return the height for a form on the first page and on others, and its width, mm."""
    room = inside(upright(paper))
    rest = room.height - _RUNNING - _FOOT
    return rest - _head_height(head, room.width), rest, room.width


def _head_height(head: Head, width: float) -> float:
    tall = _TITLE * 1.6
    for words in head.told:
        tall += (len(wrap(words, width, _BODY)) * _PITCH + 0.3) * _BODY
    return tall + (_SIGN if head.signs else 0.0) + _UNDER


def bound_form(
    head: Head, pages: Sequence[Figure], paper: SmallName, language: Language
) -> tuple[Sheet, ...]:
    """Return a form's pages as sheets."""
    return bound_pages(head, [(page,) for page in pages], paper, language)


def bound_pages(
    head: Head, pages: Sequence[Sequence[Figure]], paper: SmallName, language: Language
) -> tuple[Sheet, ...]:
    """Return pages of figures, one under another from the top, as sheets."""
    stood = upright(paper)
    return tuple(
        _sheet(head, figures, (number, len(pages)), stood, language)
        for number, figures in enumerate(pages, 1)
    )


def stacked(
    forms: Sequence[Form], first: float, rest: float, gap: float = GAP
) -> tuple[tuple[Figure, ...], ...]:
    """Return forms one under another, in pages: the first so high, the others; mm."""
    pages: list[list[Figure]] = [[]]
    left = first
    for form in forms:
        if pages[-1] and left - gap < form.least:
            pages.append([])
            left = rest
        room = left - (gap if pages[-1] else 0.0)
        for number, piece in enumerate(form.pages(rest, room)):
            if number:
                pages.append([])
                left = rest
            left -= piece.box.height + (gap if pages[-1] else 0.0)
            pages[-1].append(piece)
    return tuple(map(tuple, pages))


def _sheet(
    head: Head, figures: Sequence[Figure], place: tuple[int, int], paper: Paper, language: Language
) -> Sheet:
    room, (number, count) = inside(paper), place
    marks = list(_running(head, number, count, room, language))
    top = room.high - _RUNNING
    if number == 1:
        marks += _head(head, room, top)
        top -= _head_height(head, room.width)
    for figure in figures:
        marks += figure.at(room.left, top - figure.box.height).marks
        top -= figure.box.height + GAP
    title = f"{head.title}, {number}/{count}"
    return Sheet(f"{head.title} {number}", head.title, (title,),
                 drawing(paper, title, marks))  # fmt: skip


def _running(head: Head, number: int, count: int, room: Box, language: Language) -> Iterator[Mark]:
    y = room.high - SMALLEST
    of = language.say("paper.page_of", page=str(number), pages=str(count))
    right = text_width(of, SMALLEST, bold=True)
    dated = " · ".join(filter(None, (head.project, head.date, head.revision)))
    left = dated if number == 1 else f"{dated} · {head.title}"
    fitted = shortened(left, room.width - right - 6.0, SMALLEST)
    yield Text((room.left, y), fitted, SMALLEST, layer="title")
    yield Text((room.right, y), of, SMALLEST, bold=True, anchor="end", layer="title")
    yield Line(((room.left, y - 1.6), (room.right, y - 1.6)), SEEN, layer="title")
    foot = shortened(language.say("card.foot"), room.width, SMALLEST)
    yield Text((room.left, room.low), foot, SMALLEST, colour=QUIET, layer="title")


def _head(head: Head, room: Box, top: float) -> Iterator[Mark]:
    y = top - _TITLE
    yield Text((room.left, y), head.title, _TITLE, bold=True, layer="title")
    y -= 0.6 * _TITLE
    for words in head.told:
        y = yield from _told(words, room, y)
    if not head.signs:
        return
    yield from sign_lines(head.signs, room.left, y - _SIGN + 3.0, room.width / len(head.signs))


def _told(words: str, room: Box, top: float) -> Generator[Text, None, float]:
    y = top
    for line in wrap(words, room.width, _BODY):
        y -= _BODY
        yield Text((room.left, y), line, _BODY, layer="title")
        y -= (_PITCH - 1) * _BODY
    return y - 0.3 * _BODY
