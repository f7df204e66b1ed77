"""The pit's lines: water with the pump working as a band, with the pump dead as a dashed line."""

from collections.abc import Iterator

import numpy as np
import shapely
from numpy.typing import NDArray

from geometry.formulas.march import March
from geometry.formulas.storms import HOUR, Storm
from geometry.plan.outline import multi
from geometry.water.pit import PitStorm
from viz.drawing.marks import Fill, Line, Mark, Point
from viz.figures.pit.view import View
from viz.style.lines import CUT, SEEN

LAYER = "water"
BAND, RAIN = "#c9c9c9", "#8a9ba8"
DEAD_DASH = (2.0, 1.0)
# The band is drawn by columns of this width, each from the lowest to the highest water in it.
_COLUMN = 0.5
_SAMPLES = 24
# Columns on either side whose teeth run together with one.
_BESIDE = 5

Floats = NDArray[np.float64]


def working(pit: PitStorm, view: View) -> Iterator[Mark]:
    """Yield the band between which the pump keeps the water."""
    if pit.pumped is None:
        return
    on = pit.pit.pump_on
    lows, highs = envelope(pit.pumped, view, pit.store.spill_m if on is None else on)
    ring = (*lows, *reversed(highs), lows[0])
    band = multi(shapely.Polygon(ring).buffer(0))
    if band.area > 0:
        yield Fill(band, BAND, layer=LAYER)
    yield Line(ring, SEEN, layer=LAYER)


def envelope(march: March, view: View, on_m: float) -> tuple[list[Point], list[Point]]:
    """Return the lowest and the highest water by columns, as points on paper.

    Teeth of the pump's switching run together; what rises over the level at which it starts does
    not, so that a peak stays as narrow as it is.
    """
    columns = max(2, int(view.width / _COLUMN))
    levels = march.sampled(view.hours * HOUR / columns / _SAMPLES).levels_m
    whole = levels[: len(levels) // _SAMPLES * _SAMPLES].reshape(-1, _SAMPLES)[:columns]
    low, high = whole.min(axis=1), whole.max(axis=1)
    lowest = _windows(low, np.inf).min(axis=1)
    highest = _windows(np.minimum(high, on_m), -np.inf).max(axis=1)
    low, high = np.where(low <= on_m, lowest, low), np.where(high <= on_m, highest, high)
    xs = (np.arange(len(whole)) + 0.5) * view.width / columns
    return _points(xs, low, view), _points(xs, high, view)


def _windows(values: Floats, beyond: float) -> Floats:
    """Return every value with its neighbours, one row each; `beyond` stands past the ends."""
    padded = np.pad(values, _BESIDE, constant_values=beyond)
    return np.lib.stride_tricks.sliding_window_view(padded, 2 * _BESIDE + 1)


def _points(xs: Floats, levels: Floats, view: View) -> list[Point]:
    return [(float(x), view.y(float(z))) for x, z in zip(xs, levels, strict=True)]


def dead(pit: PitStorm, view: View) -> Iterator[Mark]:
    """Yield the water from the pump's death on."""
    times, volumes = pit.dead.events[:, 0] + pit.dead_from_s, pit.dead.events[:, 1]
    begin, end = pit.series.peak_s, min(view.hours * HOUR, float(times[-1]))
    at = np.linspace(begin, max(begin, end), 600)
    levels = np.interp(np.interp(at, times, volumes), pit.store.volumes_m3, pit.store.levels_m)
    yield Line(view.line(at, levels), CUT, dash=DEAD_DASH, layer=LAYER)


def rain(storm: Storm, view: View, low: float, height: float) -> Iterator[Mark]:
    """Yield the storm's intensity as steps standing on a line; the highest fills the height."""
    falls = storm.intensities()
    most = float(falls.max())
    if most <= 0:
        return
    ring: list[Point] = [(0.0, low)]
    edges = [view.x(t / HOUR) for t in storm.times_s]
    for left, right, fall in zip(edges, edges[1:], falls, strict=False):
        top = low + height * float(fall) / most
        ring += [(left, top), (right, top)]
    ring.append((edges[-1], low))
    yield Fill(multi(shapely.Polygon(ring).buffer(0)), RAIN, layer=LAYER)
