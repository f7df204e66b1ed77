"""Heat that a floor's warm tubes send down: EN 1264-2, its rule on heat downward.

SI: W/m2, m2K/W, degrees Celsius. The rule is printed there for a room below; under a slab on the
ground the room below is the year's mean outside, and the ground's resistance is counted with the
layers (from memory, with a published account of EN 1264-2:2013, 8).
"""

from geometry.formulas.given import not_negative, positive

UPWARD = 1 / 10.8
"""Resistance from a warm floor to the room, m2K/W: EN 1264-2, 10.8 W/m2K (from memory)."""


def heat_downward(
    up_w_m2: float, above: float, below: float, inside_c: float, under_c: float
) -> float:
    """Return what goes down for what goes up, W/m2; the tubes' level is warmed by what goes up.

    above, below: resistance from the tubes to the room and to what is under, m2K/W. Raises
    ValueError for resistances that are not positive or a floor that gives off less than nothing.
    """
    positive(above=above, below=below)
    not_negative(up_w_m2=up_w_m2)
    return (up_w_m2 * above + inside_c - under_c) / below
