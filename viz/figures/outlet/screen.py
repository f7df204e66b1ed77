"""The outlet to daylight for a wide and for a narrow screen, at the greatest scale that fits."""

from collections.abc import Iterator
from dataclasses import replace

from geometry.layout.drain import DrainLayout
from geometry.layout.lay import Layout
from geometry.units import show_level
from geometry.water.daylight import DaylightRun, daylight_runs
from geometry.water.outlets import show_far
from viz.drawing.figure import Figure, extent, figure, moved
from viz.drawing.marks import Mark
from viz.drawing.scale import Scale
from viz.figures.dimensions import Chain, across
from viz.figures.outlet.figures import station_rows
from viz.figures.outlet.labels import Label, Row, cover_marks, labels
from viz.figures.outlet.outlet import outlet_figure, remark
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
from viz.figures.profile.names import Names, names_in_full
from viz.figures.profile.table import place_table
from viz.figures.profile.view import View, taller
from viz.figures.tables.figure import table_figures
from viz.tables.table import Table

# Widths and text heights of the two pictures, mm.
_WIDE, _WIDE_TEXT, _NARROW, _NARROW_TEXT = 290.0, 3.0, 106.0, 2.6
# Scales tried, the largest picture first; a screen needs none of those on a rule.
_SCALES = [
    Scale(f"1:{ratio}", ratio)
    for ratio in (48, 64, 96, 128, 192, 240, 320, 480, 640, 960, 1280, 1920, 2560, 4000)
]
# Height the narrow picture is best read at; from it to where leaders turn, on to the numbers;
# from the house to its levels; between picture and tables; mm.
_HIGH, _TURN, _RISE, _SIDE, _APART = 38.0, 6.0, 4.0, 3.0, 4.0
# Where a rod reading stands there is no room for the elevation.
_ELEVATION = "Invert, elevation"
# Stations whose letters stand beside each other.
_MOST = 16
_MEETS, _OFF, _LOW = 1.7, 0.8, 3.0


def outlet_pictures(layout: Layout) -> list[tuple[Figure, Figure]]:
    """Return every outlet of the drain in view, in words for a wide, by numbers for a narrow one.

    One is left out where the drain lies over the ground from its start.
    """
    drain = layout.drain
    if drain is None:
        return []
    runs = [run for run in daylight_runs(drain) if not run.at_once]
    found = []
    for number, run in enumerate(runs, 1):
        shown = number if len(runs) > 1 else 0
        wide = _wide(layout, drain, run, shown)
        if wide:
            narrow = _narrow(layout, drain, run)
            found.append((wide, replace(narrow, name=wide.name, title=wide.title)))
    return found


def _wide(layout: Layout, drain: DrainLayout, run: DaylightRun, number: int) -> Figure | None:
    made = None
    for scale in _SCALES:
        made = outlet_figure(layout, drain, run, scale, _WIDE_TEXT, widest=_WIDE, number=number)
        if made is None or made.box.width <= _WIDE:
            break
    return made


def _narrow(layout: Layout, drain: DrainLayout, run: DaylightRun) -> Figure:
    """Return the picture with numbers, and under it what they stand for."""
    for scale in _SCALES:
        stage = _stage(layout, drain, run, scale)
        made = [*_picture(stage)]
        if extent(made).width <= _NARROW:
            break
    marks = [*made, *_under(stage, made)]
    told = remark(stage.view.tall)
    return figure("drain-outlet", "Outlet to daylight", marks, scale, told)


def _stage(layout: Layout, drain: DrainLayout, run: DaylightRun, scale: Scale) -> Stage:
    design, plain = layout.design, View(scale.per_metre, 1)
    stage = Stage(run, drain, design.datum, design.project.units, plain, _NARROW_TEXT, True, _MOST)
    low, high = stage.span
    tall = taller((high - low) * scale.per_metre, _HIGH)
    return replace(stage, view=View(scale.per_metre, tall))


def _picture(stage: Stage) -> Iterator[Mark]:
    view = stage.view
    said = _said(stage)
    names = _names(stage, len(said) + 1)
    low, high = (view.y(level) for level in stage.span)
    ends = [view.x(x) for x in (stage.stations[0], stage.stations[-1])]
    blocked = tuple((x - _OFF, x + _OFF) for x in ends)
    turn = max(high + _TURN, names.top)
    within = (view.x(stage.back), view.x(stage.right))
    row = Row(said, turn, turn + _RISE + stage.text, blocked, within, stage.text)
    string = row.top + 2.0
    yield from ground_marks(stage)
    yield from house_marks(stage)
    yield from station_marks(stage, low - _LOW, string + _MEETS)
    yield from pipe_marks(stage)
    yield from end_marks(stage)
    yield from cover_marks(stage)
    yield from row.marks()
    left = view.x(stage.back) - _SIDE
    yield from level_marks(stage, left)
    yield from names.at_left(left)
    words = show_far(stage.run.reach_m, stage.system)
    yield from across([Chain((ends[0], ends[1]), (words,))], string, 1, stage.text)


def _said(stage: Stage) -> tuple[Label, ...]:
    """Return the labels with numbers in the place of their words."""
    said = enumerate(labels(stage), 1)
    return tuple(replace(label, lines=(str(n),), bold=True) for n, label in said)


def _levels(stage: Stage) -> list[tuple[str, float]]:
    """Return the house's levels that are in the picture, the lowest first."""
    area = stage.drain.area
    found = [
        ("Underside of footing", area.footing_bottom),
        ("Top of footing", area.tof),
        ("Finished floor", area.finished_floor),
    ]
    low, high = stage.span
    return sorted((one for one in found if low <= one[1] <= high), key=lambda one: one[1])


def _names(stage: Stage, first: int) -> Names:
    shown = [NamedLevel((str(n),), z, 0) for n, (_, z) in enumerate(_levels(stage), first)]
    return names_in_full(shown, stage.view, stage.text)


def _under(stage: Stage, above: list[Mark]) -> Iterator[Mark]:
    """Yield the stations' figures and the key of the numbers, under the picture."""
    room = extent(above)
    left, low = room.left, stage.view.y(stage.span[0])
    xs = [stage.view.x(x) for x in stage.stations]
    laser = stage.datum.instrument is not None
    rows = [row for row in station_rows(stage, True) if not (laser and row.heading == _ELEVATION)]
    table = [*place_table(rows, xs, low - _LOW, left, _NARROW, stage.text)]
    yield from table
    levels = [(name, show_level(z, stage.system)) for name, z in _levels(stage)]
    said = [*(", ".join(label.lines) for label in labels(stage)), *map(" ".join, levels)]
    cells = tuple((str(n), words) for n, words in enumerate(said, 1))
    (key,) = table_figures("key", "", Table(("", "In the picture"), cells), stage.text, _NARROW)
    low = min(extent(table).low, room.low) - _APART
    yield from moved(key.marks, left - key.box.left, low - key.box.high)
