"""Shots at one place: the same level is dropped, another level is a fault."""

import numpy as np

from geometry.project import Design
from geometry.survey.shots import Ints, Marks, ShotFault, Shots, some
from geometry.units import INCH, show_length

# Two readings of one place differ by less than this (common practice, no source).
SAME_LEVEL_M = 0.25 * INCH
_TO_MM = 1000.0
_HALF = 1 << 20


def without_doubles(shots: Shots, design: Design) -> Shots:
    """Return the shots with the first alone of those that lie at one place, to the millimetre."""
    if len(shots) < 2:
        return shots
    first = _first(_places(shots))
    again: Marks = first != np.arange(len(shots))
    if not again.any():
        return shots
    apart = np.abs(shots.level - shots.level[first])
    system = design.project.units
    faults = [
        ShotFault(
            f"it lies where row {shots.row[first[n]]} lies, but {show_length(apart[n], system)} "
            f"{'higher' if shots.level[n] > shots.level[first[n]] else 'lower'}; "
            "the first is used, look which is right",
            int(shots.row[n]),
        )
        for n in np.flatnonzero(again & (apart > SAME_LEVEL_M))
    ]
    same = int(np.count_nonzero(again)) - len(faults)
    said = some(faults, "lie where another lies at another level")
    if same:
        words = "shot repeats" if same == 1 else "shots repeat"
        said.append(ShotFault(f"{same:,} {words} another at its place and level; "
                              "counted once", weight="note"))  # fmt: skip
    return shots.kept(~again, said)


def _places(shots: Shots) -> Ints:
    """Return a number for each place and thing shot."""
    across = np.rint(shots.x * _TO_MM).astype(np.int64) + _HALF
    up = np.rint(shots.y * _TO_MM).astype(np.int64) + _HALF
    places: Ints = ((across << 21) | up) * max(1, len(shots.whats)) + shots.code
    return places


def _first(places: Ints) -> Ints:
    """Return the index of the first shot at each shot's place."""
    order = np.argsort(places, kind="stable")
    ordered = places[order]
    begins = np.flatnonzero(np.concatenate(([True], ordered[1:] != ordered[:-1])))
    if len(begins) == len(places):
        return np.arange(len(places))
    first = np.empty(len(places), np.int64)
    first[order] = np.repeat(order[begins], np.diff([*begins, len(places)]))
    return first
