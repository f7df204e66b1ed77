"""Words on the pit's chart: what its lines mean, and how hard it rains."""

from collections.abc import Iterator

from shapely import Polygon

from geometry.measures import show_intensity, show_time
from geometry.units import System
from geometry.water.pit import PitStorm
from viz.drawing.marks import Fill, Line, Mark, Text
from viz.figures.pit.series import BAND, DEAD_DASH
from viz.figures.pit.view import View
from viz.style.lines import CUT, QUIET, SEEN

LABELS = "labels"


def key(pit: PitStorm, text: float) -> Iterator[Mark]:
    """Yield what the two lines mean, one under the other below the hours."""
    y, sample = -4.8 * text, 5 * text
    if pit.pumped:
        box = ((0.0, y), (sample, y), (sample, y + text), (0.0, y + text))
        yield from _swatch(box)
        words = "pump working: the water stands within this band"
        yield Text((sample + text, y), words, text, layer=LABELS)
        y -= 1.9 * text
    middle = y + text / 2
    yield Line(((0.0, middle), (sample, middle)), CUT, dash=DEAD_DASH, layer="key")
    words = "no pump: water from the greatest inflow on"
    if pit.pit.sump.pump:
        words = "pump dead from the greatest inflow on"
    if pit.series.peak_s > 0:
        words += f", {show_time(pit.series.peak_s)} after the rain begins"
    yield Text((sample + text, y), words, text, layer=LABELS)


def _swatch(box: tuple[tuple[float, float], ...]) -> Iterator[Mark]:
    yield Fill(Polygon(box), BAND, layer="key")
    for low, high in ((box[0], box[1]), (box[3], box[2])):
        yield Line((low, high), SEEN, layer="key")


def rain_words(
    pit: PitStorm, view: View, top: float, text: float, system: System
) -> Iterator[Mark]:
    """Yield the line the rain stands on, and beside it what its highest step means."""
    low = view.height + 2 * text
    yield Line(((0.0, low), (view.width, low)), SEEN, layer="frame")
    if pit.storm and pit.storm.depth_m > 0:
        most = show_intensity(float(pit.storm.intensities().max()), system)
        at = (view.width + 4.5 * text, low + (top - 2 * text) - text)
        yield Text(at, "rain", text, colour=QUIET, layer=LABELS)
        under = (at[0], at[1] - 1.7 * text)
        yield Text(under, f"at most {most}", text, colour=QUIET, layer=LABELS)
