"""Edits of the plan in the design file's text.

Each takes the text and returns it changed: places that moved are written anew in the way they
stood, all else stays letter by letter. Numbers count from 0, as they stand in the file. Each
raises DesignError with a sentence where the text cannot be changed so.
"""

from collections.abc import Callable, Iterator
from contextlib import contextmanager
from typing import Any

import tomlkit
from tomlkit.exceptions import TOMLKitError

from geometry.errors import BedcourseError, DesignError, Fault
from geometry.faults.lines import Path
from geometry.faults.places import in_words, inside
from geometry.faults.text import raw_design
from geometry.plan import edits
from geometry.plan.edits import Outlines
from geometry.plan.outline import Point
from geometry.planfile.numbers import drains_with_corner, drains_without_corner
from geometry.planfile.read import bare_of, place_of, plan_of, system_of, written
from geometry.units import FOOT, INCH, BareUnit, System, read_length

SNAP: dict[System, float] = {"ft-in": INCH, "metric": 0.010}
"""The step a corner, pier or pit that is moved by hand keeps to, metres."""

_METRES: dict[BareUnit, float] = {"m": 1.0, "mm": 0.001, "ft": FOOT, "in": INCH}
_SAME = 1e-7
# Which of the file's corners each corner that can be read is, by area.
_Numbers = list[list[int]]


def corner_to(text: str, area: int, corner: int, to: Point) -> str:
    """Return the text with a corner moved, in every area that has it."""
    return _moved(text, area, corner, lambda all_, n: edits.moved(all_, area, n, to))


def side_to(text: str, area: int, side: int, words: str) -> str:
    """Return the text with a side of the length that is typed, by the rule of `plan.edits`."""
    raw = raw_design(text)
    with _refusing(("area", area, "corners"), raw):
        size = read_length(words, bare_of(raw))
    return _moved(text, area, side, lambda all_, n: edits.with_length(all_, area, n, size))


def corner_added(text: str, area: int, side: int, at: Point) -> str:
    """Return the text with one corner more on a side, in every area that has the side there.

    Drains keep to their sides and corners: the numbers they name are counted anew.
    """
    raw = raw_design(text)
    outlines, numbers = _outlines(raw)
    _, places = edits.with_corner(outlines, area, _number(raw, numbers, area, side), at)
    document = _parsed(text)
    for place, number in enumerate(places):
        if number >= 0:
            corners = document["area"][place]["corners"]
            after = numbers[place][number - 1] + 1
            corners.insert(after, _said(corners[after - 1], None, at, raw))
            drains_with_corner(document, raw, place, after)
    return tomlkit.dumps(document)


def corner_removed(text: str, area: int, corner: int) -> str:
    """Return the text less one corner; drains' numbers are counted anew as in `corner_added`."""
    raw = raw_design(text)
    outlines, numbers = _outlines(raw)
    number = _number(raw, numbers, area, corner)
    with _refusing(("area", area, "corners"), raw):
        _, places = edits.without_corner(outlines, area, number)
    document = _parsed(text)
    for place, found in enumerate(places):
        if found >= 0:
            lost = numbers[place][found]
            corners = document["area"][place]["corners"]
            count = len(corners)
            del corners[lost]
            drains_without_corner(document, raw, place, lost, count)
    return tomlkit.dumps(document)


def pier_to(text: str, area: int, pier: int, to: Point) -> str:
    """Return the text with a pier's centre moved."""
    return _placed(text, ("area", area, "pier", pier), to)


def pit_to(text: str, to: Point) -> str:
    """Return the text with the sump pit's centre moved."""
    return _placed(text, ("sump",), to)


def _moved(text: str, area: int, number: int, how: Callable[[Outlines, int], Outlines]) -> str:
    raw = raw_design(text)
    before, numbers = _outlines(raw)
    known = _number(raw, numbers, area, number)
    with _refusing(("area", area, "corners"), raw):
        after = how(before, known)
    document = _parsed(text)
    for place, (old, new) in enumerate(zip(before, after, strict=True)):
        for n, (was, now) in enumerate(zip(old, new, strict=True)):
            if not _same(was, now):
                corners = document["area"][place]["corners"]
                at = numbers[place][n]
                corners[at] = _said(corners[at], was, now, raw)
    return tomlkit.dumps(document)


def _outlines(raw: Any) -> tuple[Outlines, _Numbers]:
    """Return each area's corners that can be read, and which of the file's corners they are."""
    areas = plan_of(raw).areas
    numbers = [[n for n, c in enumerate(a.corners) if c is not None] for a in areas]
    return tuple(tuple(c for c in a.corners if c is not None) for a in areas), numbers


def _number(raw: Any, numbers: _Numbers, area: int, corner: int) -> int:
    """Return the number of the file's corner among those that can be read."""
    if not 0 <= area < len(numbers) or corner not in numbers[area] or len(numbers[area]) < 2:
        sentence = "this corner cannot be read in the file; write it there first, like 24 ft, 12 ft"
        raise DesignError((Fault(in_words(("area", area, "corners"), raw), sentence),))
    return numbers[area].index(corner)


def _placed(text: str, path: Path, to: Point) -> str:
    raw = raw_design(text)
    document = _parsed(text)
    with _refusing(path, raw):
        table = inside(document, path)
        if not isinstance(table, dict):
            raise BedcourseError("there is nothing here to be moved")
        old = table.get("at")
        table["at"] = _said(old, place_of(_plain(old), bare_of(raw)), to, raw)
    return tomlkit.dumps(document)


def _said(old: Any, was: Point | None, now: Point, raw: Any) -> Any:
    """Return a place in the file's own way, what did not move of it as it stood."""
    bare, system = bare_of(raw), system_of(raw)
    if not isinstance(old, str) and bare is not None:
        return [_figure(size, bare) for size in now]
    words = [written(size, system) for size in now]
    if was is not None and isinstance(old, str):
        kept = zip(old.split(","), words, was, now, strict=True)
        words = [o.strip() if abs(a - b) < _SAME else w for o, w, a, b in kept]
    return ", ".join(words)


def _figure(metres: float, bare: BareUnit) -> int | float:
    figure = round(metres / _METRES[bare], 6)
    return int(figure) if figure == int(figure) else figure


def _plain(value: Any) -> Any:
    return value.unwrap() if hasattr(value, "unwrap") else value


def _same(one: Point, two: Point) -> bool:
    return max(abs(one[0] - two[0]), abs(one[1] - two[1])) < _SAME


def _parsed(text: str) -> Any:
    try:
        return tomlkit.parse(text)
    except TOMLKitError as error:
        raise DesignError((Fault("design", f"cannot be changed here: {error}"),)) from None


@contextmanager
def _refusing(path: Path, raw: Any) -> Iterator[None]:
    """Turn a sentence about an edit into a fault of the design, at its place."""
    try:
        yield
    except DesignError:
        raise
    except BedcourseError as error:
        raise DesignError((Fault(in_words(path, raw), str(error)),)) from None
