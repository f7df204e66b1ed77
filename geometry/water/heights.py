"""Every height of the drain at its low and at its high point, and the levels rules hold it to."""

from collections.abc import Mapping
from dataclasses import dataclass
from functools import lru_cache

from geometry.layout.areas import AreaLayout
from geometry.layout.drain import DrainLayout
from geometry.layout.lay import Layout
from geometry.rules.height_rule import DrainPoint, HeightRule, Reference
from geometry.water.holes import holes_of

# The drain's points from the bottom up, as they usually lie.
POINTS: tuple[DrainPoint, ...] = (
    "trench bottom", "pipe underside", "invert", "lowest hole", "highest hole", "crown",
    "stone top",
)  # fmt: skip
REFERENCES: tuple[Reference, ...] = (
    "footing bottom", "base underside", "TOF", "slab underside", "slab top",
)  # fmt: skip

Levels = Mapping[str, float]


@dataclass(frozen=True)
class DrainHeights:
    """Levels against the project's TOF, metres, by name.

    low, high: the drain's points at its low and at its high point; a pipe without holes lacks
    two. references: what rules hold them to; a floor without slab lacks the slab's underside.
    """

    low: Levels
    high: Levels
    references: Levels

    def limit(self, rule: HeightRule) -> float | None:
        """Level a rule holds its point to; None where this house has no such level."""
        names = (rule.reference, rule.or_reference)
        found = [self.references[n] for n in names if n is not None and n in self.references]
        if not found:
            return None
        return max(found) - rule.margin_m if below(rule) else min(found) + rule.margin_m


def below(rule: HeightRule) -> bool:
    """Tell whether a rule holds its point down rather than up."""
    return rule.sense == "at or below"


@lru_cache(maxsize=16)
def drain_heights(layout: Layout) -> DrainHeights | None:
    """Return the drain's heights; None without a drain."""
    drain = layout.drain
    if drain is None:
        return None
    low, high = (_points(drain, invert) for invert in (drain.outlet_invert, drain.high_invert))
    return DrainHeights(low, high, _references(drain.area))


def over_invert(drain: DrainLayout) -> Levels:
    """Return the heights of the pipe's own points over its invert, metres; holes if it has any."""
    holes = holes_of(drain)
    named = {
        "pipe underside": -drain.pipe.wall_m,
        "invert": 0.0,
        "lowest hole": holes.lowest,
        "highest hole": holes.highest,
        "crown": drain.bore + drain.radius,
    }
    return {name: height for name, height in named.items() if height is not None}


def stone_top(drain: DrainLayout) -> float:
    """Level of the stone's top, its wrap not counted."""
    return drain.stone_top - drain.wrap_m


def _points(drain: DrainLayout, invert: float) -> Levels:
    pipe = {name: invert + height for name, height in over_invert(drain).items()}
    around = {"trench bottom": drain.stone_bottom, "stone top": stone_top(drain)}
    found = {**around, **pipe}
    return {name: found[name] for name in POINTS if name in found}


def slab_underside(area: AreaLayout) -> float | None:
    """Level of the underside of an area's highest slab; None without one."""
    slabs = [n for n, layer in enumerate(area.floor.layers) if layer.role == "slab"]
    return area.stack.levels[slabs[-1]] if slabs else None


def _references(area: AreaLayout) -> Levels:
    named = {
        "footing bottom": area.footing_bottom,
        "base underside": area.subgrade,
        "TOF": area.tof,
        "slab underside": slab_underside(area),
        "slab top": area.finished_floor,
    }
    known = {name: level for name, level in named.items() if level is not None}
    faces = {own_reference(name): level for name, level in area.stack.interfaces.items()}
    return {**faces, **known}


def own_reference(base: str) -> str:
    """Return what a level's name in the design file is called among the references.

    A layer called "slab" has a top of its own, which need not be the finished floor.
    """
    return f"{base} (layer)" if base in {"slab top", "slab underside", "base underside"} else base
