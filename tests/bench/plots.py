"""Curves of a run as a picture: one line a curve, both axes by powers of ten, names below."""

from collections.abc import Iterator, Sequence
from dataclasses import replace
from math import ceil, floor, log10

from shapely import box

from tests.bench.row import Curve
from viz.drawing.alone import alone
from viz.drawing.figure import figure
from viz.drawing.marks import Circle, Fill, Line, Mark, Text
from viz.export.svg import to_svg

WIDE, HIGH = 88.0, 66.0
TEXT, GAP = 2.5, 5.0
LINES = ("#1f4e79", "#8a5a00", "#2f6b3a", "#7a2f5d")
DASHES: tuple[tuple[float, ...], ...] = ((), (2.5, 1.0), (0.8, 0.8), (4.0, 1.0, 0.8, 1.0))
FAINT, PAPER = "#b9bec4", "#ffffff"


def picture(curves: Sequence[Curve], values: Sequence[Sequence[float]], unit: str) -> str:
    """Return the curves as SVG. values: what stands over the sizes of each, in the unit."""
    across = _decades([size for curve in curves for size in curve.sizes])
    up = _decades([value for some in values for value in some])
    marks: list[Mark] = [*_grid(across, up, unit)]
    for number, (curve, some) in enumerate(zip(curves, values, strict=True)):
        places = tuple(
            (_share(size, across) * WIDE, _share(value, up) * HIGH)
            for size, value in zip(curve.sizes, some, strict=True)
        )
        colour, dash = LINES[number % len(LINES)], DASHES[number % len(DASHES)]
        marks.append(Line(places, 0.5, colour, dash))
        marks += [Circle(at, 0.9, 0.0, colour, colour) for at in places]
        power = f", as n to the {curve.power:.2f}" if unit == "ms" else ""
        level = -(3.5 + number) * GAP
        marks.append(Line(((0.0, level + TEXT / 2), (9.0, level + TEXT / 2)), 0.5, colour, dash))
        marks.append(Text((11.0, level), curve.what + power, TEXT, colour=colour))
    drawing = alone(figure("growth", f"Growth, {unit}", marks))
    # On a dark page the ink would be lost without its paper.
    paper = Fill(box(0, 0, drawing.width, drawing.height), PAPER)
    return to_svg(replace(drawing, marks=(paper, *drawing.marks)))


def _decades(values: Sequence[float]) -> tuple[int, int]:
    return floor(log10(min(values))), ceil(log10(max(values)) + 1e-9)


def _share(value: float, span: tuple[int, int]) -> float:
    return (log10(value) - span[0]) / (span[1] - span[0])


def _grid(across: tuple[int, int], up: tuple[int, int], unit: str) -> Iterator[Mark]:
    for power in range(across[0], across[1] + 1):
        x = _share(10.0**power, across) * WIDE
        yield Line(((x, 0.0), (x, HIGH)), 0.13, FAINT)
        yield Text((x, -GAP), f"{10**power:,}", TEXT, anchor="middle")
    for power in range(up[0], up[1] + 1):
        y = _share(10.0**power, up) * HIGH
        yield Line(((0.0, y), (WIDE, y)), 0.13, FAINT)
        yield Text((-2.0, y - TEXT / 2), f"{10.0**power:,.6g} {unit}", TEXT, anchor="end")
    yield Line(((0.0, HIGH), (0.0, 0.0), (WIDE, 0.0)), 0.25)
    yield Text((WIDE / 2, -2 * GAP), "how many (n)", TEXT, anchor="middle")
