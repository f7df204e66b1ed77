"""Above the profile: an arrow along every stretch that falls, with its fall in words."""

from collections.abc import Iterator, Sequence

from shapely import Polygon

from geometry.units import System, show_fall, show_length
from viz.drawing.fonts import text_width
from viz.drawing.marks import Fill, Line, Mark, Text
from viz.figures.profile.piece import Piece, Stretch
from viz.figures.profile.view import View, rank
from viz.style.lines import DIMENSION, INK, SEEN
from viz.style.text import DESCENT, PITCH

_GAP = 4.0
_HEAD, _HALF_HEAD = 4.0, 1.0
_TIE, _AIR = 4.0, 1.6
_SAME_DROP_M = 1e-6
# More falling lengths than this have the names of their ends in a row under the falls.
_FEW = 2
_TIER = 1.9

# One entry of the row of words: lines, whether bold, the wanted middle, the arrow's span.
_Entry = tuple[tuple[str, ...], bool, float, tuple[float, float]]


def fall_marks(piece: Piece, view: View, system: System, y: float, text: float) -> Iterator[Mark]:
    """Yield arrows at the height y that point down the pipe, their words above them.

    Where the fall turns more than once, the names of the turns stand in a row of their own as
    long as the falls above them need no ties.
    """
    stretches = piece.stretches()
    falls, turns = _fallen(stretches, view, system), _turns(piece, stretches, view)
    if len(stretches) > _FEW and not any(_ranked(falls, text)[1]):
        yield from _row(turns, y, y + _TIE + DESCENT * text, text)
        yield from _row(falls, y, y + _TIE + (DESCENT + _TIER) * text, text)
    else:
        entries = sorted((*falls, *turns), key=lambda entry: entry[2])
        yield from _row(entries, y, None, text)
    for stretch in stretches:
        yield from _arrow(view.x(stretch.high), view.x(stretch.low), y, bool(stretch.fall))


def _row(entries: Sequence[_Entry], y: float, fixed: float | None, text: float) -> Iterator[Mark]:
    """Yield a row of words tied to the height y; fixed: its baseline, chosen unless given."""
    middles, tied = _ranked(entries, text)
    base = y + (_TIE if any(tied) else _AIR) + DESCENT * text if fixed is None else fixed
    for (lines, bold, x, _), middle, off in zip(entries, middles, tied, strict=True):
        for number, words in enumerate(reversed(lines)):
            at = (middle, base + number * PITCH * text)
            yield Text(at, words, text, bold, "middle", layer="labels")
        if off:
            foot = base - DESCENT * text - 0.5
            yield Line(((x, y), (middle, foot)), DIMENSION, layer="leaders")


def _ranked(entries: Sequence[_Entry], text: float) -> tuple[tuple[float, ...], list[bool]]:
    """Return the middles of a row of words, and which stand off what they name."""
    wanted = [(x, max(text_width(w, text, bold) for w in lines)) for lines, bold, x, _ in entries]
    middles = rank(wanted, _GAP)
    pairs = zip(entries, middles, strict=True)
    return middles, [not a - 1e-6 <= m <= b + 1e-6 for (*_, (a, b)), m in pairs]


def _fallen(stretches: Sequence[Stretch], view: View, system: System) -> list[_Entry]:
    found: list[_Entry] = []
    for stretch in stretches:
        a, b = sorted((view.x(stretch.high), view.x(stretch.low)))
        found.append((_words(stretch, system), False, (a + b) / 2, (a, b)))
    return found


def _turns(piece: Piece, stretches: Sequence[Stretch], view: View) -> list[_Entry]:
    points: dict[float, str] = {}
    for stretch in stretches:
        if stretch.fall:
            top = stretch.drop >= piece.drain.rise - _SAME_DROP_M or not piece.is_end(stretch.high)
            points[view.x(stretch.high)] = "HIGH POINT" if top else "END"
            points[view.x(stretch.low)] = "LOW POINT"
    return [((name,), True, x, (x, x)) for x, name in sorted(points.items())]


def _words(stretch: Stretch, system: System) -> tuple[str, ...]:
    if not stretch.fall:
        return ("laid level",)
    drop = show_length(stretch.drop, system)
    far = show_length(round(stretch.length, 3), system, 4)
    return (
        f"falls {show_fall(stretch.fall, system)}",
        f"drops {drop} in {far}",
    )


def _arrow(start: float, end: float, y: float, pointed: bool) -> Iterator[Mark]:
    way = 1 if end > start else -1
    yield Line(((start, y), (end, y)), SEEN, layer="labels")
    if not pointed:
        return
    back = end - way * min(_HEAD, 0.6 * abs(end - start))
    head = Polygon([(end, y), (back, y + _HALF_HEAD), (back, y - _HALF_HEAD)])
    yield Fill(head, INK, "labels")
