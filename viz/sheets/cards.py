"""Crew cards: one page a stage, upright, to be read at arm's length."""

from collections.abc import Iterator

from geometry.sections.face import CutFace, CutLine
from geometry.site.places import stage_cut
from geometry.site.stages import stages
from viz.drawing.marks import Mark
from viz.drawing.page import Box, Paper
from viz.drawing.place import NoRoomError
from viz.figures.stage.pointing import Naming
from viz.figures.stage.stage import Staged, stage_figure
from viz.job import Job
from viz.language.reader import Language
from viz.pictures import faces_of
from viz.sheets.card_amounts import facts, pieces
from viz.sheets.card_blocks import Laid, heading, held, paragraph, stacked, warned
from viz.sheets.card_cells import cells, counted, listed
from viz.sheets.card_words import Words
from viz.sheets.sheet import Sheet
from viz.sheets.upright import SmallName, drawing, inside, upright

# Heights of body text to try, from the largest; least heights of the picture to try, mm.
_TEXTS = (5.4, 5.0, 4.7, 4.4, 4.2, 4.0)
_PICTURES = (95.0, 80.0, 68.0, 56.0, 48.0)
# What is tried last, for cards that hold uncommonly much.
_LAST = ((42.0, 4.0), (42.0, 3.6), (42.0, 3.2))
_GAP = 3.0
_FOOT = 3.0
# Heights of the name in the picture, and at most of the words in cells.
_NAME = 6.0
_CELL_TEXT = 4.4


def card_sheets(work: Job, paper: SmallName, language: Language) -> tuple[Sheet, ...]:
    """Return a card for every stage, in build order.

    Raises NoRoomError where the paper cannot hold what a stage has to say.
    """
    said = Words(work.layout, language)
    found = stages(work.layout)
    seen: dict[CutLine, tuple[CutFace, ...]] = {}
    made = []
    for number, stage in enumerate(found):
        line = stage_cut(work.layout, stage)
        if line not in seen:
            seen[line] = faces_of(work.foundation, line)
        staged = Staged(work.layout, found, number, line, seen[line])
        made.append(_card(staged, said, upright(paper)))
    return tuple(made)


def _card(staged: Staged, said: Words, paper: Paper) -> Sheet:
    room, number = inside(paper), staged.number + 1
    foot = paragraph(f"{said.project()}. {said.foot()}", room.width, _FOOT)
    body = Box(room.left, room.low + foot.height + 1.5, room.right, room.high)
    marks = (*_fitted(staged, said, body), *foot.at(room.left, room.low + foot.height))
    title = said.title(staged.stage)
    name = f"{number} {title}"
    return Sheet(f"card {number}", title, (name,), drawing(paper, name, marks))


def _fitted(staged: Staged, said: Words, room: Box) -> tuple[Mark, ...]:
    """Return head, picture and words, in the largest text that leaves the picture its height."""
    tries = [(least, text) for least in _PICTURES for text in _TEXTS]
    for least, text in (*tries, *_LAST):
        head, words = _blocks(staged, said, room.width, text)
        if room.height - head.height - words.height - 2 * _GAP >= least:
            try:
                return _page(staged, said, (head, words), room)
            except NoRoomError:
                continue
    raise NoRoomError(f"the card of {said.title(staged.stage)} does not fit this paper")


def _page(staged: Staged, said: Words, blocks: tuple[Laid, Laid], room: Box) -> tuple[Mark, ...]:
    head, words = blocks
    low = room.low + words.height + _GAP
    picture = Box(room.left, low, room.right, room.high - head.height - _GAP)
    name, short = said.named(staged.stage)
    naming = Naming(name, _NAME, short)
    figure = stage_figure(staged, said.flags(staged.stage), naming, picture)
    return (*head.at(room.left, room.high), *figure.marks, *words.at(room.left, low - _GAP))


def _blocks(staged: Staged, said: Words, width: float, text: float) -> tuple[Laid, Laid]:
    """Return the head of a card, and all that stands under its picture."""
    stage, number = staged.stage, staged.number + 1
    below = said.under_title(stage, number, len(staged.stages))
    head = heading(number, said.title(stage), below, width, text)
    return head, stacked(_words(staged, said, width, text), _GAP)


def _words(staged: Staged, said: Words, width: float, text: float) -> Iterator[Laid]:
    stage = staged.stage
    levels, figures, things = said.entries(stage), facts(said, stage), pieces(said, stage)
    if levels:
        yield listed(levels, width, text)
    if figures:
        yield cells(figures, width, min(text, _CELL_TEXT))
    if things:
        yield counted(things, width, text)
    yield paragraph(said.instructions(stage), width, text, bold=True)
    yield held(said.say("card.hold"), said.holds(stage), width, text)
    yield warned(said.cautions(stage), width, text)
