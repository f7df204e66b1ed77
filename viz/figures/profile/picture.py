"""The profile's picture: stone and wrap, the pipe as a band, corners, cleanouts, the tee."""

from collections.abc import Iterator, Sequence
from itertools import pairwise
from math import cos, pi, sin

from shapely import Polygon, box

from geometry.layout.bleeders import Bleeder
from viz.drawing.expand import outline
from viz.drawing.fonts import text_width
from viz.drawing.marks import Fill, Hatch, Line, Mark, Point, Text
from viz.figures.drainwords import bleeder_station
from viz.figures.pipe.words import way
from viz.figures.profile.piece import Piece
from viz.figures.profile.places import Place, run_of
from viz.figures.profile.view import View
from viz.style.lines import CUT, DIMENSION, INK, PAPER, QUIET, SEEN
from viz.style.materials import look
from viz.words import material_name

# Where a riser is broken off above the picture, mm.
BREAK = 5.0
_PIPE_EDGE = 0.35
_UPRIGHT_HALO = 0.7
# Half a bleeder's tick, mm.
_TICK = 1.3


def stone_marks(piece: Piece, view: View) -> Iterator[Mark]:
    """Yield the drain's stone round the pipe, behind everything."""
    stone = look("drain stone")
    wall, bore = piece.drain.pipe.wall_m, 2 * piece.drain.bore
    band = _between(piece.inverts(), view, -wall, bore + wall)
    shape = _stone(piece, view).difference(band)
    yield Fill(shape, stone.fill, "cut")
    yield Hatch(shape, stone.hatch, stone.ink, "hatch")


def wrap_marks(piece: Piece, view: View) -> Iterator[Mark]:
    """Yield the wrap inside the stone's edges, shown heavy; only open ends are wrapped."""
    wrap = look("wrap")
    left, low, right, high = _stone(piece, view).buffer(-wrap.thin_mm, join_style="mitre").bounds
    runs = [((left, low), (right, low)), ((left, high), (right, high))]
    for run in piece.open_ends:
        x = left if run == 0.0 else right
        runs.append(((x, low), (x, high)))
    for ends in runs:
        yield Line(ends, wrap.thin_mm, wrap.ink, wrap.dash, layer="outline")


def _stone(piece: Piece, view: View) -> Polygon:
    left, right = view.x(piece.start), view.x(piece.end)
    return box(left, view.y(piece.drain.stone_bottom), right, view.y(piece.drain.stone_top))


def uprights(runs: Sequence[float], view: View, low: float, high: float) -> Iterator[Line]:
    """Yield a thin upright line at every place along the pipe, between two heights on paper."""
    for run in runs:
        ends = ((view.x(run), low), (view.x(run), high))
        yield Line(ends, DIMENSION + _UPRIGHT_HALO, PAPER, layer="outline")
        yield Line(ends, DIMENSION, layer="outline")


def pipe_marks(piece: Piece, places: Sequence[Place], view: View) -> Iterator[Mark]:
    """Yield the pipe cut along its middle: walls, bore, the invert as a line of its own layer."""
    points = piece.inverts()
    wall, bore = piece.drain.pipe.wall_m, 2 * piece.drain.bore
    bottom, invert, top, crown = (
        _raised(points, view, height) for height in (-wall, 0.0, bore, bore + wall)
    )
    pipe = look("pipe")
    yield Fill(_between(points, view, 0.0, bore), PAPER, "outline")
    yield Fill(_between(points, view, -wall, 0.0), INK, "cut")
    yield Fill(_between(points, view, bore, bore + wall), INK, "cut")
    start, end = piece.pipe_ends
    for place in places:
        if place.bent and start < place.run < end:
            x, low = view.x(place.run), drain_invert(points, place.run)
            yield Line(((x, view.y(low)), (x, view.y(low + bore))), DIMENSION, layer="outline")
    for line in (bottom, crown, top):
        yield Line(line, SEEN, pipe.ink, layer="outline")
    for run, foot, head in ((start, bottom[0], crown[0]), (end, bottom[-1], crown[-1])):
        ended = Line((foot, head), SEEN, layer="outline")
        yield _goes_on(foot, head) if run in piece.cuts else ended
    yield Line(invert, _PIPE_EDGE, layer="invert")


def drain_invert(points: Sequence[tuple[float, float]], run: float) -> float:
    """Return the level at a run between (run, level) points, metres."""
    for (a, low), (b, high) in pairwise(points):
        if a <= run <= b:
            return low + (high - low) * (run - a) / (b - a)
    raise ValueError("outside the pipe")


def _between(points: Sequence[tuple[float, float]], view: View, low: float, high: float) -> Polygon:
    """Return the band between two heights over the invert, metres."""
    return Polygon((*_raised(points, view, low), *reversed(_raised(points, view, high))))


def pipe_words(
    piece: Piece, places: Sequence[Place], view: View, text: float, ticked: Sequence[float] = ()
) -> Iterator[Text]:
    """Yield the pipe's name inside it, in the longest length between places that can hold it.

    ticked: levels of lines across the pipe, which the name is not set on.
    """
    drain = piece.drain
    name = material_name(drain.drain.pipe).split(", ", 1)[-1]
    words = f"{name}, {way(drain.drain.holes).lower()}"
    points, half = piece.inverts(), text_width(words, text) / 2 + 2.0
    start, end = piece.pipe_ends
    stops = sorted({start, end, *(p.run for p in places if start < p.run < end)})
    a, b = max(pairwise(stops), key=lambda span: span[1] - span[0])
    middle = view.x((a + b) / 2)
    if b - a <= view.run(2 * half):
        return
    levels = [drain_invert(points, view.run(x)) for x in (middle - half, middle + half)]
    low, high = view.y(max(levels)), view.y(min(levels) + 2 * drain.bore)
    base = (low + high - text) / 2
    crossed = any(-text < view.y(level) - base < 2 * text for level in ticked)
    if high - low > 2.2 * text and not crossed:
        yield Text((middle, base), words, text, anchor="middle", layer="labels")


def _raised(points: Sequence[tuple[float, float]], view: View, by: float) -> tuple[Point, ...]:
    return tuple((view.x(run), view.y(level + by)) for run, level in points)


def riser_marks(piece: Piece, places: Sequence[Place], view: View, high: float) -> Iterator[Mark]:
    """Yield the cleanouts' risers from the pipe's crown, broken off above the picture's top."""
    drain = piece.drain
    for place in places:
        if place.riser_top is None:
            continue
        x, half = view.x(place.run), max(view.x(drain.radius), 0.5)
        foot = view.y(place.invert + drain.bore + drain.radius)
        full = view.y(place.riser_top)
        top = min(full, high + BREAK)
        yield Fill(box(x - half, foot, x + half, top), PAPER, "outline")
        for side in (x - half, x + half):
            yield Line(((side, foot), (side, top)), SEEN, layer="outline")
        yield _broken(x, top, half) if full > top else _capped(x, top, half)


def _goes_on(low: Point, high: Point) -> Line:
    """Return a break line across the pipe, a little longer than the pipe is high."""
    (x, bottom), (_, top) = low, high
    middle, past = (bottom + top) / 2, 1.5
    ys = (bottom - past, middle - 1.2, middle - 0.5, middle + 0.5, middle + 1.2, top + past)
    steps = zip((0.0, 0.0, -1.4, 1.4, 0.0, 0.0), ys, strict=True)
    return Line(tuple((x + dx, y) for dx, y in steps), _PIPE_EDGE, layer="outline")


def _broken(x: float, y: float, half: float) -> Line:
    out = half + 1.2
    steps = (
        (-out, 0.0),
        (-half / 2, 0.0),
        (-half / 4, 1.1),
        (half / 4, -1.1),
        (half / 2, 0.0),
        (out, 0.0),
    )
    return Line(tuple((x + dx, y + dy) for dx, dy in steps), SEEN, layer="outline")


def _capped(x: float, y: float, half: float) -> Line:
    return Line(((x - half - 0.4, y), (x + half + 0.4, y)), 0.5, layer="outline")


def tee_marks(places: Sequence[Place], view: View) -> Iterator[Mark]:
    """Yield the mouth of each solid pipe where it leaves, seen end on."""
    for place in places:
        if lead := place.lead:
            centre = (view.x(place.run), view.y(lead.invert + lead.inner))
            yield from _mouth(centre, lead.outer, lead.inner, view)


def bleeder_marks(piece: Piece, bleeders: Sequence[Bleeder], view: View) -> Iterator[Mark]:
    """Yield the mouths of the pipes through the footing, which the drain's pipe stands before."""
    for run, level in _bleeder_inverts(piece, bleeders):
        inner = bleeders[0].pipe.inside_diameter_m / 2
        yield from _mouth((view.x(run), view.y(level + inner)), bleeders[0].radius, inner, view)


def bleeder_ticks(piece: Piece, bleeders: Sequence[Bleeder], view: View) -> Iterator[Mark]:
    """Yield a short level line at the invert of each pipe through the footing."""
    for run, level in _bleeder_inverts(piece, bleeders):
        x, y = view.x(run), view.y(level)
        yield Line(((x - _TICK, y), (x + _TICK, y)), CUT, layer="outline")


def _bleeder_inverts(piece: Piece, bleeders: Sequence[Bleeder]) -> list[tuple[float, float]]:
    """Return (run, level of the invert) of the bleeders in a piece."""
    found = [
        (
            run_of(piece.drain, bleeder_station(piece.drain, bleeder)),
            bleeder.outer_end[2] - bleeder.pipe.inside_diameter_m / 2,
        )
        for bleeder in bleeders
    ]
    return [(run, level) for run, level in found if piece.holds(run)]


def _mouth(centre: Point, outer: float, inner: float, view: View) -> Iterator[Mark]:
    for radius, colour in ((outer, PAPER), (inner, QUIET)):
        shape = _ellipse(centre, view.x(radius), view.y(radius))
        yield Fill(shape, colour, "outline")
        yield from outline(shape, SEEN, layer="outline")


def _ellipse(centre: Point, across: float, up: float) -> Polygon:
    turns = [n * pi / 24 for n in range(48)]
    return Polygon([(centre[0] + across * cos(t), centre[1] + up * sin(t)) for t in turns])
