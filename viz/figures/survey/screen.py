"""The map of one dug floor for a wide and for a narrow screen, at the greatest scale that fits."""

from geometry.layout.lay import Layout
from geometry.survey.asdug import AreaDug
from viz.drawing.figure import Figure
from viz.drawing.scale import Scale
from viz.figures.survey.map import survey_map

# Widths and text heights of the two pictures, mm; scales tried, the largest picture first.
_WIDE, _NARROW = (290.0, 3.0), (106.0, 2.5)
_RATIOS = (24, 32, 40, 48, 64, 80, 96, 128, 160, 192, 240, 320, 480, 960)


def map_pictures(layout: Layout, dug: AreaDug) -> tuple[Figure, Figure]:
    """Return the map with its key and spots for a wide and for a narrow screen."""
    return _fitting(layout, dug, *_WIDE), _fitting(layout, dug, *_NARROW)


def _fitting(layout: Layout, dug: AreaDug, width: float, text: float) -> Figure:
    """Return the map at the greatest scale that keeps the width, else at the smallest."""
    left, _, right, _ = dug.bed.area.outline.bounds
    wide = (right - left) * 1000
    ratios = [r for r in _RATIOS if wide / r <= width] or [_RATIOS[-1]]
    for ratio in ratios:
        made = survey_map(layout, dug, Scale(f"1:{ratio}", ratio), text, width)
        if made.box.width <= width + 1e-6:
            break
    return made
