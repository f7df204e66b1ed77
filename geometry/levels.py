"""Levels against the datum: the stack of layers placed by one tie."""

from collections.abc import Sequence
from dataclasses import dataclass
from functools import cached_property

SUBGRADE = "subgrade"
FINISHED_FLOOR = "finished floor"


@dataclass(frozen=True)
class Stack:
    """Layers from the bottom up between levels, metres against one datum.

    names: n layer names. levels: n + 1 interfaces, the first the subgrade.
    """

    names: tuple[str, ...]
    levels: tuple[float, ...]

    @cached_property
    def interfaces(self) -> dict[str, float]:
        """Level of every interface by name: `foam bottom`, `foam top`, subgrade, finished floor."""
        named = {SUBGRADE: self.levels[0], FINISHED_FLOOR: self.levels[-1]}
        for name, bottom, top in zip(self.names, self.levels, self.levels[1:], strict=False):
            named[f"{name.lower()} bottom"] = bottom
            named[f"{name.lower()} top"] = top
        return named

    def moved(self, by: float) -> "Stack":
        """Return the stack raised by a height in metres."""
        return Stack(self.names, tuple(level + by for level in self.levels))


def stack(
    names: Sequence[str], thicknesses: Sequence[float], interface: str, level: float
) -> Stack:
    """Place layers so that one named interface lies at a level.

    names, thicknesses: n, from the bottom up; metres. The sum runs outward from the tied
    interface, so the tie itself is exact. Raises KeyError for an unknown interface.
    """
    at = interface_index(names, interface)
    below = [level]
    for thickness in reversed(thicknesses[:at]):
        below.append(below[-1] - thickness)
    above = [level]
    for thickness in thicknesses[at:]:
        above.append(above[-1] + thickness)
    return Stack(tuple(names), (*reversed(below), *above[1:]))


def interface_index(names: Sequence[str], interface: str) -> int:
    """Return which of the n + 1 interfaces a name means, 0 the subgrade. Raises KeyError."""
    if interface == SUBGRADE:
        return 0
    if interface == FINISHED_FLOOR:
        return len(names)
    name, _, face = interface.rpartition(" ")
    lowered = [n.lower() for n in names]
    if face not in {"top", "bottom"} or name not in lowered:
        raise KeyError(interface)
    return lowered.index(name) + (face == "top")
