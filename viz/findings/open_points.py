"""What was not checked: the list, with why and who would answer."""

from geometry.checks.unchecked import unchecked
from viz.findings.document import Grid, Paragraph, Section
from viz.findings.stated import stated_keys
from viz.job import Job


def open_points(work: Job) -> Section:
    """Return what was not checked, as a table."""
    said = (
        "None of this was looked at. A line goes from the list as soon as the design file gives "
        "what it names; the others lie outside what any design file can tell."
    )
    return Section("open", "What was not checked", (Paragraph(said, "caution"), open_grid(work)))


def open_grid(work: Job) -> Grid:
    """Return the table of what was not checked."""
    points = unchecked(work.layout, stated_keys(work.text))
    rows = tuple((p.what, p.why, p.who, p.field or "none") for p in points)
    head = ("Not checked", "Why", "Who would answer it", "Key that would tell it")
    return Grid("Not checked", head, rows)
