"""The heating tubes of every floor as they are asked for on a sheet."""

from functools import partial

from geometry.layout.lay import Layout
from geometry.layout.tubing.lay import Tubes, lay_tubes
from viz.drawing.figure import Figure
from viz.drawing.scale import Scale
from viz.figures.section.setting import Labelling
from viz.figures.tubing.tubing import tubing_figure
from viz.sheets.compose import Wanted

# The ratio beyond which it gains nothing, and the one at which it is easily read.
_RATIOS = (32, 64)


def tubing_wanted(layout: Layout, text: float) -> tuple[Wanted, ...]:
    """Return the tubes of each heated floor; none without any."""
    return tuple(_wanted(layout, tubes, text) for tubes in lay_tubes(layout) if tubes.loops)


def _wanted(layout: Layout, tubes: Tubes, text: float) -> Wanted:
    left, low, right, high = tubes.slab.bounds
    draw = partial(_drawn, layout, tubes, text)
    title = f"Heating tubes: {tubes.area.name}"
    return Wanted(title, (right - left, high - low), draw, *_RATIOS, ("words",))


def _drawn(layout: Layout, tubes: Tubes, text: float, scale: Scale, _way: Labelling) -> Figure:
    return tubing_figure(layout, tubes, scale, text)
