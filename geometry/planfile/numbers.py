"""Corners and sides that drains name, counted anew when an outline gains or loses a corner."""

from collections.abc import Callable, Iterator
from typing import Any

from geometry.errors import LengthError
from geometry.faults.places import inside
from geometry.planfile.read import bare_of
from geometry.units import read_length

Counted = Callable[[int], int | None]


def drains_with_corner(document: Any, raw: Any, area: int, corner: int) -> None:
    """Count anew after a corner was put in; corner: its number from 0, within a side."""
    first = corner + 1

    def side(number: int) -> list[int]:
        # The side that was parted is now two.
        parted = [number, number + 1] if number == corner else [number]
        return [n + 1 for n in parted] if number >= first else parted

    for drain in _drains_of(document, raw, area):
        _each(drain, lambda n: n + 1 if n >= first else n)
        _sides(drain, side)


def drains_without_corner(document: Any, raw: Any, area: int, corner: int, count: int) -> None:
    """Count anew after a corner was taken out; corner: its number from 0, of `count` corners."""
    lost = corner + 1

    def side(number: int) -> list[int]:
        # The two sides that met there are one, with the number of the corner before.
        if number == lost:
            return [lost - 1 if lost > 1 else count - 1]
        return [number - 1 if number > lost else number]

    for drain in _drains_of(document, raw, area):
        _each(drain, lambda n: None if n == lost else n - 1 if n > lost else n)
        _sides(drain, side)


def _each(drain: Any, new: Counted) -> None:
    for key in ("high_corner", "low_corner"):
        value = drain.get(key)
        if isinstance(value, int) and (found := new(value)) != value:
            if found is None:
                del drain[key]
            else:
                drain[key] = found
    _listed(drain, "cleanouts", lambda n: [] if (found := new(n)) is None else [found])


def _sides(drain: Any, new: Callable[[int], list[int]]) -> None:
    _listed(drain, "sides", new)


def _listed(drain: Any, key: str, new: Callable[[int], list[int]]) -> None:
    value = drain.get(key)
    if not isinstance(value, list) or not all(isinstance(n, int) for n in value):
        return
    before = [int(n) for n in value]
    after = list(dict.fromkeys(m for n in before for m in new(n)))
    if after != before:
        drain[key] = after


def _drains_of(document: Any, raw: Any, area: int) -> Iterator[Any]:
    """Yield the tables of the drains that run round an area."""
    found = document.get("drain")
    for drain in found if isinstance(found, list) else [found]:
        if isinstance(drain, dict) and drained(raw, drain) == area:
            yield drain


def drained(raw: Any, drain: Any) -> int | None:
    """Return the number of the area a drain runs round: the one it names, or the lowest."""
    areas = inside(raw, ("area",))
    rows = areas if isinstance(areas, list) else []
    bare = bare_of(raw)
    steps = [(_step(inside(a, ("step",)), bare), n) for n, a in enumerate(rows)]
    lowest = min(steps)[1] if steps else None
    named = (n for n, a in enumerate(rows) if inside(a, ("name",)) == drain.get("area"))
    return next(named, lowest)


def _step(value: Any, bare: Any) -> float:
    try:
        return 0.0 if value is None else read_length(value, bare)
    except LengthError:
        return 0.0
