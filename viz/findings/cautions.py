"""The dangers of the job: with this design's figures, then stage by stage."""

from collections.abc import Iterator

from geometry.checks.dangers import dangers
from geometry.site.stages import stages
from viz.findings.document import Grid, Items, Paragraph, Section, filled
from viz.job import Job
from viz.language.reader import NATIVE, language
from viz.sheets.card_words import Words


def cautions(work: Job) -> Section:
    """Return the cautions, those with this design's own figures first."""
    said = " ".join(work.report.cautions[:1])
    return Section(
        "cautions", "Cautions",
        filled(
            Paragraph(said, "caution"),
            Items(tuple((d.title, f"{d.words} ({d.source})") for d in dangers(work.layout))),
            Grid("At each stage of the build", ("Stage", "Dangers"), tuple(_staged(work))),
        ),
    )  # fmt: skip


def _staged(work: Job) -> Iterator[tuple[str, str]]:
    said = Words(work.layout, language(NATIVE))
    told: dict[str, str] = {}
    for stage in stages(work.layout):
        title = said.say(f"stage.{stage.key}")
        told.setdefault(title, " ".join(said.cautions(stage)))
    yield from ((title[:1].upper() + title[1:], words) for title, words in told.items() if words)
