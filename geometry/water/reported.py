"""The study of the water as it stands in the report: names with units, nothing hidden."""

from pydantic import BaseModel, ConfigDict

from geometry.water.capacity import Capacities
from geometry.water.inflow import Inflow
from geometry.water.pit import PitStorm
from geometry.water.pumping import middle_flow
from geometry.water.study import Study


class _Row(BaseModel):
    model_config = ConfigDict(frozen=True, extra="forbid")


class InflowFigures(_Row):
    """Water to the drain; null for what was not given.

    The ground's water is a range where its conductivity is one; the peak takes its high end.
    """

    rain_depth_m: float | None
    rain_duration_s: float | None
    peak_intensity_m_per_s: float
    strip_width_m: float
    strip_area_m2: float
    share_soaking_in: float | None
    roof_area_m2: float
    rain_m3_per_s: float | None
    roof_m3_per_s: float | None
    ground_low_m3_per_s: float | None
    ground_high_m3_per_s: float | None
    ground_conductivity_m_per_s: tuple[float, float | None] | None
    ground_reach_m: float | None
    ground_presumed: tuple[str, ...]
    peak_m3_per_s: float | None


class CapacityFigures(_Row):
    """What one element carries, and the inflow to the whole drain that this allows."""

    element: str
    flow_m3_per_s: float | None
    share_of_inflow: float
    allows_inflow_m3_per_s: float | None
    in_line: bool
    note: str


class DepthFigures(_Row):
    """Depth of water in the drain pipe at the peak inflow; null where it runs over full."""

    roughness: str
    depth_m: float | None
    bore_m: float


class ReachedFigures(_Row):
    """A level, and seconds after the pump died at the storm's peak until water stands there.

    Null where it does not within the storm and the day after it.
    """

    level: str
    level_m: float
    after_s: float | None


class PitFigures(_Row):
    """The pit over the storm. Levels against the project's top of footing."""

    stored_to_rim_m3: float
    stored_on_to_off_m3: float | None
    pump_m3_per_s: float | None
    highest_level_m: float | None
    most_starts_in_an_hour: int | None
    starts_per_hour_at_worst_inflow: float | None
    pump_dead: tuple[ReachedFigures, ...]


class FloatingFigures(_Row):
    """The water level at which part of a floor floats; safety at the highest water table."""

    area: str
    body: str
    underside_m: float
    floats_at_m: float
    water_table_m: float | None
    safety: float | None


class WaterFigures(_Row):
    """This house's water. lacking: what would have to be given to reckon the rest.

    water_table_m, low_water_table_m: the year's highest, by which all is reckoned, and its lowest,
    against the project's top of footing.
    """

    inflow: InflowFigures | None
    capacities: tuple[CapacityFigures, ...]
    governs: str | None
    depths: tuple[DepthFigures, ...]
    pit: PitFigures | None
    floating: tuple[FloatingFigures, ...]
    water_table_m: float | None
    low_water_table_m: float | None
    lacking: tuple[str, ...]


def water_figures(study: Study) -> WaterFigures:
    """Return the study's figures for the report."""
    carried, pit = study.capacities, study.pit
    governs = carried.governs if carried else None
    return WaterFigures(
        inflow=_inflow(study.inflow) if study.inflow else None,
        capacities=_capacities(carried) if carried else (),
        governs=governs.name if governs else None,
        depths=tuple(
            DepthFigures(roughness=d.roughness, depth_m=d.depth_m, bore_m=d.bore_m)
            for d in (carried.depths if carried else ())
        ),
        pit=_pit(pit) if pit else None,
        floating=tuple(
            FloatingFigures(
                area=f.area,
                body=f.body,
                underside_m=f.underside_m,
                floats_at_m=f.floats_at_m,
                water_table_m=f.table_m,
                safety=f.safety,
            )
            for f in study.floating
        ),
        water_table_m=study.table_m,
        low_water_table_m=study.low_table_m,
        lacking=study.lacking,
    )


def _inflow(coming: Inflow) -> InflowFigures:
    storm, ground = coming.storm, coming.ground
    return InflowFigures(
        rain_depth_m=storm.depth_m if storm else None,
        rain_duration_s=storm.duration_s if storm else None,
        peak_intensity_m_per_s=coming.peak_intensity,
        strip_width_m=coming.strip_m,
        strip_area_m2=coming.strip_m2,
        share_soaking_in=coming.share,
        roof_area_m2=coming.roof_m2,
        rain_m3_per_s=coming.rain_m3s,
        roof_m3_per_s=coming.roof_m3s,
        ground_low_m3_per_s=ground.low_m3s if ground else None,
        ground_high_m3_per_s=ground.high_m3s if ground else None,
        ground_conductivity_m_per_s=ground.conductivity_ms if ground else None,
        ground_reach_m=ground.reach_m if ground else None,
        ground_presumed=ground.presumed if ground else (),
        peak_m3_per_s=coming.peak_m3s,
    )


def _capacities(carried: Capacities) -> tuple[CapacityFigures, ...]:
    return tuple(
        CapacityFigures(
            element=row.name,
            flow_m3_per_s=row.flow_m3s,
            share_of_inflow=row.share,
            allows_inflow_m3_per_s=row.allows_m3s,
            in_line=row.in_line,
            note=row.note,
        )
        for row in carried.rows
    )


def _pit(pit: PitStorm) -> PitFigures:
    return PitFigures(
        stored_to_rim_m3=pit.store.full_m3,
        stored_on_to_off_m3=pit.wet_m3,
        pump_m3_per_s=middle_flow(pit.pit),
        highest_level_m=pit.pumped.highest_m if pit.pumped else None,
        most_starts_in_an_hour=pit.most_starts,
        starts_per_hour_at_worst_inflow=pit.worst_starts,
        pump_dead=tuple(
            ReachedFigures(level=r.mark.name, level_m=r.mark.level_m, after_s=r.after_s)
            for r in pit.reached
        ),
    )
