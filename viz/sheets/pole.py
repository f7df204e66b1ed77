"""The story pole on pages of letter or A4 paper at full size, with bars to prove the printer by."""

from collections.abc import Generator, Iterator, Sequence

from geometry.layout.lay import Layout
from geometry.site.pole import Pole, Room, story_pole
from geometry.units import show_elevation
from viz.drawing.figure import Figure
from viz.drawing.fonts import shortened, wrap
from viz.drawing.marks import Mark, Text
from viz.drawing.page import Box, Paper
from viz.figures.pole.labels import Say
from viz.figures.pole.proof import Small, overview, proof_bars
from viz.figures.pole.strip import WIDTH, strip_figure
from viz.language.reader import Language
from viz.sheets.sheet import Sheet
from viz.sheets.upright import SmallName, drawing, inside, upright

# Height of the tab, and the least from it to a tick.
OVERLAP_M = 0.02
CLEAR_M = 0.005
_BESIDE = 8.0
_BODY = 3.0
_PITCH = 1.55
_STEPS = 7


def pole_sheets(layout: Layout, paper: SmallName, language: Language) -> tuple[Sheet, ...]:
    """Return the pages of every area's pole, the lowest area first.

    Raises NoRoomError where a strip cannot hold its words.
    """
    stood = upright(paper)
    room = Room(inside(stood).height / 1000, OVERLAP_M, CLEAR_M)
    return tuple(
        _page(layout, story_pole(layout, area, room), number, stood, language)
        for area in layout.areas
        for number in range(len(story_pole(layout, area, room).strips))
    )


def _page(layout: Layout, pole: Pole, number: int, paper: Paper, language: Language) -> Sheet:
    say = language.say
    around, system = inside(paper), layout.design.project.units
    strip = strip_figure(pole, number, system, say)
    placed = strip.at(around.left, around.high - strip.box.height)
    beside = Box(around.left + WIDTH + _BESIDE, around.low, around.right, around.high)
    title = say("pole.title", area=pole.area)
    count = say("pole.page_of", page=str(number + 1), pages=str(len(pole.strips)))
    marks = (*placed.marks, *_beside(layout, pole, number, beside, (title, count), language))
    name = f"{title}, {count}"
    return Sheet(f"pole {pole.area} {number + 1}", title, (name,), drawing(paper, name, marks))


def _beside(
    layout: Layout, pole: Pole, number: int, room: Box, heads: Sequence[str], language: Language
) -> Iterator[Mark]:
    """Yield what stands beside the strip: whose pole, which page, the proof, how to tape it."""
    about, say = layout.design.project, language.say
    y = room.high
    for words, size, bold in (
        (about.name, 3.2, False), (heads[0], 5.0, True), (heads[1], 7.0, True),
        (say("pole.true_size"), _BODY, False),
    ):  # fmt: skip
        y = yield from _lines(words, room, y, size, bold)
    y -= 2.0
    for figure in _figures(pole, number, room, y, say):
        yield from figure.marks
        low = figure.box.low
    y = yield from _lines(say("pole.proof"), room, low - 5.0, 4.0, True)
    y -= 1.0
    elevation = layout.design.datum.top_of_footing + pole.tof
    values = {
        "area": pole.area, "pages": str(len(pole.strips)),
        "elevation": language.units(show_elevation(elevation, about.units)),
    }  # fmt: skip
    for step in range(1, _STEPS + 1):
        y = yield from _lines(f"{step}. {say(f'pole.step_{step}', **values)}", room, y, _BODY)


def _figures(pole: Pole, number: int, room: Box, top: float, say: Say) -> Iterator[Figure]:
    small = overview(pole, Small(96.0, 9.0, number), say("pole.page"))
    yield small.at(room.right - 28.0, top - small.box.height - 6.0)
    bars = proof_bars()
    yield bars.at(room.left + 2.0, top - bars.box.height)


def _lines(
    words: str, room: Box, top: float, size: float, bold: bool = False
) -> Generator[Text, None, float]:
    """Yield words in lines under a height; return the height under them."""
    for line in wrap(words, room.width, size, bold):
        top -= size
        fitted = shortened(line, room.width, size, bold)
        yield Text((room.left, top), fitted, size, bold, layer="notes")
        top -= size * (_PITCH - 1)
    return top - 0.7 * size
