"""The wall in outline with its fill, and beside it the pressure drained and flooded.

Heights are to scale, pressures are to a scale of their own, the same in both diagrams.
"""

from collections.abc import Iterator

from geometry.layout.lay import Layout
from geometry.materials.catalogue import SOILS
from geometry.units import System
from geometry.water.wall import Push, WallRun, highest, wall_runs
from viz.drawing.figure import Figure, extent, figure, moved
from viz.drawing.fonts import text_width, wrap
from viz.drawing.marks import Mark, Text
from viz.drawing.scale import Scale
from viz.figures.pressure.diagram import Place, diagram_marks, reach
from viz.figures.pressure.outline import outline_marks
from viz.figures.pressure.words import below, heads, notes
from viz.style.text import PITCH

TITLE = "Push of the fill on the wall"
REMARK = "Informs; the wall's design belongs to the code's tables or an engineer."
# The greatest pressure on paper; between the parts; the least width of the words under them, mm.
_WIDEST, _APART, _LEAST_WORDS = 30.0, 9.0, 110.0
# Where the diagrams stand under the wall: the words' least width under all, their most beside.
_LEAST_NARROW, _NARROWEST = 100.0, 46.0


def pressure_figure(
    layout: Layout, scale: Scale, text: float, stacked: bool = False
) -> Figure | None:
    """Return the pressure on the wall with the most fill, at rest, drained and flooded to grade.

    None where no outer wall has fill or the soil is not known. scale: of the heights. text:
    height of capitals, mm. stacked: the diagrams stand under the wall, for a narrow place.
    """
    run = highest(wall_runs(layout))
    push = at_rest_push(run) if run else None
    if run is None or push is None:
        return None
    marks = [*_picture(layout, run, push, scale, text, stacked)]
    least = _LEAST_NARROW if stacked else _LEAST_WORDS
    marks += _words_under(layout, run, push, marks, text, least)
    return figure("pressure", TITLE, marks, scale, REMARK)


def at_rest_push(run: WallRun) -> Push | None:
    """Return the push on a wall that is held at top and foot; None for unknown soil."""
    return next((push for push in run.pushes if push.case == "at rest"), None)


def _picture(
    layout: Layout, run: WallRun, push: Push, scale: Scale, text: float, stacked: bool
) -> Iterator[Mark]:
    system = layout.design.project.units
    wall = [*outline_marks(layout, run, scale.per_metre, system, text)]
    yield from wall
    x, around = extent(wall).right + _APART, extent(wall)
    if stacked:
        x = around.left
    drawn = [*_diagrams(run, push, scale, text, (x, system, _NARROWEST if stacked else 1e3))]
    down = around.low - _APART - extent(drawn).high if stacked else 0.0
    yield from moved(drawn, 0.0, down)


def _diagrams(
    run: WallRun, push: Push, scale: Scale, text: float, at: tuple[float, System, float]
) -> Iterator[Mark]:
    """Yield both diagrams with their words; at: left edge, system, widest words, mm."""
    x, system, widest = at
    wide = _WIDEST / max(push.flooded.total_pa)
    pairs = (push.drained, push.drained_thrust), (push.flooded, push.flooded_thrust)
    for head, (diagram, thrust) in zip(heads(run, system), pairs, strict=True):
        place = Place(x, scale.per_metre, wide)
        yield from diagram_marks(diagram, thrust, place, text)
        over = wrap(head, widest, text, bold=True)
        lines = [
            line for said in below(diagram, thrust, system) for line in wrap(said, widest, text)
        ]
        top = run.fill_to_foot_m * scale.per_metre + 1.2 * text
        for number, words in enumerate(reversed(over)):
            yield Text((x, top + number * PITCH * text), words, text, bold=True, layer="labels")
        for number, words in enumerate(lines, start=1):
            at_line = (x, -text - number * PITCH * text)
            yield Text(at_line, words, text, layer="labels")
        width = max(*(text_width(w, text, bold=True) for w in over),
                    *(text_width(w, text) for w in lines))  # fmt: skip
        x += max(width, reach(diagram, place, text)) + _APART


def _words_under(
    layout: Layout, run: WallRun, push: Push, marks: list[Mark], text: float, least: float
) -> Iterator[Text]:
    """Yield the notes under everything drawn."""
    room, system = extent(marks), layout.design.project.units
    y = room.low - _APART / 2
    for note in notes(push, SOILS[run.soil], system):
        for line in wrap(note, max(room.width, least), text):
            y -= PITCH * text
            yield Text((room.left, y), line, text, layer="notes")
        y -= 0.5 * text
