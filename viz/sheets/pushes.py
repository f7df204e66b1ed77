"""The push of the fill on the wall, as it is asked for beside the sections."""

from functools import partial

from geometry.layout.lay import Layout
from geometry.water.wall import highest, wall_runs
from viz.drawing.figure import Figure
from viz.drawing.scale import Scale
from viz.figures.pressure.pressure import TITLE, at_rest_push, pressure_figure
from viz.figures.section.setting import Labelling
from viz.sheets.compose import Wanted

# The ratio beyond which it gains nothing, and the one at which it is easily read.
_RATIOS = (24, 50)


def pressure_wanted(layout: Layout, text: float) -> tuple[Wanted, ...]:
    """Return the figure of the wall with the most fill; none where there is nothing to say."""
    run = highest(wall_runs(layout))
    if run is None or at_rest_push(run) is None:
        return ()
    size = (run.wall_m, run.fill_to_foot_m)
    return (Wanted(TITLE, size, partial(_drawn, layout, text), *_RATIOS, ("words",)),)


def _drawn(layout: Layout, text: float, scale: Scale, _way: Labelling) -> Figure:
    found = pressure_figure(layout, scale, text)
    if found is None:
        raise ValueError("there is no push to draw")
    return found
