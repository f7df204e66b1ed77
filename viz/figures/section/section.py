"""A section as a figure: the cut to scale, labels, levels and dimensions, all in free places."""

from collections.abc import Iterator, Sequence
from itertools import chain as joined

from viz.drawing.figure import Figure, extent, figure
from viz.drawing.marks import Leader, Mark, Text
from viz.drawing.scale import Scale
from viz.figures.dimensions import across, chain, upright
from viz.figures.section.cut import (
    area_marks,
    bar_dots,
    edge_marks,
    float_marks,
    step_lines,
    thin_parts,
)
from viz.figures.section.key import KEY_GAP, key_marks
from viz.figures.section.labels import lane_is_free
from viz.figures.section.layout import Layout
from viz.figures.section.levels import datum_line, level_marks
from viz.figures.section.placing import labels_of
from viz.figures.section.setting import Labelling, Picture, Setting, datum_height, set_at, shown
from viz.figures.section.watertable import standing_marks, standing_words


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
    setting = set_at(picture, scale, text, labelling)
    plan, labelled = labels_of(setting)
    drawn = (
        *area_marks(setting.faces, setting.native),
        *standing_marks(picture.standing, setting.faces, setting.native, setting.view),
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
    setting: Setting, drawn: Sequence[Mark], levels: Sequence[Mark], widest: float
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


def _datum(labelled: Sequence[Mark], setting: Setting, plan: Layout) -> Iterator[Mark]:
    """Yield the datum line, which crosses the labels to the pole only where no text stands."""
    texts = [mark for mark in labelled if isinstance(mark, Text)]
    free = lane_is_free(texts, plan.right, setting.view.at(0, 0)[1])
    return datum_line(setting.view, plan, free and bool(setting.picture.levels))


def _dimensions(setting: Setting, labelled: Sequence[Mark]) -> tuple[Mark, ...]:
    """Return the strings: upright ones keep their figures off the leaders that cross them."""
    box, text, view = setting.view.box, setting.text, setting.view
    show = shown(setting.picture)
    below = [
        chain(stops, lambda s: view.at(s, 0.0)[0], show) for stops in setting.picture.strings.below
    ]
    leaders = [m for m in labelled if isinstance(m, Leader) and len(m.points) > 2]
    crossing = [m.points[0][1] for m in leaders] + datum_height(setting)
    blocked = [(y - 0.6, y + 0.6) for y in crossing]
    return tuple(
        joined(
            across([c for c in below if c], box.low, -1, text, (box.left, box.right)),
            upright(setting.left, box.left, -1, text, blocked),
            upright(setting.right, box.right, 1, text, blocked),
        )
    )


def _remark(setting: Setting) -> str:
    """Return the picture's own note, water outside it, and what is too thin to draw true."""
    words = setting.picture.words
    named = ((f, words.get(f.label.part, "").partition("\n")[0]) for f in setting.faces)
    thin = dict.fromkeys(head or f.label.name for f, head in named if thin_parts(f))
    heavy = f"Shown heavy, not to scale: {', '.join(thin)}." if thin else ""
    picture = setting.picture
    water = standing_words(picture.standing, setting.view, picture.system)
    return " ".join(filter(None, (picture.note, water, heavy)))
