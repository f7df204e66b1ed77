"""The map on a paper of its own, with its title, scale and remark."""

from collections.abc import Iterator

from geometry.layout.lay import Layout
from geometry.survey.asdug import AreaDug
from viz.drawing.alone import alone
from viz.drawing.figure import Figure, figure
from viz.drawing.fonts import wrap
from viz.drawing.marks import Mark, Text
from viz.drawing.page import Drawing
from viz.drawing.scale import Scale
from viz.figures.survey.map import survey_map
from viz.style.text import HEAD, PITCH, SMALLEST

_ABOVE = 3.0


def map_alone(layout: Layout, dug: AreaDug, scale: Scale, text: float = SMALLEST) -> Drawing:
    """Return the map of one floor as a drawing; text: height of capitals, mm."""
    made = survey_map(layout, dug, scale, text)
    headed = figure(made.name, made.title, (*made.marks, *_head(layout, made, text)), scale)
    return alone(headed)


def _head(layout: Layout, made: Figure, text: float) -> Iterator[Mark]:
    """Yield title, project, scale and remark over the map, the title highest."""
    scale = f"Scale {made.scale.name}" if made.scale else ""
    lines = [layout.design.project.name, scale, *wrap(made.remark, made.box.width, text)]
    left, y = made.box.left, made.box.high + _ABOVE
    for words in reversed(lines):
        yield Text((left, y), words, text, layer="title")
        y += PITCH * text
    yield Text((left, y + 0.6), made.title, HEAD, bold=True, layer="title")
