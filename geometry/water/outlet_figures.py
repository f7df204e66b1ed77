"""The outlet to daylight as it stands in the report: metres, plain names, nothing hidden."""

from geometry.layout.lay import Layout
from geometry.parts.fields import Record
from geometry.units import FOOT
from geometry.water.daylight import STICKS_M, DaylightRun, Lacking
from geometry.water.emptying import Outlets, daylight_outlets, pit_alone
from geometry.water.outlets import side_by_side

STATION_STEP_M = 10 * FOOT


class StationFigures(Record):
    """One place along the pipe: distance from the drain; levels against the project's TOF."""

    distance_m: float
    invert_m: float
    ground_m: float
    over_pipe_m: float


class StretchFigures(Record):
    """A stretch with less ground over the pipe than wanted, and the least on it."""

    start_m: float
    end_m: float
    least_m: float


class LackingFigures(Record):
    """What lacks for the pipe to come out; null where no such change helps.

    longer_m assumes that the ground falls on as between its last two points.
    """

    at_last_point_m: float
    raise_drain_m: float
    steepest_fall_m_per_m: float | None
    longer_m: float | None


class RunFigures(Record):
    """The outlet's solid pipe; end_at_m null: it does not come out within the ground known."""

    pipe: str
    fall_m_per_m: float
    least_fall_m_per_m: float
    start_invert_m: float
    end_at_m: float | None
    end_invert_m: float
    end_above_ground_m: float
    guard: bool
    length_m: float
    sticks_10_ft: int
    sticks_3_m: int
    cover_wanted_m: float
    least_cover_m: float | None
    least_cover_at_m: float | None
    thin_before_end: tuple[StretchFigures, ...]
    thin_end: StretchFigures | None
    trench_m3: float
    trench_deepest_m: float
    full_flow_m3_per_s: float | None
    high_water_over_end_m: float | None
    lacking: LackingFigures | None
    stations: tuple[StationFigures, ...]


class BesideFigures(Record):
    """One matter, in words: the pit with its pump, and the outlet to daylight."""

    matter: str
    pump: str
    daylight: str


class OutletFigures(Record):
    """One outlet to daylight, null where none is given, and a pit with its pump beside it."""

    drain: str
    run: RunFigures | None
    beside: tuple[BesideFigures, ...]


def reported_outlets(layout: Layout) -> tuple[OutletFigures, ...]:
    """Return every outlet to daylight; without any, the pit alone; none without a drain."""
    found = [
        outlet_figures(_called(view.drain.title, house), house)
        for view in layout.views()
        if view.drain and view.drain.drain.daylight
        for house in daylight_outlets(view)
    ]
    if not found and layout.drain:
        found = [outlet_figures(layout.drain.title, pit_alone(layout))]
    return tuple(found)


def _called(title: str, house: Outlets) -> str:
    return f"{title}, outlet{house.name}" if house.name else title


def outlet_figures(drain: str, house: Outlets) -> OutletFigures:
    """Return the record of one outlet; drain: what its drain is called."""
    rows = (
        BesideFigures(matter=r.matter, pump=r.pump, daylight=r.daylight)
        for r in side_by_side(house)
    )
    run = None if house.run is None else run_figures(house.run)
    return OutletFigures(drain=drain, run=run, beside=tuple(rows))


def run_figures(run: DaylightRun) -> RunFigures:
    """Return the record of one run."""
    at, cover = run.least_cover or (None, None)
    end = run.thin_end
    return RunFigures(
        pipe=run.pipe.key,
        fall_m_per_m=run.asked.fall,
        least_fall_m_per_m=run.least_fall.least,
        start_invert_m=run.start_m,
        end_at_m=run.end_at_m,
        end_invert_m=run.end_invert_m,
        end_above_ground_m=run.end_invert_m - run.ground.at(run.reach_m),
        guard=run.asked.guard,
        length_m=run.length_m,
        sticks_10_ft=run.sticks(STICKS_M["ft-in"]),
        sticks_3_m=run.sticks(STICKS_M["metric"]),
        cover_wanted_m=run.asked.cover,
        least_cover_m=cover,
        least_cover_at_m=at,
        thin_before_end=tuple(
            StretchFigures(start_m=s.start, end_m=s.end, least_m=s.least) for s in run.thin_before
        ),
        thin_end=end and StretchFigures(start_m=end.start, end_m=end.end, least_m=end.least),
        trench_m3=run.trench_m3,
        trench_deepest_m=run.deepest_trench_m,
        full_flow_m3_per_s=run.capacity_m3s,
        high_water_over_end_m=run.water_over_end_m,
        lacking=None if run.lacking is None else _lacking(run.lacking),
        stations=tuple(_station(run, x) for x in run.stations(STATION_STEP_M)),
    )


def _lacking(found: Lacking) -> LackingFigures:
    return LackingFigures(
        at_last_point_m=found.at_last_m,
        raise_drain_m=found.raise_m,
        steepest_fall_m_per_m=found.steepest,
        longer_m=found.longer_m,
    )


def _station(run: DaylightRun, far: float) -> StationFigures:
    invert, ground = run.invert(far), run.ground.at(far)
    over = ground - invert - run.crown_over_invert_m
    return StationFigures(distance_m=far, invert_m=invert, ground_m=ground, over_pipe_m=over)
