"""A sheet read back from its files, PDF by PDFium and SVG as plain XML, measured in millimetres."""

import ctypes
import re
from collections.abc import Iterator
from dataclasses import dataclass
from functools import cached_property
from itertools import pairwise
from xml.etree import ElementTree as ET

import numpy as np
import pypdfium2 as pdfium
import pypdfium2.raw as raw
from numpy.typing import NDArray

from geometry.errors import LengthError
from geometry.units import read_length

MM = 25.4 / 72
INCH_M = 0.0254
SVG = "{http://www.w3.org/2000/svg}"
# Longer paths are hatches and outlines of round things: nothing here measures them.
_LONGEST = 80
# A dimension's slash, half its width and height; how far its words stand over the string; mm.
_SLASH = 1.1
_OVER = 0.8


@dataclass(frozen=True)
class Word:
    """One text: its ends, its baseline, the size of its type; mm from the lower left corner.

    In SVG, where no reader has set it, both ends are the place it is anchored to.
    """

    words: str
    left: float
    right: float
    base: float
    size: float

    @property
    def middle(self) -> float:
        return (self.left + self.right) / 2


@dataclass(frozen=True)
class Stroke:
    """The corners of one path and its weight, mm."""

    points: NDArray[np.float64]
    weight: float

    @property
    def size(self) -> NDArray[np.float64]:
        return np.ptp(self.points, axis=0)


@dataclass(frozen=True)
class Caption:
    """What stands under a figure: its scale in words as one number, and where."""

    words: str
    ratio: float
    left: float
    base: float


@dataclass(frozen=True)
class Measured:
    """A length as it is written, in the job, and as it is drawn, mm on paper."""

    words: str
    said_m: float
    drawn_mm: float
    ratio: float

    @property
    def error_mm(self) -> float:
        return abs(self.said_m * 1000 / self.ratio - self.drawn_mm)


@dataclass(frozen=True, eq=False)
class Printed:
    """One sheet as a reader of its file finds it."""

    width: float
    height: float
    words: tuple[Word, ...]
    strokes: tuple[Stroke, ...]

    @cached_property
    def text(self) -> str:
        """All words, in the order of the file."""
        return " ".join(w.words for w in self.words)

    @cached_property
    def captions(self) -> tuple[Caption, ...]:
        """The scales named under figures, from the top."""
        found = [
            Caption(w.words, ratio(w.words[6:]), w.left, w.base)
            for w in self.words
            if w.words.startswith("Scale ") and ratio(w.words[6:])
        ]
        return tuple(sorted(found, key=lambda c: -c.base))

    def ratio_at(self, x: float, y: float) -> float:
        """The scale of the figure a place belongs to: captions stand under it, from its left."""
        below = [c for c in self.captions if c.base < y]
        row = [c for c in below if c.base > below[0].base - 30 and c.left - 15 < x]
        return max(row, key=lambda c: c.left).ratio

    def bars(self) -> Iterator[Measured]:
        """Every scale bar: the length written at its end, and its outline's."""
        for one in self.captions:
            beside = [
                s for s in self.strokes
                if len(s.points) == 5 and abs(s.size[1] - 1.6) < 0.02 and s.size[0] > 30
                and s.points[:, 0].min() > one.left and abs(s.points[:, 1].min() - one.base) < 6
            ]  # fmt: skip
            bar = min(beside, key=lambda s: s.points[:, 0].min())
            end, high = bar.points[:, 0].max(), bar.points[:, 1].max()
            over = [w for w in self.words if 0 < w.base - high < 3 and abs(w.middle - end) < 0.5]
            yield Measured(over[0].words, read_length(over[0].words), bar.size[0], one.ratio)

    def dimensions(self) -> Iterator[Measured]:
        """Every level string's figures that stand in their gaps, with the gap they stand in."""
        slashes = np.array([
            s.points.mean(axis=0) for s in self.strokes
            if len(s.points) == 2 and np.abs(np.abs(s.size) - 2 * _SLASH).max() < 0.05
        ]).reshape(-1, 2)  # fmt: skip
        for word in self.words:
            try:
                said = read_length(word.words)
            except LengthError:
                continue
            stops = slashes[np.abs(slashes[:, 1] - (word.base - _OVER)) < 0.05, 0]
            before, after = stops[stops < word.middle], stops[stops > word.middle]
            if len(before) and len(after):
                gap = float(after.min() - before.max())
                yield Measured(word.words, said, gap, self.ratio_at(word.middle, word.base))

    def upright_pairs(self, weight: float, longest: float) -> list[float]:
        """Distances between upright edges of one path of a weight, the edges so long or longer."""
        found = []
        for stroke in self.strokes:
            if abs(stroke.weight - weight) < 0.01:
                xs = [
                    a[0] for a, b in pairwise(stroke.points)
                    if abs(a[0] - b[0]) < 1e-2 and abs(a[1] - b[1]) >= longest
                ]  # fmt: skip
                found += [abs(b - a) for a, b in pairwise(sorted(xs))]
        return found


def ratio(words: str) -> float:
    """What a scale's name means, worked out here: 1/4" = 1'-0" is 48; 0 for other words."""
    metric = re.fullmatch(r"1:(\d+)", words)
    if metric:
        return float(metric[1])
    inches = re.fullmatch(r"(?:(\d+) )?(\d+)(?:/(\d+))?\" = (\d+)'-0\"", words)
    if not inches:
        return 0.0
    whole, top, bottom, feet = (float(n) if n else None for n in inches.groups())
    assert top is not None
    assert feet is not None
    return 12 * feet / ((whole or 0.0) + top / (bottom or 1.0))


def from_pdf(page: pdfium.PdfPage) -> Printed:
    """Read a page by PDFium."""
    width, height = (size * MM for size in page.get_size())
    textpage = page.get_textpage()
    words = tuple(
        _word(thing)
        for thing in page.get_objects(filter=[raw.FPDF_PAGEOBJ_TEXT], textpage=textpage)
    )
    strokes = tuple(
        _stroke(thing)
        for thing in page.get_objects(filter=[raw.FPDF_PAGEOBJ_PATH])
        if raw.FPDFPath_CountSegments(thing) <= _LONGEST
    )
    return Printed(width, height, words, strokes)


def _word(thing: pdfium.PdfTextObj) -> Word:
    left, _, right, _ = thing.get_bounds()
    matrix = thing.get_matrix()
    size = thing.get_font_size() * matrix.d * MM
    return Word(thing.extract().strip(), left * MM, right * MM, matrix.f * MM, size)


def _stroke(thing: pdfium.PdfObject) -> Stroke:
    x, y, weight = ctypes.c_float(), ctypes.c_float(), ctypes.c_float()
    matrix, spots = thing.get_matrix(), []
    for number in range(raw.FPDFPath_CountSegments(thing)):
        raw.FPDFPathSegment_GetPoint(raw.FPDFPath_GetPathSegment(thing, number), x, y)
        spots.append(matrix.on_point(x.value, y.value))
    raw.FPDFPageObj_GetStrokeWidth(thing, weight)
    return Stroke(np.array(spots) * MM, weight.value * matrix.a * MM)


def from_svg(svg: str) -> Printed:
    """Read a drawing as XML."""
    root = ET.fromstring(svg)  # noqa: S314
    width, height = (float(root.get(side, "").removesuffix("mm")) for side in ("width", "height"))
    assert root.get("viewBox") == f"0 0 {root.get('width', '')[:-2]} {root.get('height', '')[:-2]}"
    words = tuple(
        Word("".join(t.itertext()), _number(t, "x"), _number(t, "x"), height - _number(t, "y"),
             _number(t, "font-size"))
        for t in root.iter(f"{SVG}text")
    )  # fmt: skip
    strokes = tuple(
        Stroke(_corners(p.get("d", ""), height), float(p.get("stroke-width", 0)))
        for p in root.iter(f"{SVG}path")
        if p.get("d", "").count("L") < _LONGEST
    )
    return Printed(width, height, words, strokes)


def _number(element: ET.Element, name: str) -> float:
    return float(element.get(name, "nan"))


def _corners(path: str, height: float) -> NDArray[np.float64]:
    numbers = np.array(re.findall(r"-?[\d.]+", path), dtype=np.float64).reshape(-1, 2)
    closed = np.vstack((numbers, numbers[:1])) if path.endswith("Z") else numbers
    return np.column_stack((closed[:, 0], height - closed[:, 1]))
