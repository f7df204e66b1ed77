"""Faults of what is said of a pump's flow: a curve that is none, a curve without a lift."""

from collections.abc import Iterator
from itertools import pairwise

from geometry.faults.common import At, Words
from geometry.parts.drain import Pump, Sump
from geometry.parts.measured import PumpPoint


def curve_faults(sump: Sump, words: Words) -> Iterator[At]:
    """Yield a flow said twice, points that make no curve, and a lift that is lacking or too low."""
    pump, path = sump.pump, ("sump", "pump")
    if pump is None:
        return
    if pump.curve and pump.flow is not None:
        yield At((*path, "flow"), "the curve says the pump's flow already; leave out flow or curve")
    if pump.curve:
        yield from _points(pump)
        yield from _lift(pump, sump, words)
    elif pump.discharge:
        sentence = "a discharge pipe slows a pump by its curve; add curve and lift, or leave it out"
        yield At((*path, "discharge"), sentence)


def in_order(curve: tuple[PumpPoint, ...]) -> list[PumpPoint]:
    """Return the points by rising flow."""
    return sorted(curve, key=lambda point: (point[1], -point[0]))


def _points(pump: Pump) -> Iterator[At]:
    path, points = ("sump", "pump", "curve"), in_order(pump.curve)
    if len(points) < 2:
        yield At(path, 'one point is no curve; add points, or say flow = "34 gpm" instead')
    elif points[0][1] != 0:
        yield At(path, 'the head at no flow is missing; add a point such as "18 ft, 0 gpm"')
    elif any(b[1] <= a[1] or b[0] >= a[0] for a, b in pairwise(points)):
        yield At(path, "the head does not fall from point to point as the flow rises; check them")


def _lift(pump: Pump, sump: Sump, words: Words) -> Iterator[At]:
    path = ("sump", "pump", "lift")
    if pump.lift is None:
        yield At(
            path,
            'a curve is read at a head; add lift = "9 ft", from the pit\'s bottom to the highest '
            "point of the discharge pipe",
        )
    elif pump.lift < sump.depth - 1e-9:
        yield At(
            path,
            f"the discharge pipe's highest point would lie {words.size(pump.lift)} above the pit's "
            f"bottom, below its rim; give at least {words.least(sump.depth)}",
        )
