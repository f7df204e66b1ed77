"""Is the ground at a drain's outlet the grade drawn round the house, and if not, what is lacking.

The grade round the house is one level at the wall; ground that falls across the house, as for a
walk-out, is known from the outlets' profiles alone.
"""

from collections.abc import Iterator

import numpy as np

from geometry.checks.finding import Finding
from geometry.layout.lay import Layout
from geometry.layout.leads import LeadLayout, daylight_leads
from geometry.parts.outlet import Daylight
from geometry.sources import GEOMETRY
from geometry.units import INCH, System, show_length, show_level

SAME_GROUND_M = 12 * INCH
"""Ground and grade that differ by less are one on a site: common practice, no source."""


def hillside_findings(layout: Layout) -> Iterator[Finding]:
    """Yield each outlet to daylight where the ground given is not the grade drawn."""
    for drain in layout.drains:
        outlets = drain.drain.daylight
        leads = daylight_leads(drain, layout.design.excavation)
        for number, (lead, outlet) in enumerate(zip(leads, outlets, strict=True), 1):
            name = f" {number}" if len(outlets) > 1 else ""
            subject = f"{drain.title}, outlet to daylight{name}, grade"
            yield from grade_finding(layout, lead, outlet, subject)


def grade_finding(
    layout: Layout, lead: LeadLayout, outlet: Daylight, subject: str
) -> Iterator[Finding]:
    """Yield how far the grade drawn over an outlet's begin is from the ground given there."""
    system, there = layout.design.project.units, outlet.ground[0][1]
    drawn = layout.ground.finished(*lead.tee)
    apart = drawn - there
    if abs(apart) < SAME_GROUND_M:
        return
    higher = "higher" if apart > 0 else "lower"
    yield Finding(
        "daylight-grade",
        "look",
        subject,
        f"The ground given over the drain here is at {_level(there, system)} against the "
        f"project's TOF; the grade drawn round the house is at {_level(drawn, system)}, "
        f"{_size(abs(apart), system)} {higher}. {_across(layout, lead, outlet, apart)}Sections, "
        "fill and push on the walls are drawn and reckoned with that one grade on every side.",
        "the ground on each side as it will be",
        GEOMETRY,
        "Have the ground shot at every corner and the grading drawn. Fill on one side alone "
        "pushes the house downhill: ask an engineer."
        if apart > 0
        else "Check both levels.",
    )


def _across(layout: Layout, lead: LeadLayout, outlet: Daylight, apart: float) -> str:
    """Say what of the difference the hill gives over the house, and what is lacking."""
    (first, high), (last, low) = outlet.ground[0], outlet.ground[-1]
    fall, system = (high - low) / (last - first), layout.design.project.units
    if apart <= 0 or fall <= 0:
        return ""
    deep = _depth(layout, lead)
    gives = fall * deep
    found = (
        f"If the hill falls under the house as it does beyond ({fall:.1%}, assumed), its "
        f"{_size(deep, system)} that way give {_size(gives, system)}"
    )
    lacking = apart - gives
    if lacking < SAME_GROUND_M:
        return f"{found}. "
    return f"{found}; the other {_size(lacking, system)} must be made: cut below, fill above. "


def _depth(layout: Layout, lead: LeadLayout) -> float:
    """Return the house's extent along the pipe's way, metres."""
    corners = np.asarray(layout.ground.house.convex_hull.exterior.coords)
    along = corners @ np.asarray(lead.along)
    return float(np.ptp(along))


def _level(level: float, system: System) -> str:
    return show_level(round(level, 3), system, 4)


def _size(metres: float, system: System) -> str:
    return show_length(round(metres, 3), system, 4)
