"""All that holds soil back and lets water through, together, as the report carries it."""

from dataclasses import dataclass

from geometry.layout.lay import Layout
from geometry.water.filter import SoilFabric, soil_fabrics
from geometry.water.graded import SoilGrading, soil_grading
from geometry.water.grains import FineOnCoarse, HoleFit, drain_hole_fits, fine_on_coarse
from geometry.water.wrapping import WrapSheet, wrap_sheet


@dataclass(frozen=True)
class Filters:
    """The soil's own grading, fabric against soils, stone at the pipe's holes, sand on stone, wrap.

    SI units; no grading unless the design gives one.
    """

    grading: SoilGrading | None
    fabric: tuple[SoilFabric, ...]
    holes: tuple[HoleFit, ...]
    sand: tuple[FineOnCoarse, ...]
    wrap: WrapSheet | None


def filters(layout: Layout) -> Filters:
    """Return the filters of a design; those of the drain are empty without one."""
    return Filters(
        soil_grading(layout.design),
        soil_fabrics(layout),
        drain_hole_fits(layout),
        fine_on_coarse(layout),
        wrap_sheet(layout),
    )
