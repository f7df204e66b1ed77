"""The page "Checks": the findings in words, the gravest first."""

from viz import tables
from viz.export.csvfile import to_csv
from viz.job import Job
from viz.panels.shown import save_button, verdicts


def findings(work: Job) -> None:
    """Show the findings."""
    verdicts(work.report.findings)
    save_button("CSV", to_csv(tables.findings(work.report)), "findings.csv", "text/csv")
    save_button("Report, JSON", work.report.to_json(), "report.json", "application/json")
