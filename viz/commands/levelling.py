"""The commands `levels` and `volumes`: where every layer lies, and what is in place."""

import json
import sys

from viz.commands.asking import design_text
from viz.job import job


def show_levels(design: str, as_json: bool) -> None:
    """Print every level as a table, or as JSON."""
    work = job(design_text(design))
    if as_json:
        _write(work.report.figures("design", "units", "levels"))
        return
    from viz.commands import printing
    from viz.tables import report_tables

    printing.table(report_tables.levels(work.report, work.system), f"{work.name}: levels")
    printing.cautions(work.report)


def show_volumes(design: str, as_json: bool) -> None:
    """Print the volume of every part and material in place as tables, or as JSON."""
    work = job(design_text(design))
    if as_json:
        _write(work.report.figures("design", "volumes"))
        return
    from viz.commands import printing
    from viz.tables import report_tables

    printing.table(report_tables.parts(work.report), f"{work.name}: volumes in place")
    printing.table(report_tables.materials(work.report), "Each material in all")
    printing.lines(["In place: nothing is added for compaction, laps or waste."])


def _write(figures: object) -> None:
    sys.stdout.write(json.dumps(figures, indent=2) + "\n")
