"""What a higher area's strip footing stands on where a lower area was dug for: fill, not ground."""

from collections.abc import Iterator

from shapely.geometry.base import BaseGeometry

from geometry.checks.rulings import Ruling
from geometry.layout.areas import AreaLayout
from geometry.layout.drain import DrainLayout
from geometry.layout.lay import Layout
from geometry.plan.outline import EMPTY
from geometry.rules.footings import GROUND
from geometry.rules.limit import MET_WITHIN_M
from geometry.units import show_length

_ADVICE = (
    "Carry the strip down to the ground that was not dug, or have an engineer say how it spans "
    "the dig or what is put under it, in layers and tested."
)


def ground_rulings(layout: Layout, area: AreaLayout) -> Iterator[Ruling]:
    """Yield one ruling for an area whose footing lies higher than another's."""
    lower = [a for a in layout.areas if a.footing_bottom < area.footing_bottom - MET_WITHIN_M]
    if not lower:
        return
    over = {a.name: _long(area, _dug_under(layout, area, a)) for a in lower}
    found = {name: long for name, long in over.items() if long > MET_WITHIN_M}
    if not found:
        yield Ruling(GROUND, True, "its strip keeps beside the lower areas' dig")
        return
    system = layout.design.project.units
    told = " and ".join(
        f"{show_length(long, system)} over the dig for {name}" for name, long in found.items()
    )
    whole = show_length(_long(area, area.footings), system)
    words = f"strip footing of {whole} with {told}{_pipes(layout, area)}"
    yield Ruling(GROUND, False, words, _ADVICE)


def _dug_under(layout: Layout, area: AreaLayout, lower: AreaLayout) -> BaseGeometry:
    """Return the plan of an area's strip that lies over the hole dug for a lower one."""
    hole = layout.ground.hole(lower)
    if hole is None:
        return EMPTY
    return area.footings.intersection(hole.outline(area.footing_bottom))


def _pipes(layout: Layout, area: AreaLayout) -> str:
    """Say over which drains' pipes the strip lies, and how far; nothing over none."""
    found = [
        f"{show_length(long, layout.design.project.units)} over the stone round the pipe of "
        f"{drain.title}"
        for drain in layout.drains
        if (long := _long(area, _hung_over(area, drain))) > MET_WITHIN_M
    ]
    return f"; {', '.join(found)}" if found else ""


def _hung_over(area: AreaLayout, drain: DrainLayout) -> BaseGeometry:
    """Return the plan of an area's strip over a drain's stone."""
    if area is drain.area or area.footing_bottom < drain.crown:
        return EMPTY
    return area.footings.intersection(drain.band_plan)


def _long(area: AreaLayout, region: BaseGeometry) -> float:
    """Return how long a strip of this area and this much plan is, metres."""
    return float(region.area) / area.footing.width
