"""What a section shows, and the same at a scale: faces on paper, labels and their letters."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from functools import cached_property, partial
from typing import Literal

from shapely import MultiPolygon

from geometry.sections.bars import BarMark
from geometry.sections.face import CutFace
from geometry.units import System, show_length
from viz.drawing.scale import Scale
from viz.figures.dimensions import Chain, chain
from viz.figures.section.anchors import Reach, by_wording, reaches
from viz.figures.section.blocks import Lettering
from viz.figures.section.cut import Floats, native_ground
from viz.figures.section.labels import GAP, KEY_RADIUS
from viz.figures.section.layout import GUTTER, LEVEL_TEXT_AT
from viz.figures.section.level_mark import LevelMark
from viz.figures.section.levels import levels_width
from viz.figures.section.strings import Strings
from viz.figures.section.view import GROUND_BAND, PaperFace, View, Window, extent_of
from viz.figures.section.watertable import Standing

# How labels are written: in words, in words broken into short lines, or as numbers of a key.
Labelling = Literal["words", "narrow", "keyed"]
_LONGEST: Mapping[Labelling, float] = {"words": 21.0, "narrow": 13.0, "keyed": 21.0}
# Figures of dimensions are rounded to this part of an inch.
_STEP = 8


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
    standing: Standing | None = None
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
class Setting:
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


def set_at(picture: Picture, scale: Scale, text: float, labelling: Labelling) -> Setting:
    """Return a picture at a scale. Raises BedcourseError if it shows nothing."""
    view = _view(picture, scale)
    faces = view.seen(picture.faces)
    shapes = by_wording([(f.label.part, f.shape) for f in faces], picture.words)
    keys = {w: n for n, w in enumerate(shapes, start=1)} if labelling == "keyed" else {}
    lettering = Lettering(text, _LONGEST[labelling], keys)
    level = partial(_level, view)
    show = shown(picture)
    left, right = (
        tuple(c for c in (chain(s, level, show) for s in stops) if c)
        for stops in (picture.strings.left, picture.strings.right)
    )
    return Setting(picture, view, faces, shapes, lettering, left, right)


def _level(view: View, level: float) -> float:
    return view.at(0.0, level)[1]


def _view(picture: Picture, scale: Scale) -> View:
    """Return the view with its corner at the origin; a whole cut has a band of ground round it."""
    extent = extent_of(picture.faces, picture.window)
    dug = picture.window is None and any(f.label.role == "excavation" for f in picture.faces)
    band = GROUND_BAND / scale.per_metre if dug else 0.0
    grown = (extent[0] - band, extent[1] - band, extent[2] + band, extent[3])
    return View(grown, (0.0, 0.0), scale, picture.window is not None)


def shown(picture: Picture) -> Callable[[float], str]:
    """Return how a section words its dimensions."""
    return partial(show_length, system=picture.system, denominator=_STEP)


def datum_height(setting: Setting) -> list[float]:
    """Return the height of the datum on paper, if the view shows it."""
    view = setting.view
    return [view.at(0.0, 0.0)[1]] if view.extent[1] <= 0 <= view.extent[3] else []
