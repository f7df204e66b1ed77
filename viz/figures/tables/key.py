"""The key of a set: every material of this house, lines and symbols, with their names."""

from collections.abc import Callable, Iterator
from dataclasses import dataclass

import shapely

from geometry.label import Label, Role
from geometry.layout.lay import Layout
from geometry.solids.foundation import Foundation
from viz.drawing.expand import outline
from viz.drawing.figure import Figure
from viz.drawing.marks import Circle, Fill, Hatch, LevelSymbol, Line, Mark
from viz.drawing.page import Box
from viz.figures.plan import dashes
from viz.figures.plan.bubbles import bubble, bubble_radius
from viz.figures.plan.pipes import WATER, head
from viz.figures.plan.refs import SectionRef
from viz.figures.tables.figure import Signs, table_figures
from viz.figures.watertable import COLOUR, DASH, WEIGHT, table_of, water_mark
from viz.style.lines import CHAIN, CUT, DATUM, GROUND, INK, PAPER, QUIET, SEEN
from viz.style.materials import Look, look, look_of
from viz.tables.table import Table
from viz.words import material_name

LAYER = "notes"
# Width of a sign; height of a row with a swatch, and with a line or symbol; air round them. mm.
_SIGN = 18.0
_SWATCH = 9.5
_ROW = 6.5
_AIR = 1.1
_THIN = ("solid", "dashes")
_CALLED: dict[Role, str] = {
    "backfill": "Backfill", "grading": "Finished grade", "excavation": "Undisturbed ground",
    "basin": "Sump basin and lid", "lid": "Sump basin and lid",
}  # fmt: skip

Draw = Callable[[Box], Iterator[Mark]]


@dataclass(frozen=True)
class _Entry:
    name: str
    pattern: str
    draw: Draw
    height: float = _ROW


def key_figure(layout: Layout, foundation: Foundation, text: float, width: float) -> Figure:
    """Return the key as one figure at most `width` mm wide, as high as it comes."""
    (made,) = key_figures(layout, foundation, text, width)
    return made


def key_figures(
    layout: Layout,
    foundation: Foundation,
    text: float,
    width: float,
    height: float = float("inf"),
) -> tuple[Figure, ...]:
    """Return the key in pieces that keep width and height, mm; a sign in each row.

    Every look of the house's materials has its row, so that a black copy tells them apart.
    """
    entries = [*_materials(foundation), *_bars(layout), *_lines(layout), *_symbols(layout, text)]
    table = Table(("Meaning", "Drawn as"), tuple((e.name, e.pattern) for e in entries))
    heights = [entry.height for entry in entries]
    signs = Signs("Sign", _SIGN, heights, lambda number, box: _sign(entries[number], box))
    title = "Key of materials, lines and symbols"
    return table_figures("key", title, table, text, width, height, signs)


def _sign(entry: _Entry, box: Box) -> Iterator[Mark]:
    middle, half = (box.low + box.high) / 2, entry.height / 2 - _AIR
    return entry.draw(Box(box.left, middle - half, box.right, middle + half))


def _materials(foundation: Foundation) -> Iterator[_Entry]:
    """Yield one entry for each look, named after all materials shown so."""
    labels = [s.label for s in (*foundation.solids, foundation.excavation)]
    named: dict[Look, list[str]] = {}
    for label in labels:
        shown = _on_paper(look_of(label))
        names = named.setdefault(shown, [])
        if _name(label) not in names:
            names.append(_name(label))
    for shown, names in named.items():
        draw, tall = (_heavy, _ROW) if shown.hatch in _THIN else (_swatch, _SWATCH)
        yield _Entry("; ".join(names), shown.pattern, _with(draw, shown), tall)


def _on_paper(shown: Look) -> Look:
    """Return a look without its colour in three dimensions, which paper does not show."""
    same = look("wall", "concrete")
    return same if shown.pattern == same.pattern else shown


def _name(label: Label) -> str:
    material = material_name(label.material)
    return f"{_CALLED[label.role]}: {material}" if label.role in _CALLED else material


def _with(draw: Callable[[Look, Box], Iterator[Mark]], shown: Look) -> Draw:
    return lambda box: draw(shown, box)


def _swatch(shown: Look, box: Box) -> Iterator[Mark]:
    area = shapely.box(box.left, box.low, box.right, box.high)
    yield Fill(area, shown.fill, LAYER)
    yield Hatch(area, shown.hatch, shown.ink, LAYER)
    yield from outline(area, shown.line_mm, layer=LAYER)


def _heavy(shown: Look, box: Box) -> Iterator[Mark]:
    return _stroke(shown.thin_mm, shown.solid, shown.dash)(box)


def _stroke(weight: float, colour: str = INK, dash: tuple[float, ...] = ()) -> Draw:
    def draw(box: Box) -> Iterator[Mark]:
        y = (box.low + box.high) / 2
        yield Line(((box.left, y), (box.right, y)), weight, colour, dash, LAYER)

    return draw


def _water(box: Box) -> Iterator[Mark]:
    x, y = _middle(box)
    yield from _stroke(WEIGHT, COLOUR, DASH)(Box(box.left, y - 1.4, box.right, y))
    yield from water_mark((x, y - 0.7))


def _bars(layout: Layout) -> Iterator[_Entry]:
    if any(area.footing.bars.count for area in layout.areas):
        yield _Entry("Footing bar, cut", "black dot", _dot)


def _lines(layout: Layout) -> Iterator[_Entry]:
    yield _Entry("Cut edge of concrete", "heavy line", _stroke(CUT))
    yield _Entry(
        "Edge hidden below", "short dashes", _stroke(dashes.HIDDEN_WEIGHT, dash=dashes.HIDDEN)
    )
    yield _Entry(
        "Top of footing (TOF), the datum", "heavy dash and dot", _stroke(DATUM, dash=CHAIN)
    )
    yield _Entry("Finished grade, ground line", "heaviest line", _stroke(GROUND))
    if table_of(layout).named:
        yield _Entry("Water table, at its highest and its low", "long dashes, triangle", _water)
    if layout.drains:
        pipe = _stroke(dashes.PIPE, WATER, dashes.PIPE_CHAIN)
        yield _Entry("Perforated pipe on the plan", "heavy dash and dot, arrows", pipe)
    if any(layout.leads(drain) for drain in layout.drains):
        yield _Entry("Solid pipe on the plan", "heavy line", _stroke(dashes.SOLID_PIPE, WATER))
    if layout.bleeders:
        through = _stroke(dashes.SOLID_PIPE, WATER, dashes.BLEEDER)
        yield _Entry("Bleeder through the footing on the plan", "short heavy dashes", through)

    yield _Entry(
        "Edge of the dig on the plan",
        "thin dash, two dots",
        _stroke(dashes.THIN, QUIET, dashes.DIG),
    )
    if any(area.area.piers for area in layout.areas):
        grid = _stroke(dashes.THIN, dash=dashes.THIN_CHAIN)
        yield _Entry("Grid line through piers", "thin dash and dot", grid)


def _symbols(layout: Layout, text: float) -> Iterator[_Entry]:
    ref = SectionRef((), "A", "S-3")
    size = bubble_radius([ref], text)

    def section(box: Box) -> Iterator[Mark]:
        return bubble(_middle(box), size, ref, text)

    tall = 2 * (size + _AIR)
    yield _Entry("Section or detail: its name over its sheet", "ring", section, tall)
    yield _Entry("Level; the datum's is filled", "triangle on the level", _levels)
    if any(drain.rise for drain in layout.drains):
        yield _Entry("Way of flow", "arrow head", _arrow)
    if any(drain.drain.cleanouts for drain in layout.drains):
        yield _Entry("Cleanout", "two rings", _cleanout)


def _middle(box: Box) -> tuple[float, float]:
    return (box.left + box.right) / 2, (box.low + box.high) / 2


def _dot(box: Box) -> Iterator[Mark]:
    yield Circle(_middle(box), 0.8, 0.0, fill=INK, layer=LAYER)


def _levels(box: Box) -> Iterator[Mark]:
    x, y = _middle(box)
    for aside, filled in ((-3.0, False), (3.0, True)):
        yield LevelSymbol((x + aside, y - 1.2), 2.6, filled, LAYER)


def _arrow(box: Box) -> Iterator[Mark]:
    yield from _stroke(dashes.PIPE, WATER)(box)
    yield Fill(head(_middle(box), (1.0, 0.0), (3.4, 0.95)), WATER, LAYER)


def _cleanout(box: Box) -> Iterator[Mark]:
    for radius, fill in ((1.7, PAPER), (1.0, None)):
        yield Circle(_middle(box), radius, SEEN, WATER, fill, LAYER)
