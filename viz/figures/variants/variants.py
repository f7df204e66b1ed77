"""One detail of several designs at one scale: numbers of one key, and the levels that differ.

A part that is alike has one number in all pictures; one that differs has a number of its own in
each. Where a level differs from the first design's, the first's is drawn as a dashed line.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from itertools import count
from typing import TypeAlias

from geometry.units import System, show_length, show_level
from viz.drawing.figure import Figure, extent, figure, moved
from viz.drawing.fonts import text_width, wrap
from viz.drawing.marks import Line, Mark, Text
from viz.drawing.page import Box
from viz.drawing.scale import SCALES, Scale
from viz.figures.section.blocks import Lettering
from viz.figures.section.cut import area_marks, bar_dots, edge_marks
from viz.figures.section.key import key_marks
from viz.figures.section.levels import datum_line
from viz.figures.section.placing import labels_of
from viz.figures.section.setting import Picture, Setting, set_at
from viz.figures.section.strings import Strings
from viz.style.lines import INK, PAPER
from viz.style.text import PITCH

TITLE = "Footing and floor, side by side"
TOLD = "A number that not every picture has is a part that differs."
TOLD_LEVELS = "Dashed: where the first design has a level that moves. Chain line: top of footing."
_APART, _UNDER = 8.0, 6.0
_GHOST, _HALO, _DASH = 0.35, 1.1, (2.4, 1.4)
_SAME_M = 5e-4
_IN_THE_ROOM = ("Finished floor", "Foam top", "Subgrade", "Pad ")
# The highest a picture may be, in its width.
_HIGHEST = 1.1


@dataclass(frozen=True)
class Shown:
    """A design's detail under its name; all with windows of one size and one height."""

    name: str
    picture: Picture


def variants_figure(shown: Sequence[Shown], width: float, text: float, across: int = 2) -> Figure:
    """Return the details side by side, no wider than `width` mm where the smallest scale allows.

    across: how many stand in one row. Raises BedcourseError where a picture shows nothing.
    """
    system, columns = shown[0].picture.system, min(across, len(shown))
    room = (width - _APART * (columns - 1)) / columns
    scale = _greatest(shown, system, room, text)
    panels = _panels(shown, scale, text)
    wide = max(extent(marks).width for marks in panels)
    marks: list[Mark] = []
    low = 0.0
    for start in range(0, len(panels), columns):
        row = panels[start : start + columns]
        # All have one window: their pictures' corners stand at one height.
        high, least = (max(extent(m).high for m in row), min(extent(m).low for m in row))
        for place, panel in enumerate(row):
            left = place * (wide + _APART) - extent(panel).left
            marks += moved(panel, left, low - high)
        low -= high - least + _UNDER
    marks += _key(shown, scale, text, marks, width)
    return figure("variants", TITLE, marks, scale, _remark(shown))


def _remark(shown: Sequence[Shown]) -> str:
    return f"{TOLD} {TOLD_LEVELS}" if any(_moved(shown)) else TOLD


def _greatest(shown: Sequence[Shown], system: System, room: float, text: float) -> Scale:
    """Return the greatest scale at which every panel keeps its room; words keep their size."""
    trial = SCALES[system][2]
    panels = _panels(shown, trial, text)
    sizes = [one.picture.size for one in shown]
    beside = max(
        extent(marks).width - wide * trial.per_metre
        for marks, (wide, _) in zip(panels, sizes, strict=True)
    )
    wide, high = max(w for w, _ in sizes), max(h for _, h in sizes)
    fitting = (
        scale
        for scale in SCALES[system]
        if wide * scale.per_metre + beside <= room and high * scale.per_metre <= _HIGHEST * room
    )
    return next(fitting, SCALES[system][6])


def _panels(shown: Sequence[Shown], scale: Scale, text: float) -> list[list[Mark]]:
    settings = _settings(shown, scale, text)
    levels = list(_moved(shown))
    return [
        [*_panel(one, setting, levels, first=place == 0)]
        for place, (one, setting) in enumerate(zip(shown, settings, strict=True))
    ]


def _settings(shown: Sequence[Shown], scale: Scale, text: float) -> list[Setting]:
    """Return the pictures at a scale, lettered by the numbers of one key."""
    bare = [replace(one.picture, levels=(), strings=Strings()) for one in shown]
    plain = [set_at(picture, scale, text, "keyed") for picture in bare]
    numbers = count(1)
    keys: dict[str, int] = {}
    for setting in plain:
        for wording in setting.shapes:
            if wording not in keys:
                keys[wording] = next(numbers)
    lettering = Lettering(text, plain[0].lettering.longest, keys)
    return [replace(setting, lettering=lettering) for setting in plain]


def _panel(
    one: Shown, setting: Setting, levels: Sequence[tuple[str, float]], first: bool
) -> Iterator[Mark]:
    """Yield one design's detail under its name, its level of the datum at the height 0."""
    marks = [*_drawn(one, setting, levels, first)]
    box, text = extent(marks), setting.text
    told = _levels(one.picture, levels, first)
    left = setting.view.box.left
    marks += _told(told, Box(left, box.low - 0.5, box.right, box.low - 0.5), text)
    lines = wrap(one.name, box.right - left, text * 1.2, bold=True)
    y = box.high + 2.5 + (len(lines) - 1) * PITCH * text * 1.2
    for words in lines:
        marks.append(Text((left, y), words, text * 1.2, bold=True, layer="labels"))
        y -= PITCH * text * 1.2
    yield from marks


def _drawn(
    one: Shown, setting: Setting, levels: Sequence[tuple[str, float]], first: bool
) -> Iterator[Mark]:
    view = setting.view
    plan, labelled = labels_of(setting)
    yield from area_marks(setting.faces, setting.native)
    yield from datum_line(view, plan, to_pole=False)
    yield from edge_marks(setting.faces, setting.native, view)
    yield from bar_dots(one.picture.bars, view)
    if not first:
        yield from _ghosts(one.picture, levels, setting)
    yield from labelled


def _moved(shown: Sequence[Shown]) -> Iterator[tuple[str, float]]:
    """Yield the named levels that another design has elsewhere, as the first design has them."""
    others = [{m.name: m.level_m for m in one.picture.levels} for one in shown[1:]]
    for mark in shown[0].picture.levels:
        if any(abs(o.get(mark.name, mark.level_m) - mark.level_m) > _SAME_M for o in others):
            yield mark.name, mark.level_m


_Row: TypeAlias = tuple[str, str, str]


def _levels(picture: Picture, levels: Sequence[tuple[str, float]], first: bool) -> tuple[_Row, ...]:
    """Return the levels that differ from the top down: name, level, how far it has moved."""
    before, system = dict(levels), picture.system
    rows = []
    for mark in sorted(picture.levels, key=lambda mark: -mark.level_m):
        if mark.name in before:
            by = mark.level_m - before[mark.name]
            way = "higher" if by > 0 else "lower"
            still = first or abs(by) <= _SAME_M
            moved_by = "" if still else f"{show_length(abs(by), system)} {way}"
            rows.append((mark.name, show_level(mark.level_m, system, 8), moved_by))
    return tuple(rows)


def _told(rows: Sequence[_Row], under: Box, text: float) -> Iterator[Text]:
    """Yield the levels as rows of three columns under a picture, broken where they are too wide."""
    columns = list(zip(*rows, strict=True))
    wide = [max(text_width(w, text, bold=True) for w in column) + 3.0 for column in columns]
    broken = sum(wide) > under.width
    y = under.low
    for name, *figures in rows:
        y -= PITCH * text
        yield Text((under.left, y), name, text, layer="levels")
        x = under.left + (4.0 if broken else wide[0])
        y -= PITCH * text if broken else 0.0
        for place, words in enumerate(figures, start=1):
            if words:
                yield Text((x, y), words, text, bold=place == 2, layer="levels")
            x += wide[place]


def _ghosts(
    picture: Picture, levels: Sequence[tuple[str, float]], setting: Setting
) -> Iterator[Mark]:
    """Yield the first design's levels as dashed lines, on a light edge; the floor's in the room."""
    view = setting.view
    own = {mark.name: mark.level_m for mark in picture.levels}
    walls = [f.shape.bounds[2] for f in setting.faces if f.label.role == "wall"]
    for name, level in levels:
        there = own.get(name, level)
        if abs(there - level) > _SAME_M and view.extent[1] <= level <= view.extent[3]:
            inside = walls and name.startswith(_IN_THE_ROOM)
            (left, y), right = view.at(view.extent[0], level), view.box.right
            ends = ((min(walls) if inside else left, y), (right, y))
            yield Line(ends, _HALO, PAPER, layer="levels")
            yield Line(ends, _GHOST, INK, _DASH, "levels")


def _key(
    shown: Sequence[Shown], scale: Scale, text: float, above: Sequence[Mark], width: float
) -> Iterator[Mark]:
    lettering = _settings(shown, scale, text)[0].lettering
    box = extent(above)
    yield from key_marks(lettering, Box(box.left, box.low, box.right, box.high), width)
