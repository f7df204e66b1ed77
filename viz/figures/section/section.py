"""A section as a figure: the cut to scale, labels, levels and dimensions, all in free places."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field, replace
from functools import cached_property, partial
from itertools import chain as joined
from typing import Literal

from shapely import LineString, MultiPolygon, STRtree

from geometry.label import Role
from geometry.sections.bars import BarMark
from geometry.sections.face import CutFace
from geometry.units import System, show_length
from viz.drawing.figure import Figure, extent, figure
from viz.drawing.marks import Leader, Mark, Text
from viz.drawing.page import Box
from viz.drawing.scale import Scale
from viz.figures.dimensions import Chain, across, chain, upright, width_upright
from viz.figures.section.anchors import SIDES, Reach, Side, by_wording, reaches, shut_in
from viz.figures.section.anchors import sides as choose_sides
from viz.figures.section.blocks import Lettering
from viz.figures.section.cut import (
    Floats,
    area_marks,
    bar_dots,
    built,
    edge_marks,
    float_marks,
    native_ground,
    step_lines,
    thin_parts,
)
from viz.figures.section.flags import Site, flag_marks, place_flags
from viz.figures.section.key import KEY_GAP, key_marks
from viz.figures.section.labels import GAP, KEY_RADIUS, label_marks, lane_is_free
from viz.figures.section.layout import GUTTER, LEVEL_TEXT_AT, Layout, layout
from viz.figures.section.level_mark import LevelMark
from viz.figures.section.levels import datum_line, level_marks, levels_width, seen_levels
from viz.figures.section.strings import Strings
from viz.figures.section.view import GROUND_BAND, PaperFace, View, Window, extent_of

# How labels are written: in words, in words broken into short lines, or as numbers of a key.
Labelling = Literal["words", "narrow", "keyed"]
_LONGEST: Mapping[Labelling, float] = {"words": 21.0, "narrow": 13.0, "keyed": 21.0}

# Parts under the open room of a house, which may be labelled from above: together or not at all.
# Piers come first: they have less choice of place than layers.
_ABOVE: tuple[tuple[Role, ...], ...] = (
    ("pad", "column"),
    ("base", "blinding", "retarder", "insulation", "slab", "fill"),
)
# Flags may stand this much higher than the picture, mm.
_OVER = 60.0
_DIMENSION_STEP = 8


@dataclass(frozen=True)
class Picture:
    """What a section shows, before it has a scale.

    words: wording by part id, its first line bold; parts of one wording get one label.
    bars: continuous bars the cut crosses. steps: distances at which the plane steps.
    window: (s0, z0, s1, z1) metres, to crop. note: a sentence under the title.
    """

    name: str
    title: str
    faces: tuple[CutFace, ...]
    levels: tuple[LevelMark, ...]
    words: Mapping[str, str]
    system: System
    bars: tuple[BarMark, ...] = ()
    strings: Strings = field(default_factory=Strings)
    steps: tuple[float, ...] = ()
    floats: Floats | None = None
    note: str = ""
    window: Window | None = None

    @property
    def size(self) -> tuple[float, float]:
        """Width and height of what is shown, metres. Raises BedcourseError if nothing is."""
        left, low, right, high = extent_of(self.faces, self.window)
        return right - left, high - low

    def beside(self, text: float) -> float:
        """Return the width that the levels take beside the picture at any scale, mm."""
        levels = levels_width(self.levels, self.system, text)
        return LEVEL_TEXT_AT + levels + 2 * GUTTER


@dataclass(frozen=True)
class _Setting:
    """A picture at a scale: its faces on paper, and how its labels are lettered."""

    picture: Picture
    view: View
    faces: tuple[PaperFace, ...]
    shapes: Mapping[str, MultiPolygon]
    lettering: Lettering
    left: tuple[Chain, ...]
    right: tuple[Chain, ...]

    @property
    def text(self) -> float:
        """Text height, mm."""
        return self.lettering.text

    @cached_property
    def reached(self) -> dict[str, Reach]:
        """What leaders to either side would cost, by wording."""
        return reaches(self.shapes, (self.view.box.left, self.view.box.right))

    @cached_property
    def native(self) -> MultiPolygon:
        """Undisturbed ground shown along the dig."""
        return native_ground(self.faces, self.view)

    def block_height(self, wording: str) -> float:
        """Height of a label with the gap to the next."""
        if self.lettering.keys:
            return 2 * KEY_RADIUS * self.text + GAP
        return self.lettering.block(wording).height(self.text) + GAP


def section_figure(
    picture: Picture,
    scale: Scale,
    text: float,
    labelling: Labelling = "words",
    widest: float = 0.0,
) -> Figure:
    """Draw a cut to scale with all that explains it. Raises BedcourseError if it shows nothing.

    widest: how wide the key of a keyed section may be where the picture is narrower, mm.
    """
    setting = _setting(picture, scale, text, labelling)
    plan, labelled = _labelled(setting)
    drawn = (
        *area_marks(setting.faces, setting.native),
        *_datum(labelled, setting, plan),
        *edge_marks(setting.faces, setting.native, setting.view),
        *bar_dots(picture.bars, setting.view),
        *step_lines(picture.steps, setting.view),
        *float_marks(picture.floats, setting.view),
        *labelled,
        *_dimensions(setting, labelled),
    )
    levels = tuple(level_marks(picture.levels, setting.view, plan, picture.system))
    key = _key(setting, drawn, levels, widest)
    marks = (*drawn, *levels, *key)
    return figure(picture.name, picture.title, marks, scale, _remark(setting))


def _key(
    setting: _Setting, drawn: Sequence[Mark], levels: Sequence[Mark], widest: float
) -> tuple[Mark, ...]:
    """Return the key of numbers, if there is one: under everything, or under the picture alone.

    Beside a tall column of levels the picture leaves room under it; the lower figure is taken.
    """
    if not setting.lettering.keys:
        return ()
    whole, picture = extent([*drawn, *levels]), extent(drawn)
    under = tuple(key_marks(setting.lettering, whole, max(whole.width, widest)))
    if not levels:
        return under
    beside = extent(levels).left - KEY_GAP - picture.left
    within = tuple(key_marks(setting.lettering, picture, beside))
    return min(under, within, key=lambda key: -extent([*drawn, *levels, *key]).low)


def _setting(picture: Picture, scale: Scale, text: float, labelling: Labelling) -> _Setting:
    view = _view(picture, scale)
    faces = view.seen(picture.faces)
    shapes = by_wording([(f.label.part, f.shape) for f in faces], picture.words)
    keys = {w: n for n, w in enumerate(shapes, start=1)} if labelling == "keyed" else {}
    lettering = Lettering(text, _LONGEST[labelling], keys)
    level = partial(_level, view)
    show = partial(show_length, system=picture.system, denominator=_DIMENSION_STEP)
    left, right = (
        tuple(c for c in (chain(s, level, show) for s in stops) if c)
        for stops in (picture.strings.left, picture.strings.right)
    )
    return _Setting(picture, view, faces, shapes, lettering, left, right)


def _level(view: View, level: float) -> float:
    return view.at(0.0, level)[1]


def _view(picture: Picture, scale: Scale) -> View:
    """Return the view with its corner at the origin; a whole cut has a band of ground round it."""
    extent = extent_of(picture.faces, picture.window)
    dug = picture.window is None and any(f.label.role == "excavation" for f in picture.faces)
    band = GROUND_BAND / scale.per_metre if dug else 0.0
    grown = (extent[0] - band, extent[1] - band, extent[2] + band, extent[3])
    return View(grown, (0.0, 0.0), scale, picture.window is not None)


def _labelled(setting: _Setting) -> tuple[Layout, tuple[Mark, ...]]:
    """Return layout and labels: floors labelled from above if there is room, else aside."""
    lifted = _lifted(setting)
    plan, aside = _aside(setting, lifted)
    if not lifted:
        return plan, aside
    above = _flags(setting, lifted, aside)
    if above is None:
        return _aside(setting, ())
    return plan, (*aside, *above)


def _lifted(setting: _Setting) -> tuple[str, ...]:
    """Return the wordings that want a flag: leaders to a side would cross other work."""
    groups = _grouped(setting, tuple(setting.shapes))
    reached = setting.reached
    return tuple(
        wording
        for group in groups
        if any(shut_in(reached[wording], setting.view.box.width) for wording in group)
        for wording in group
    )


def _grouped(setting: _Setting, wordings: Sequence[str]) -> list[tuple[str, ...]]:
    """Return the wordings of each group of roles."""
    words = setting.picture.words
    roles = {words.get(f.label.part, "").strip(): f.label.role for f in setting.faces}
    return [tuple(w for w in wordings if roles.get(w) in group) for group in _ABOVE]


def _aside(setting: _Setting, lifted: Sequence[str]) -> tuple[Layout, tuple[Mark, ...]]:
    """Return layout and labels of all that is not lifted, in columns beside the picture."""
    shapes = {w: s for w, s in setting.shapes.items() if w not in lifted}
    heights = {w: setting.block_height(w) for w in shapes}
    room = max(1.2 * setting.view.box.height, 0.6 * sum(heights.values()))
    reached = {w: setting.reached[w] for w in shapes}
    sides = choose_sides(reached, setting.view.box.width, heights, room)
    columns = tuple(_column(setting, [w for w in shapes if sides[w] == s]) for s in SIDES)
    strings = tuple(width_upright(c, setting.text) for c in (setting.left, setting.right))
    levels = levels_width(_seen(setting), setting.picture.system, setting.text)
    plan = layout(
        setting.view.box, (strings[0], strings[1]), (columns[0], columns[1]), levels, setting.text
    )
    kept: dict[Side, list[float]] = {
        side: [stop for c in chains for stop in c.stops] + _datum_height(setting)
        for side, chains in zip(SIDES, (setting.left, setting.right), strict=True)
    }
    datum = next(iter(_datum_height(setting)), None)
    return plan, label_marks(shapes, sides, setting.lettering, plan, kept, datum)


def _seen(setting: _Setting) -> tuple[LevelMark, ...]:
    return seen_levels(setting.picture.levels, setting.view)


def _datum_height(setting: _Setting) -> list[float]:
    view = setting.view
    return [view.at(0.0, 0.0)[1]] if view.extent[1] <= 0 <= view.extent[3] else []


def _column(setting: _Setting, wordings: Sequence[str]) -> Box:
    """Return a column as wide and as high as its labels."""
    if setting.lettering.keys:
        wide = 2 * KEY_RADIUS * setting.text if wordings else 0.0
    else:
        blocks = [setting.lettering.block(w) for w in wordings]
        wide = max((b.width(setting.text) for b in blocks), default=0.0)
    return Box(0.0, 0.0, wide, sum(map(setting.block_height, wordings)) + 2 * GAP)


def _flags(
    setting: _Setting, lifted: Sequence[str], aside: Sequence[Mark]
) -> tuple[Mark, ...] | None:
    """Return the labels that stand above the floor, None where they have no room."""
    view = setting.view
    groups = [{w: setting.shapes[w] for w in group} for group in _grouped(setting, lifted) if group]
    datum = LineString((view.at(view.extent[0], 0), view.at(view.extent[2], 0)))
    steps = [LineString(m.points) for m in step_lines(setting.picture.steps, view)]
    things = STRtree([datum, *steps, *(p for f in built(setting.faces) for p in f.shape.geoms)])
    leaders = STRtree([LineString(m.points) for m in aside if isinstance(m, Leader)])
    high = view.box.high + (0.0 if view.cropped else _OVER)
    flags = place_flags(
        groups, Site(replace(view.box, high=high), things, leaders, setting.lettering)
    )
    if flags is None:
        return None
    keyed = bool(setting.lettering.keys)
    return tuple(mark for flag in flags for mark in flag_marks(flag, setting.text, keyed))


def _datum(labelled: Sequence[Mark], setting: _Setting, plan: Layout) -> Iterator[Mark]:
    """Yield the datum line, which crosses the labels to the pole only where no text stands."""
    texts = [mark for mark in labelled if isinstance(mark, Text)]
    free = lane_is_free(texts, plan.right, setting.view.at(0, 0)[1])
    return datum_line(setting.view, plan, free and bool(setting.picture.levels))


def _dimensions(setting: _Setting, labelled: Sequence[Mark]) -> tuple[Mark, ...]:
    """Return the strings: upright ones keep their figures off the leaders that cross them."""
    box, text, view = setting.view.box, setting.text, setting.view
    show = partial(show_length, system=setting.picture.system, denominator=_DIMENSION_STEP)
    below = [
        chain(stops, lambda s: view.at(s, 0.0)[0], show) for stops in setting.picture.strings.below
    ]
    leaders = [m for m in labelled if isinstance(m, Leader) and len(m.points) > 2]
    crossing = [m.points[0][1] for m in leaders] + _datum_height(setting)
    blocked = [(y - 0.6, y + 0.6) for y in crossing]
    return tuple(
        joined(
            across([c for c in below if c], box.low, -1, text, (box.left, box.right)),
            upright(setting.left, box.left, -1, text, blocked),
            upright(setting.right, box.right, 1, text, blocked),
        )
    )


def _remark(setting: _Setting) -> str:
    """Return the picture's own note, and the one on parts too thin to draw true."""
    thin = dict.fromkeys(f.label.name for f in setting.faces if thin_parts(f))
    heavy = f"Shown heavy, not to scale: {', '.join(thin)}." if thin else ""
    return " ".join(filter(None, (setting.picture.note, heavy)))
