"""Marks as the operators of a PDF page, in its points, y up."""

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import replace
from typing import Protocol

from viz.drawing.fonts import CAPITAL
from viz.drawing.lettering import text_box
from viz.drawing.marks import Circle, Fill, Line, Point, Simple, Strokes, Text
from viz.export.paths import Coordinates, Grammar, path, printable, rings

# Points of a page for one millimetre of paper.
POINT = 72 / 25.4
_GRAMMAR = Grammar("%.2f %.2f m ", "%.2f %.2f l ", "h ", 2)
# Handles of the four curves that stand for a circle, in radii: true to 0.03 % of it.
_HANDLE = 0.5522848


class Typeface(Protocol):
    """One weight of the type family, as a page names it."""

    def runs(self, words: str) -> Iterator[tuple[str, bytes]]:
        """Yield the name of a font and the codes of the letters to set from it."""


def operators(marks: Iterable[Simple], faces: Mapping[bool, Typeface]) -> Iterator[str]:
    """Yield the operators that draw the marks in their order. faces: by whether they are bold."""
    yield "1 j"
    for mark in marks:
        match mark:
            case Line(points=points):
                yield f"{_pen(mark.colour, mark.weight, mark.dash)} {_path((points,))}S"
            case Strokes(lines=lines):
                yield f"{_pen(mark.colour, mark.weight)} {_path(lines)}S"
            case Fill(shape=shape):
                yield f"{_colour(mark.colour)} rg {_path(rings(shape))}f*"
            case Circle():
                yield _circle(mark)
            case Text():
                yield _text(mark, faces[mark.bold])


def _path(lines: Sequence[Sequence[Point]]) -> str:
    return path(lines, _points, _GRAMMAR)


def _points(xy: Coordinates) -> Coordinates:
    return xy * POINT


def _pen(colour: str, weight: float, dash: tuple[float, ...] = ()) -> str:
    """Return colour, width, dashes and ends of strokes: flat where dashed, else round."""
    dashes = " ".join(f"{step * POINT:.3f}" for step in dash)
    return f"{_colour(colour)} RG {weight * POINT:.3f} w [{dashes}] 0 d {0 if dash else 1} J"


def _colour(name: str) -> str:
    """Return "#rrggbb" as shares of red, green and blue."""
    return " ".join(f"{int(name[at : at + 2], 16) / 255:.4g}" for at in (1, 3, 5))


def _circle(mark: Circle) -> str:
    (x, y), r, k = mark.centre, mark.radius, _HANDLE * mark.radius
    curves = (
        (r, 0), (r, k), (k, r), (0, r), (-k, r), (-r, k), (-r, 0),
        (-r, -k), (-k, -r), (0, -r), (k, -r), (r, -k), (r, 0),
    )  # fmt: skip
    spots = [f"{(x + dx) * POINT:.3f} {(y + dy) * POINT:.3f}" for dx, dy in curves]
    quarters = "".join(f"{' '.join(spots[at : at + 3])} c " for at in (1, 4, 7, 10))
    pen = _pen(mark.colour, mark.weight) if mark.weight else ""
    brush = f"{_colour(mark.fill)} rg" if mark.fill else ""
    paint = {(True, True): "B", (True, False): "S", (False, True): "f", (False, False): "n"}
    return f"{pen} {brush} {spots[0]} m {quarters}h {paint[bool(pen), bool(brush)]}"


def _text(mark: Text, face: Typeface) -> str:
    words = printable(mark.words)
    left = text_box(replace(mark, words=words)).left
    place = f"{left * POINT:.3f} {mark.at[1] * POINT:.3f}"
    size = f"{mark.height / CAPITAL * POINT:.3f}"
    runs = " ".join(f"{name} {size} Tf <{codes.hex()}> Tj" for name, codes in face.runs(words))
    return f"{_colour(mark.colour)} rg BT {place} Td {runs} ET"
