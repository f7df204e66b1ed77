"""The hold points of the build, in order: what is looked at and photographed at each."""

from collections.abc import Iterator
from itertools import count

from geometry.site.inspection import inspection
from geometry.site.seen import HoldPoint
from viz.findings.document import Block, Items, Paragraph, Section
from viz.job import Job
from viz.language.reader import NATIVE, Language, language
from viz.sheets.inspection import words
from viz.sheets.laser import where


def hold_points(work: Job) -> Section:
    """Return the inspections this design has, as parts of one section."""
    said = language(NATIVE)
    holds = inspection(work.layout, work.report)
    photos = count(1)
    parts = tuple(
        Section(f"hold-{number}", _title(number, hold, said), _blocks(work, hold, said, photos))
        for number, hold in enumerate(holds, 1)
    )
    told = (
        f"This design has {len(holds)} hold points. At each the work stops until it was seen. The "
        "department's own list and its inspector decide what may be covered."
    )
    return Section("holds", "Inspections in order", (Paragraph(told),), parts)


def _title(number: int, hold: HoldPoint, said: Language) -> str:
    whose = where(hold.drain, hold.area, said) or said.say("card.house")
    return f"{number}. {said.say(f'inspection.hold_{hold.key}', where=whose)}"


def _blocks(work: Job, hold: HoldPoint, said: Language, photos: Iterator[int]) -> tuple[Block, ...]:
    seen = [words(f"inspection.check_{x.key}", x, work.system, said) for x in hold.checks]
    taken = [
        said.say("inspection.photo", number=str(next(photos)),
                 what=said.say(f"inspection.photo_{x.key}"))
        for x in hold.photos
    ]  # fmt: skip
    asked = Paragraph(said.say("inspection.asked", source=str(hold.source)), "note")
    return asked, Items(tuple(("", line) for line in (*seen, *taken)))
