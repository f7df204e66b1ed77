"""What the tests of the plan share: designs, and a figure's marks read as shapes."""

from functools import cache
from math import isfinite

import shapely
from shapely import LineString, STRtree

from geometry.layout.lay import Layout, lay_out
from geometry.sections.telling import telling_cuts
from tests.designs import design_of, seeded_raw
from viz.carried import examples
from viz.drawing.expand import simple
from viz.drawing.figure import Figure
from viz.drawing.lettering import text_box
from viz.drawing.marks import Circle, Fill, Leader, Line, Mark, Strokes, Text
from viz.drawing.scale import Scale
from viz.figures.plan.plan import plan_figure
from viz.figures.plan.refs import DetailRef, SectionRef
from viz.job import job

EXAMPLES = tuple(examples())
SCALES = (Scale("1:48", 48), Scale("1:100", 100))
SMALL = Scale("1:400", 400)
FOOT = 0.3048
PLAIN = """
[project]
name = "invented"
[[area]]
name = "hut"
corners = [{corners}]
"""


@cache
def example(name: str) -> Layout:
    return job(examples()[name].read_text(encoding="utf-8")).layout


def plain(*corners: tuple[float, float], more: str = "") -> Layout:
    """A house of one area, corners in feet."""
    said = ", ".join(f'"{x} ft, {y} ft"' for x, y in corners)
    return job(PLAIN.format(corners=said) + more).layout


@cache
def rolled(seed: int) -> Layout | None:
    raw = seeded_raw(seed)
    return None if raw is None else lay_out(design_of(raw))


def drawn(
    layout: Layout,
    scale: Scale = SCALES[0],
    text: float = 3.0,
    refs: tuple[SectionRef, ...] = (),
    details: tuple[DetailRef, ...] = (),
) -> Figure:
    return plan_figure(layout, scale, text, refs, details)


def light(
    layout: Layout,
    scale: Scale = SCALES[1],
    widest: float = 250.0,
    refs: tuple[SectionRef, ...] = (),
    details: tuple[DetailRef, ...] = (),
) -> Figure:
    return plan_figure(layout, scale, 2.5, refs, details, light=True, widest=widest)


def referred(layout: Layout) -> tuple[tuple[SectionRef, ...], tuple[DetailRef, ...]]:
    """The telling cuts of a layout and a detail at its first corner."""
    lines = [cut.line for cut in telling_cuts(layout)]
    refs = [SectionRef((c.start, c.end), str(n), "S-301") for n, c in enumerate(lines, 1)]
    x, y = layout.areas[0].outline.exterior.coords[0][:2]
    return tuple(refs), (DetailRef((x, y), 0.8, "7", "S-401"),)


def texts(figure: Figure) -> list[Text]:
    return [mark for mark in figure.marks if isinstance(mark, Text)]


def words(figure: Figure) -> list[str]:
    return [text.words for text in texts(figure)]


def room(text: Text) -> shapely.Polygon:
    """The room of a text; figures of dimensions have nothing below their baseline."""
    box = text_box(text)
    low = text.at[1] if text.layer == "dimensions" else box.low
    return shapely.box(box.left, low, box.right, box.high)


def of_layer(figure: Figure, layer: str) -> list[Mark]:
    return [mark for mark in figure.marks if mark.layer == layer]


def cut_bounds(figure: Figure) -> tuple[float, ...]:
    shapes = [m.shape for m in of_layer(figure, "cut") if isinstance(m, Fill)]
    return tuple(shapely.union_all(shapes).bounds)


def clashes(figure: Figure) -> list[tuple[str, str]]:
    """Texts that overlap, stand on cut concrete or arrows, or have a line of any kind across."""
    written = texts(figure)
    rooms = [room(text) for text in written]
    tree = STRtree(rooms)
    found = []
    for one, two in tree.query(rooms, "intersects").T:
        if one < two and rooms[one].intersection(rooms[two]).area > 1e-6:
            found.append((written[one].words, written[two].words))
    for mark in figure.marks:
        shape = _solid(mark)
        if shape is not None:
            for number in tree.query(shape, "intersects"):
                found.append((f"{type(mark).__name__} {mark.layer}", written[number].words))
    return found


def _solid(mark: Mark) -> shapely.Geometry | None:
    """What no text may touch: lines and filled shapes; a circle's line, not what it holds."""
    match mark:
        case Line() | Leader():
            return LineString(mark.points)
        case Fill(layer=layer) if layer != "band":
            return mark.shape
        case Circle():
            return shapely.Point(mark.centre).buffer(mark.radius).boundary
        case _:
            return None


def all_finite(figure: Figure) -> bool:
    for mark in simple(figure.marks):
        match mark:
            case Line(points=points):
                values = [v for p in points for v in p]
            case Strokes(lines=lines):
                values = [v for line in lines for p in line for v in p]
            case Text(at=at) | Circle(centre=at):
                values = list(at)
            case Fill(shape=shape):
                values = list(shape.bounds)
        if not all(map(isfinite, values)):
            return False
    return True
