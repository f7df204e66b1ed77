"""Crew cards: one page a stage, upright, to be read at arm's length."""

from dataclasses import dataclass

from geometry.sections.face import CutFace, CutLine
from geometry.site.places import stage_cut
from geometry.site.records import Stage
from geometry.site.stages import stages
from viz.drawing.marks import Mark
from viz.drawing.page import Box, Drawing, Paper
from viz.drawing.place import NoRoomError
from viz.figures.stage.stage import Staged, stage_figure
from viz.job import Job
from viz.language.reader import language
from viz.pictures import faces_of
from viz.sheets.card_blocks import (
    Laid,
    cells,
    counted,
    heading,
    held,
    listed,
    paragraph,
    stacked,
    warned,
)
from viz.sheets.card_words import Words
from viz.sheets.upright import SmallName, drawing, inside, upright

# Heights of body text to try, from the largest; least heights of the picture to try, mm.
_TEXTS = (5.4, 5.0, 4.7, 4.4, 4.2, 4.0)
_PICTURES = (95.0, 80.0, 68.0, 56.0, 48.0)
# What is tried last, for cards that hold uncommonly much.
_LAST = ((42.0, 4.0), (42.0, 3.6), (42.0, 3.2))
_GAP = 3.0
_FOOT = 3.0
_NAME = 6.0


@dataclass(frozen=True)
class Card:
    """One page: the stage it is of, its title, and the drawing."""

    stage: Stage
    title: str
    drawing: Drawing


def cards(work: Job, code: str, paper: SmallName) -> tuple[Card, ...]:
    """Return a card for every stage in build order, in the language of a code.

    Raises BedcourseError for a language that is not there.
    """
    said = Words(work.layout, language(code))
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


def _card(staged: Staged, said: Words, paper: Paper) -> Card:
    stage, room = staged.stage, inside(paper)
    foot = _foot(said, room)
    body = Box(room.left, room.low + foot.height + 1.5, room.right, room.high)
    marks = (*_fitted(staged, said, body), *foot.at(room.left, room.low + foot.height))
    title = said.title(stage)
    page = f"{staged.number + 1} {title}"
    return Card(stage, title, drawing(paper, page, marks))


def _foot(said: Words, room: Box) -> Laid:
    return paragraph(f"{said.project()}. {said.foot()}", room.width, _FOOT)


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
    figure = stage_figure(
        staged, said.flags(staged.stage), said.named(staged.stage), _NAME, picture
    )
    return (
        *head.at(room.left, room.high), *figure.marks, *words.at(room.left, low - _GAP)
    )  # fmt: skip


def _blocks(staged: Staged, said: Words, width: float, text: float) -> tuple[Laid, Laid]:
    stage, count = staged.stage, len(staged.stages)
    number = staged.number + 1
    head = heading(number, said.title(stage), said.under_title(stage, number, count), width, text)
    entries = said.entries(stage)
    facts, pieces = said.cells(stage), said.pieces(stage)
    parts = [
        *([listed(entries, width, text)] if entries else []),
        *([cells(facts, width, min(text, 4.4))] if facts else []),
        *([counted(pieces, width, text)] if pieces else []),
        paragraph(said.instructions(stage), width, text, bold=True),
        held(said.say("card.hold"), said.holds(stage), width, text),
        warned(said.cautions(stage), width, text),
    ]
    return head, stacked(parts, _GAP)
