"""Sheets of houses with several drains: each has its profile, its pipe, its heights, its tables."""

from functools import cache

import pytest

from tests.rolls import night
from tests.whole import networks
from viz.drawing.figure import Figure
from viz.drawing.page import PAPERS, PaperName
from viz.job import Job, job
from viz.sheets.drains import drain_wanted, heights_wanted
from viz.sheets.permit import Desk, permit_set


@cache
def network(name: str) -> Job:
    return job(networks.TEXTS[name])


def figures(name: str, paper: PaperName) -> list[Figure]:
    desk = Desk(network(name), PAPERS[paper])
    return [one.figure for leaf in desk.leaves(desk.drain()) for one in leaf.figures]


def test_every_drain_has_its_profile_and_a_pipe_that_differs_its_detail() -> None:
    found = figures("both to the pit", "ARCH D")
    assert len({figure.name for figure in found}) == len(found)
    titles = [figure.title for figure in found]
    for title in ("inside drain, basement", "outside drain, basement"):
        assert f"Drain profile, {title}" in titles
        # Their stone differs: 1 in and 2 in of bedding.
        assert f"Drain pipe, {title}" in titles


def test_one_pipe_laid_alike_in_two_drains_is_drawn_once() -> None:
    text = networks.TEXTS["upper to lower stone"].replace('stone = { cover = "3 in" }\n', "")
    desk = Desk(job(text), PAPERS["ARCH D"])
    wanted = [one.title for one in drain_wanted(desk.work.layout, desk.room, desk.text)]
    assert len([title for title in wanted if title.startswith("The pipe")]) == 1
    assert len([title for title in wanted if title.startswith("The drain's profile")]) == 2


def test_heights_are_drawn_for_every_drain() -> None:
    desk = Desk(network("both to the pit"), PAPERS["ARCH D"])
    titles = [one.title for one in heights_wanted(desk.work.layout, desk.room, desk.text)]
    assert titles == [
        "The drain's heights, inside drain, basement",
        "The drain's heights, outside drain, basement",
    ]


@pytest.mark.slow
@pytest.mark.parametrize("paper", ["ANSI B", "letter", "ARCH D"] if night() else ["letter"])
@pytest.mark.parametrize("name", networks.TEXTS)
def test_nothing_is_lost_in_the_set(name: str, paper: PaperName) -> None:
    work = network(name)
    titles = "\n".join(title for sheet in permit_set(work, paper) for title in sheet.contents)
    several = len(work.layout.drains) > 1
    for drain in work.layout.drains:
        which = f", {drain.title}" if several else ""
        assert f"Drain profile{which}" in titles
        colon = f": {drain.title}" if several else ""
        assert f"Drain{colon}" in titles
        assert f"Inverts along the drain{colon}" in titles
    assert ("Bleeder through the footing" in titles) == bool(work.layout.bleeders)
