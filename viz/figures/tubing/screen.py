"""Heating tubes of every floor as pictures for a wide and for a narrow screen."""

from collections.abc import Iterator
from functools import partial

from geometry.layout.lay import Layout
from geometry.layout.tubing.lay import lay_tubes
from viz.drawing.figure import Figure
from viz.figures.fitting import fitting
from viz.figures.tubing.tubing import tubing_figure

# Widths, heights and text heights of the two pictures, mm.
_WIDE, _NARROW = (290.0, 230.0, 3.0), (106.0, 190.0, 2.6)


def tubing_pictures(layout: Layout) -> Iterator[tuple[Figure, Figure]]:
    """Yield each heated floor's tubes for a wide and for a narrow screen."""
    for tubes in lay_tubes(layout):
        if tubes.loops:
            wide, narrow = (
                fitting(partial(tubing_figure, layout, tubes, text=text, narrow=beside), *room)
                for *room, text, beside in ((*_WIDE, 0.0), (*_NARROW, _NARROW[0]))
            )
            yield wide, narrow
