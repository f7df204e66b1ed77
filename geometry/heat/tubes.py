"""Heat downward from a slab with warm tubes, for what it gives to the room."""

from dataclasses import dataclass

from geometry.formulas.ground_heat import INSIDE_DOWN
from geometry.formulas.radiant_floor import UPWARD, heat_downward
from geometry.heat.buildup import Resisting

OUTPUTS_W_M2 = (30.0, 60.0, 90.0)
"""What a floor gives to its room: little, usual, and about the most bare feet bear."""


@dataclass(frozen=True)
class BelowTubes:
    """What goes down for what goes up, W/m2; share: of all that the tubes give off."""

    up_w_m2: float
    down_w_m2: float
    share: float


def below_tubes(
    layers: tuple[Resisting, ...], slab: int, u_floor: float, inside_c: float, outside_c: float
) -> tuple[BelowTubes, ...]:
    """Return the heat downward for each usual output.

    slab: number of the layer the tubes lie in, in its middle. u_floor: of the whole floor with the
    ground under it, W/m2K, at the year's mean outside.
    """
    half = (layers[slab].resistance or 0.0) / 2
    over = half + sum(layer.resistance or 0.0 for layer in layers[slab + 1 :])
    # Down to the year's mean: all there is, less what lies over the tubes.
    below = 1 / u_floor - INSIDE_DOWN - over
    found = []
    for up in OUTPUTS_W_M2:
        down = heat_downward(up, UPWARD + over, max(below, half), inside_c, outside_c)
        found.append(BelowTubes(up, down, down / (up + down)))
    return tuple(found)
