"""The command `soil`: filter, wrap, pipe strength, walls and cleanouts."""

import json
import sys

from viz.commands import printing
from viz.commands.asking import design_text
from viz.job import job
from viz.tables import soil_tables

_FIGURES = ("design", "units", "drains", "filter", "walls", "backfill_state")


def show_soil(design: str, as_json: bool) -> None:
    """Print what the soil does to drain and wall as tables, or its figures as JSON."""
    work = job(design_text(design))
    report = work.report
    if as_json:
        figures = report.figures(*_FIGURES)
        sys.stdout.write(json.dumps(figures, indent=2) + "\n")
        return
    for title, table in soil_tables.tables(report, work.system):
        printing.table(table, f"{work.name}: {title[:1].lower()}{title[1:]}")
    if report.drain and report.drain.strength:
        printing.lines([soil_tables.counted(report.drain.strength, work.system)])
    printing.lines(["The walls' design belongs to the code's tables or an engineer."])
    printing.cautions(report)
