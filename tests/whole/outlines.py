"""Random outlines, invented: straight-cornered houses, turned ones, blobs and stars."""

from collections.abc import Callable, Sequence
from math import cos, hypot, pi, radians, sin

from tests.dice import Dice, Length

Corners = list[tuple[float, float]]

INCH16 = 0.0254 / 16


def outline(dice: Dice) -> list[tuple[Length, Length]]:
    """Return corners of a simple polygon, shifted, perhaps turned, in either order."""
    corners = dice.choice(SHAPES)(dice)
    if dice.whole(0, 3) == 0:
        turn = radians(dice.whole(1, 89))
        corners = [
            (x * cos(turn) - y * sin(turn), x * sin(turn) + y * cos(turn)) for x, y in corners
        ]
    dx, dy = dice.whole(-20, 20), dice.whole(-20, 20)
    moved = [(x + dx, y + dy) for x, y in corners]
    if dice.whole(0, 1):
        moved.reverse()
    return [(Length(round(x / INCH16)), Length(round(y / INCH16))) for x, y in moved]


def _span(dice: Dice, low: float, high: float) -> float:
    """A length in metres, on the sixteenth of an inch."""
    return dice.whole(round(low / INCH16), round(high / INCH16)) * INCH16


def rectangle(dice: Dice) -> Corners:
    w, d = _span(dice, 4, 14), _span(dice, 4, 12)
    return [(0, 0), (w, 0), (w, d), (0, d)]


def ell(dice: Dice) -> Corners:
    a, b, c, d = (_span(dice, 3.2, 8) for _ in range(4))
    return [(0, 0), (a + b, 0), (a + b, c), (a, c), (a, c + d), (0, c + d)]


def tee(dice: Dice) -> Corners:
    a, b, c = _span(dice, 2.5, 5), _span(dice, 3.2, 6), _span(dice, 2.5, 5)
    h, k = _span(dice, 3.2, 7), _span(dice, 2.5, 6)
    return [
        (0, 0), (a + b + c, 0), (a + b + c, h), (a + b, h),
        (a + b, h + k), (a, h + k), (a, h), (0, h),
    ]  # fmt: skip


def you(dice: Dice) -> Corners:
    a, b, c = _span(dice, 3.2, 5), _span(dice, 3.5, 7), _span(dice, 3.2, 5)
    h, k, m = _span(dice, 3.2, 6), _span(dice, 3, 6), _span(dice, 3, 6)
    return [
        (0, 0), (a + b + c, 0), (a + b + c, h + m), (a + b, h + m),
        (a + b, h), (a, h), (a, h + k), (0, h + k),
    ]  # fmt: skip


def steps(dice: Dice) -> Corners:
    """A row of bays of differing depth along one straight side."""
    corners: Corners = [(0, 0)]
    widths = [_span(dice, 3.4, 5) for _ in range(dice.whole(2, 4))]
    corners.append((sum(widths), 0))
    x, depth = sum(widths), 0.0
    for width in widths:
        step = _span(dice, 1.6, 3) * dice.choice((-1, 1))
        depth = depth + step if depth + step > 4 else max(depth, 4) + abs(step)
        corners += [(x, depth), (x - width, depth)]
        x -= width
    return corners


def convex(dice: Dice) -> Corners:
    """Corners on an ellipse, with at least a good part of a fair share between them."""
    count = dice.whole(3, 9)
    a, b = _span(dice, 4.5, 8), _span(dice, 4.5, 8)
    return [(a * cos(t), b * sin(t)) for t in _turns(dice, count, 0.6)]


def star(dice: Dice) -> Corners:
    """Corners at differing distances round a centre: reflex and sharp ones."""
    count = dice.whole(5, 9)
    reach = [_span(dice, 4.5, 9) for _ in range(count)]
    return [(r * cos(t), r * sin(t)) for r, t in zip(reach, _turns(dice, count, 0.8), strict=True)]


def _turns(dice: Dice, count: int, least: float) -> list[float]:
    """Angles round a circle, each part at least a share of an even one."""
    spare = [dice.whole(1, 100) for _ in range(count)]
    even = 2 * pi / count
    parts = [even * (least + (1 - least) * count * s / sum(spare)) for s in spare]
    return [sum(parts[:n]) for n in range(count)]


SHAPES: Sequence[Callable[[Dice], Corners]] = (
    rectangle, rectangle, ell, ell, tee, you, steps, convex, star
)  # fmt: skip


def attached(
    dice: Dice, corners: Sequence[tuple[Length, Length]], side: int
) -> list[tuple[Length, Length]]:
    """Return a four-cornered outline outside one side (from 0), on all of it or a part."""
    (x0, y0), (x1, y1) = corners[side], corners[(side + 1) % len(corners)]
    start, end = (x0.sixteenths, y0.sixteenths), (x1.sixteenths, y1.sixteenths)
    run = (end[0] - start[0], end[1] - start[1])
    length = hypot(*run)
    # Parts of a slanting side would leave the grid of sixteenths: those take all of it.
    if 0 in run and dice.whole(0, 1) and length > 4 / INCH16:
        cut = dice.whole(round(0.5 / INCH16), round(length - 3 / INCH16))
        start = tuple(round(p + cut * r / length) for p, r in zip(start, run, strict=True))
    out = _outward(corners)
    deep = dice.whole(round(3 / INCH16), round(6 / INCH16))
    off = (out * run[1] / length * deep, -out * run[0] / length * deep)
    back = [tuple(round(p + o) for p, o in zip(q, off, strict=True)) for q in (start, end)]
    return [(Length(x), Length(y)) for x, y in (start, end, back[1], back[0])]


def _outward(corners: Sequence[tuple[Length, Length]]) -> int:
    """1 where outside lies to the right of each side (counter-clockwise), else -1."""
    points = [(x.m, y.m) for x, y in corners]
    twice = sum(
        a[0] * b[1] - b[0] * a[1] for a, b in zip(points, points[1:] + points[:1], strict=True)
    )
    return 1 if twice > 0 else -1
