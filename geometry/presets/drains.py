"""Ways to drain the footing: which drains there are, and where the water leaves."""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Literal

from geometry.sources import PRACTICE, Source


@dataclass(frozen=True)
class DrainPreset:
    """Which drains there are and where the water leaves; about: who builds it so and why."""

    key: str
    name: str
    about: str
    outside: bool
    inside: bool
    outlet: Literal["pit", "daylight"]
    source: Source = PRACTICE


DRAINS: Mapping[str, DrainPreset] = {
    drain.key: drain
    for drain in (
        DrainPreset(
            "outside-pit", "Outside, to a pit",
            "New houses on flat lots: water is caught before the wall and pumped from a pit in "
            "the floor.",
            True, False, "pit",
        ),
        DrainPreset(
            "outside-daylight", "Outside, to daylight",
            "Houses on a slope: the pipe falls until it leaves the hillside, with no pump to fail.",
            True, False, "daylight",
        ),
        DrainPreset(
            "inside-pit", "Inside, to a pit",
            "Houses that stand already, or tight lots: the pipe lies under the floor's edge and "
            "nothing is dug outside.",
            False, True, "pit",
        ),
        DrainPreset(
            "both-pit", "Outside and inside, joined by bleeders, to a pit",
            "Wet ground: short pipes through the footing let the outside drain empty into the "
            "inside one and its pit.",
            True, True, "pit",
        ),
        DrainPreset(
            "both-daylight", "Outside and inside, joined by bleeders, to daylight",
            "Wet ground on a slope: the inside drain empties through the footing into the outside "
            "one, which leaves the hillside.",
            True, True, "daylight",
        ),
    )
}  # fmt: skip
