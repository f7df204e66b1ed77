"""A pit with its pump beside an outlet to daylight: what each needs here and what fails in each.

No winner is named. Levels are said against the project's TOF.
"""

from collections.abc import Iterator
from dataclasses import dataclass

from geometry.formulas.storms import DAY
from geometry.measures import show_flow, show_time, show_water
from geometry.rules.outlets import APART
from geometry.units import System, show_fall, show_length, show_level, show_volume
from geometry.water.daylight import DaylightRun
from geometry.water.emptying import Outlets
from geometry.water.pumping import middle_flow

NOT_KNOWN = "not known: give"
NO_PIT = f"{NOT_KNOWN} [sump]"
NO_RUN = f"{NOT_KNOWN} drain.daylight"
FROST = "how deep frost goes, the building department says"


@dataclass(frozen=True)
class Beside:
    """One matter: what a pit with a pump has to say to it, and what an outlet to daylight."""

    matter: str
    pump: str
    daylight: str


def side_by_side(house: Outlets) -> tuple[Beside, ...]:
    """Return every matter with this house's figures; what is not given says what to give."""
    rows = (
        ("power", _power(house), "none"),
        ("parts that move and wear", _wear(house), "none"),
        ("fall of the ground", "none needed", _ground(house)),
        ("dig", _pit_dig(house), _trench(house)),
        ("flow it carries", _pump_flow(house), _pipe_flow(house)),
        ("cover, frost", _pump_frost(), _cover(house)),
        ("open end", _discharge(house), _end(house)),
        ("high water at the open end", _pump_backwater(house), _backwater(house)),
        ("when it fails", _pump_dead(house), _blocked(house)),
        ("warning", _alarm(house), "none: water at the open end after rain says that it works"),
        ("upkeep", "lift the lid, try the float, keep a spare pump",
         "keep the end clear of leaves, snow, ice and soil; rod it from a cleanout"),
        ("where the water may go", _apart(), "the same"),
    )  # fmt: skip
    return tuple(Beside(*row) for row in rows)


def show_far(metres: float, system: System) -> str:
    """Print a distance along the ground, no finer than a tape is read there."""
    return show_length(round(metres, 3) if system == "metric" else metres, system, 4)


def _power(house: Outlets) -> str:
    ground = house.coming.ground if house.coming else None
    if ground is None:
        return f"while water comes; how much a day is {NOT_KNOWN} [water] water_table"
    daily = show_water(ground.flow_m3s * DAY, house.system)
    return f"while water comes; the ground alone brings up to {daily} a day"


def _wear(house: Outlets) -> str:
    parts = "pump, float switch, check valve"
    if house.pit is None:
        return f"{parts}; starts an hour are {NO_PIT}"
    starts = house.storm.most_starts if house.storm else None
    if starts is None:
        return f"{parts}; starts an hour are {NOT_KNOWN} [water] rain and sump.pump with its flow"
    return f"{parts}; {starts} starts in the storm's busiest hour"


def _ground(house: Outlets) -> str:
    run, system = house.run, house.system
    if run is None:
        return NO_RUN
    fall = show_fall(run.asked.fall, system)
    if run.lacking:
        short = show_length(run.lacking.at_last_m, system)
        far = show_far(run.reach_m, system)
        return f"does not come out in the {far} known: {short} lacking there (pipe {fall})"
    far = show_far(run.reach_m, system)
    return f"comes out {far} from the drain (pipe {fall})"


def _pit_dig(house: Outlets) -> str:
    pit = house.pit
    if pit is None:
        return NO_PIT
    return f"a pit to {show_level(pit.floor - pit.sump.wall, house.system)}"


def _trench(house: Outlets) -> str:
    run, system = house.run, house.system
    if run is None:
        return NO_RUN
    deep = show_far(run.deepest_trench_m, system)
    return (
        f"a trench up to {deep} deep, {show_volume(run.trench_m3, system)} with upright sides; at "
        "5 ft and deeper its sides are sloped or protected"
    )


def _pump_flow(house: Outlets) -> str:
    flow = middle_flow(house.pit) if house.pit else None
    if flow is None:
        return NO_PIT if house.pit is None else f"{NOT_KNOWN} sump.pump.flow, or curve and lift"
    return f"{show_flow(flow, house.system)}{_against(house.pit_peak_m3s, house.system)}"


def _pipe_flow(house: Outlets) -> str:
    if house.run is None:
        return NO_RUN
    flow = house.run.capacity_m3s
    if flow is None:
        return "laid level: nothing until water piles up in it"
    return f"{show_flow(flow, house.system)}, pipe full{_against(house.peak_m3s, house.system)}"


def _against(peak_m3s: float | None, system: System) -> str:
    if peak_m3s is None:
        return f"; the peak inflow is {NOT_KNOWN} [water]"
    return f"; {show_flow(peak_m3s, system)} come at the peak"


def _pump_frost() -> str:
    return f"the discharge pipe outside freezes unless it drains empty after each start; {FROST}"


def _cover(house: Outlets) -> str:
    run, system = house.run, house.system
    if run is None:
        return NO_RUN
    return f"{cover_words(run, system)}; {FROST}"


def cover_words(run: DaylightRun, system: System) -> str:
    """Return in words how much ground lies over the pipe, and where there is too little."""
    wanted, end = show_length(run.asked.cover, system), run.thin_end
    if run.least_cover is None:
        return f"nowhere {wanted} of ground over the pipe"
    at, least = run.least_cover
    low = f"{over_words(least, system)} {show_far(at, system)} from the drain"
    if end is None:
        return f"at the least {low}; {wanted} wanted"
    last, to = (show_far(far, system) for far in (end.length, end.start))
    tail = f"less on the last {last} before the open end"
    if not run.thin_before:
        return f"{wanted} or more of ground over the pipe up to {to} from the drain, {tail}"
    return f"at the least {low}; {wanted} wanted, {tail}"


def show_ground(level: float, system: System) -> str:
    """Print a level of the ground, no finer than it is shot."""
    return show_level(round(level, 3) if system == "metric" else level, system, 4)


def over_words(cover: float, system: System) -> str:
    """Print the ground over the pipe: nothing where it lies bare."""
    return show_far(max(cover, 0.0), system)


def _discharge(house: Outlets) -> str:
    pump = house.pit.sump.pump if house.pit else None
    pipe = pump.discharge if pump else None
    if pipe is None:
        away = f"{NOT_KNOWN} sump.pump.discharge"
        return f"the pump's water must end far from the house; how far is {away}"
    far = show_far(pipe.length, house.system)
    return f"{far} of discharge pipe, fittings counted; its end must lie far from the house"


def _end(house: Outlets) -> str:
    run, system = house.run, house.system
    if run is None:
        return NO_RUN
    if run.end_at_m is None:
        return "none within the ground known"
    over = show_length(run.asked.above_ground, system)
    guard = "guarded" if run.asked.guard else "without a guard: animals nest in it"
    return f"at {show_level(run.end_invert_m, system)}, {over} over the ground; {guard}"


def _pump_backwater(house: Outlets) -> str:
    lift = house.pit.sump.pump.lift if house.pit and house.pit.sump.pump else None
    if lift is None:
        high = f"its height is {NOT_KNOWN} sump.pump.lift"
    else:
        high = f"it lifts {show_length(lift, house.system)}"
    return f"none reaches the pit while the discharge pipe goes over it; {high}"


def _backwater(house: Outlets) -> str:
    run, system = house.run, house.system
    if run is None:
        return NO_RUN
    over, start = run.water_over_end_m, run.water_over_start_m
    if over is None or start is None:
        return f"{NOT_KNOWN} drain.daylight.high_water (stream, ditch, street)"
    if over <= 0:
        return f"{show_length(-over, system)} under the open end's invert"
    back = show_length(abs(start), system)
    reaches = f"{back} over the drain's low point" if start > 0 else f"{back} under the drain"
    return f"{show_length(over, system)} over the open end's invert, {reaches}"


def _pump_dead(house: Outlets) -> str:
    if house.storm is None:
        missing = NO_PIT if house.pit is None else f"{NOT_KNOWN} [water]"
        return f"power, pump or float gone: minutes until water stands at the floor {missing}"
    reached = [r for r in house.storm.reached if r.after_s is not None]
    if not reached:
        return "power, pump or float gone: no level of the floor reached in the storm and a day"
    times = "; ".join(f"{r.mark.name} after {show_time(r.after_s or 0.0)}" for r in reached)
    return f"power, pump or float gone at the storm's peak: {times}"


def _blocked(house: Outlets) -> str:
    more = "" if house.pit is None else ", unless the pit's pump takes over"
    return f"end blocked or frozen: water stands back in pipe and stone as with a dead pump{more}"


def _alarm(house: Outlets) -> str:
    if house.pit is None:
        return NO_PIT
    if house.pit.alarm is None:
        return f"{NOT_KNOWN} sump.pump.alarm"
    return f"alarm when water stands at {show_level(house.pit.alarm, house.system)}"


def _apart() -> str:
    rules = "; ".join(_rules())
    return f"the town says (in some towns {rules}); never into the sanitary sewer"


def _rules() -> Iterator[str]:
    for rule in APART:
        feet = show_length(rule.least_m, "ft-in")
        yield f"{feet} ({show_length(rule.least_m, 'metric')}) from {rule.what}: {rule.source}"
