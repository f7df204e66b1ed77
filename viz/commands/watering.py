"""The command `water`: inflow, capacities, the pit over the storm and uplift."""

import json
import sys

from viz.commands import printing
from viz.commands.asking import design_text
from viz.job import job
from viz.tables import water_tables


def show_water(design: str, as_json: bool) -> None:
    """Print this house's water as tables, or its figures as JSON."""
    work = job(design_text(design))
    report = work.report
    if as_json:
        figures = report.figures("design", "units", "water")
        sys.stdout.write(json.dumps(figures, indent=2) + "\n")
        return
    for title, table in water_tables.tables(report.water, work.system):
        printing.table(table, f"{work.name}: {title[:1].lower()}{title[1:]}")
    if report.water.lacking:
        printing.notes([f"- {what}" for what in report.water.lacking], "Not given:")
    printing.cautions(report)
