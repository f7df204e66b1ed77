"""In-place volume of every part: closed forms from the layout; earthworks from their solids."""

from dataclasses import dataclass
from functools import lru_cache

from geometry.label import Label
from geometry.layout import pipework
from geometry.layout.drain import DrainLayout
from geometry.layout.lay import Layout
from geometry.solids.foundation import Foundation
from geometry.solids.kernel import Mesh


@dataclass(frozen=True)
class PartVolume:
    """A part and the space it fills, m3."""

    label: Label
    volume: float


@lru_cache(maxsize=8)
def part_volumes(layout: Layout) -> tuple[PartVolume, ...]:
    """Return the volume of every part but the earthworks, in closed form."""
    found = [PartVolume(b.label, b.volume) for b in layout.bodies]
    return (*found, *_pipework(layout))


def _pipework(layout: Layout) -> list[PartVolume]:
    sizes = {part: v for drain in layout.drains for part, v in _drain(layout, drain).items()}
    if lead := layout.pit_lead:
        sizes["sump/pipe"] = pipework.lead_volume(lead)
        sizes["sump/sleeve"] = pipework.sleeve_volume(lead)
    sizes["bleeders"] = pipework.bleeders_volume(layout.bleeders)
    return [PartVolume(layout.label(part), size) for part, size in sizes.items() if size > 0]


def _drain(layout: Layout, drain: DrainLayout) -> dict[str, float]:
    """Return the volumes of a drain's pipes by part id, m3."""
    key, leads = drain.key, layout.leads(drain)
    fittings = sum(pipework.fitting_volumes(drain, leads)) + pipework.caps_volume(drain)
    sizes = {f"{key}/pipe": pipework.pipe_volume(drain), f"{key}/fittings": fittings}
    for corner, riser in zip(drain.drain.cleanouts, layout.risers(drain), strict=True):
        sizes[f"{key}/cleanout {corner}"] = pipework.riser_volume(drain, corner, riser.top)
    outside = [lead for lead in leads if lead is not layout.pit_lead]
    for number, lead in enumerate(outside, 1):
        sizes[f"{key}/daylight {number}"] = pipework.lead_volume(lead)
    return sizes


def earthwork_volumes(foundation: Foundation) -> tuple[PartVolume, ...]:
    """Return the volumes of backfill, grade and hole: exact, for their faces are flat."""
    ground = [s for s in foundation.solids if s.label.part.startswith("ground/")]
    return tuple(
        PartVolume(s.label, Mesh(s.vertices, s.faces).volume)
        for s in (*ground, foundation.excavation)
    )
