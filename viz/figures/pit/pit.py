"""The figure of the pit over the storm: level against time, rain above, the levels that matter."""

from collections.abc import Iterator
from dataclasses import dataclass, replace

from geometry.layout.lay import Layout
from geometry.measures import show_time
from geometry.units import System, show_length, show_level
from geometry.water.pit import TOF, PitStorm
from geometry.water.study import study
from viz.drawing.figure import Figure, figure
from viz.drawing.fonts import text_width
from viz.drawing.marks import Line, Mark, Text
from viz.drawing.place import Item, spread
from viz.figures.pit.series import dead, rain, working
from viz.figures.pit.view import View, view_of
from viz.figures.pit.words import LABELS, key, rain_words
from viz.style.lines import CHAIN, CUT, DATUM, HATCH, SEEN
from viz.style.text import DESCENT, SMALLEST

NAME = "pit"
TITLE = "Water in the pit over the storm"
_SWITCH_DASH = (3.0, 1.5)
# Levels nearer than this on paper, mm, share a line and a label.
_TOGETHER = 0.6

_Named = tuple[str, float, float, tuple[float, ...]]


@dataclass(frozen=True)
class _Level:
    """A line across the chart: the level's names together, its place, how it is drawn."""

    words: str
    y: float
    weight: float
    dash: tuple[float, ...] = ()


def pit_figure(layout: Layout, width: float, height: float, text: float) -> Figure | None:
    """Return the figure, at most `width` x `height` mm; None where no inflow or pit is known.

    text: height of capitals, mm; ValueError where it is too small to read.
    """
    if text < SMALLEST:
        raise ValueError(f"text of {text} mm is smaller than {SMALLEST} mm")
    pit = study(layout).pit
    if pit is None:
        return None
    system = layout.design.project.units
    top = (0.16 * height + 2 * text) if pit.storm else 0.0
    view = view_of(pit, width, height - top - 9 * text)
    levels = _together(_names(pit, system), view)
    # Labels stand right of the chart; the first hour's name stands out to its left.
    room = max(text_width(level.words, text) for level in levels) + 4.5 * text
    view = replace(view, width=width - room - text_width("0 h", text))
    marks = [
        *working(pit, view),
        *_levels(levels, view, text),
        *dead(pit, view),
        *_frame(view, text),
        *key(pit, text),
    ]
    if pit.storm:
        marks += [
            *rain(pit.storm, view, view.height + 2 * text, top - 2 * text),
            *rain_words(pit, view, top, text, system),
        ]
    return figure(NAME, TITLE, marks, remark=_remark(pit, layout))


def _names(pit: PitStorm, system: System) -> list[_Named]:
    """Return every level to draw: its words, the level, and its line."""
    found: list[_Named] = [
        (name, level, DATUM, CHAIN) if name == TOF else (name, level, SEEN, ())
        for name, level in ((r.mark.name, r.mark.level_m) for r in pit.reached)
    ]
    switches = (("pump on", pit.pit.pump_on), ("pump off", pit.pit.pump_off),
                ("alarm", pit.pit.alarm))  # fmt: skip
    found += [(name, z, SEEN, _SWITCH_DASH) for name, z in switches if z is not None]
    found.append(("pit bottom", pit.pit.floor, SEEN, ()))
    tof = pit.pit.area.tof
    return [(f"{n}  {show_level(z - tof, system)}", z, w, d) for n, z, w, d in found]


def _together(names: list[_Named], view: View) -> list[_Level]:
    """Return the levels from the lowest up; those on one line of paper under one label."""
    levels: list[_Level] = []
    for words, z, weight, dash in sorted(names, key=lambda row: row[1]):
        y = view.y(z)
        if not -1e-6 <= y <= view.height + 1e-6:
            continue
        if levels and y - levels[-1].y < _TOGETHER:
            below = levels[-1]
            name = words.rsplit("  ", 1)[0]
            joined = f"{name}, {below.words}"
            heavier = (weight, dash) if weight > below.weight else (below.weight, below.dash)
            levels[-1] = _Level(joined, below.y, *heavier)
        else:
            levels.append(_Level(words, y, weight, dash))
    return levels


def _levels(levels: list[_Level], view: View, text: float) -> Iterator[Mark]:
    """Yield the lines and, right of the chart, their labels kept apart, with bent lines to them."""
    high = view.height + 2 * text
    items = [Item(level.y, text * (1 + DESCENT)) for level in levels]
    middles = spread(items, -1.5 * text, high, 0.35 * text)
    for level, middle in zip(levels, middles, strict=True):
        right = view.width
        yield Line(((0.0, level.y), (right, level.y)), min(level.weight, SEEN), dash=level.dash,
                   layer="levels")  # fmt: skip
        bend = ((right, level.y), (right + text, level.y), (right + 3 * text, middle),
                (right + 4 * text, middle))  # fmt: skip
        yield Line(bend, HATCH, layer="leaders")
        yield Text((right + 4.5 * text, middle - text / 2), level.words, text, layer=LABELS)


def _frame(view: View, text: float) -> Iterator[Mark]:
    """Yield the chart's edges and the hours under it."""
    corners = ((0.0, view.height), (0.0, 0.0), (view.width, 0.0))
    yield Line(corners, CUT, layer="frame")
    for hours in view.ticks():
        x = view.x(hours)
        yield Line(((x, 0.0), (x, -0.8 * text)), SEEN, layer="frame")
        yield Text((x, -2.2 * text), f"{hours:g} h", text, anchor="middle", layer=LABELS)


def _remark(pit: PitStorm, layout: Layout) -> str:
    storm, water = pit.storm, layout.design.water
    if storm is None:
        return "The ground's water alone, for a day."
    system = layout.design.project.units
    return (
        f"Storm {water.storm}: {show_length(storm.depth_m, system)} in "
        f"{show_time(storm.duration_s)}. Pit and drain stone hold the water."
    )
