"""The cut that is looked at: a telling one by its name, or corners that were typed or drawn."""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import Any

import streamlit as st

from geometry.errors import BedcourseError, LengthError
from geometry.plan.outline import Point
from geometry.sections.drawn import squared, whole
from geometry.sections.face import CutLine
from geometry.units import read_length, show_length
from viz.job import Job
from viz.panels.spoken import said
from viz.words import CUTS

OWN = "own"
# Keys of the widgets, and of what outlasts them while another view is shown.
CUT, FROM, TO, VIA = "cut", "cut from", "cut to", "cut via"
_ASKED = "cut asked"


@dataclass(frozen=True)
class Asked:
    """A cut by its name; for one of the user's own, its places as they are written."""

    name: str
    start: str = ""
    end: str = ""
    via: str = ""


def asked(work: Job) -> Asked:
    """Return the cut asked for; the most telling one at first, or where a design lacks it."""
    found = st.session_state.get(_ASKED)
    if isinstance(found, Asked) and (found.name == OWN or found.name in work.cuts):
        return found
    return Asked(next(iter(work.cuts)))


def names() -> dict[str, str]:
    """Return the cuts' names in the list of cuts."""
    found = {cut: said(name).removeprefix(said("Section")).strip() for cut, name in CUTS.items()}
    return {**found, OWN: said("Two points of my own")}


def choose(work: Job, name: str) -> None:
    """Take a telling cut; or the user's own, which starts from the cut shown before."""
    before = asked(work)
    if name != OWN:
        st.session_state[_ASKED] = replace(before, name=name)
    elif before.start:
        st.session_state[_ASKED] = replace(before, name=OWN)
    else:
        _write(work, work.cuts[before.name].path)


def typed() -> None:
    """Take what the fields say."""
    said = (str(st.session_state.get(key, "")).strip() for key in (FROM, TO, VIA))
    st.session_state[_ASKED] = Asked(OWN, *said)


def drawn(work: Job, said: Any) -> None:
    """Take a line drawn on the plan: corners in metres, which one moved, whether all are new."""
    try:
        path = [(float(x), float(y)) for x, y in said["points"]]
        moved, fresh = int(said["moved"]), bool(said["fresh"])
        neighbour = moved - 1 if moved else 1
        if fresh:
            path[neighbour] = whole(path[neighbour], work.system)
        path[moved] = squared(path[moved], path[neighbour], work.system)
    except (TypeError, ValueError, ArithmeticError, LookupError):
        return
    _write(work, path)


def turn_round(work: Job) -> None:
    """Look at the cut from its other side."""
    _write(work, line(work).path[::-1])


def _write(work: Job, path: Sequence[Point]) -> None:
    first, *middle, last = (_words(work, corner) for corner in path)
    st.session_state[_ASKED] = Asked(OWN, first, last, "; ".join(middle))


def _words(work: Job, at: Point) -> str:
    return ", ".join(show_length(size, work.system) for size in at)


def corners(work: Job) -> tuple[Point, ...]:
    """Return the cut's corners, metres; none where one of them cannot be read."""
    try:
        return _corners(work)
    except LengthError:
        return ()


def line(work: Job) -> CutLine:
    """Return the cut. Raises BedcourseError, in one sentence, for one that cannot be drawn."""
    first, *jogs, last = _corners(work)
    if len(jogs) == 0 and first == last:
        raise BedcourseError("the two points are one; a cut needs two places")
    return CutLine(first, last, tuple(jogs))


def _corners(work: Job) -> tuple[Point, ...]:
    said = asked(work)
    if said.name != OWN:
        return work.cuts[said.name].path
    via = [piece for piece in said.via.split(";") if piece.strip()]
    return tuple(_place(work, text) for text in (said.start, *via, said.end))


def _place(work: Job, text: str) -> Point:
    pieces = text.split(",")
    if len(pieces) != 2:
        raise LengthError(f"{text.strip()!r} is not a place; write x, y like 12 ft, 6 ft 6 in")
    bare = work.layout.design.project.numbers
    x, y = (read_length(piece.strip(), bare) for piece in pieces)
    return x, y
