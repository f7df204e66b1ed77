"""All papers for the site, in one language."""

from collections.abc import Callable, Iterator

from viz.job import Job
from viz.language.reader import Language
from viz.sheets.cards import card_sheets
from viz.sheets.inspection import inspection_sheets
from viz.sheets.laser import laser_sheets
from viz.sheets.pole import pole_sheets
from viz.sheets.sheet import Sheet
from viz.sheets.upright import SmallName

Made = Callable[[], tuple[Sheet, ...]]


def site_papers(work: Job, paper: SmallName, language: Language) -> Iterator[tuple[str, Made]]:
    """Yield each paper's name and what makes it; that raises NoRoomError for too small a paper."""
    layout = work.layout
    yield "crew-cards", lambda: card_sheets(work, paper, language)
    yield "story-pole", lambda: pole_sheets(layout, paper, language)
    yield "laser-sheet", lambda: laser_sheets(layout, paper, language)
    yield (
        "inspection-sheet",
        lambda: inspection_sheets(layout, work.report, paper, language),
    )
