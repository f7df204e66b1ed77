"""Water that comes to the drain out of the ground, steady, by Dupuit."""

from dataclasses import dataclass

from geometry.formulas.inflow import dupuit_to_trench, sichardt_reach
from geometry.layout.drain import DrainLayout
from geometry.layout.lay import Layout
from geometry.materials.catalogue import SOILS


@dataclass(frozen=True)
class Ground:
    """Water from the ground, m3/s: the low and the high end of what its conductivity may be.

    high is None where the soil's group is only known to let at least so much through. Levels of
    the water table, of the water in the drain and of the tight base against the project's TOF,
    reach of the drawdown at the high end (the low, without one), m. presumed: what was not given
    and stands in by a rule.
    """

    low_m3s: float
    high_m3s: float | None
    conductivity_ms: tuple[float, float | None]
    table_m: float
    drain_m: float
    base_m: float
    reach_m: float
    presumed: tuple[str, ...]

    @property
    def flow_m3s(self) -> float:
        """The flow reckoned with: the high end where there is one."""
        return self.low_m3s if self.high_m3s is None else self.high_m3s


def groundwater_lacking(layout: Layout) -> list[str]:
    """Return in words what would have to be given to reckon with the ground's water."""
    water = layout.design.water
    lacking = [] if water.water_table else ["the highest water table seen (water_table)"]
    if conductivity_of(layout) is None:
        lacking.append("the ground's conductivity (conductivity, or the soil's group)")
    return lacking


def groundwater(layout: Layout, drain: DrainLayout) -> Ground | None:
    """Return the ground's water from the drain's outer side; None where too little is given."""
    water, given = layout.design.water, conductivity_of(layout)
    if water.water_table is None or given is None:
        return None
    table, inside = drain.area.level(water.water_table), drain.outlet_invert
    base = drain.stone_bottom if water.tight_base is None else drain.area.level(water.tight_base)
    low, high = (
        None if k is None else _dupuit(k, (table - base, inside - base), water.reach) for k in given
    )
    presumed = {
        "conductivity by the soil's group": water.conductivity is None,
        "tight ground right under the drain stone": water.tight_base is None,
        "reach by Sichardt's rule": water.reach is None,
    }
    length = drain.route.length
    return Ground(
        low[0] * length if low else 0.0,
        high[0] * length if high else None,
        given,
        table,
        inside,
        base,
        (high or low or (0.0, 0.0))[1],
        tuple(words for words, is_so in presumed.items() if is_so),
    )


def _dupuit(k: float, heights: tuple[float, float], reach: float | None) -> tuple[float, float]:
    """Return flow per metre of drain, m3/s per m, and the reach, m.

    heights: of the water table and of the drain's water over the tight ground, m.
    """
    table, inside = heights
    if table <= inside or table <= 0:
        return 0.0, reach or 0.0
    far = reach or sichardt_reach(table - inside, k)
    return dupuit_to_trench(k, table, max(0.0, inside), far), far


def conductivity_of(layout: Layout) -> tuple[float, float | None] | None:
    """Return the ground's conductivity, low and high, m/s: as given, or of the soil's group."""
    given = layout.design.water.conductivity
    if given is not None:
        return given, given
    return SOILS[layout.design.soil.group].permeability_m_s
