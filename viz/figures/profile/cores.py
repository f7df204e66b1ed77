"""Two upright cores beside the profile: what lies between its levels in footing and in floor."""

from collections.abc import Iterator

from shapely import box

from geometry.layout.areas import AreaLayout
from geometry.materials.catalogue import find
from viz.drawing.expand import outline
from viz.drawing.marks import Fill, Hatch, Line, Mark, Text
from viz.figures.profile.view import View
from viz.style.lines import PAPER, THINNEST_OUTLINED
from viz.style.materials import Look, look


def core_marks(area: AreaLayout, view: View, x: float, wide: float, gap: float) -> Iterator[Mark]:
    """Yield the footing's core from x to the right, and the floor's after a gap; mm."""
    low, high = view.y(area.footing_bottom), view.y(area.tof)
    yield from _block(x, x + wide, low, high, look("footing"))
    left = x + wide + gap
    levels = area.stack.levels
    for layer, bottom, top in zip(area.floor.layers, levels, levels[1:], strict=False):
        row = find(layer.material)
        shown = look(layer.role, row.kind if row else None)
        yield from _block(left, left + wide, view.y(bottom), view.y(top), shown)


def _block(left: float, right: float, low: float, high: float, shown: Look) -> Iterator[Mark]:
    if high - low < THINNEST_OUTLINED:
        middle = (low + high) / 2
        ends = ((left, middle), (right, middle))
        yield Line(ends, shown.thin_mm, PAPER, layer="cut")
        yield Line(ends, shown.thin_mm, shown.ink, shown.dash, layer="cut")
        return
    shape = box(left, low, right, high)
    yield Fill(shape, shown.fill, "cut")
    yield Hatch(shape, shown.hatch, shown.ink, "hatch")
    yield from outline(shape, shown.line_mm, layer="outline")


def core_names(x: float, wide: float, gap: float, y: float, text: float) -> Iterator[Text]:
    """Yield the cores' names with their baseline at y."""
    for number, words in enumerate(("Footing", "Floor")):
        middle = x + wide / 2 + number * (wide + gap)
        yield Text((middle, y), words, text, anchor="middle", layer="labels")
