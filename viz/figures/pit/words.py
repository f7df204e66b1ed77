"""Words on the pit's chart: what its lines mean, and how hard it rains."""

from collections.abc import Iterator

from shapely import Polygon

from geometry.measures import show_intensity, show_time
from geometry.units import System
from geometry.water.pit import PitStorm
from viz.drawing.fonts import wrap
from viz.drawing.marks import Fill, Line, Mark, Text
from viz.figures.pit.series import BAND, DEAD_DASH
from viz.figures.pit.view import View
from viz.style.lines import CUT, QUIET, SEEN
from viz.style.text import PITCH

LABELS = "labels"
# The sample of a line, and where its words begin, in text heights; a row's height likewise.
_SAMPLE, _AT, _ROW = 5.0, 6.0, 1.9


def line_rows(pit: PitStorm, width: float, text: float) -> list[tuple[str, ...]]:
    """Return what the lines mean, in lines of words no wider than `width` mm with their samples."""
    said = ["pump working: the water stands within this band"] if pit.pumped else []
    dead = "no pump: water from the greatest inflow on"
    if pit.pit.sump.pump:
        dead = "pump dead from the greatest inflow on"
    if pit.series.peak_s > 0:
        dead += f", {show_time(pit.series.peak_s)} after the rain begins"
    return [wrap(words, width - _AT * text, text) for words in (*said, dead)]


def rows_height(rows: list[tuple[str, ...]], text: float) -> float:
    """Return how high these rows stand, mm."""
    return sum(_ROW * text + (len(lines) - 1) * PITCH * text for lines in rows)


def line_key(rows: list[tuple[str, ...]], text: float) -> Iterator[Mark]:
    """Yield what the lines mean, one under the other below the hours; the dead pump's is last."""
    y, sample = -4.8 * text, _SAMPLE * text
    for number, lines in enumerate(rows, start=1):
        if number < len(rows):
            yield from _swatch(((0.0, y), (sample, y), (sample, y + text), (0.0, y + text)))
        else:
            middle = ((0.0, y + text / 2), (sample, y + text / 2))
            yield Line(middle, CUT, dash=DEAD_DASH, layer="key")
        for line in lines:
            yield Text((_AT * text, y), line, text, layer=LABELS)
            y -= PITCH * text
        y -= (_ROW - PITCH) * text


def _swatch(box: tuple[tuple[float, float], ...]) -> Iterator[Mark]:
    yield Fill(Polygon(box), BAND, layer="key")
    for low, high in ((box[0], box[1]), (box[3], box[2])):
        yield Line((low, high), SEEN, layer="key")


def rain_words(
    pit: PitStorm, view: View, top: float, text: float, system: System, over: bool
) -> Iterator[Mark]:
    """Yield the line the rain stands on, and beside or over it what its highest step means."""
    low = view.height + 2 * text
    yield Line(((0.0, low), (view.width, low)), SEEN, layer="frame")
    if not pit.storm or pit.storm.depth_m <= 0:
        return
    most = f"at most {show_intensity(float(pit.storm.intensities().max()), system)}"
    high = low + top - 2 * text
    if over:
        at = (0.0, high + 0.7 * text)
        yield Text(at, f"rain, {most}", text, colour=QUIET, layer=LABELS)
        return
    at = (view.width + 4.5 * text, high - text)
    yield Text(at, "rain", text, colour=QUIET, layer=LABELS)
    yield Text((at[0], at[1] - 1.7 * text), most, text, colour=QUIET, layer=LABELS)
