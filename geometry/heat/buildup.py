"""How well a floor's layers keep heat: each one's thermal resistance."""

from dataclasses import dataclass

from geometry.materials.catalogue import BOARDS, CONCRETES
from geometry.parts.floor import Floor, Layer
from geometry.sources import Source

SAND_OR_GRAVEL = 2.0
"""Thermal conductivity of sand or gravel, W/mK, source BULK_SOURCE."""

BULK_SOURCE = Source(
    "ISO 13370", clause="sand or gravel 2.0 W/mK; a base under the slab is ground", sure="memory"
)


@dataclass(frozen=True)
class Resisting:
    """One layer of a floor. resistance: m2K/W, None for what is counted as ground."""

    name: str
    material: str
    thickness_m: float
    resistance: float | None


def resisting(floor: Floor) -> tuple[Resisting, ...]:
    """Return a floor's layers from the bottom up.

    Stone and sand under the lowest board or slab count as ground; sheets are too thin to count.
    """
    shut = [n for n, x in enumerate(floor.layers) if x.role in ("insulation", "slab")]
    first = shut[0] if shut else len(floor.layers)
    return tuple(
        Resisting(x.name, x.material, x.thickness, _of(x) if n >= first else None)
        for n, x in enumerate(floor.layers)
    )


def resistance(layers: tuple[Resisting, ...]) -> float:
    """Return the resistance of all layers, m2K/W, no surface counted."""
    return sum(layer.resistance or 0.0 for layer in layers)


def insulation(floor: Floor) -> float:
    """Return the resistance of a floor's boards alone, m2K/W."""
    boards = [_of(x) for x in floor.layers if x.role == "insulation"]
    return sum(value or 0.0 for value in boards)


def bare(floor: Floor) -> float:
    """Return the resistance where the slab stands on concrete without a board, m2K/W."""
    return sum(_of(x) or 0.0 for x in floor.layers if x.role == "slab")


def _of(layer: Layer) -> float | None:
    board, concrete = BOARDS.get(layer.material), CONCRETES.get(layer.material)
    if board:
        return board.r_per_m * layer.thickness
    if concrete:
        return concrete.r_per_m * layer.thickness
    return None if layer.role == "retarder" else layer.thickness / SAND_OR_GRAVEL
