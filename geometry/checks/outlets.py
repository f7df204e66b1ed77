"""Does the outlet to daylight work: comes out, is covered, falls enough, ends free, carries."""

from collections.abc import Iterator
from dataclasses import replace

from geometry.checks.finding import Finding
from geometry.layout.lay import Layout
from geometry.measures import show_flow
from geometry.rules.outlets import ABOVE_DITCH_M, DITCH, GRAVITY_OR_PUMP, HENRICO
from geometry.sources import PRACTICE, Source
from geometry.units import INCH, System, show_fall, show_length, show_level
from geometry.water.daylight import DaylightRun, Lacking
from geometry.water.emptying import daylight_outlets
from geometry.water.outlets import FROST, cover_words, over_words, show_far

SUBJECT = "drain, outlet to daylight"
_MANNING = Source("Manning's equation, pipe just full", sure="computed")
LEAST_ABOVE_M = 4 * INCH
"""Least height of the open end's invert over the ground: common practice, no source."""

# Heights nearer than this are one on site.
_SAME_M = 1e-3


def daylight_findings(layout: Layout) -> Iterator[Finding]:
    """Yield the findings on the outlets to daylight of the drain in view."""
    for house in daylight_outlets(layout):
        if house.run is not None:
            for finding in outlet_findings(house.run, house.peak_m3s, house.system):
                named = finding.subject.replace(SUBJECT, f"{SUBJECT}{house.name}", 1)
                yield replace(finding, subject=named)


def outlet_findings(run: DaylightRun, peak_m3s: float | None, system: System) -> Iterator[Finding]:
    """Yield the findings on one outlet to daylight.

    peak_m3s: all the water that comes to the drain at the storm's peak; None where not known.
    """
    yield comes_out_finding(run, system)
    if run.at_once:
        return
    yield fall_finding(run, system)
    if run.end_at_m is None:
        return
    yield cover_finding(run, system)
    yield end_finding(run, system)
    yield from backwater_finding(run, system)
    yield solid_finding(run)
    yield from capacity_finding(run, peak_m3s, system)


def comes_out_finding(run: DaylightRun, system: System) -> Finding:
    """Return whether the pipe comes out of the ground, or what is lacking, in numbers."""
    lacking = run.lacking
    if lacking is None:
        where = (
            "The drain's low point itself lies free over the ground"
            if run.at_once
            else f"The pipe comes out {show_far(run.reach_m, system)} from the drain"
        )
        level = show_level(run.end_invert_m, system)
        found = f"{where}, invert at {level} against the project's TOF."
        advice = (
            "Check the levels given: a footing drain does not lie over the ground."
            if run.at_once
            else "Stake the open end and shoot the ground there before the trench is dug."
        )
    else:
        found, advice = _lacking_words(run, lacking, system), _lacking_advice(lacking, run, system)
    return Finding(
        "daylight-comes-out",
        "stop" if lacking else "look" if run.at_once else "fine",
        SUBJECT,
        found,
        "drain emptied by gravity or by a pump into a system the department accepts",
        GRAVITY_OR_PUMP,
        advice,
    )


def _lacking_words(run: DaylightRun, lacking: Lacking, system: System) -> str:
    drop = run.asked.ground[0][1] - run.asked.ground[-1][1]
    way = "falls" if drop >= 0 else "rises"
    needed = show_length(drop + lacking.at_last_m, system)
    return (
        f"The pipe stays in the ground: on the {show_far(run.reach_m, system)} known the ground "
        f"{way} {show_length(abs(drop), system)}, {needed} of fall is needed. At its last point "
        f"{show_length(lacking.at_last_m, system)} is lacking: ground to be taken off there, over "
        "the width that water needs to run away."
    )


def _lacking_advice(lacking: Lacking, run: DaylightRun, system: System) -> str:
    steepest, least = lacking.steepest, run.least_fall.least
    ways = [
        f"raise the drain {show_length(lacking.raise_m, system)} where its height may change "
        f"(it then comes out {show_far(lacking.raised_end_m, system)} from the drain)"
    ]
    barred, highest = "", run.asked.above_ground - lacking.raise_m
    if highest > 0:
        ways.append(
            f"let the end stand {show_length(highest, system)} over the ground, "
            f"{show_far(lacking.raised_end_m, system)} from the drain, and look after it"
        )
    if steepest is not None and steepest >= least:
        ways.append(f"lay the pipe at {show_fall(steepest, system)} at most")
    elif steepest is not None:
        barred = (
            f" A flatter pipe does not do: it would come out at {show_fall(steepest, system)}, "
            f"and {show_fall(least, system)} is asked for its size."
        )
    if lacking.longer_m is not None:
        ways.append(
            f"run {show_far(lacking.longer_m, system)} farther, if the ground falls on as between "
            "its last two points (assumed)"
        )
    return f"Either {', or '.join(ways)}; or take a pit with a pump.{barred}"


def fall_finding(run: DaylightRun, system: System) -> Finding:
    """Return whether the pipe falls as much as a pipe of its size is asked to."""
    least = run.least_fall
    flat = run.asked.fall < least.least - 1e-9
    return Finding(
        "daylight-fall",
        "look" if flat else "fine",
        f"{SUBJECT}, fall",
        f"The outlet pipe falls {_fall(run.asked.fall, system)}; a pipe of this size is asked to "
        f"fall {show_fall(least.least, system)}. The table is written for house drains; whether it "
        "holds for this one, the building department says.",
        f"fall of {show_fall(least.least, system)} or more",
        least.source,
        "Lay it steeper, so that silt does not settle in it." if flat else "Lay it so.",
    )


def cover_finding(run: DaylightRun, system: System) -> Finding:
    """Return how much ground covers the pipe, and where there is less than wanted."""
    dips = [
        f"{show_far(s.start, system)} to {show_far(s.end, system)} "
        f"(least {over_words(s.least, system)})"
        for s in run.thin_before
    ]
    bare = any(s.least < 0 for s in run.thin_before)
    words = cover_words(run, system)
    there = f"{words[0].upper()}{words[1:]}."
    short = f" Too little from {', '.join(dips)} from the drain."
    poor = bool(dips) or run.least_cover is None
    return Finding(
        "daylight-cover",
        "stop" if bare else "look" if poor else "fine",
        f"{SUBJECT}, cover",
        f"{there}{short if dips else ''}",
        f"{show_length(run.asked.cover, system)} of ground over the pipe; {FROST}",
        PRACTICE,
        "The pipe comes out of the ground before its end: fill over it or lead it another way."
        if bare
        else "Take a stronger pipe there, keep wheels off, and fill over it where frost asks."
        if poor
        else "Keep wheels off the last stretch, where the cover runs out.",
    )


def end_finding(run: DaylightRun, system: System) -> Finding:
    """Return whether the open end stands free over the ground, which must fall on from there."""
    above = run.invert(run.reach_m) - run.ground.at(run.reach_m)
    rises, low = run.rises_beyond_m, above < LEAST_ABOVE_M - _SAME_M
    hollow = rises > above + _SAME_M
    rise = (
        f" The ground beyond rises {show_length(rises, system)} over the ground at the end: water "
        "stands in that hollow."
        if hollow
        else ""
    )
    return Finding(
        "daylight-end",
        "stop" if hollow else "look" if low else "fine",
        f"{SUBJECT}, open end",
        f"The open end's invert stands {show_length(above, system)} over the ground there.{rise}",
        f"open end free of snow, leaves and standing water; over a ditch's bottom "
        f"{show_length(ABOVE_DITCH_M, system)} ({DITCH})",
        PRACTICE,
        "Lead the water on from there in a swale that falls, or end the pipe farther out."
        if hollow
        else f"Let the end stand {show_length(LEAST_ABOVE_M, system)} or more over the ground."
        if low
        else "Lay stones under the end so that the water does not wash the ground away.",
    )


def backwater_finding(run: DaylightRun, system: System) -> Iterator[Finding]:
    """Yield how the open end lies against the highest water there, where that is given."""
    over, start = run.water_over_end_m, run.water_over_start_m
    if over is None or start is None:
        return
    back, wet = start > 0, over > 0
    state = f"{show_length(abs(over), system)} {'over' if wet else 'under'} the open end's invert"
    low = f"{show_length(abs(start), system)} {'over' if back else 'under'} the drain's low point"
    yield Finding(
        "daylight-backwater",
        "stop" if back else "look" if wet else "fine",
        f"{SUBJECT}, high water",
        f"The highest water at the open end stands {state}, {low}.",
        "open end over the highest water there",
        PRACTICE,
        "High water runs back to the footing: end the pipe higher, or take a pit with a pump."
        if back
        else "While it stands there the pipe is full from below; a flap keeps that water out, "
        "and the drain's own in."
        if wet
        else "Keep it so.",
    )


def solid_finding(run: DaylightRun) -> Finding:
    """Return that the pipe is solid to its end, and whether the end is guarded."""
    guard = run.asked.guard
    return Finding(
        "daylight-solid",
        "fine" if guard else "look",
        f"{SUBJECT}, pipe",
        f"Solid pipe ({run.pipe.name}) without holes from the drain's low point to the open end, "
        f"{'with' if guard else 'without'} a guard against animals.",
        "solid pipe at the end, never perforated: holes would let its water out into the ground "
        "and roots in; a screen at the end is common practice",
        HENRICO,
        "Lay no perforated pipe here; mark the end so that it is found again."
        if guard
        else "Put a screen or bars at the end that can be taken off for cleaning.",
    )


def capacity_finding(run: DaylightRun, peak_m3s: float | None, system: System) -> Iterator[Finding]:
    """Yield whether the pipe carries the peak inflow; none where that or a fall is lacking."""
    carries = run.capacity_m3s
    if carries is None or peak_m3s is None:
        return
    small = carries < peak_m3s
    yield Finding(
        "daylight-capacity",
        "look" if small else "fine",
        f"{SUBJECT}, flow",
        f"The pipe carries {show_flow(carries, system)} full at its fall; "
        f"{show_flow(peak_m3s, system)} come at the storm's peak.",
        "outlet pipe that carries the greatest inflow",
        _MANNING,
        "Take a larger pipe or a steeper fall." if small else "Keep it.",
    )


def _fall(fall: float, system: System) -> str:
    return show_fall(fall, system) if fall else "nothing: it is laid level"
