"""Pages to carry to the hole, in a language and on small paper: kept by text, one at a time."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass

from geometry.errors import BedcourseError
from viz.export.svg import to_svg
from viz.issue import set_pdf
from viz.job import Job
from viz.language.reader import Language, language
from viz.panels.cached import sound_job
from viz.panels.shared import ROOM_OF_SHEETS, shared
from viz.panels.spoken import Told
from viz.sheets.cards import card_sheets
from viz.sheets.inspection import inspection_sheets
from viz.sheets.laser import laser_sheets
from viz.sheets.orders import order_sheets
from viz.sheets.pole import pole_sheets
from viz.sheets.sheet import Sheet
from viz.sheets.upright import SmallName

_Draw = Callable[[Job, SmallName, Language], tuple[Sheet, ...]]
_DRAWN: Mapping[str, _Draw] = {
    "crew cards": card_sheets,
    "story pole": lambda work, paper, words: pole_sheets(work.layout, paper, words),
    "laser sheet": lambda work, paper, words: laser_sheets(work.layout, paper, words),
    "inspection sheet": lambda work, paper, words: inspection_sheets(
        work.layout, work.report, paper, words
    ),
    "order sheet": lambda work, paper, _: order_sheets(work, paper),
}


@dataclass(frozen=True)
class Sought:
    """Pages as they are asked for. kind: which; code: of the language."""

    kind: str
    paper: SmallName
    code: str = "en"


def pages(text: str, sought: Sought) -> tuple[Sheet, ...]:
    """Return the pages. Raises BedcourseError where the paper is too small for them."""
    found = _pages(text, sought)
    if isinstance(found, str):
        raise BedcourseError(found)
    return found


@shared(16, Told("Drawing the pages ..."), room=ROOM_OF_SHEETS)
def _pages(text: str, sought: Sought) -> tuple[Sheet, ...] | str:
    try:
        return _DRAWN[sought.kind](sound_job(text), sought.paper, language(sought.code))
    except BedcourseError as error:
        return str(error)


@shared(48)
def page_svg(text: str, sought: Sought, place: int) -> str:
    """Return one page as SVG. place: from 0. Raises like `pages`."""
    return to_svg(pages(text, sought)[place].drawing)


@shared(6)
def pages_pdf(text: str, sought: Sought) -> bytes:
    """Return all pages as one PDF. Raises like `pages`."""
    return set_pdf(sound_job(text), pages(text, sought), sought.code)
