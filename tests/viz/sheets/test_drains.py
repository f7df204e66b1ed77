"""The drain on sheets: whole where it can be read, else in parts, and always on the paper."""

import pytest

from geometry.layout.lay import Layout
from tests.houses import house
from tests.viz.figures.drain_figures import assert_legible, example, layouts
from viz.drawing.figure import Figure
from viz.drawing.page import PAPERS, Paper
from viz.drawing.scale import SCALES
from viz.figures.profile.profile import profile_parts
from viz.sheets.compose import Composer, Group
from viz.sheets.drains import drain_wanted, heights_wanted, outlets_wanted
from viz.sheets.titleblock import room
from viz.style.text import body_height

PAPER_LIST = list(PAPERS.values())


def profiles(layout: Layout, paper: Paper) -> list[Figure]:
    """The profiles as they are composed on this paper; all figures must fit its room."""
    text, around = body_height(paper.width), room(paper)
    group = Group(4, "Drain", drain_wanted(layout, around, text))
    sheets = Composer(group, around, layout.design.project.units, text).sheets()
    cases = [one for rows in sheets for row in rows for one in row]
    for one in cases:
        assert one.width <= around.width + 1e-6
        assert one.height <= around.height + 1e-6
    others = ("drain-pipe", "drain-outlet")
    return [one.figure for one in cases if not one.figure.name.startswith(others)]


def ratio(figure: Figure) -> int:
    assert figure.scale is not None
    return figure.scale.ratio


def test_nothing_is_asked_for_without_a_drain() -> None:
    bare = [layout for layout in layouts() if layout.drain is None]
    assert bare
    assert all(not drain_wanted(x, room(PAPER_LIST[0]), 2.5) for x in bare)


@pytest.mark.parametrize("paper", PAPER_LIST, ids=lambda paper: paper.name)
@pytest.mark.parametrize("name", ["l-basement", "metric-house", "foam-stopped"])
def test_examples_are_easily_read_on_every_paper(name: str, paper: Paper) -> None:
    assert all(ratio(figure) <= 128 for figure in profiles(example(name), paper))


@pytest.mark.parametrize("paper", PAPER_LIST, ids=lambda paper: paper.name)
def test_rolled_drains_fit_every_paper_and_none_of_them_is_left_out(paper: Paper) -> None:
    for layout in [x for x in layouts() if x.drain][:16]:
        names = [figure.name for figure in profiles(layout, paper)]
        parts = [f"drain-profile-{n + 1}" for n in range(profile_parts(layout))]
        assert names in (["drain-profile"], parts)


def test_large_papers_show_the_whole_and_small_ones_the_parts() -> None:
    layout = example("l-basement")
    assert len(profiles(layout, PAPERS["ARCH D"])) == 1
    assert len(profiles(layout, PAPERS["letter"])) == 2


@pytest.mark.parametrize("name", ["l-basement", "metric-house", "foam-stopped"])
def test_heights_are_drawn_apart_from_the_set_where_the_paper_holds_them(name: str) -> None:
    layout = example(name)
    for paper in PAPER_LIST:
        text, around = body_height(paper.width), room(paper)
        group = Group(7, "Heights", heights_wanted(layout, around, text))
        sheets = Composer(group, around, layout.design.project.units, text).sheets()
        names = [one.figure.name for rows in sheets for row in rows for one in row]
        assert names == ([] if paper.name in ("Letter", "A4") else ["drain-heights"])
        assert "drain-heights" not in [f.name for f in profiles(layout, paper)]


# An invented ground that falls 7 ft in 100 under the house of the drawings' tests.
DAYLIGHT = """
[[drain.daylight]]
toward = "90 ft, 10 ft"
ground = ["0, 6 ft", "200 ft, -8 ft"]
"""
MORE = DAYLIGHT.replace("90 ft, 10 ft", "15 ft, 90 ft")


@pytest.mark.parametrize("paper", PAPER_LIST, ids=lambda paper: paper.name)
def test_an_outlet_to_daylight_stands_on_the_drain_s_sheets(paper: Paper) -> None:
    layout = house(("\n[sump]", f"{DAYLIGHT}\n[sump]"))
    text, around = body_height(paper.width), room(paper)
    (wanted,) = outlets_wanted(layout, around, text)
    assert wanted.title in [w.title for w in drain_wanted(layout, around, text)]
    group = Group(4, "Drain", (wanted,))
    sheets = Composer(group, around, layout.design.project.units, text).sheets()
    (((one,),),) = sheets
    assert one.figure.name == "drain-outlet"
    assert one.width <= around.width + 1e-6
    assert_legible(one.figure)


def test_every_outlet_of_a_house_is_drawn_under_its_own_number() -> None:
    layout = house(("\n[sump]", f"{DAYLIGHT}{MORE}\n[sump]"))
    wanted = outlets_wanted(layout, room(PAPERS["ARCH D"]), 3.0)
    scale = SCALES["ft-in"][6]
    names = [one.draw(scale, "words").name for one in wanted]
    assert names == ["drain-outlet-1", "drain-outlet-2"]
    assert outlets_wanted(house(), room(PAPERS["ARCH D"]), 3.0) == ()
