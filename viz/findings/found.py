"""What was found: the counts and the gravest first, then every finding by its subject."""

import re
from collections.abc import Iterable, Iterator

from geometry.checks.finding import Severity
from geometry.checks.subjects import SUBJECTS, Subject, subject_of
from geometry.report import Found
from geometry.sources import how_sure
from viz.findings.alternatives import alternatives
from viz.findings.document import Card, Grid, Items, Paragraph, Section, filled
from viz.findings.open_points import open_grid
from viz.job import Job
from viz.tables.report_tables import by_gravity
from viz.words import SEVERITIES

# A point that ends a sentence, not one of `No. 57`.
_END = re.compile(r"(?<!\bNo)\.\s+(?=[A-Z])")
_GRAVEST_FIRST: tuple[Severity, ...] = ("stop", "look", "fine")


def summary(work: Job) -> Section:
    """Return the counts by severity, and what is not fine in one line each, the gravest first."""
    found = work.report.findings
    grave = [one for one in by_gravity(found) if one.severity != "fine"]
    said = (
        "What is to be stopped or looked at again, the gravest first:"
        if grave
        else "Nothing was found that asks to stop or to look again. See what was not checked."
    )
    count = len(open_grid(work).rows)
    left = f"{count} things were not checked at all: they stand in a section of their own."
    return Section(
        "summary", "Summary",
        filled(
            counts(found),
            Paragraph(left, "note"),
            Paragraph(said),
            Items(tuple(map(_line, grave))),
        ),
    )  # fmt: skip


def counts(found: Iterable[Found]) -> Grid:
    """Return how many findings there are of each severity, subject by subject and in all."""
    found = tuple(found)
    head = ("Subject", *(SEVERITIES[severity] for severity in _GRAVEST_FIRST))
    rows = [(SUBJECTS[key], *_counted(rows)) for key, rows in grouped(found)]
    return Grid("Findings by subject", head, (*rows, ("In all", *_counted(found))))


def count_words(found: Iterable[Found]) -> str:
    """Return how many findings there are of each severity, in words, the gravest first."""
    return ", ".join(f"{number} {said}" for said, number in in_all(found))


def in_all(found: Iterable[Found]) -> tuple[tuple[str, str], ...]:
    """Return the name of each severity with the number of its findings, the gravest first."""
    counted = zip(_GRAVEST_FIRST, _counted(found), strict=True)
    return tuple((SEVERITIES[severity], number) for severity, number in counted)


def _counted(found: Iterable[Found]) -> tuple[str, ...]:
    severities = [one.severity for one in found]
    return tuple(str(severities.count(severity)) for severity in _GRAVEST_FIRST)


def most_grave(found: Iterable[Found]) -> tuple[str, ...]:
    """Return what is not fine in a sentence each, the gravest first."""
    grave = (one for one in by_gravity(found) if one.severity != "fine")
    return tuple(": ".join(_line(one)) for one in grave)


def _line(one: Found) -> tuple[str, str]:
    return f"{SEVERITIES[one.severity].capitalize()}: {one.subject}", first_sentence(one.found)


def first_sentence(text: str) -> str:
    """Return the first sentence of a text, with its point."""
    first = _END.split(text, maxsplit=1)[0]
    return first if first.endswith((".", ":")) else f"{first}."


def grouped(found: Iterable[Found]) -> Iterator[tuple[Subject, tuple[Found, ...]]]:
    """Yield each subject that has findings with them, the gravest first."""
    listed = by_gravity(found)
    for subject in SUBJECTS:
        rows = tuple(one for one in listed if subject_of(one.id) == subject)
        if rows:
            yield subject, rows


def by_subject(work: Job) -> Section:
    """Return every finding, rules kept and rules broken, and what sources do not agree on."""
    parts = [
        Section(f"on-{subject}", SUBJECTS[subject], tuple(map(card, rows)))
        for subject, rows in grouped(work.report.findings)
    ]
    said = (
        "Rules that are kept stand here beside those that are broken. Fine: as asked. Look again: "
        "unwise, broken somewhere, or not known. Stop: not to be built so."
    )
    return Section(
        "found", "Findings by subject", (Paragraph(said, "note"),), (*parts, alternatives(work))
    )


def card(one: Found) -> Card:
    """Return one finding as a card: found, asked, source, how sure, advice."""
    return Card(
        one.severity, one.subject,
        (
            ("Found", one.found), ("Asked", one.asked), ("Source", one.source),
            ("How sure", how_sure(one.source)), ("Advice", one.advice),
        ),
    )  # fmt: skip
