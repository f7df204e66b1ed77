"""Faults of the vent pipe for soil gas: its place and its pipe."""

from collections.abc import Iterator, Sequence

import shapely

from geometry.faults.common import At
from geometry.layout.areas import AreaLayout
from geometry.layout.drain import DrainLayout
from geometry.layout.footings import pad_prism, pier_name
from geometry.layout.sump import SumpLayout
from geometry.layout.vent import VentLayout
from geometry.materials.catalogue import PIPES
from geometry.parts.vent import Vent

_AT = ("vent", "at")


def vent_faults(
    vent: Vent, area: AreaLayout, pit: SumpLayout | None, drains: Sequence[DrainLayout]
) -> Iterator[At]:
    """Yield faults of the vent's place: in its floor, clear of pads, pit and drains."""
    if vent.pipe not in PIPES:
        return
    outside = VentLayout(vent, area).outside
    if not area.core.contains(outside):
        yield At(
            _AT,
            f'the vent pipe does not stand in the floor of area "{area.name}" within its footings; '
            "move it inward",
        )
        return
    for number, pier in enumerate(area.area.piers):
        if pad_prism(area, pier).region.intersects(outside):
            name = pier_name(area, number)
            yield At(_AT, f"the vent pipe runs into the pad of pier {name}; move it aside")
    if pit and pit.area is area and _near(pit, outside):
        yield At(_AT, "the vent pipe runs into the pit or the stone round it; move it aside")
    for drain in drains:
        if drain.inside and drain.area is area and outside.intersects(drain.low_space):
            yield At(_AT, f"the vent pipe runs into the {drain.title}; move it aside")


def _near(pit: SumpLayout, outside: shapely.Polygon) -> bool:
    """Whether a pipe meets the pit's stone or the trench of the pipe to it."""
    taken = [pit.pocket.region, *([pit.trench.region] if pit.trench else [])]
    lead = pit.lead
    if lead:
        line = shapely.LineString((lead.at(lead.back)[:2], pit.sump.at))
        taken.append(line.buffer(2 * lead.outer))
    return any(outside.intersects(region) for region in taken)
