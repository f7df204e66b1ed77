"""The figure of the pit over the storm: level against time, rain above, the levels that matter."""

from collections.abc import Iterator
from dataclasses import replace

from geometry.layout.lay import Layout
from geometry.measures import show_time
from geometry.units import show_length
from geometry.water.pit import PitStorm
from geometry.water.study import study
from viz.drawing.figure import Figure, figure
from viz.drawing.fonts import text_width
from viz.drawing.marks import Line, Mark, Text
from viz.figures.pit import levels as across
from viz.figures.pit.series import dead, rain, working
from viz.figures.pit.view import View, view_of
from viz.figures.pit.words import LABELS, line_key, line_rows, rain_words, rows_height
from viz.figures.watertable import table_of, told_outside
from viz.style.lines import CUT, SEEN
from viz.style.text import SMALLEST

NAME = "pit"
TITLE = "Water in the pit over the storm"
# Height of the hours under the chart with the air below them, in text heights.
_HOURS = 5.2


def pit_figure(
    layout: Layout, width: float, height: float, text: float, keyed: bool = False
) -> Figure | None:
    """Return the figure, at most `width` x `height` mm; None where no inflow or pit is known.

    text: height of capitals, mm; ValueError where it is too small to read. keyed: the levels stand
    as numbers at the chart and in words under it, for a narrow place; the key adds to the height.
    """
    if text < SMALLEST:
        raise ValueError(f"text of {text} mm is smaller than {SMALLEST} mm")
    pit = study(layout).pit
    if pit is None:
        return None
    rows = line_rows(pit, width, text)
    top = (0.16 * height + 2 * text) if pit.storm else 0.0
    over = 1.7 * text if keyed and pit.storm else 0.0
    under = _HOURS * text + rows_height(rows, text)
    view = view_of(pit, width, height - top - over - under)
    named = across.named_levels(pit, layout)
    levels = across.together(named, pit, layout, view)
    # Labels stand right of the chart; the first hour's name stands out to its left.
    room = across.ring_room(text) if keyed else across.words_room(levels, text)
    view = replace(view, width=width - room - text_width("0 h", text))
    marks = [
        *working(pit, view),
        *across.level_lines(levels, view, text, keyed),
        *dead(pit, view),
        *_frame(view, text),
        *line_key(rows, text),
    ]
    if keyed:
        words = across.key_rows(levels, width, text)
        marks += across.level_key(words, -4.0 * text - rows_height(rows, text), text)
    if pit.storm:
        system = layout.design.project.units
        marks += [
            *rain(pit.storm, view, view.height + 2 * text, top - 2 * text),
            *rain_words(pit, view, top, text, system, keyed),
        ]
    return figure(NAME, TITLE, marks, remark=_remark(pit, layout))


def _frame(view: View, text: float) -> Iterator[Mark]:
    """Yield the chart's edges and the hours under it."""
    corners = ((0.0, view.height), (0.0, 0.0), (view.width, 0.0))
    yield Line(corners, CUT, layer="frame")
    for hours in view.ticks(text_width("00.0 h  ", text)):
        x = view.x(hours)
        yield Line(((x, 0.0), (x, -0.8 * text)), SEEN, layer="frame")
        yield Text((x, -2.2 * text), f"{hours:g} h", text, anchor="middle", layer=LABELS)


def _remark(pit: PitStorm, layout: Layout) -> str:
    storm, water, system = pit.storm, layout.design.water, layout.design.project.units
    known = (pit.store.bottom_m, pit.store.spill_m, pit.pit.area.tof)
    beyond = told_outside(table_of(layout), *known, system)
    if storm is None:
        return f"The ground's water alone, for a day. {beyond}".rstrip()
    return (
        f"Storm {water.storm}: {show_length(storm.depth_m, system)} in "
        f"{show_time(storm.duration_s)}. Pit and drain stone hold the water. {beyond}"
    ).rstrip()
