"""The command `warmth`: the floor's layers, its heat, its edge and the foam under load."""

import json
import sys
from dataclasses import asdict

from geometry.edge_heat import edge_heats
from viz.commands import printing
from viz.commands.asking import design_text
from viz.job import job
from viz.tables import warmth_tables

_FIGURES = ("design", "units", "warmth", "boards")


def show_warmth(design: str, as_json: bool) -> None:
    """Print how warm the floor is as tables, or its figures as JSON."""
    work = job(design_text(design))
    report, edges = work.report, edge_heats(work.layout.design)
    if as_json:
        figures = report.figures(*_FIGURES)
        figures["edges"] = [asdict(one) for one in edges]
        sys.stdout.write(json.dumps(figures, indent=2) + "\n")
        return
    for title, table in warmth_tables.tables(report, edges, work.system):
        printing.table(table, f"{work.name}: {title[:1].lower()}{title[1:]}")
    printing.lines(warmth_tables.NOTES)
    printing.cautions(report)
