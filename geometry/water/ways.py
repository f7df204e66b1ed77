"""What buys room for the drain's fall, each way with its number, computed without a new design."""

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Literal

from geometry.formulas.bearing import least_distance
from geometry.layout.areas import AreaLayout
from geometry.layout.lay import Layout
from geometry.units import INCH, System, show_fall, show_length
from geometry.water.budget import SlopeBudget
from geometry.water.verdicts import MET_WITHIN_M

WayKey = Literal[
    "as designed", "level pipe", "second outlet", "deeper footing", "foam over footing",
    "raised floor", "smaller bedding", "below the splay",
]  # fmt: skip
# Least bedding the model codes ask for under the pipe (IRC R405.1, IBC 1805.4.2).
LEAST_BEDDING_M = 2 * INCH
# References that do not move with the floor.
_FIXED = {"TOF", "footing bottom"}


@dataclass(frozen=True)
class Way:
    """One way and what comes of it, metres.

    amount: how much of it is done, 0 where it is a yes or no. room, needed: the height there is
    and the height the fall takes, once it is done. aside: how far from the footing the trench's
    near edge must then lie.
    """

    key: WayKey
    amount: float
    room: float
    needed: float
    aside: float = 0.0

    @property
    def fits(self) -> bool:
        """Whether the fall then fits."""
        return self.needed - self.room <= MET_WITHIN_M

    def sentence(self, system: System) -> str:
        """Return the way in words, with its number."""
        sizes = (self.amount, self.aside, LEAST_BEDDING_M)
        amount, aside, least = (show_length(size, system) for size in sizes)
        return {
            "as designed": "As designed.",
            "level pipe": "Lay the pipe level, without dips: it needs no height.",
            "second outlet": "A second low point with its own outlet, at today's high point: "
            f"branches of {amount}.",
            "deeper footing": f"Make the footing {amount} deeper.",
            "foam over footing": f"Carry the foam over the footing: the floor rises {amount}.",
            "raised floor": f"Raise the floor {amount}.",
            "smaller bedding": f"Take {amount} off the bedding; model codes ask for {least}.",
            "below the splay": f"Lay the drain {amount} below the footing's bottom, the trench's "
            f"near edge {aside} or more away from it: outside a 1:1 splay. Ask an engineer.",
        }[self.key]


def ways(layout: Layout, budget: SlopeBudget) -> tuple[Way, ...]:
    """Return the design as it is and the ways that would change it, for one rule.

    Where the stated fall fits already, ways whose amount is what is lacking are left out.
    """
    drain = layout.drain
    if drain is None:
        return ()
    as_is = Way("as designed", 0.0, budget.room, budget.needed)
    found = [as_is, *_by_plan(budget), *_by_floor(drain.area, budget)]
    spare = drain.drain.stone.bedding - LEAST_BEDDING_M
    if spare > MET_WITHIN_M:
        found.append(Way("smaller bedding", spare, budget.room + spare, budget.needed))
    return (*found, *_by_depth(budget))


def _by_plan(budget: SlopeBudget) -> Iterator[Way]:
    if budget.fall:
        yield Way("level pipe", 0.0, budget.room, 0.0)
        half = budget.longest / 2
        yield Way("second outlet", half, budget.room, budget.fall * half)


def _by_floor(area: AreaLayout, budget: SlopeBudget) -> Iterator[Way]:
    if budget.rule.reference in _FIXED:
        return
    lift = foam_lift(area)
    if lift > MET_WITHIN_M:
        yield Way("foam over footing", lift, budget.room + lift, budget.needed)
    if not budget.fits:
        yield Way("raised floor", budget.short, budget.needed, budget.needed)


def _by_depth(budget: SlopeBudget) -> Iterator[Way]:
    if budget.fits:
        return
    short = budget.short
    if budget.rule.reference != "footing bottom":
        yield Way("deeper footing", short, budget.needed, budget.needed)
    yield Way("below the splay", short, budget.needed, budget.needed, least_distance(short))


def foam_lift(area: AreaLayout) -> float:
    """How much the floor rises when its lowest foam is laid over the footing, metres; else 0."""
    layers = area.floor.layers
    places = [n for n, layer in enumerate(layers) if layer.role == "insulation"]
    return max(0.0, area.tof - area.stack.levels[places[0]]) if places else 0.0


def greatest_fall_words(budget: SlopeBudget, system: System) -> str:
    """Return the greatest fall that fits, in words."""
    if not budget.level_fits:
        return "none, not even level"
    if budget.room <= MET_WITHIN_M:
        return "level"
    return show_fall(budget.greatest_fall, system)
