"""What is unwise about this house's water: the roof's in the drain, pump, pit, floor."""

from collections.abc import Iterator

from geometry.checks.finding import Finding
from geometry.formulas.storms import DAY
from geometry.layout.lay import Layout
from geometry.layout.sump import SumpLayout
from geometry.measures import show_flow, show_time, show_water
from geometry.sources import GEOMETRY, PRACTICE, Source
from geometry.units import System, show_level
from geometry.water.inflow import Inflow
from geometry.water.pit import FLOOR, FOAM, SLAB, PitStorm
from geometry.water.pumping import middle_flow
from geometry.water.study import Study, study
from geometry.water.uplift import BARE, Floating

MOST_STARTS = 10
"""Starts an hour: a cycle of six minutes or more for pumps below 50 hp."""

LEAST_TIME_S = 3600.0
"""Time to notice a dead pump and set another in its place."""

_CYCLE = Source("MIL-HDBK-1005/9A", clause="cycle of 6 min and more below 50 hp")
_ARCHIMEDES = Source("Archimedes, weight against uplift", sure="computed")


def water_findings(layout: Layout) -> Iterator[Finding]:
    """Yield the findings on the water of a design with a drain, a pit or a water table."""
    found, system = study(layout), layout.design.project.units
    if found.inflow:
        yield from roof_finding(found.inflow, system)
    yield from below_table_finding(layout, found, system)
    if found.pit:
        yield from pump_findings(found.pit, system)
        yield dead_pump_finding(found.pit)
    yield from floating_findings(found.floating, system)
    yield from lacking_finding(found)


def roof_finding(coming: Inflow, system: System) -> Iterator[Finding]:
    """Yield that a roof is led into the drain, and what it brings."""
    if coming.roof_m2 == 0:
        return
    roof = coming.roof_m3s
    brings = "It brings water in every rain"
    if roof is not None:
        others = sum(flow for name, flow in coming.parts_m3s.items() if name != "roof")
        brings = f"At the storm's peak it brings {show_flow(roof, system)}, all other water "
        brings += show_flow(others, system)
    yield Finding(
        "roof-in-drain",
        "look",
        "drain, roof water",
        f"Downspouts end in the foundation drain. {brings}.",
        "roof water in a solid pipe of its own, never in the foundation drain",
        PRACTICE,
        "Lead the downspouts away from the house in solid pipe to daylight.",
    )


def below_table_finding(layout: Layout, found: Study, system: System) -> Iterator[Finding]:
    """Yield whether the ground's water alone keeps the pump at work: all that lies under the table.

    Held against the highest water table: the level at which the pump starts, else the pit's bottom.
    """
    pit, table = layout.sump, found.table_m
    if pit is None or table is None:
        return
    starts, tof = pit.pump_on, pit.area.tof
    works = table > (pit.floor if starts is None else starts)
    yield Finding(
        "pit-below-water-table",
        "look" if works else "fine",
        "sump, water table",
        f"{_pit_words(pit, system)}, {_table_words(found, tof, system)}. "
        f"{_state_words(pit, found, system)}",
        "pit no deeper than the drain asks, so that it does not draw the water table down",
        PRACTICE,
        "Let the pump start higher or raise the pit's bottom, as far as the drain allows; where "
        "the water stands higher than any of that, reckon with a pump that works every day, and "
        "give it a spare and power that does not fail."
        if works
        else "Keep it so.",
    )


def _pit_words(pit: SumpLayout, system: System) -> str:
    tof = pit.area.tof
    bottom = f"Pit bottom at {_level(pit.floor, tof, system)} against TOF"
    if pit.pump_on is None or pit.pump_off is None:
        return bottom
    start, stop = (_level(level, tof, system) for level in (pit.pump_on, pit.pump_off))
    return f"{bottom}, the pump starts at {start} and stops at {stop}"


def _table_words(found: Study, tof: float, system: System) -> str:
    words = f"highest water table at {_level(found.table_m or 0.0, tof, system)}"
    if found.low_table_m is None:
        return words
    return f"{words}, lowest at {_level(found.low_table_m, tof, system)}"


def _state_words(pit: SumpLayout, found: Study, system: System) -> str:
    """Say what the pump does while the water table stands at its highest."""
    table, low = found.table_m or 0.0, found.low_table_m
    starts = pit.floor if pit.pump_on is None else pit.pump_on
    if table <= pit.floor:
        return "The pit stays above it."
    if table <= starts:
        return "Ground water stands in the pit, below the level at which the pump starts."
    when = "while it stands so"
    if low is not None:
        when = "the year round" if low > starts else "as long as it stands higher than that"
    daily = _daily(found.inflow, system)
    return f"The pump pumps ground water day after day, rain or none, {when}; {daily}."


def _daily(coming: Inflow | None, system: System) -> str:
    ground = coming.ground if coming else None
    if ground is None:
        return "how much of it comes is not known"
    if ground.table_m <= ground.drain_m:
        return "none of it reaches the drain's invert; what seeps into the pit is not reckoned"
    daily = show_water(ground.flow_m3s * DAY, system)
    return f"about {daily} a day ({show_flow(ground.flow_m3s, system)}) come to the drain"


def pump_findings(pit: PitStorm, system: System) -> Iterator[Finding]:
    """Yield whether the pump throws the storm's peak, and how often it starts."""
    flow, marched = middle_flow(pit.pit), pit.pumped
    if flow is None or marched is None:
        return
    peak, tof = max(pit.series.inflows_m3s), pit.pit.area.tof
    small = flow < peak
    floor = min(r.mark.level_m for r in pit.reached if r.mark.name in (FOAM, SLAB, FLOOR))
    wet = small and marched.highest_m >= floor
    more = "" if wet or not small else " Pit and stone hold what it cannot throw."
    yield Finding(
        "pump-throws-peak",
        "stop" if wet else "look" if small else "fine",
        "sump, pump",
        f"At the storm's peak {show_flow(peak, system)} come; the pump throws "
        f"{show_flow(flow, system)}. Highest water {_level(marched.highest_m, tof, system)} "
        f"against TOF, underside of the floor's foam or slab {_level(floor, tof, system)}.{more}",
        "pump that throws the greatest inflow, water below the floor",
        GEOMETRY,
        "Choose a larger pump or a second one, or keep water from the drain."
        if small
        else "Keep it.",
    )
    starts = pit.most_starts or 0
    often, times = starts > MOST_STARTS, "time" if starts == 1 else "times"
    yield Finding(
        "pump-starts",
        "look" if often else "fine",
        "sump, pump starts",
        f"In the storm's busiest hour the pump starts {starts} {times}; at the worst steady inflow "
        f"{pit.worst_starts or 0:.0f} times an hour.",
        f"at most {MOST_STARTS} starts an hour, unless the pump's maker allows more",
        _CYCLE,
        "Widen the band between on and off, take a wider pit, or ask the maker for the starts "
        "the pump stands."
        if often
        else "Keep it.",
    )


def dead_pump_finding(pit: PitStorm) -> Finding:
    """Return how long the floor stays dry when the pump dies at the storm's peak."""
    after = pit.first_on_floor_s
    short = after is not None and after < LEAST_TIME_S
    reached = [r for r in pit.reached if r.after_s is not None]
    times = "; ".join(f"{r.mark.name} after {show_time(r.after_s or 0.0)}" for r in reached)
    return Finding(
        "pump-dead",
        "look" if short else "fine",
        "sump, pump dead",
        f"With the pump dead from the storm's peak on, water stands at: {times}."
        if reached
        else "With the pump dead from the storm's peak on, water reaches no level of the floor "
        "within the storm and a day.",
        f"{show_time(LEAST_TIME_S)} to notice it and set another pump, before water stands at the "
        "floor",
        PRACTICE,
        "Give the pit a second pump on a battery and a high-water alarm that is heard."
        if short
        else "Keep a spare pump and an alarm.",
    )


def floating_findings(rows: tuple[Floating, ...], system: System) -> Iterator[Finding]:
    """Yield whether a floor floats at the highest water table: the lowest, and any that does."""
    first = {row.area: row for row in sorted(rows, key=lambda row: -row.floats_at_m)}
    for row in first.values():
        if row.table_m is None:
            continue
        floats = row.table_m > row.floats_at_m
        if not floats and row.area != rows[0].area:
            continue
        state = "the slab alone" if row.body == BARE else "everything from its lowest sheet up"
        yield Finding(
            "floor-floats",
            "stop" if floats else "fine",
            f"{row.area}, {row.body}",
            f"The {row.body} ({state}) floats when water stands at "
            f"{show_level(row.floats_at_m, system)} against the project's TOF; highest water table "
            f"{show_level(row.table_m, system)}.",
            "floor heavier than the water's uplift at the highest water table",
            _ARCHIMEDES,
            "A drain lowers seepage, it does not hold back a lake: raise or thicken the floor, or "
            "ask an engineer."
            if floats
            else "Keep it.",
        )


def lacking_finding(found: Study) -> Iterator[Finding]:
    """Yield, once, all that would have to be given to reckon with the water."""
    if not found.lacking:
        return
    yield Finding(
        "water-not-given",
        "look",
        "water, what is not known",
        f"Not given: {', '.join(found.lacking)}. What hangs on these was not reckoned.",
        "rain, ground and pump known before pipe, pit and pump are chosen",
        PRACTICE,
        "Add them to [water] and [sump] as they become known.",
    )


def _level(level: float, tof: float, system: System) -> str:
    return show_level(round(level - tof, 3), system)
