"""The drains' wrap to buy: pieces along the roll side by side, or cut across it."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from geometry.layout.drain import DrainLayout
from geometry.layout.drain_stone import developed_width
from geometry.project import Design
from geometry.takeoff.row import Cut, CutList, Row
from geometry.takeoff.sticks import Cutting, cut_runs, pieces_of
from geometry.takeoff.usual import factor
from geometry.water.wrapping import wrap_pieces


@dataclass(frozen=True)
class FabricCuts:
    """One width of wrap as it comes off rolls. along: pieces run with the roll, lanes of them
    side by side; else they are cut across it.
    """

    along: bool
    lanes: int
    cutting: Cutting

    @property
    def rolls(self) -> int:
        """Rolls needed."""
        return -(-len(self.cutting.stocks) // self.lanes)

    @property
    def length_m(self) -> float:
        """Length of roll that is cut, all its width, metres."""
        return self.cutting.length_m / self.lanes


def cut_fabric(
    runs: Sequence[Cut], width_m: float, roll_width_m: float, roll_length_m: float, lap_m: float
) -> FabricCuts | None:
    """Cut runs of a width out of rolls, with the roll where it is wide enough, or across it.

    The way that takes fewer rolls is taken, along the roll if they are equal: it has fewer laps.
    None where a roll is both narrower than the wrap and shorter.
    """
    ways: list[FabricCuts] = []
    if roll_width_m >= width_m - 1e-9:
        lanes = int(roll_width_m / width_m + 1e-9)
        ways.append(FabricCuts(True, lanes, cut_runs(runs, roll_length_m, lap_m)))
    if roll_length_m >= width_m - 1e-9:
        across = [
            Cut(run.what, width_m)
            for run in runs
            for _ in range(pieces_of(run.length_m, roll_width_m, lap_m))
        ]
        ways.append(FabricCuts(False, 1, cut_runs(across, roll_length_m)))
    return min(ways, key=lambda way: (way.rolls, not way.along), default=None)


def fabric_rows(design: Design, drains: Sequence[DrainLayout]) -> Iterator[tuple[Row, CutList]]:
    """Yield each drain's wrap with its cuts; nothing where no piece fits a roll."""
    for drain in drains:
        made = _wrap(design, drain)
        if made:
            yield made


def _wrap(design: Design, drain: DrainLayout) -> tuple[Row, CutList] | None:
    keys = ("lap", "roll_width", "roll_length")
    factors = tuple(factor(design, f"fabric.{key}") for key in keys)
    lap, roll_width, roll_length = (f.value for f in factors)
    width, material = developed_width(drain), drain.drain.wrap.material
    pieces = wrap_pieces(drain, lap)
    runs = [Cut(f"side {p.side}", p.length_m) for p in pieces]
    cuts = cut_fabric(runs, width, roll_width, roll_length, lap)
    if cuts is None:
        return None
    laps = len(pieces) - (0 if drain.route.closed else 1)
    bare = (sum(p.length_m for p in pieces) - laps * lap) * width
    way = "along the roll" if cuts.along else "across the roll"
    side = f", {cuts.lanes} side by side" if cuts.lanes > 1 else ""
    row = Row(
        "drain", "Fabric wrap", material, drain.area.name, bare, "m2", factors,
        cuts.length_m * roll_width, "roll", cuts.rolls, note=f"cut {way}{side}; lap on top counted",
    )  # fmt: skip
    listed = cuts.cutting
    return row, CutList("Fabric wrap", material, roll_length, listed.stocks, listed.joints)
