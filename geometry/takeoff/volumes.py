"""In-place volume of every part: closed forms from the layout; earthworks from their solids."""

from dataclasses import dataclass

from geometry.label import Label
from geometry.layout import pipework
from geometry.layout.lay import Layout
from geometry.solids.foundation import Foundation
from geometry.solids.kernel import Mesh


@dataclass(frozen=True)
class PartVolume:
    """A part and the space it fills, m3."""

    label: Label
    volume: float


def part_volumes(layout: Layout) -> tuple[PartVolume, ...]:
    """Return the volume of every part but the earthworks, in closed form."""
    found = [PartVolume(b.label, b.volume) for b in layout.bodies]
    return (*found, *_pipework(layout))


def _pipework(layout: Layout) -> list[PartVolume]:
    drain = layout.drain
    if drain is None:
        return []
    lead = layout.lead
    fittings = sum(pipework.fitting_volumes(drain, lead))
    fittings += 0.0 if drain.route.closed else 2 * pipework.cap_volume(drain)
    found = [
        PartVolume(layout.label("drain/pipe"), pipework.pipe_volume(drain)),
        PartVolume(layout.label("drain/fittings"), fittings),
    ]
    for corner, riser in zip(drain.drain.cleanouts, layout.risers, strict=True):
        volume = pipework.riser_volume(drain, corner, riser.top)
        found.append(PartVolume(layout.label(f"drain/cleanout {corner}"), volume))
    if lead:
        found.append(PartVolume(layout.label("sump/pipe"), pipework.lead_volume(lead)))
        found.append(PartVolume(layout.label("sump/sleeve"), pipework.sleeve_volume(lead)))
    return found


def earthwork_volumes(foundation: Foundation) -> tuple[PartVolume, ...]:
    """Return the volumes of backfill, grade and hole: exact, for their faces are flat."""
    ground = [s for s in foundation.solids if s.label.part.startswith("ground/")]
    return tuple(
        PartVolume(s.label, Mesh(s.vertices, s.faces).volume)
        for s in (*ground, foundation.excavation)
    )
