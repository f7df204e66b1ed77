"""Inputs and assumptions: what the file states, what is taken as usual, materials, rules."""

import re
from collections.abc import Iterable, Iterator

from geometry.layout.lay import Layout
from geometry.parts.usual import ordering_factor
from geometry.rules.codes import RULE_SETS
from geometry.rules.editions import EDITIONS, editions
from geometry.units import show_length, show_level, to_unit
from geometry.water.backfill import USUAL_WEIGHT, USUAL_WEIGHT_SOURCE, pushing_soil
from geometry.water.loadwords import show_pressure, show_unit_weight
from viz.findings.document import Grid, Paragraph, Section, filled
from viz.findings.properties import material_rows
from viz.findings.stated import values
from viz.findings.usual_sources import usual_source
from viz.job import Job

_PIER = re.compile(r" > pier ([^>]+) >")
_LIVE = "IRC, Table R301.5 (from memory, to be confirmed)"
_SNOW_PA = to_unit(30.0, "lbf/ft**2", "Pa")
_SNOW = "IRC, Table R403.1(1), its first column"


def inputs(work: Job) -> Section:
    """Return what the findings rest on."""
    found = values(work.layout.design, work.text)
    given = alike((v.place, v.words) for v in found if v.given)
    usual = alike((v.place, v.words, str(usual_source(v.key))) for v in found if not v.given)
    said = (
        "What the design file states is taken as it stands. Where it says nothing, a usual value "
        "is taken and named here; what has no usual value stays open."
    )
    return Section(
        "inputs", "Inputs and assumptions",
        filled(
            Paragraph(said, "note"),
            Grid("Stated in the design file", ("Key of the file", "Value"), given),
            Grid("Taken as usual", ("Key of the file", "Value", "Source"),
                 (*usual, *_follows(work))),
            Grid("Materials and their properties", ("Material", "Properties", "Source"),
                 tuple(material_rows(work.layout, work.report, work.system))),
            Grid("Rules held against", ("Set of rules", "Held against here"),
                 tuple(_rules(work.layout))),
        ),
    )  # fmt: skip


def alike(rows: Iterable[tuple[str, ...]]) -> tuple[tuple[str, ...], ...]:
    """Return rows with those of several piers that say the same told once, under all their names.

    Each row opens with its place.
    """
    found: dict[tuple[str, ...], list[str]] = {}
    for place, *rest in rows:
        named = _PIER.search(place)
        key = (_PIER.sub(" > pier{} >", place), *rest)
        found.setdefault(key, []).extend([named[1]] if named else [])
    return tuple(
        (key[0].replace("{}", f" {', '.join(names)}"), *key[1:]) if names else key
        for key, names in found.items()
    )


def _follows(work: Job) -> Iterator[tuple[str, str, str]]:
    """Yield what is taken where the file is silent and what is taken hangs on the rest."""
    design, ground, system = work.layout.design, work.layout.ground, work.system
    if design.grade.at_wall is None:
        level = show_level(ground.at_wall, system)
        yield "grade > at_wall", level, "8 in below the lowest wall's top; IRC R404.1.6 asks 6 in"
    if design.excavation.existing is None:
        level = show_level(ground.existing, system)
        yield "excavation > existing", level, "the finished grade at the far end of its fall"
    if design.loads.floor is None:
        for load in work.report.boards[:1]:
            yield "loads > floor", show_pressure(load.live_pa, system), _LIVE
    if design.site.stories is not None and design.site.snow is None:
        yield "site > snow", show_pressure(_SNOW_PA, system), _SNOW
    if pushing_soil(design).density_kg_m3 is None and work.layout.drains:
        words = show_unit_weight(USUAL_WEIGHT, system)
        yield "weight of fill over the drain", words, str(USUAL_WEIGHT_SOURCE)
    coming = work.report.water.inflow
    if coming is not None:
        for words in coming.ground_presumed:
            yield "water in the ground", words, "presumed; see the inflow's table"
    lap = ordering_factor(design.order, system == "metric", "sheet.lap")
    if design.order.sheet.lap is None:
        yield "order > sheet > lap", show_length(lap.value, system), lap.source


def _rules(layout: Layout) -> Iterator[tuple[str, str]]:
    codes = layout.design.rules.codes
    named = layout.design.project.code
    yield "The code the design names", named or "none named"
    for rules in RULE_SETS:
        held = not rules.local if not codes else rules.key in codes
        yes = "yes" if held or rules.key == "bearing" else "no: shown to compare"
        yield f"{rules.title}, heights of the drain", yes
    for own in layout.design.height_rules:
        yield f"{own.name} (the design's own rule)", "yes"
    held_to = editions(codes)
    for one in EDITIONS:
        yield f"{one.title}, vapor retarder", "yes" if one in held_to else "no: shown to compare"
    american = not codes or "irc" in codes
    yield ("IRC, footings, walls, floor, grade, pit, termites",
           "yes" if american else "no: the design names other rules alone")  # fmt: skip
    yield "ACI, ASTM, ANSI/AARST, OSHA, handbooks", "as each finding names them"
