"""Where a ready beginning puts the pit, and where its pipe to daylight heads."""

from collections.abc import Sequence
from math import ceil
from typing import Any

from geometry.errors import LengthError
from geometry.faults.places import inside
from geometry.plan.outline import Point
from geometry.planfile.read import bare_of, system_of
from geometry.units import FOOT, INCH, read_length

# The pipe to the pit must pass clear of the other side's footing and its bend.
_CLEAR_M, _ALONG_M = 2 * INCH, 2.5 * FOOT
_FAR_M = 60 * FOOT


def pit_reach(raw: Any) -> float:
    """Return how far a pit's centre must stand inside the wall's outside face, metres.

    That is the footing, the stone of a drain inside it, the pit's own stone and its radius. Where
    no drain runs inside, room is left for a narrow one.
    """
    reach = (_said(raw, ("footing", "width"), 20) + _said(raw, ("wall", "thickness"), 8)) / 2
    reach += _said(raw, ("sump", "diameter"), 18) / 2 + _said(raw, ("sump", "stone_beside"), 6)
    widths = (_said(d, ("stone", "width"), 16, raw) for d in _inside(raw))
    return reach + max(widths, default=12 * INCH)


def pit_place(raw: Any, corner: Point) -> Point:
    """Return a pit's centre inside the south-west corner of an outline, metres.

    It stands farther along x = 0 than along y = 0, so that the pipe to it clears the corner.
    """
    step = 0.1 if system_of(raw) == "metric" else 6 * INCH
    off = ceil((pit_reach(raw) + _CLEAR_M) / step - 1e-9) * step
    along = ceil((off + _ALONG_M) / step - 1e-9) * step
    return corner[0] + off, corner[1] + along


def toward_place(outlines: Sequence[Sequence[Point]], drained: int) -> Point:
    """Return a place well off the house, straight out from the middle of its south side, metres."""
    lowest = min(y for outline in outlines for _, y in outline)
    xs = [x for x, _ in outlines[drained]]
    return (min(xs) + max(xs)) / 2, lowest - _FAR_M


def farthest(outline: Sequence[Point], at: Point) -> int:
    """Return the number, from 1, of the corner farthest from a place."""
    gaps = [(x - at[0]) ** 2 + (y - at[1]) ** 2 for x, y in outline]
    return gaps.index(max(gaps)) + 1


def _inside(raw: Any) -> list[Any]:
    """Return the drains under the floor."""
    found = inside(raw, ("drain",))
    rows = found if isinstance(found, list) else [found]
    return [row for row in rows if inside(row, ("line",)) == "inside"]


def _said(table: Any, path: tuple[str, ...], usual_in: float, raw: Any = None) -> float:
    """Return a size a table says, metres; the usual one where it says none that can be read."""
    value = inside(table, path)
    try:
        return usual_in * INCH if value is None else read_length(value, bare_of(raw or table))
    except LengthError:
        return usual_in * INCH
