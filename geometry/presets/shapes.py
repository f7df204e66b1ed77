"""Shapes of a foundation by a few named sizes: rectangle, L, T, U, rectangle with a deeper part.

Sizes are of the outside faces of the foundation walls; corners run counter-clockwise from 0, 0.
The usual sizes are invented houses, to begin with.
"""

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass

from geometry.errors import DesignError, Fault, LengthError
from geometry.plan.edits import Outline
from geometry.planfile.read import place_words
from geometry.units import FOOT, BareUnit, System, read_length, show_length

Sizes = Mapping[str, float]
SMALLEST_M, LARGEST_M = 4 * FOOT, 250 * FOOT
# A part narrower than this holds no footings with a floor between them.
NARROWEST_M = 4 * FOOT


@dataclass(frozen=True)
class Size:
    """One size of a shape: its key, its label, and the usual one in both systems of units."""

    key: str
    label: str
    feet: str
    metric: str

    def usual(self, system: System) -> str:
        """Return the size to begin with, as text."""
        return self.metric if system == "metric" else self.feet


@dataclass(frozen=True)
class Rest:
    """What sizes leave of a whole one: the whole's key, the parts' keys, what the rest is called.

    least: metres the rest must have.
    """

    whole: str
    parts: tuple[str, ...]
    name: str
    least: float = NARROWEST_M


@dataclass(frozen=True)
class Shape:
    """A shape: its sizes, the outlines they give (the first one drained), what must be left over.

    about: one sentence for who chooses it. step: key of the size by which the second outline's
    top of footing lies above the first's.
    """

    key: str
    name: str
    about: str
    sizes: tuple[Size, ...]
    outlines: Callable[[Sizes], tuple[Outline, ...]]
    rests: tuple[Rest, ...] = ()
    step: str = ""


_WIDTH = Size("width", "Overall width", "36 ft", "11 m")
_DEPTH = Size("depth", "Overall depth", "28 ft", "8.5 m")


def _rectangle(size: Sizes) -> tuple[Outline, ...]:
    w, d = size["width"], size["depth"]
    return (((0, 0), (w, 0), (w, d), (0, d)),)


def _ell(size: Sizes) -> tuple[Outline, ...]:
    w, d, leg, body = (size[key] for key in ("width", "depth", "leg", "body"))
    return (((0, 0), (w, 0), (w, body), (leg, body), (leg, d), (0, d)),)


def _tee(size: Sizes) -> tuple[Outline, ...]:
    w, d, body, start, leg = (size[key] for key in ("width", "depth", "body", "start", "leg"))
    far = start + leg
    return (
        ((0, 0), (w, 0), (w, body), (far, body), (far, d), (start, d), (start, body), (0, body)),
    )


def _you(size: Sizes) -> tuple[Outline, ...]:
    w, d, body, left, right = (size[key] for key in ("width", "depth", "body", "left", "right"))
    far = w - right
    return (((0, 0), (w, 0), (w, d), (far, d), (far, body), (left, body), (left, d), (0, d)),)


def _deeper(size: Sizes) -> tuple[Outline, ...]:
    w, d, part = size["width"], size["depth"], size["part"]
    low: Outline = ((0, 0), (part, 0), (part, d), (0, d))
    return (low, ((part, 0), (w, 0), (w, d), (part, d)))


SHAPES: Mapping[str, Shape] = {
    shape.key: shape
    for shape in (
        Shape(
            "rectangle", "Rectangle", "The shortest footing and drain for its floor.",
            (_WIDTH, _DEPTH), _rectangle,
        ),
        Shape(
            "l", "L", "A long part with a leg at its left end, as with a garage in the corner.",
            (
                Size("width", "Overall width", "42 ft", "12.6 m"),
                Size("depth", "Overall depth", "32 ft", "9.6 m"),
                Size("leg", "Width of the leg", "26 ft", "7.8 m"),
                Size("body", "Depth of the long part", "18 ft", "5.4 m"),
            ),
            _ell,
            (Rest("width", ("leg",), "width"), Rest("depth", ("body",), "depth")),
        ),
        Shape(
            "t", "T", "A long part with a leg out of its back.",
            (
                Size("width", "Overall width", "44 ft", "13.2 m"),
                Size("depth", "Overall depth", "34 ft", "10.2 m"),
                Size("body", "Depth of the long part", "18 ft", "5.4 m"),
                Size("start", "From the left end to the leg", "14 ft", "4.2 m"),
                Size("leg", "Width of the leg", "16 ft", "4.8 m"),
            ),
            _tee,
            (Rest("width", ("start", "leg"), "width"), Rest("depth", ("body",), "depth")),
        ),
        Shape(
            "u", "U", "Two wings round a court at the back.",
            (
                Size("width", "Overall width", "48 ft", "14.4 m"),
                Size("depth", "Overall depth", "34 ft", "10.2 m"),
                Size("body", "Depth between the wings", "18 ft", "5.4 m"),
                Size("left", "Width of the left wing", "16 ft", "4.8 m"),
                Size("right", "Width of the right wing", "16 ft", "4.8 m"),
            ),
            _you,
            (
                # Drain stone stands along both sides of the court.
                Rest("width", ("left", "right"), "width", 8 * FOOT),
                Rest("depth", ("body",), "depth"),
            ),
        ),
        Shape(
            "deeper", "Step down",
            "A rectangle of which one part lies deeper; levels count from that part's footing.",
            (
                _WIDTH,
                _DEPTH,
                Size("part", "Width of the deeper part", "22 ft", "6.6 m"),
                Size("step", "How much deeper", "3 ft", "900 mm"),
            ),
            _deeper,
            (Rest("width", ("part",), "width"),),
            step="step",
        ),
    )
}  # fmt: skip


def sized(shape: Shape, words: Mapping[str, str], system: System, bare: BareUnit | None) -> Sizes:
    """Return a shape's sizes, metres; what is not given is usual.

    Raises DesignError with a sentence for each size that cannot be.
    """
    faults, found = [], {}
    for size in shape.sizes:
        said = words.get(size.key, "").strip() or size.usual(system)
        try:
            found[size.key] = read_length(said, bare)
        except LengthError as error:
            faults.append(_fault(size, str(error)))
            continue
        if size.key != shape.step and not SMALLEST_M <= found[size.key] <= LARGEST_M:
            least, most = (show_length(limit, system) for limit in (SMALLEST_M, LARGEST_M))
            faults.append(_fault(size, f"{said} is out of range; give {least} to {most}"))
        elif size.key == shape.step and not 0 < found[size.key] <= 20 * FOOT:
            faults.append(_fault(size, f"{said} is no step down; give a length such as 3 ft"))
    faults += [] if faults else _crowded(shape, found, system)
    if faults:
        raise DesignError(tuple(faults))
    return found


def corners_of(shape: Shape, sizes: Sizes, system: System) -> list[list[str]]:
    """Return the corners of each of a shape's outlines as the file writes them: "x, y"."""
    return [[place_words(at, system) for at in outline] for outline in shape.outlines(sizes)]


def _crowded(shape: Shape, sizes: Sizes, system: System) -> Iterator[Fault]:
    """Yield what leaves too little of a whole size."""
    by_key = {size.key: size for size in shape.sizes}
    for rest in shape.rests:
        left = sizes[rest.whole] - sum(sizes[key] for key in rest.parts)
        if left < rest.least - 1e-9:
            last = rest.parts[-1]
            most = sizes[last] + left - rest.least
            whole, least = (show_length(m, system) for m in (sizes[rest.whole], rest.least))
            wanted = (
                f"make it at most {show_length(most, system)}"
                if most >= SMALLEST_M
                else f"make the overall {rest.name} larger"
            )
            yield _fault(
                by_key[last],
                f"it leaves less than {least} of the overall {rest.name} of {whole}; {wanted}",
            )


def _fault(size: Size, sentence: str) -> Fault:
    return Fault(size.label, sentence)
