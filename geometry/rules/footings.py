"""Rules on strip footings: size, how far they stand out, depth, cover of bars, the width table."""

from dataclasses import dataclass
from math import ceil
from typing import Literal

from geometry.rules.limit import Limit
from geometry.sources import Source
from geometry.units import FOOT, INCH, to_unit

_SIZE = Source("IRC", "2021", "R403.1.1", sure="second-hand")
_DEPTH = Source("IRC", clause="R403.1.4")
_FROST = Source("IRC", clause="R403.1.4.1; the depth is the local office's")
_COVER = Source("ACI 318-19", clause="Table 20.5.1.3.1 (cast against earth)")

WIDTH = Limit(
    "footing-width", "footing 12 in wide or more",
    "A narrower strip presses harder on the ground than the code's soils are taken to bear.",
    _SIZE, least=12 * INCH,
)  # fmt: skip
THICKNESS = Limit(
    "footing-thickness", "footing 6 in thick or more",
    "A thin strip cracks along the wall's face.", _SIZE, least=6 * INCH,
)  # fmt: skip
STANDS_OUT = Limit(
    "footing-stands-out", "footing standing out 2 in or more beyond the wall",
    "The forms of the wall need a ledge to stand on.", _SIZE, least=2 * INCH,
)  # fmt: skip
GROUND = Limit(
    "footing-ground", "footings on ground that was not dug, or on fill an engineer asked for",
    "Loose fill settles, and the wall over it cracks; washed stone hands its load on to the pipe.",
    Source("IRC", clause="R403.1", sure="second-hand"), code="",
)  # fmt: skip
DEPTH = Limit(
    "footing-depth", "bottom of footing 12 in or more below the undisturbed ground",
    "Ground nearer the top is loose, dries and is washed out.", _DEPTH, least=12 * INCH,
)  # fmt: skip
COVER = Limit(
    "bar-cover", "3 in of concrete round bars where it is cast against earth",
    "Earth eats into the face of the concrete, and steel with too little cover rusts.",
    _COVER, least=3 * INCH,
)  # fmt: skip


def projection(thickness_m: float) -> Limit:
    """Return how far a footing of a thickness may stand out beyond the wall."""
    return Limit(
        "footing-projection", "footing standing out no farther than it is thick",
        "Without bars across, what stands out farther breaks off along the wall.",
        _SIZE, most=thickness_m,
    )  # fmt: skip


def frost(depth_m: float) -> Limit:
    """Return the depth below finished grade that the local frost asks for."""
    return Limit(
        "footing-frost", "bottom of footing at the local frost depth or lower",
        "Wet ground that freezes under a footing lifts it, and drops it in spring.",
        _FROST, least=depth_m,
    )  # fmt: skip


@dataclass(frozen=True)
class TableSize:
    """A footing's size by the code's table, metres. column: the soil's bearing it is for."""

    width_m: float
    thickness_m: float
    column: str
    source: Source

    def thickness_for(self, wall_m: float) -> float:
        """Return the thickness that this width needs under a wall: what stands out, at least.

        The table alone can break the rule on what stands out: 23 x 6 in under an 8 in wall does.
        """
        return max(self.thickness_m, (self.width_m - wall_m) / 2)


Under = Literal["slab", "basement"]

_TABLE = "Table R403.1(1), light frame, 30 psf of snow, house 32 ft wide"
_SEEN = Source("IRC", "2015 and later", f"{_TABLE}, 2,000 psf")
_RECALLED = Source("IRC", "2015 and later", f"{_TABLE}, 1,500 psf", sure="memory")
# Inches, width and thickness, by stories: 2,000 psf as seen; 1,500 psf from memory.
_SIZES: dict[int, dict[tuple[int, Under], tuple[int, int]]] = {
    2000: {
        (1, "slab"): (12, 6), (1, "basement"): (14, 6), (2, "slab"): (12, 6),
        (2, "basement"): (17, 6), (3, "slab"): (12, 6), (3, "basement"): (20, 6),
    },
    1500: {
        (1, "slab"): (12, 6), (1, "basement"): (19, 6), (2, "slab"): (12, 6),
        (2, "basement"): (23, 6), (3, "slab"): (15, 6), (3, "basement"): (26, 8),
    },
}  # fmt: skip
_MOST_SNOW_PSF, _TABLE_HOUSE_M = 30.0, 32 * FOOT


def table_size(
    stories: int, under: Under, bearing_pa: float, snow_pa: float, house_m: float
) -> TableSize | None:
    """Return the table's size; None for ground or snow whose column is not at hand.

    A house wider than the table's asks 2 in of width and 1 in of thickness for each 2 ft more; for
    a narrower one nothing is taken off.
    """
    bearing = to_unit(bearing_pa, "Pa", "lbf/ft**2")
    columns = [column for column in _SIZES if column <= bearing * (1 + 1e-6)]
    if not columns or to_unit(snow_pa, "Pa", "lbf/ft**2") > _MOST_SNOW_PSF * (1 + 1e-6):
        return None
    column = max(columns)
    wide, thick = _SIZES[column][stories, under]
    more = max(0, ceil((house_m - _TABLE_HOUSE_M) / (2 * FOOT) - 1e-6))
    source = _SEEN if column == 2000 else _RECALLED
    size = (wide + 2 * more) * INCH, (thick + more) * INCH
    return TableSize(*size, f"{column:,} psf", source)
