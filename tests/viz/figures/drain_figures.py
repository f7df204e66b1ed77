"""What the figures of the drain are tried on, and what makes their words legible."""

from functools import cache
from itertools import combinations

from shapely import LineString, STRtree, box
from shapely.geometry.base import BaseGeometry

from geometry.layout.lay import Layout, lay_out
from tests.designs import design_of, seeded_raw
from tests.rolls import seeds
from viz.carried import examples
from viz.drawing.expand import simple
from viz.drawing.figure import Figure
from viz.drawing.lettering import text_box
from viz.drawing.marks import Circle, Fill, Leader, Line, Text
from viz.job import job
from viz.style.lines import PAPER

SEEDS = seeds(40)
DESCENDING = set("gjpqyQ,;()")


@cache
def example(name: str) -> Layout:
    return job(examples()[name].read_text(encoding="utf-8")).layout


@cache
def rolled(seed: int) -> Layout | None:
    raw = seeded_raw(seed)
    return None if raw is None else lay_out(design_of(raw))


@cache
def layouts() -> tuple[Layout, ...]:
    """The examples, and the rolled designs that are sound."""
    made = [example(name) for name in examples()]
    return (*made, *(one for one in map(rolled, SEEDS) if one))


def words(figure: Figure) -> list[str]:
    return [mark.words for mark in figure.marks if isinstance(mark, Text)]


def assert_legible(figure: Figure) -> None:
    """No text overlaps another, stands on anything cut, or is crossed by a line or a dot."""
    texts = [mark for mark in figure.marks if isinstance(mark, Text)]
    boxes = [text_box(text) for text in texts]
    for (one, a), (two, b) in combinations(zip(texts, boxes, strict=True), 2):
        assert not a.overlaps(b), (one.words, two.words)
    plain = [
        box(b.left, b.low if DESCENDING & set(t.words) else t.at[1], b.right, b.high).buffer(-0.02)
        for t, b in zip(texts, boxes, strict=True)
    ]
    tree = STRtree(plain)
    for shape in _in_the_way(figure):
        hit = [texts[n].words for n in tree.query(shape, predicate="intersects")]
        assert not hit, hit


def _in_the_way(figure: Figure) -> list[BaseGeometry]:
    """Cut things, lines and dots, less what a white area drawn later hides."""
    found: list[BaseGeometry] = []
    for mark in figure.marks:
        if isinstance(mark, Fill) and mark.colour == PAPER:
            found = [shape.difference(mark.shape) for shape in found]
        elif isinstance(mark, Fill) and mark.layer == "cut":
            found.append(mark.shape)
        if isinstance(mark, Line | Leader) and getattr(mark, "colour", "") != PAPER:
            found.append(LineString(mark.points).buffer(mark.weight / 2))
    leaders = [mark for mark in figure.marks if isinstance(mark, Leader)]
    dots = [mark for mark in simple(leaders) if isinstance(mark, Circle)]
    found += [LineString((d.centre, d.centre)).buffer(d.radius) for d in dots]
    return found
