"""Cutting runs out of sticks or rolls of one length, first fit, the longest piece first."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from math import ceil

from geometry.takeoff.row import Cut, Stock

SAME_M = 1e-9


@dataclass(frozen=True)
class Cutting:
    """Stocks as they are cut, and how many joints lie within the runs."""

    stocks: tuple[Stock, ...]
    joints: int

    @property
    def length_m(self) -> float:
        """Length of all pieces, laps included, metres."""
        return sum(c.length_m for s in self.stocks for c in s.cuts)


def cut_runs(runs: Iterable[Cut], stock_m: float, lap_m: float = 0.0) -> Cutting:
    """Cut runs out of stocks: full lengths while they last, then each rest from what is left.

    lap_m: overlap of one piece of a run on the next. Rests are cut longest first, each from the
    first stock it fits into. Raises ValueError where a lap is no shorter than a stock.
    """
    if lap_m >= stock_m:
        raise ValueError("a lap must be shorter than the stock")
    full: list[Stock] = []
    rests: list[Cut] = []
    joints = 0
    for run in runs:
        if run.length_m <= SAME_M:
            continue
        count = pieces_of(run.length_m, stock_m, lap_m)
        full += [Stock((Cut(run.what, stock_m),), 0.0)] * (count - 1)
        rests.append(Cut(run.what, run.length_m - (count - 1) * (stock_m - lap_m)))
        joints += count - 1
    return Cutting((*full, *_first_fit(rests, stock_m)), joints)


def pieces_of(length_m: float, stock_m: float, lap_m: float) -> int:
    """Return how many pieces of a stock make a run with laps between them."""
    return max(1, ceil((length_m - lap_m) / (stock_m - lap_m) - SAME_M))


def _first_fit(rests: Sequence[Cut], stock_m: float) -> list[Stock]:
    open_stocks: list[tuple[list[Cut], float]] = []
    for cut in sorted(rests, key=lambda c: -c.length_m):
        fit = (n for n, (_, left) in enumerate(open_stocks) if cut.length_m <= left + SAME_M)
        place = next(fit, None)
        if place is None:
            open_stocks.append(([cut], stock_m - cut.length_m))
        else:
            cuts, left = open_stocks[place]
            open_stocks[place] = ([*cuts, cut], left - cut.length_m)
    return [Stock(tuple(cuts), max(0.0, left)) for cuts, left in open_stocks]


def rolls(length_m: float, roll_m: float) -> int:
    """Return how many rolls make a length where joints do not matter, such as tape."""
    return ceil(length_m / roll_m - SAME_M)
