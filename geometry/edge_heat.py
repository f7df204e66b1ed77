"""What each way to make the floor's edge does to its warmth: cold concrete, bare edge, heat."""

from dataclasses import dataclass

from geometry.checks.cold import cold_concrete
from geometry.heat.floors import FloorHeat, floor_heat
from geometry.layout.lay import lay_out
from geometry.options import edge_options
from geometry.project import Design


@dataclass(frozen=True)
class EdgeHeat:
    """One way to make the edge of the lowest floor. same: the design has it so already.

    cold_m2, cold_share: concrete of the floor on footing, piers or ground past the boards. edge_m2:
    side of the slab that touches the wall. heat: None for an unheated area.
    """

    key: str
    title: str
    same: bool
    cold_m2: float
    cold_share: float
    edge_m2: float
    heat: FloorHeat | None


def edge_heats(design: Design) -> tuple[EdgeHeat, ...]:
    """Return the floor as designed, then every other way of `edge_options` that can be built.

    None for a floor without insulation under a slab.
    """
    options = edge_options(design)
    same = next((o.title for o in options if o.same), "As designed")
    found = [("as designed", same, True, design)] if options else []
    found += [(o.key, o.title, False, o.design) for o in options if o.design and not o.same]
    return tuple(_warmth(*one) for one in found)


def _warmth(key: str, title: str, same: bool, design: Design) -> EdgeHeat:
    layout = lay_out(design)
    area = layout.areas[0]
    cold = cold_concrete(layout, area)
    return EdgeHeat(
        key, title, same, cold.cold_m2, cold.share, cold.of("slab edge at wall"),
        floor_heat(layout, area, cold.share),
    )  # fmt: skip
