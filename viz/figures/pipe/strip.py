"""A length of the perforated pipe seen from below: its rows of holes and their spacing."""

from collections.abc import Iterator
from math import cos, pi, radians, sin

from shapely import Polygon

from geometry.layout.drain import DrainLayout
from geometry.units import System, show_length
from viz.drawing.expand import outline
from viz.drawing.marks import Fill, Line, Mark, Text
from viz.drawing.place import Item, spread
from viz.figures.dimensions import Chain, across
from viz.figures.pipe.section import Cross
from viz.figures.pipe.words import letter
from viz.style.lines import DIMENSION, INK, QUIET, SEEN
from viz.style.materials import look

# The strip is no longer than this where two rings of holes allow it, mm.
_LONGEST = 110.0
_CENTRE = (3.0, 0.8, 0.6, 0.8)
_TIE = 6.0
CAPTION = "Seen from below, house side up"


def rings(spacing: float) -> int:
    """Return how many rings of holes the strip shows; spacing in mm of paper."""
    return max(2, min(5, int(_LONGEST / spacing)))


def strip_marks(
    drain: DrainLayout, shape: Cross, per_metre: float, system: System, top: float, text: float
) -> Iterator[Mark]:
    """Yield the strip under the height `top`, the house side up, rows lettered at its left."""
    spacing = drain.drain.holes.spacing * per_metre
    count = rings(spacing)
    half = count * spacing / 2
    yield Text((0.0, top - text), CAPTION, text, anchor="middle", layer="labels")
    middle = top - 2.6 * text - 1.15 * shape.outer
    corners = (
        (-half, -shape.outer),
        (half, -shape.outer),
        (half, shape.outer),
        (-half, shape.outer),
    )
    body = Polygon([(x, middle + y) for x, y in corners])
    yield Fill(body, look("pipe").fill, "outline")
    for y in (middle - shape.outer, middle + shape.outer):
        yield Line(((-half, y), (half, y)), 0.35, layer="outline")
    for x in (-half, half):
        yield _break(x, middle, shape.outer)
    xs = [(n + 0.5) * spacing - half for n in range(count)]
    seen = [(letter(n), row) for n, row in enumerate(shape.rows) if abs(row) < 90.0]
    for _, row in seen:
        across_pipe = middle + shape.outer * sin(radians(row))
        yield Line(
            ((-half, across_pipe), (half, across_pipe)), DIMENSION, QUIET, _CENTRE, "leaders"
        )
        for x in xs:
            hole = _hole(x, across_pipe, shape.hole / 2, row)
            yield Fill(hole, INK, "outline")
            yield from outline(hole, DIMENSION, layer="outline")
    yield from _letters(seen, shape, middle, -half, text)
    words = tuple(show_length(drain.drain.holes.spacing, system) for _ in xs[1:])
    yield from across([Chain(tuple(xs), words)], middle - shape.outer, -1, text)


def _hole(x: float, y: float, radius: float, row: float) -> Polygon:
    """A round hole on the pipe's flank looks narrow."""
    narrow = radius * cos(radians(row))
    turns = [n * pi / 16 for n in range(32)]
    return Polygon([(x + radius * cos(t), y + narrow * sin(t)) for t in turns])


def _break(x: float, middle: float, reach: float) -> Line:
    steps = ((0.0, 1.15), (0.0, 0.2), (-1.5, 0.08), (1.5, -0.08), (0.0, -0.2), (0.0, -1.15))
    return Line(
        tuple((x + dx, middle + share * reach) for dx, share in steps), SEEN, layer="outline"
    )


def _letters(
    seen: list[tuple[str, float]], shape: Cross, middle: float, left: float, text: float
) -> Iterator[Mark]:
    rows = sorted((middle + shape.outer * sin(radians(row)), name) for name, row in seen)
    items = [Item(y, text) for y, _ in rows]
    edge = left - _TIE
    for (y, name), at in zip(rows, spread(items, -1e4, 1e4, 0.6 * text), strict=True):
        yield Line(((left, y), (left - 1.5, y), (edge, at)), DIMENSION, layer="leaders")
        place = (edge - 1.0, at - text / 2)
        yield Text(place, name, text, True, "end", layer="labels")
