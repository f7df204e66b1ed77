"""Does the foam carry the slab, what lives on the floor, and a post or wheel standing on it."""

from collections.abc import Iterator
from dataclasses import dataclass

from geometry.checks.finding import Finding, Severity
from geometry.formulas.constants import GRAVITY
from geometry.formulas.slab_on_foam import (
    PLATE_SOURCE,
    concrete_modulus,
    layered_modulus,
    plate_pressure,
    spread_pressure,
)
from geometry.layout.lay import Layout
from geometry.materials.catalogue import BOARDS, CONCRETES
from geometry.materials.kinds import Board
from geometry.parts.floor import Floor, Layer
from geometry.parts.loads import Loads
from geometry.sources import Source
from geometry.units import System, show_length, to_unit
from geometry.water.loadwords import show_force
from geometry.water.uplift import density

DEAD_SHARE, LIVE_SHARE = 1 / 3, 1 / 5
"""Parts of a board's strength that may stay on it, and that may come and go, source _SHARES."""

ROOM_PA = to_unit(40.0, "lbf/ft**2", "Pa")
"""An even live load of rooms, unless the design gives one: IRC Table R301.5, from memory."""

# Concrete of no stated strength counts as the weakest that the code allows.
_WEAKEST_CONCRETE_PA = to_unit(2500.0, "psi", "Pa")

_SHARES = Source(
    "an extruded foam maker's design guide", clause="a third of the strength for dead load, a "
    "fifth for live",
)  # fmt: skip
_STRAIN = Source("ASTM D6817", clause="stress at 1 % strain, for a load that stays",
                 sure="second-hand")  # fmt: skip


@dataclass(frozen=True)
class BoardLoad:
    """One area's lowest strength of board under its slab; pascals, newtons.

    dead_pa: slab and layers on the board. live_pa: even live load, assumed where none is given.
    plate_pa: under the point load, the slab sharing it; None where the board's stiffness is not
    known. spread_pa: the same spread at 45 degrees. modulus: of all boards together, N/m3.
    share_even, share_plate, share_spread: of what the board may carry, with dead and live load;
    1.0 is all of it. long_term: held to the stress at 1 % strain; else to parts of its strength.
    """

    area: str
    material: str
    strength_pa: float
    dead_pa: float
    live_pa: float
    live_assumed: bool
    point_n: float
    modulus: float | None
    plate_pa: float | None
    spread_pa: float
    long_term: bool
    share_even: float
    share_plate: float | None
    share_spread: float

    @property
    def severity(self) -> Severity:
        """Stop where a sound slab overloads it, look where a slab cracked at the load would."""
        if max(self.share_even, self.share_plate or 0.0) > 1:
            return "stop"
        return "look" if self.share_spread > 1 else "fine"


def board_loads(layout: Layout) -> tuple[BoardLoad, ...]:
    """Return each area with a board under a slab."""
    loads = layout.design.loads
    found = (_of_area(area.name, area.floor, loads) for area in layout.areas)
    return tuple(one for one in found if one)


def _of_area(area: str, floor: Floor, loads: Loads) -> BoardLoad | None:
    boards = [n for n, x in enumerate(floor.layers) if x.material in BOARDS]
    slabs = [n for n, x in enumerate(floor.layers) if x.role == "slab"]
    under = [n for n in boards if slabs and n < slabs[-1] and floor.layers[n].role == "insulation"]
    if not under:
        return None
    slab = floor.layers[slabs[-1]]
    layers = [floor.layers[n] for n in under]
    board = min((BOARDS[x.material] for x in layers), key=_long_strength)
    dead = sum(density(x.material) * x.thickness for x in floor.layers[under[0] :]) * GRAVITY
    live = ROOM_PA if loads.floor is None else loads.floor
    modulus = _modulus(layers)
    spread = spread_pressure(loads.point, loads.point_side, loads.point_side, slab.thickness)
    plate = None
    if modulus is not None:
        plate = plate_pressure(loads.point, modulus, _stiff(slab), slab.thickness)
    return BoardLoad(
        area, board.key, board.strength_kpa * 1000, dead, live, loads.floor is None, loads.point,
        modulus, plate, spread, board.strain1_kpa is not None,
        _share(board, dead, live),
        None if plate is None else _share(board, dead, live + plate),
        _share(board, dead, live + spread),
    )  # fmt: skip


def _long_strength(board: Board) -> float:
    """What may stay on a board, kPa."""
    return board.strain1_kpa or board.strength_kpa * DEAD_SHARE


def _share(board: Board, dead: float, live: float) -> float:
    """Return the part of what a board may carry that is used up."""
    if board.strain1_kpa is not None:
        return (dead + live) / (board.strain1_kpa * 1000)
    strength = board.strength_kpa * 1000
    return dead / (strength * DEAD_SHARE) + live / (strength * LIVE_SHARE)


def _modulus(layers: list[Layer]) -> float | None:
    """Return the foundation modulus of boards on each other, N/m3; None if one is not known."""
    found = [_board_modulus(BOARDS[x.material], x.thickness) for x in layers]
    known = [value for value in found if value is not None]
    return layered_modulus(known) if len(known) == len(found) else None


def _board_modulus(board: Board, thickness_m: float) -> float | None:
    """Return a board's foundation modulus by its stress at 1 % strain, or its maker's table."""
    if board.strain1_kpa is not None:
        return board.strain1_kpa * 1000 / 0.01 / thickness_m
    # A stiffer bed takes more: the next thinner board of the table is on the safe side.
    thinner = [value for thick, value in board.foundation_modulus if thick <= thickness_m + 1e-6]
    return thinner[-1] if thinner else None


def _stiff(slab: Layer) -> float:
    row = CONCRETES.get(slab.material)
    strength = row.strength_kpa * 1000 if row and row.strength_kpa else _WEAKEST_CONCRETE_PA
    return concrete_modulus(strength)


def board_findings(layout: Layout) -> Iterator[Finding]:
    """Yield, for the area that asks most of its board, what it carries."""
    found = board_loads(layout)
    if found:
        hardest = max(found, key=lambda one: (one.severity == "stop", one.share_spread))
        yield board_finding(hardest, layout.design.loads, layout.design.project.units)


def board_finding(one: BoardLoad, loads: Loads, system: System) -> Finding:
    """Return what a board carries against what it may, in words."""
    return Finding(
        "board-under-load",
        one.severity,
        f"{one.area}, foam under the slab",
        f"{BOARDS[one.material].name}: {_even(one, system)} {_point(one, loads, system)}",
        "at most the stress at 1 % strain, for loads that stay"
        if one.long_term
        else "dead load at most 1/3 of its strength, live load 1/5, both together no more",
        _STRAIN if one.long_term else _SHARES,
        _advice(one),
    )


def _even(one: BoardLoad, system: System) -> str:
    assumed = ", assumed for rooms" if one.live_assumed else ""
    dead, live = (show_small(pa, system) for pa in (one.dead_pa, one.live_pa))
    return (
        f"slab and layers on it press with {dead}, {live} live on the floor{assumed}: "
        f"{one.share_even:.0%} of what it may carry."
    )


def _point(one: BoardLoad, loads: Loads, system: System) -> str:
    if not one.point_n:
        return (
            "No post or wheel is given (loads.point). Walls, piers and posts that stand on the "
            "slab are not reckoned: their loads are not known here."
        )
    side = show_length(loads.point_side, system)
    what = f"{show_force(one.point_n, system)} on {side} square"
    spread = f"{show_small(one.spread_pa, system)}, {one.share_spread:.0%}"
    if one.plate_pa is None:
        return f"{what}, spread at 45 degrees: {spread}; how stiff this board is, is not known."
    return (
        f"{what}: {show_small(one.plate_pa, system)} where the sound slab shares it out, "
        f"{one.share_plate:.0%} in all; spread at 45 degrees alone, as where it is cracked or at "
        f"its edge, {spread} ({PLATE_SOURCE})."
    )


def _advice(one: BoardLoad) -> str:
    if one.severity == "fine":
        return "Lay it so; what stands on posts belongs on pads, not on the foam."
    if one.share_even > 1:
        return "Take a stronger board, or a thinner slab."
    return (
        "Take a stronger board or a thicker slab, or stand the post on a pad of its own; ask an "
        "engineer where it carries the house."
    )


def show_small(pascals: float, system: System) -> str:
    """Print a pressure as boards are sold by: `0.66 psi`, `4.6 kPa`."""
    if system == "metric":
        return f"{pascals / 1000:.3g} kPa"
    return f"{to_unit(pascals, 'Pa', 'psi'):.3g} psi"
