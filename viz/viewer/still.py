"""A still picture for where no script runs: the first section of the house."""

import base64

from geometry.errors import BedcourseError
from viz.drawing.alone import alone
from viz.drawing.scale import SCALES
from viz.export.png import to_png
from viz.export.svg import to_svg
from viz.figures.section.section import section_figure
from viz.job import Job
from viz.pictures import picture_of, section_shots

TEXT_MM = 2.5
# Narrow enough for a page, wide enough to read: mm of the drawing, and dots for an inch of it.
WIDEST_MM = 420.0
DPI = 96


def still(work: Job) -> str:
    """Return the picture as a `data:` address of a PNG; empty where the house has no section."""
    shots = section_shots(work)
    if not shots:
        return ""
    picture = picture_of(work, shots[0])
    for scale in SCALES[work.system]:
        try:
            drawn = alone(section_figure(picture, scale, TEXT_MM))
        except BedcourseError:
            continue
        if drawn.width <= WIDEST_MM:
            data = to_png(to_svg(drawn), DPI)
            return "data:image/png;base64," + base64.b64encode(data).decode("ascii")
    return ""
