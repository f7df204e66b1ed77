"""Names of other drawings written flat, number and sheet on one line within round ends."""

from collections.abc import Iterator, Sequence

import shapely
from shapely import Polygon

from viz.drawing.fonts import text_width
from viz.drawing.marks import Line, Mark, Point, Text
from viz.figures.plan.bubbles import Ref, detail_rings, least_radius
from viz.figures.plan.candidates import Wish
from viz.figures.plan.dashes import HIDDEN
from viz.figures.plan.free import Places
from viz.figures.plan.onpaper import OnPaper
from viz.figures.plan.refs import DetailRef
from viz.style.lines import SEEN
from viz.style.text import DESCENT

LAYER = "names"
# Height, and air at both ends, in text heights.
_TALL = 2 * (0.5 + DESCENT + 0.08)
_ENDS = 0.65
_AIR = 0.5


def flat_words(ref: Ref) -> str:
    """Return number and sheet of a drawing."""
    return f"{ref.number}/{ref.sheet}"


def flat_size(words: str, text: float) -> tuple[float, float]:
    """Return width and height of a flat name, mm."""
    return text_width(words, text, True) + 2 * _ENDS * text, _TALL * text


def flat_box(middle: Point, wide: float, text: float) -> Polygon:
    """Return the outline of a flat name about its middle."""
    half, (x, y) = _TALL * text / 2, middle
    spine = shapely.LineString(((x - wide / 2 + half, y), (x + wide / 2 - half, y)))
    return spine.buffer(half, quad_segs=12)


def flat_marks(words: str, middle: Point, text: float) -> Iterator[Mark]:
    """Yield a flat name about its middle."""
    wide, _ = flat_size(words, text)
    outline = flat_box(middle, wide, text)
    points = tuple((float(x), float(y)) for x, y in outline.exterior.coords)
    yield Line(points, SEEN, layer=LAYER)
    yield Text((middle[0], middle[1] - text / 2), words, text, True, "middle", layer=LAYER)


def flat_details(
    refs: Sequence[DetailRef], paper: OnPaper, places: Places, text: float
) -> Iterator[Mark]:
    """Yield the dashed circles of details, each with its flat name in a free place."""
    for ref, ring in zip(refs, detail_rings(refs, paper), strict=True):
        at, size = paper.point(ref.at), least_radius(ref, paper)
        wide, tall = flat_size(flat_words(ref), text)
        place = places.put(Wish(at, wide, tall, away=size + 1.0, start=size, air=_AIR))
        box = place.box
        middle = ((box.left + box.right) / 2, (box.low + box.high) / 2)
        points = tuple((float(x), float(y)) for x, y in ring.coords)
        yield Line(points, SEEN, dash=HIDDEN, layer="section line")
        outline = flat_box(middle, wide, text)
        line = shapely.LineString((place.leader[0], middle)).difference(outline)
        run = tuple((float(x), float(y)) for x, y in line.coords)
        yield Line(run, SEEN, layer="section line")
        yield from flat_marks(flat_words(ref), middle, text)
