"""The push of the fill stands with the sections, is easily read and says whom to ask."""

import pytest

from tests.viz.figures.drain_figures import example
from viz.carried import examples
from viz.drawing.marks import Text
from viz.drawing.page import PAPERS, Paper
from viz.figures.pressure.pressure import REMARK, TITLE
from viz.job import job
from viz.sheets.compose import Composer, Group
from viz.sheets.permit import permit_set
from viz.sheets.pushes import pressure_wanted
from viz.sheets.titleblock import room
from viz.style.text import body_height

DEMO = examples()["l-basement"].read_text(encoding="utf-8")


@pytest.mark.parametrize("paper", PAPERS.values(), ids=lambda paper: paper.name)
@pytest.mark.parametrize("name", examples())
def test_it_fits_every_paper_at_a_scale_easily_read(name: str, paper: Paper) -> None:
    layout, text = example(name), body_height(paper.width)
    group = Group(3, "Sections", pressure_wanted(layout, text))
    (rows,) = Composer(group, room(paper), layout.design.project.units, text).sheets()
    ((one,),) = rows
    assert one.figure.scale is not None
    assert one.figure.scale.ratio <= 50


def test_it_is_left_out_where_the_soil_is_not_known() -> None:
    work = job(DEMO.replace('group = "CL"', 'group = "unknown"'))
    assert pressure_wanted(work.layout, 2.5) == ()
    assert not any(
        any(TITLE in one for one in sheet.contents) for sheet in permit_set(work, "ARCH D")
    )


def test_it_stands_with_the_sections_and_says_whom_to_ask() -> None:
    (held,) = (
        s for s in permit_set(job(DEMO), "ARCH D") if any(TITLE in one for one in s.contents)
    )
    assert held.title == "Sections"
    said = " ".join(m.words for m in held.drawing.marks if isinstance(m, Text))
    assert REMARK in said
