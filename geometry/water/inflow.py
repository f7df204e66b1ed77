"""What comes to the drain: rain on the backfill, the ground's water, water from the roof.

Rain arrives as it falls: the delay in the ground, which lowers the peak, is not counted. Of the
ground's water only what flows in from outside counts, not what rises from below the tight base.
"""

from dataclasses import dataclass
from functools import cached_property

import numpy as np

from geometry.formulas.inflow import rational, roof_water
from geometry.formulas.scs_tables import Kind
from geometry.formulas.storms import Storm, scs_storm, steady_storm
from geometry.layout.drain import DrainLayout
from geometry.layout.lay import Layout
from geometry.parts.water import Water
from geometry.plan.outline import minus, offset
from geometry.water.feeding import catching
from geometry.water.groundwater import Ground, groundwater, groundwater_lacking

_KINDS: dict[str, Kind] = {"SCS I": "I", "SCS IA": "IA", "SCS II": "II", "SCS III": "III"}


@dataclass(frozen=True)
class Inflow:
    """Water to the drain; None for what was not given. lacking: what that is.

    strip: plan area of the backfill whose rain gets in, m2, its width, m, and the share of the
    rain. storm: the rain; roof_m2: plan area led in wrongly. ground_above: what higher areas'
    drains that empty into this one take from the ground.
    """

    storm: Storm | None
    strip_m: float
    strip_m2: float
    share: float | None
    roof_m2: float
    ground: Ground | None
    lacking: tuple[str, ...]
    ground_above: tuple[Ground, ...] = ()

    @cached_property
    def peak_intensity(self) -> float:
        """Greatest intensity of the rain in any block of the storm, m/s; 0 without rain."""
        return float(np.max(self.storm.intensities())) if self.storm else 0.0

    @property
    def rain_m3s(self) -> float | None:
        """Most rain that comes through the strip; None where rain or share is not given."""
        if self.storm is None or self.share is None:
            return None
        return rational(self.share, self.peak_intensity, self.strip_m2)

    @property
    def roof_m3s(self) -> float | None:
        """Most that comes from the roof; None where a roof is led in and no rain is given."""
        if self.roof_m2 == 0:
            return 0.0
        return roof_water(self.peak_intensity, self.roof_m2) if self.storm else None

    @property
    def ground_m3s(self) -> float | None:
        """Water from the ground all day; None where the water table is not given."""
        if self.ground is None:
            return None
        return self.ground.flow_m3s + sum(above.flow_m3s for above in self.ground_above)

    @property
    def parts_m3s(self) -> dict[str, float]:
        """What is known, by name: rain, ground, roof."""
        parts = {"rain": self.rain_m3s, "ground": self.ground_m3s, "roof": self.roof_m3s}
        return {name: flow for name, flow in parts.items() if flow is not None}

    @property
    def known(self) -> bool:
        """Whether rain or ground is known; a roof alone, or none, says nothing."""
        return self.rain_m3s is not None or self.ground is not None

    @property
    def peak_m3s(self) -> float | None:
        """All that is known, at the storm's peak; None when nothing is."""
        return sum(self.parts_m3s.values()) if self.known else None

    @property
    def surface_m2(self) -> float:
        """Plan area that sheds all its rain into the drain, as far as it is known."""
        return self.roof_m2 + (self.strip_m2 * self.share if self.share is not None else 0.0)


def inflow(layout: Layout) -> Inflow | None:
    """Return the water that comes to the drain in view; None for a design without one.

    With it comes what other drains empty into it.
    """
    drains, water = catching(layout), layout.design.water
    if not drains:
        return None
    drain, *above = drains
    width = strip_width(layout, drain)
    grounds = (groundwater(layout, d) for d in above)
    storm = storm_of(water)
    lacking = [] if storm else ["the rain of a storm (storm, rain)"]
    lacking += [] if water.share is not None else ["the share of it that soaks in (share)"]
    return Inflow(
        storm,
        width,
        sum(strip_area(layout, d, strip_width(layout, d)) for d in drains),
        water.share,
        water.roof,
        groundwater(layout, drain),
        (*lacking, *groundwater_lacking(layout)),
        tuple(ground for ground in grounds if ground),
    )


def storm_of(water: Water) -> Storm | None:
    """Return the rain over time; None unless kind and depth are given."""
    if water.storm is None or water.rain is None:
        return None
    if water.storm == "steady":
        return steady_storm(water.rain, water.duration)
    return scs_storm(_KINDS[water.storm], water.rain, water.duration)


def strip_width(layout: Layout, drain: DrainLayout) -> float:
    """Return the width of the backfill whose rain gets in, m, from the wall outward.

    Unless given: all that was dug open at the top, footing's projection, working space and slope.
    """
    given = layout.design.water.strip
    if given is not None:
        return given
    dig, land, area = layout.design.excavation, layout.ground, drain.area
    rise = max(0.0, land.existing - land.bench(area))
    return max(0.0, area.projection_out + dig.working_space + dig.slope * rise)


def strip_area(layout: Layout, drain: DrainLayout, width: float) -> float:
    """Return the plan area of the strip outside the house, m2; along a part run, length x width."""
    if width <= 0:
        return 0.0
    if not drain.route.closed:
        return drain.route.length * width
    ring = offset(drain.area.outline, width)
    return float(minus(ring, [layout.ground.house]).area)
