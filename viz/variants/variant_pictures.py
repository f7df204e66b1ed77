"""Designs side by side as pictures: the detail of footing, drain and floor of each at one scale."""

from collections.abc import Sequence

from geometry.errors import BedcourseError
from geometry.variants.compare import Variant
from viz.drawing.figure import Figure
from viz.figures.section.view import Window
from viz.figures.section.windows import detail_window
from viz.figures.variants.variants import Shown, variants_figure
from viz.job import Job
from viz.pictures import Shot, faces_of, picture_of

# A drain across the house would leave nothing to see of the edge.
_WIDEST_M = 4.0
# Width and text height of the two pictures, mm.
_WIDE, _NARROW = (290.0, 3.0), (106.0, 2.6)


def variant_of(name: str, work: Job) -> Variant:
    """Return a job as a variant under a name."""
    return Variant(name, work.text, work.layout.design, work.report)


def variants_pictures(works: Sequence[Job], names: Sequence[str]) -> tuple[Figure, Figure]:
    """Return the details side by side for a wide screen, one under another for a narrow one.

    Raises BedcourseError where a design has no footing to show.
    """
    shown = _shown(works, names)
    return variants_figure(shown, *_WIDE), variants_figure(shown, *_NARROW, across=1)


def _shown(works: Sequence[Job], names: Sequence[str]) -> list[Shown]:
    windows = [_window(work) for work in works]
    wide = min(_WIDEST_M, max(right - left for left, _, right, _ in windows))
    low, high = min(w[1] for w in windows), max(w[3] for w in windows)
    return [
        Shown(name, picture_of(work, _shot(work, (window[0], low, window[0] + wide, high))))
        for work, name, window in zip(works, names, windows, strict=True)
    ]


def _window(work: Job) -> Window:
    line = work.cuts["across"]
    window = detail_window(work.layout, faces_of(work.foundation, line))
    if window is None:
        raise BedcourseError("a design without a footing has no detail to set beside the others")
    return window


def _shot(work: Job, window: Window) -> Shot:
    return Shot("variants", "Footing and floor", work.cuts["across"], window)
