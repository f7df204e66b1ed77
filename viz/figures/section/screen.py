"""A section for a wide and for a narrow screen, as large as either shows it."""

from dataclasses import replace

from viz.drawing.figure import Figure
from viz.drawing.scale import SCALES
from viz.figures.section.section import section_figure
from viz.figures.section.setting import Labelling, Picture

# Width and text height of the two pictures, mm.
_WIDE, _NARROW = (350.0, 3.0), (128.0, 2.6)


def section_pictures(wide: Picture, narrow: Picture) -> tuple[Figure, Figure]:
    """Return what two cuts show, the second with numbers and a key, and without its levels.

    Raises BedcourseError where a cut shows nothing.
    """
    bare = replace(narrow, levels=())
    return _greatest(wide, *_WIDE, "narrow"), _greatest(bare, *_NARROW, "keyed")


def _greatest(picture: Picture, width: float, text: float, labelling: Labelling) -> Figure:
    """Return the figure at the greatest scale that is no wider; at the smallest if all are."""
    *larger, smallest = SCALES[picture.system]
    for scale in larger:
        drawn = section_figure(picture, scale, text, labelling, width)
        if drawn.box.width <= width:
            return drawn
    return section_figure(picture, smallest, text, labelling, width)
