"""The command `drain`: heights, rules, clashes and the slope budget, as tables or as JSON."""

import json
import sys

from geometry.errors import BedcourseError
from geometry.water.drain_figures import DrainFigures
from geometry.water.outlet_figures import OutletFigures
from viz.commands import printing
from viz.commands.asking import design_text
from viz.job import Job, job
from viz.tables import drain_tables, outlet_tables

_NO_DAYLIGHT = (
    "An outlet to daylight in place of a pump: give [drain.daylight] with toward and ground, "
    "and it is set beside the pit."
)
_MAY_CLASH = "No such pipe can meet both of these in this house:"


def show_drain(design: str, as_json: bool) -> None:
    """Print the drain's heights against the rules, and what its fall needs.

    Raises BedcourseError for a design without a drain.
    """
    work = job(design_text(design))
    report = work.report
    if report.drain is None:
        raise BedcourseError("this design has no drain; add a table [drain]")
    if as_json:
        figures = report.figures("design", "units", "drains", "outlets")
        text = json.dumps(figures, indent=2)
        sys.stdout.write(text + "\n")
        return
    for drain in report.drains:
        _show_heights(drain, work, len(report.drains) > 1)
    for outlet in report.outlets:
        _show_outlet(outlet, work)
    printing.lines(["Which rule is in force, the building department says."])
    printing.cautions(report)


def _show_heights(drain: DrainFigures, work: Job, several: bool) -> None:
    """Print one drain's heights and slope, and its inverts. several: it is told by its name."""
    heights, slope, system = drain.heights, drain.slope, work.system
    if heights is None or slope is None:
        return
    called = f"the {drain.name}" if several else "the drain"
    printing.table(drain_tables.heights(heights, system), f"{work.name}: heights of {called}")
    if heights.low_m.get("lowest hole") is not None:
        printing.table(drain_tables.first_water(heights, system), "When the pipe takes water")
    printing.table(drain_tables.rules(heights, system), "Rules on the drain, which differ")
    if heights.clashes:
        printing.notes(drain_tables.clash_lines(heights), _MAY_CLASH)
    printing.table(drain_tables.ways(slope, system), f"Slope: {slope.by_rule[0].title}")
    printing.table(drain_tables.budget_by_rule(slope, system), "The same under each rule")
    printing.table(drain_tables.falls(slope, system), "Falls asked, and whether they fit")
    printing.table(drain_tables.inverts(drain, system), f"Inverts along {called}, to set out")


def _show_outlet(outlet: OutletFigures, work: Job) -> None:
    """Print where an outlet comes out, its levels, and the pit with a pump beside it."""
    run, datum, system = outlet.run, work.layout.design.datum, work.system
    if run is None:
        printing.lines([_NO_DAYLIGHT])
        return
    printing.table(outlet_tables.run_table(run, system), f"Outlet to daylight: {outlet.drain}")
    levels = outlet_tables.stations(run, datum.top_of_footing, datum.instrument, system)
    printing.table(levels, "The outlet's levels to set out")
    printing.table(outlet_tables.side_by_side(outlet), "Two ways out, what fails in each")
