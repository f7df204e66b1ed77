"""Tape for joints of foam and laps of sheet: rolls to buy."""

from collections.abc import Sequence
from typing import Literal

from geometry.project import Design
from geometry.takeoff.row import Part, Row
from geometry.takeoff.sticks import rolls
from geometry.takeoff.usual import factor


def tape_row(design: Design, group: Literal["foam", "sheet"], parts: Sequence[Part]) -> Row:
    """Return the row of tape for lengths in metres, area by area."""
    roll = factor(design, "board.tape" if group == "foam" else "sheet.tape")
    length = sum(p.in_place for p in parts)
    return Row(
        group, f"Tape for {group}", "tape", "", length, "m", (roll,), length, "roll",
        rolls(length, roll.value), tuple(parts),
    )  # fmt: skip
