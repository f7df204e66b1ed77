"""An independent peer: the same parts in a boundary-representation kernel.

The kernel is Open CASCADE through build123d.

Nothing here comes from the engine's layout: corners are moved by their own arithmetic for
right-angled outlines, and every cut and union is the peer's.
"""

from collections.abc import Sequence
from itertools import pairwise
from typing import Any

Corner = tuple[float, float]
Shape = Any


class _Kernel:
    """The kernel's names, read when first asked for: that takes seconds, and listing tests none."""

    def __getattr__(self, name: str) -> Any:
        import build123d

        return getattr(build123d, name)


kernel = _Kernel()


def turned_left(corners: Sequence[Corner]) -> list[Corner]:
    """Return corners counter-clockwise."""
    twice = sum(a[0] * b[1] - b[0] * a[1] for a, b in pairwise([*corners, corners[0]]))
    return list(corners) if twice > 0 else list(reversed(corners))


def grown(corners: Sequence[Corner], by: float) -> list[Corner]:
    """Return a right-angled outline's corners, each side moved outward (inward if negative)."""
    points = turned_left(corners)
    found = []
    for n, (x, y) in enumerate(points):
        (px, py), (nx, ny) = points[n - 1], points[(n + 1) % len(points)]
        # Outward is to the right of the way of travel: (dy, -dx) of each neighbouring side.
        out_x = sum(_sign(b - a) for a, b in ((py, y), (y, ny)))
        out_y = -sum(_sign(b - a) for a, b in ((px, x), (x, nx)))
        found.append((x + by * out_x, y + by * out_y))
    return found


def _sign(value: float) -> int:
    return 0 if abs(value) < 1e-9 else (1 if value > 0 else -1)


def wire(corners: Sequence[Corner], level: float) -> Any:
    return kernel.Wire.make_polygon([kernel.Vector(x, y, level) for x, y in corners], close=True)


def prism(corners: Sequence[Corner], bottom: float, top: float) -> Shape:
    """Extrude an outline between two levels."""
    return kernel.Solid.extrude(
        kernel.Face(wire(corners, bottom)), kernel.Vector(0, 0, top - bottom)
    )


def box(centre: Corner, width: float, depth: float, bottom: float, top: float) -> Shape:
    x, y = centre
    w, d = width / 2, depth / 2
    return prism([(x - w, y - d), (x + w, y - d), (x + w, y + d), (x - w, y + d)], bottom, top)


def ring(corners: Sequence[Corner], out: float, inside: float, bottom: float, top: float) -> Shape:
    """A strip along an outline: `out` beyond it, `inside` within it."""
    return prism(grown(corners, out), bottom, top) - prism(grown(corners, -inside), bottom, top)


def cylinder(centre: Corner, radius: float, bottom: float, top: float) -> Shape:
    base = kernel.Plane(origin=(*centre, bottom), z_dir=(0, 0, 1))
    return kernel.Solid.make_cylinder(radius, top - bottom, base)


def bar(start: Sequence[float], end: Sequence[float], radius: float) -> Shape:
    """A round bar from point to point."""
    a, b = kernel.Vector(*start), kernel.Vector(*end)
    return kernel.Solid.make_cylinder(radius, (b - a).length, kernel.Plane(origin=a, z_dir=b - a))


def frustum(low: Sequence[Corner], high: Sequence[Corner], bottom: float, top: float) -> Shape:
    """The body between two outlines with the same corners."""
    return kernel.Solid.make_loft([wire(low, bottom), wire(high, top)], ruled=True)


def legs(points: Sequence[Sequence[float]], radius: float) -> list[Shape]:
    """Round bars along a run of straight legs, each cut at the mitre planes of its ends."""
    at = [kernel.Vector(*p) for p in points]
    ways = [(b - a).normalized() for a, b in pairwise(at)]
    closed = (at[0] - at[-1]).length < 1e-9
    found = []
    for n, way in enumerate(ways):
        before = ways[n - 1] if n or closed else way
        after = ways[(n + 1) % len(ways)] if n + 1 < len(ways) or closed else way
        reach = way * (3 * radius)
        leg = bar(at[n] - reach, at[n + 1] + reach, radius)
        leg = leg.split(kernel.Plane(at[n], z_dir=before + way), keep=kernel.Keep.TOP)
        found.append(leg.split(kernel.Plane(at[n + 1], z_dir=way + after), keep=kernel.Keep.BOTTOM))
    return found


def swept(points: Sequence[Sequence[float]], radius: float) -> Shape:
    """The legs of a run as one body."""
    first, *rest = legs(points, radius)
    return first + rest if rest else first


def drilled(
    pipe: Shape, holes: Sequence[tuple[Sequence[float], Sequence[float]]], radius: float
) -> Shape:
    """A pipe less round holes, each from a point on its axis outward."""
    return pipe - [bar(a, b, radius) for a, b in holes]


def volume(shape: Shape) -> float:
    """Volume of a solid or of several, m3."""
    return float(sum(s.volume for s in shape.solids()))
