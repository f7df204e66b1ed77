"""The outlet to daylight from the footing to its open end, with every station's figures."""

from collections.abc import Iterator, Sequence
from dataclasses import replace

from geometry.layout.drain import DrainLayout
from geometry.layout.lay import Layout
from geometry.water.daylight import DaylightRun
from geometry.water.outlets import show_far
from viz.drawing.figure import Figure, extent, figure
from viz.drawing.marks import Mark
from viz.drawing.scale import Scale
from viz.figures.dimensions import Chain, across
from viz.figures.outlet.figures import station_rows
from viz.figures.outlet.labels import Row, cover_marks, labels
from viz.figures.outlet.picture import (
    end_marks,
    ground_marks,
    house_marks,
    level_marks,
    pipe_marks,
    station_marks,
)
from viz.figures.outlet.stage import Stage
from viz.figures.profile.levels import NamedLevel
from viz.figures.profile.names import Names, names_with_figures
from viz.figures.profile.rows import band
from viz.figures.profile.table import place_table
from viz.figures.profile.view import View, taller

# The height a picture is best read at, mm, and where there is little room for it.
_GOOD_HEIGHT, _LOW_HEIGHT = 55.0, 38.0
# From the picture to where leaders turn, from there to the words; from the house to its levels.
_TURN, _RISE, _SIDE = 9.0, 5.0, 3.0
# Words keep this far off the uprights of the first and the last station, and go so far beyond
# the ground's end, mm.
_OFF, _PAST = 0.8, 6.0
# Where the string's own lines begin over its edge, mm: uprights reach up to them.
_MEETS = 1.7


def outlet_figure(
    layout: Layout,
    drain: DrainLayout,
    run: DaylightRun,
    scale: Scale,
    text: float,
    tall: int | None = None,
    compact: bool = False,
    widest: float = float("inf"),
    number: int = 0,
) -> Figure | None:
    """Return the drawing of an outlet to daylight; None where the drain lies over the ground.

    scale: of distances. tall: how many times larger heights are drawn, chosen for a picture that
    is well read unless given. text: height of capitals, mm. compact: a lower picture with fewer
    labels. widest: the width in mm the figure tries to stay in: stations too many for columns get
    a table. number: of the outlet, where the house has several.
    """
    if run.at_once:
        return None
    view = View(scale.per_metre, tall or 1)
    design = layout.design
    stage = Stage(run, drain, design.datum, design.project.units, view, text, compact)
    if tall is None:
        low, high = stage.span
        good = _LOW_HEIGHT if compact else _GOOD_HEIGHT
        tall = taller((high - low) * scale.per_metre, good)
        stage = replace(stage, view=View(scale.per_metre, tall))
    name, title = "drain-outlet", "Outlet to daylight"
    if number:
        name, title = f"{name}-{number}", f"{title} {number}, {drain.title}"
    return figure(name, title, _marks(stage, widest), scale, remark(tall))


def remark(tall: int) -> str:
    """Return what is told under the picture; tall: how many times larger heights are drawn."""
    times = f"Heights drawn {tall} times larger than distances."
    heights = times if tall > 1 else "Heights and distances drawn at one scale."
    return f"{heights} Ground straight between the points given; not known beyond the last."


def _marks(stage: Stage, widest: float) -> tuple[Mark, ...]:
    names = _names(stage)
    low, high = (stage.view.y(level) for level in stage.span)
    foot = min(low - 3.0, names.low - 0.6 * stage.text)
    row = _row(stage, high, names)
    left = stage.view.x(stage.back) - _SIDE
    drawn = (*_picture(stage, row, foot), *level_marks(stage, left), *names.at_left(left))
    columns = (*drawn, *_band(stage, foot))
    if extent(columns).width <= widest or extent(drawn).width > widest:
        return columns
    return (*drawn, *_table(stage, foot, drawn, widest))


def _picture(stage: Stage, row: Row, foot: float) -> Iterator[Mark]:
    string = row.top + 2.0
    yield from ground_marks(stage)
    yield from house_marks(stage)
    yield from station_marks(stage, foot, string + _MEETS)
    yield from pipe_marks(stage)
    yield from end_marks(stage)
    yield from cover_marks(stage)
    yield from row.marks()
    stops = (stage.view.x(0.0), stage.view.x(stage.run.reach_m))
    words = show_far(stage.run.reach_m, stage.system)
    yield from across([Chain(stops, (words,))], string, 1, stage.text)


def _row(stage: Stage, high: float, names: Names) -> Row:
    turn = max(high + _TURN, names.top)
    ends = [stage.view.x(x) for x in (stage.stations[0], stage.stations[-1])]
    blocked = tuple((x - _OFF, x + _OFF) for x in ends)
    within = (stage.view.x(stage.back), stage.view.x(stage.right) + _PAST)
    return Row(labels(stage), turn, turn + _RISE + stage.text, blocked, within, stage.text)


def _names(stage: Stage) -> Names:
    area = stage.drain.area
    found = {
        "underside of footing": area.footing_bottom,
        "top of footing": area.tof,
        "finished floor": area.finished_floor,
    }
    low, high = stage.span
    levels = [NamedLevel((n,), z, 0) for n, z in found.items() if low <= z <= high]
    levels.sort(key=lambda one: one.level)
    return names_with_figures(levels, stage.view, stage.system, stage.text)


def _xs(stage: Stage) -> list[float]:
    return [stage.view.x(x) for x in stage.stations]


def _band(stage: Stage, foot: float) -> Iterator[Mark]:
    left = stage.view.x(stage.back)
    return band(station_rows(stage), _xs(stage), foot, left, stage.text)


def _table(stage: Stage, foot: float, drawn: Sequence[Mark], widest: float) -> Iterator[Mark]:
    left = extent(drawn).left
    return place_table(
        station_rows(stage, lettered=True), _xs(stage), foot, left, widest, stage.text
    )
