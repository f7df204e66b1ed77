"""Dig, grade and pit against their rules; pads against top of footing; what is not given."""

from collections.abc import Iterator

from geometry.checks.finding import Finding
from geometry.checks.footing_rules import table_of
from geometry.checks.rulings import Ruling, counted, ruling_findings
from geometry.checks.wall_rules import answer, outer_walls
from geometry.layout.lay import Layout
from geometry.materials.catalogue import SOILS
from geometry.rules.editions import EDITIONS, editions
from geometry.rules.grounds import (
    DIG_DEEP_M,
    DIG_SLOPE,
    GRADE,
    GRADE_WITHIN_M,
    PIT_DEPTH,
    PIT_SEALED,
    PIT_WIDTH,
    TERMITES,
)
from geometry.rules.limit import Limit
from geometry.sources import PRACTICE
from geometry.units import show_length
from geometry.water.uplift import water_table


def ground_findings(layout: Layout) -> Iterator[Finding]:
    """Yield what the rules on dig, grade, pit and termites find, and what others lack."""
    yield from ruling_findings(layout, "dig-rules", "hole, sides", _dig(layout))
    yield from ruling_findings(layout, "grade-rules", "grade", _grade(layout))
    yield from ruling_findings(layout, "pit-rules", "sump, size", _pit(layout))
    yield from ruling_findings(layout, "termite-rules", "foam in the ground", _termites(layout))
    yield from lacking_finding(layout)


# The sets of rules of a country whose safety law the rule on the hole's sides is.
_SAFETY_LAW = {"irc", "ibc"}


def dug_depth(layout: Layout) -> float:
    """Return how deep the hole is under the ground before the dig, metres; trenches not counted."""
    ground = layout.ground
    return max((ground.existing - ground.bench(area) for area in layout.areas), default=0.0)


def _dig(layout: Layout) -> Iterator[Ruling]:
    codes, deep = layout.design.rules.codes, dug_depth(layout)
    if deep < DIG_DEEP_M or (codes and not codes & _SAFETY_LAW):
        return
    slope, system = layout.design.excavation.slope, layout.design.project.units
    words = f"hole {show_length(round(deep, 3), system)} deep, sides laid back {slope:.3g} to 1"
    yield Ruling(
        DIG_SLOPE, slope >= DIG_SLOPE.least - 1e-6, words,
        "Lay the sides back farther, bench or shore them, or have a competent person class the "
        "ground in writing before anybody goes down.",
    )  # fmt: skip


def _grade(layout: Layout) -> Iterator[Ruling]:
    system, grade = layout.design.project.units, layout.design.grade
    drop = grade.fall * min(grade.fall_length, GRADE_WITHIN_M)
    within = show_length(min(grade.fall_length, GRADE_WITHIN_M), system)
    yield Ruling(
        GRADE, GRADE.met(drop), f"grade falls {show_length(round(drop, 4), system)} in {within}",
        "Grade it steeper, or lead the water off in a swale or drain.",
    )  # fmt: skip


def _pit(layout: Layout) -> Iterator[Ruling]:
    pit, system = layout.sump, layout.design.project.units
    if pit is None:
        return
    wide, deep = (show_length(x, system) for x in (pit.sump.diameter, pit.sump.depth))
    yield Ruling(PIT_WIDTH, PIT_WIDTH.met(pit.sump.diameter), f"pit {wide} across", "Widen it.")
    lid = show_length(pit.sump.lid, system)
    words = f"{deep} deep, under a lid of {lid} that must lift off and bear what stands on it"
    if layout.design.site.radon_vent:
        words += f"; with a soil-gas vent it is sealed ({PIT_SEALED})"
    yield Ruling(PIT_DEPTH, PIT_DEPTH.met(pit.sump.depth), words, "Deepen it.")


def _termites(layout: Layout) -> Iterator[Ruling]:
    risk = layout.design.site.termites
    if risk is None or not _foamed(layout):
        return
    words = f"termites {risk}, foam under the floor"
    bad = risk == "very heavy"
    clear = "" if risk == "none" else "; leave 6 in of bare concrete in sight above grade"
    yield Ruling(
        TERMITES, not bad, words + ("" if bad else clear),
        "Ask the department which exception it grants: treated foam, a barrier, or foam inside.",
    )  # fmt: skip


def _foamed(layout: Layout) -> bool:
    roles = {x.role for area in layout.areas for x in area.floor.layers}
    return "insulation" in roles or any(area.floor.edge_board for area in layout.areas)


def lacking_finding(layout: Layout) -> Iterator[Finding]:
    """Yield, once, all that would have to be said to hold the design against more rules."""
    asked = Limit("rules-not-given", "", "", PRACTICE)
    found = list(_lacking(layout)) if counted(layout, [Ruling(asked, False, "")]) else []
    if found:
        yield Finding(
            "rules-not-given",
            "look",
            "rules, what is not known",
            f"Not given: {'; '.join(found)}. What hangs on these was not held to any rule.",
            "known before the drawings are handed in",
            PRACTICE,
            "Ask the building department, and add them as they become known.",
        )


def _lacking(layout: Layout) -> Iterator[str]:
    design, site = layout.design, layout.design.site
    if len(editions(design.rules.codes)) == len(EDITIONS):
        yield "edition of the code (rules.sets)"
    if site.frost_depth is None:
        yield "local frost depth (site.frost_depth)"
    yield from _for_the_table(layout)
    walls = [run for run in outer_walls(layout) if run.fill_to_floor_m > 0]
    if any(answer(layout, run).answer == "table not at hand" for run in walls):
        yield "which row of the code's wall table the walls are taken from: not at hand here, ask"
    table = water_table(layout)
    if table is None:
        yield "water table (water.water_table), for the kind of coating outside"
    if site.termites is None and _foamed(layout):
        yield "termites (site.termites), with foam in the ground"
    if site.radon_vent is None:
        yield "whether soil gas is to be vented (site.radon_vent)"
    if any(area.floor.joints is None for area in layout.areas):
        yield "where the slab is jointed (floor.joints)"


def _for_the_table(layout: Layout) -> Iterator[str]:
    """Yield what the footing's table lacks."""
    if layout.design.site.stories is None:
        yield "stories on the footing (site.stories)"
    elif SOILS[layout.design.soil.group].bearing_pa is None:
        yield "the soil's group (soil.group), for its bearing"
    elif table_of(layout, layout.areas[0]) is None:
        yield "the footing table's column for this snow or soil: not at hand here, ask"
