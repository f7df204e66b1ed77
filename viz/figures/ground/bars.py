"""Level bars under heads of words, all to one scale, with a limit across them."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

import shapely

from viz.drawing.fonts import text_width, wrap
from viz.drawing.marks import Fill, Hatch, Line, Mark, Text
from viz.style.lines import CUT, HATCH, INK, QUIET, SEEN
from viz.style.text import DESCENT, PITCH

BAR, OPEN = "#b9c4cb", "#f3f5f6"
LAYER = "bars"
# A bar's height and the space from one to the next; air of words beside it; in text heights.
_TALL, _STEP, _AIR = 1.5, 2.2, 0.8
# Between groups, in text heights.
_APART = 1.1


@dataclass(frozen=True)
class Bar:
    """One bar: its value, a part beyond it shown open, words before and after it."""

    label: str
    value: float
    words: str
    beyond: float = 0.0


@dataclass(frozen=True)
class Group:
    """Bars under a head, with a plain line of words between them."""

    head: str
    bars: tuple[Bar, ...]
    note: str = ""


@dataclass(frozen=True)
class Limit:
    """A value that bars are held against, and what it is called."""

    value: float
    words: str


@dataclass(frozen=True)
class _Room:
    left: float
    right: float
    per_unit: float
    width: float
    text: float


def bar_marks(
    groups: Sequence[Group], limit: Limit | None, width: float, text: float
) -> list[Mark]:
    """Return the groups from the top down, at most `width` mm wide; the top is y 0.

    text: height of capitals, mm. Bars begin at zero, the longest value or limit fills the width.
    """
    room = _room(groups, limit, width, text)
    marks: list[Mark] = []
    y, spans = -text if limit is None else -2.6 * text, []
    for group in groups:
        drawn, low, span = _group(group, y, room)
        marks += drawn
        spans.append(span)
        y = low - _APART * text
    if limit is not None:
        marks += _limit(limit, spans, room)
    return marks


def _room(groups: Sequence[Group], limit: Limit | None, width: float, text: float) -> _Room:
    bars = [bar for group in groups for bar in group.bars]
    before = max(text_width(bar.label, text) for bar in bars)
    after = max(text_width(bar.words, text) for bar in bars)
    left = before + _AIR * text if before else 0.0
    right = width - (after + _AIR * text if after else 0.0)
    most = max([bar.value + bar.beyond for bar in bars] + ([limit.value] if limit else []))
    return _Room(left, right, (right - left) / most if most else 0.0, width, text)


def _group(group: Group, top: float, room: _Room) -> tuple[list[Mark], float, tuple[float, float]]:
    """Return marks, the lowest place taken, and the heights between which the bars stand."""
    text, y = room.text, top
    marks: list[Mark] = []
    for words, bold in ((group.head, True), (group.note, False)):
        for line in wrap(words, room.width, text, bold=bold) if words else ():
            y -= text
            marks.append(Text((0.0, y), line, text, bold=bold, layer="labels"))
            y -= (PITCH - 1) * text
    first = y - 0.2 * text
    for bar in group.bars:
        marks += _bar(bar, y - (0.2 + _TALL) * text, room)
        y -= _STEP * text
    return marks, y, (y + (_STEP - _TALL - 0.5) * text, first + 0.3 * text)


def _bar(bar: Bar, low: float, room: _Room) -> Iterator[Mark]:
    text, high = room.text, low + _TALL * room.text
    end = room.left + bar.value * room.per_unit
    far = end + bar.beyond * room.per_unit
    if far - end > 0.05:
        open_part = shapely.box(end, low, far, high)
        yield Fill(open_part, OPEN, LAYER)
        yield Hatch(open_part, "diagonal", QUIET, LAYER)
        yield _outline(end, low, far, high)
    if end - room.left > 0.05:
        yield Fill(shapely.box(room.left, low, end, high), BAR, LAYER)
    yield _outline(room.left, low, max(end, room.left), high)
    base = low + (_TALL - 1) / 2 * text + DESCENT * text / 8
    if bar.label:
        at = (room.left - _AIR * text, base)
        yield Text(at, bar.label, text, anchor="end", layer="labels")
    if bar.words:
        yield Text((room.width, base), bar.words, text, anchor="end", layer="labels")


def _outline(left: float, low: float, right: float, high: float) -> Line:
    corners = ((left, low), (right, low), (right, high), (left, high), (left, low))
    return Line(corners, SEEN, layer=LAYER)


def _limit(limit: Limit, spans: Sequence[tuple[float, float]], room: _Room) -> Iterator[Mark]:
    """Yield the limit across every group's bars, and what it is called over the first."""
    x, text = room.left + limit.value * room.per_unit, room.text
    for low, high in spans:
        yield Line(((x, low), (x, high)), CUT, INK, layer="limit")
    wide = text_width(limit.words, text)
    left = min(max(0.0, x - wide / 2), room.width - wide)
    yield Text((left, -text), limit.words, text, layer="labels")
    yield Line(((x, -1.5 * text), (x, -2.2 * text)), CUT, INK, layer="limit")
    yield Line(((x - 0.5, -1.5 * text), (x + 0.5, -1.5 * text)), HATCH, layer="limit")
