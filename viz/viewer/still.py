"""Still pictures for where no script runs: a section of the house, and its footing and drain."""

import base64

from geometry.errors import BedcourseError
from viz.drawing.alone import alone
from viz.drawing.scale import SCALES
from viz.export.png import to_png
from viz.export.svg import to_svg
from viz.figures.section.section import section_figure
from viz.job import Job
from viz.pictures import Shot, detail_shots, picture_of, section_shots

TEXT_MM = 2.5
# Narrow enough for a page, wide enough to read: mm of the drawing, and dots for an inch of it.
WIDEST_MM = 420.0
DETAIL_MM = 300.0
DPI = 96


def stills(work: Job) -> list[str]:
    """Return the pictures as `data:` addresses of PNGs; none where the house has no section."""
    wanted = [(shot, WIDEST_MM) for shot in section_shots(work)[:1]]
    wanted += [(shot, DETAIL_MM) for shot in detail_shots(work)[:1]]
    return [address for shot, widest in wanted if (address := _still(work, shot, widest))]


def _still(work: Job, shot: Shot, widest: float) -> str:
    """Return one cut at the greatest scale that is narrow enough; empty where none is."""
    picture = picture_of(work, shot)
    for scale in SCALES[work.system]:
        if picture.size[0] * scale.per_metre + picture.beside(TEXT_MM) > widest:
            continue
        try:
            drawn = alone(section_figure(picture, scale, TEXT_MM))
        except BedcourseError:
            continue
        if drawn.width <= widest:
            data = to_png(to_svg(drawn), DPI)
            return "data:image/png;base64," + base64.b64encode(data).decode("ascii")
    return ""
