"""The permit set: which figures of a design stand on which sheets, and what refers to what.

Sheets are numbered by kind in the way of the US National CAD Standard (from memory): S for
structural, then 0 general, 1 plans, 3 sections, 4 views at large scale, 5 details, 6 schedules.
"""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from functools import partial

from viz.drawing.figure import Figure
from viz.drawing.page import PAPERS, Box, Paper, PaperName
from viz.drawing.scale import Scale
from viz.figures.plan.plan import plan_figure
from viz.figures.plan.refs import DetailRef, SectionRef
from viz.figures.section.section import section_figure
from viz.figures.section.setting import Labelling, Picture
from viz.job import Job
from viz.pictures import Shot, detail_shots, picture_of, section_shots
from viz.sheets.compose import Composer, Group, Wanted, placed
from viz.sheets.drains import drain_wanted
from viz.sheets.flow import Block, flowed
from viz.sheets.general import asked_blocks, general_blocks, schedule_blocks
from viz.sheets.pushes import pressure_wanted
from viz.sheets.refs import detail_refs, section_refs
from viz.sheets.sheet import Leaf, Numbered, Sheet, bound
from viz.sheets.titleblock import room
from viz.sheets.tubes import floor_wanted
from viz.style.text import body_height

DISCIPLINE = "S"
ASKED = "What departments ask for"
# For each kind of figure: the ratio beyond which it gains nothing, and the one easily read.
SECTION = (16, 64)
DETAIL = (4, 20)
CLOSE = (4, 10)
PLAN = (24, 64)
# Least width of columns of notes and of tables, in text heights.
NOTES_WIDE = 46.0
TABLES_WIDE = 68.0


def permit_set(work: Job, paper: PaperName, scale: Scale | None = None) -> tuple[Sheet, ...]:
    """Return all sheets on one kind of paper.

    scale: of the whole sections; the greatest that fits unless given. Raises BedcourseError where
    the paper cannot hold a figure.
    """
    desk = Desk(work, PAPERS[paper])
    sections, details = section_shots(work), detail_shots(work)
    cut = desk.leaves(desk.sections(sections), scale)
    close = desk.leaves(desk.shots(5, "Details", details))
    plan = desk.plan(section_refs(sections, cut), detail_refs(details, close))
    floors = Group(1, "Floors", floor_wanted(work.layout, desk.text))
    planned = desk.leaves(plan)
    planned = (*planned, *desk.leaves(floors, before=len(planned)))
    drawn = [*planned, *cut, *desk.leaves(desk.drain()), *close]
    words = desk.written(6, "Schedules", schedule_blocks(work, desk.text), TABLES_WIDE)
    leaves = [*drawn, *words]
    return bound([*desk.general(leaves), *leaves], desk.paper, work.layout.design)


def one_sheet(
    work: Job, shot: Shot, paper: PaperName, scale: Scale | None = None
) -> tuple[Sheet, ...]:
    """Return one section alone on its sheet. Raises BedcourseError where it does not fit."""
    desk = Desk(work, PAPERS[paper])
    group = desk.shots(5 if shot.window else 3, shot.title, (shot,))
    return bound(desk.leaves(group, scale), desk.paper, work.layout.design)


@dataclass(frozen=True)
class Desk:
    """One design on one kind of paper."""

    work: Job
    paper: Paper

    @property
    def text(self) -> float:
        """Text height, mm."""
        return body_height(self.paper.width)

    @property
    def room(self) -> Box:
        """Room for figures, mm."""
        return room(self.paper)

    def leaves(
        self, group: Group | None, scale: Scale | None = None, before: int = 0
    ) -> tuple[Leaf, ...]:
        """Return a group's figures on sheets, each numbered on its sheet.

        before: how many sheets of the same kind come first.
        """
        if group is None or not group.wanted:
            return ()
        system = self.work.system
        sheets = Composer(group, self.room, system, self.text).sheets(scale)
        return tuple(
            Leaf(
                sheet_number(group.first, place),
                group.title,
                tuple(Numbered(*n) for n in placed(rows, self.room, self.text, system)),
            )
            for place, rows in enumerate(sheets, start=before + 1)
        )

    def shots(self, first: int, title: str, shots: Sequence[Shot]) -> Group:
        """Return sections or details of this design as a group."""
        return self.each(first, title, [(self.work, shot) for shot in shots])

    def sections(self, shots: Sequence[Shot]) -> Group:
        """Return the whole sections, and beside them the push of the fill where it is known."""
        cut = self.shots(3, "Sections", shots)
        return replace(cut, wanted=(*cut.wanted, *pressure_wanted(self.work.layout, self.text)))

    def each(self, first: int, title: str, shots: Sequence[tuple[Job, Shot]]) -> Group:
        """Return sections or details, each of its own design, as a group."""
        wanted = []
        for work, shot in shots:
            picture = picture_of(work, shot)
            draw = partial(_drawn_section, picture=picture, text=self.text, widest=self.room.width)
            beside = picture.beside(self.text)
            wanted.append(Wanted(shot.title, picture.size, draw, *_ratios(shot), beside=beside))
        return Group(first, title, tuple(wanted))

    def plan(self, sections: Sequence[SectionRef], details: Sequence[DetailRef]) -> Group:
        """Return the plan as a group of its own."""
        layout, text = self.work.layout, self.text

        def draw(scale: Scale, labelling: Labelling) -> Figure:
            light = labelling == "keyed"
            return plan_figure(layout, scale, text, sections, details, light, self.room.width)

        left, low, right, high = layout.ground.house.bounds
        size = (right - left, high - low)
        wanted = Wanted("The plan", size, draw, *PLAN, labellings=("words", "keyed"))
        return Group(1, "Foundation plan", (wanted,))

    def drain(self) -> Group | None:
        """Return the drain's profile and the pipe across, None without a drain."""
        wanted = drain_wanted(self.work.layout, self.room, self.text)
        return Group(4, "Drain", wanted) if wanted else None

    def written(
        self,
        first: int,
        title: str,
        blocks: Sequence[Block],
        narrowest: float,
        before: Sequence[Leaf] = (),
    ) -> tuple[Leaf, ...]:
        """Return words and tables on sheets, in columns of at least so many text heights.

        before: sheets of the same kind that come first.
        """
        sheets = flowed(blocks, self.room, narrowest * self.text)
        return tuple(
            Leaf(sheet_number(first, place), title, tuple(Numbered(0, f) for f in figures))
            for place, figures in enumerate(sheets, start=len(before) + 1)
        )

    def general(self, others: Sequence[Leaf]) -> tuple[Leaf, ...]:
        """Return the general sheets: their index names all others, and themselves."""
        own: tuple[Leaf, ...] = ()
        while True:
            blocks = general_blocks(self.work, [*own, *others], self.text)
            written = self.written(0, "General", blocks, NOTES_WIDE)
            asked = self.written(0, ASKED, asked_blocks(self.work, self.text), TABLES_WIDE, written)
            if len(written) + len(asked) == len(own):
                return (*written, *asked)
            own = (*written, *asked)


def sheet_number(first: int, place: int) -> str:
    """Return the number of a sheet: the discipline, the kind, the place among its kind."""
    return f"{DISCIPLINE}-{first}{place:02d}"


def _ratios(shot: Shot) -> tuple[int, int]:
    if shot.window is None:
        return SECTION
    return CLOSE if shot.layers else DETAIL


def _drawn_section(
    scale: Scale, labelling: Labelling, *, picture: Picture, text: float, widest: float
) -> Figure:
    return section_figure(picture, scale, text, labelling, widest)
