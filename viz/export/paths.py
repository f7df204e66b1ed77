"""Polylines and areas as the path operators of a file format, many numbers in one step."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from functools import cache
from itertools import chain
from typing import TypeAlias
from unicodedata import category, normalize

import numpy as np
import shapely
from numpy.typing import NDArray

from viz.drawing.marks import Area, Point

Coordinates: TypeAlias = NDArray[np.float64]
# Controls, marks of direction and the like, halves of a character.
_UNSEEN = ("Cc", "Cf", "Cs")


@dataclass(frozen=True, eq=False)
class Grammar:
    """How a format writes a path: formats of two numbers, how it closes, and its decimals."""

    move: str
    line: str
    close: str
    decimals: int


def path(
    lines: Sequence[Sequence[Point]], place: Callable[[Coordinates], Coordinates], grammar: Grammar
) -> str:
    """Return moves and lines; a ring is closed, so that its joints are all alike.

    place: (n, 2) millimetres of paper to the units of the file.
    """
    points = np.array(list(chain.from_iterable(lines)), dtype=np.float64).reshape(-1, 2)
    # Adding zero turns -0.0 into 0.0.
    numbers = (np.round(place(points), grammar.decimals) + 0.0).ravel().tolist()
    written, start = [], 0
    for count in map(len, lines):
        end = start + 2 * count
        closed = count > 3 and numbers[start : start + 2] == numbers[end - 2 : end]
        words = _words(grammar, count - 1 if closed else count, closed)
        written.append(words % tuple(numbers[start : end - 2 if closed else end]))
        start = end
    return "".join(written)


@cache
def _words(grammar: Grammar, count: int, closed: bool) -> str:
    steps = grammar.move + grammar.line * (count - 1)
    return steps + grammar.close if closed else steps


def rings(shape: Area) -> tuple[Sequence[Point], ...]:
    """Return the closed outlines of an area, of its holes too."""
    found = shapely.get_rings(shapely.get_parts(shape))
    return tuple(shapely.get_coordinates(ring).tolist() for ring in found)


def printable(words: str) -> str:
    """Return text as every file may hold it, its accents joined to their letters.

    Characters that control a device, turn the direction of reading or are half a character
    are dropped.
    """
    if words.isprintable() and words.isascii():
        return words
    kept = (sign for sign in words if category(sign) not in _UNSEEN and sign not in "\ufffe\uffff")
    return normalize("NFC", "".join(kept))
