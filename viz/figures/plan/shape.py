"""A small plan of outlines alone, each side with its length: what sizes make of a shape."""

from collections.abc import Iterator, Sequence

import shapely

from geometry.plan.edits import Outline, length_of
from geometry.plan.outline import polygon, signed_area
from geometry.units import System, show_length
from viz.drawing.figure import Figure, figure
from viz.drawing.fonts import text_width
from viz.drawing.lettering import text_box
from viz.drawing.marks import Anchor, Fill, Line, Mark, Text
from viz.style.lines import CUT, INK, QUIET, SEEN

_FLOOR, _DEEPER = "#f3f0e6", "#ddd6c6"
_GAP, _CLEAR = 1.6, 0.4


def shape_figure(
    outlines: Sequence[Outline], system: System, size: tuple[float, float], text: float
) -> Figure:
    """Draw outlines, metres, within a size, mm, text beside them counted.

    Where there are several the first is the deeper one and darker. The figure has no scale of its
    own: it shows which side is which.
    """
    beside = max(
        text_width(show_length(length_of(o, n), system), text)
        for o in outlines
        for n in range(len(o))
    )
    left, low, right, high = shapely.MultiPoint([p for o in outlines for p in o]).bounds
    room = (size[0] - 2 * (beside + _GAP), size[1] - 2 * (text + 2 * _GAP))
    scale = min(room[0] / max(right - left, 1e-6), room[1] / max(high - low, 1e-6))
    drawn = [tuple((x * scale, y * scale) for x, y in o) for o in outlines]
    marks: list[Mark] = []
    for number, outline in enumerate(drawn):
        tone = _DEEPER if number == 0 and len(drawn) > 1 else _FLOOR
        marks.append(Fill(polygon(outline), tone, "cut"))
    for outline in drawn:
        marks.append(Line((*outline, outline[0]), CUT, INK, layer="outline"))
    edges = [shapely.LinearRing(outline) for outline in drawn]
    for at, outline in enumerate(drawn):
        others = edges[:at] + edges[at + 1 :]
        for n in range(len(outline)):
            if not any(other.distance(_middle(outline, n)) < SEEN for other in others):
                words = show_length(length_of(outlines[at], n), system)
                marks += _free(_places(outline, n, words, text), marks, edges)
    return figure("shape", "Shape", marks)


def _middle(outline: Outline, side: int) -> shapely.Point:
    (ax, ay), (bx, by) = outline[side], outline[(side + 1) % len(outline)]
    return shapely.Point((ax + bx) / 2, (ay + by) / 2)


def _places(outline: Outline, side: int, words: str, text: float) -> Iterator[Text]:
    """Yield a side's length outside it, then inside."""
    middle = _middle(outline, side)
    (ax, ay), (bx, by) = outline[side], outline[(side + 1) % len(outline)]
    turn = 1.0 if signed_area(outline) > 0 else -1.0
    for way in (turn, -turn):
        across, up = way * (by - ay), way * (ax - bx)
        if abs(up) > abs(across):
            at = (middle.x, middle.y + (_GAP if up > 0 else -_GAP - text))
            anchor: Anchor = "middle"
        else:
            at = (middle.x + (_GAP if across > 0 else -_GAP), middle.y - text / 2)
            anchor = "start" if across > 0 else "end"
        yield Text(at, words, text, anchor=anchor, colour=QUIET, layer="levels")


def _free(
    places: Iterator[Text], marks: Sequence[Mark], edges: Sequence[shapely.LinearRing]
) -> list[Mark]:
    """Return the first text clear of the sides and of other texts; none where none is."""
    taken = [_box(mark) for mark in marks if isinstance(mark, Text)]
    for place in places:
        box = _box(place)
        if not any(box.intersects(other) for other in (*edges, *taken)):
            return [place]
    return []


def _box(text: Text) -> shapely.Polygon:
    box = text_box(text)
    return shapely.box(box.left, box.low, box.right, box.high).buffer(_CLEAR)
