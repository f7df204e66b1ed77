"""What each stage of the view "Water" shows besides its pictures: tables, findings, caution."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass

from geometry.report import CAUTIONS
from viz.panels.looked import Looked
from viz.panels.spoken import later
from viz.tables import drain_tables, outlet_tables, soil_tables, water_tables
from viz.tables.table import Table

Titled = list[tuple[str, Table]]


def _caution(begins: str) -> str:
    """Return the caution of the report that begins so."""
    return next(line for line in CAUTIONS if line.startswith(begins))


_INFORMS, _DIGGING = _caution("These figures"), _caution("Excavation")
_BEARING, _BACKFILL, _PUMP = _caution("Do not dig"), _caution("Backfill"), _caution("A pump")


@dataclass(frozen=True)
class Stage:
    """findings: how their names begin. unknown: what is said where nothing can be drawn.

    of_a_drain: whether it is about one drain, of which there may be several.
    """

    tables: Callable[[Looked], Titled]
    findings: tuple[str, ...]
    caution: tuple[str, ...]
    unknown: str
    of_a_drain: bool = True


def _heights(at: Looked) -> Titled:
    drain = at.drain
    figures, budget = (drain.heights, drain.slope) if drain else (None, None)
    if figures is None or budget is None:
        return []
    system = at.system
    return [
        ("Heights, from the drained area's top of footing", drain_tables.heights(figures, system)),
        ("Where water first runs in", drain_tables.first_water(figures, system)),
        ("Slope budget: what each rule leaves the fall",
         drain_tables.budget_by_rule(budget, system)),
        ("Falls that are asked for", drain_tables.falls(budget, system)),
        ("What buys room for the fall", drain_tables.ways(budget, system)),
    ]  # fmt: skip


def _outlet(at: Looked) -> Titled:
    found: Titled = []
    datum, system = at.layout.design.datum, at.system
    for outlet in at.outlets:
        which = f" {outlet.drain}" if outlet.drain else ""
        if outlet.run is not None:
            levels = outlet_tables.stations(
                outlet.run, datum.top_of_footing, datum.instrument, system
            )
            found += [
                (f"Outlet{which} to daylight", outlet_tables.run_table(outlet.run, system)),
                (f"Levels to set out{which}", levels),
            ]
        beside = f"Two ways out{which}: what each needs, what fails in each"
        found.append((beside, outlet_tables.side_by_side(outlet)))
    return found


def _soil(at: Looked) -> Titled:
    filters, system = at.filters, at.system
    return [
        ("Fabric against soil", soil_tables.fabric(filters)),
        ("Stone at the pipe's holes", soil_tables.holes(filters)),
        ("Finer layers straight on coarser ones", soil_tables.sand(filters)),
        ("The soil's own grading", soil_tables.grading(filters)),
        ("Wrap", soil_tables.wrap(filters.wrap, system)),
    ]


def _strength(at: Looked) -> Titled:
    drain = at.drain
    return [
        ("Pipes under the fill", soil_tables.pipes(drain.strength if drain else None, at.system))
    ]


def _wall(at: Looked) -> Titled:
    report, system = at.report, at.system
    return [
        ("Fill on the walls, unbalanced", soil_tables.walls(report.walls, system)),
        ("What the fill meets on the day it goes in",
         soil_tables.states(report.walls, report.backfill_state)),
        ("Push on the walls, drained and flooded", soil_tables.pushes(report.walls, system)),
    ]  # fmt: skip


def _cleanouts(at: Looked) -> Titled:
    found = at.drain.cleanouts if at.drain else None
    return [
        ("Runs between places to enter the drain", soil_tables.cleanouts(found, at.system)),
        ("Risers of the cleanouts", soil_tables.risers(found, at.system)),
    ]


def _pit(at: Looked) -> Titled:
    return list(water_tables.tables(at.report.water, at.system))


STAGES: Mapping[str, Stage] = {
    "Heights": Stage(
        _heights, ("drain-rules", "drain-bearing", "drain-slope"), (_BEARING,),
        later("This design has no drain whose heights could be shown."),
    ),
    "Outlet": Stage(
        _outlet,
        ("daylight-", "drain-outlet", "drain-into-lower-stone", "drain-bleeders",
         "drain-air-path"),
        (later("Where the water goes is the town's to allow, and never into a sanitary sewer."),
         _INFORMS),
        later("This drain has no outlet to daylight (drain.daylight): give one to draw it."),
    ),
    "Soil and filter": Stage(
        _soil, ("fabric-", "holes-", "sand-on-", "grading-"),
        (later("A soil's group is read off a table until a sample is tested."), _INFORMS),
        later("Neither stone with a known grading nor a wrap is in this design."),
    ),
    "Pipe strength": Stage(
        _strength, ("pipe-",),
        (later("A trench beside a footing can cave in; keep wheels and stacks off it."), _DIGGING),
        later("This design has no drain."),
    ),
    "Wall": Stage(
        _wall, ("wall-",), (_BACKFILL,),
        later("No outer wall holds fill, or the soil's group is not known (soil.group)."),
        of_a_drain=False,
    ),
    "Cleanouts": Stage(
        _cleanouts, ("drain-within-reach", "drain-risers", "drain-high-end"),
        (later("The reach is common practice, no rule: ask what the department wants."), _INFORMS),
        later("This design has no drain."),
    ),
    "Pit and storm": Stage(
        _pit, water_tables.FINDINGS, (_PUMP,),
        later("Rain or ground, and a pit, must be known before the pit can be drawn."),
        of_a_drain=False,
    ),
}  # fmt: skip
