"""Sections and details of houses with several drains: legible, drains told apart, all cut."""

from functools import cache

import pytest

from geometry.units import show_level
from tests.viz.figures.section.drawn_sections import ALL, SOME, drawn, read, shots
from tests.viz.figures.section.legible import problems
from tests.viz.figures.section.section_read import Read
from tests.whole import networks
from viz.drawing.marks import Text
from viz.job import Job, job
from viz.pictures import picture_of


@cache
def network(name: str) -> Job:
    return job(networks.TEXTS[name])


@pytest.mark.slow
@pytest.mark.parametrize("name", networks.TEXTS)
def test_every_section_and_detail_is_legible_in_every_way(name: str) -> None:
    assert not [p for one in drawn(network(name), ALL) for p in problems(one)]


def shown(name: str, shot: str) -> Read:
    work = network(name)
    (wanted,) = (s for s in shots(work) if s.name == shot)
    one = read(picture_of(work, wanted), SOME[0])
    assert not problems(one)
    return one


def said(name: str, shot: str) -> str:
    return "\n".join(m.words for m in shown(name, shot).figure.marks if isinstance(m, Text))


def test_the_detail_of_a_bleeder_shows_both_drains_and_its_invert() -> None:
    words = said("both to the pit", "detail-bleeder")
    lines = (
        "Perforated pipe, inside",
        "Perforated pipe, outside",
        "Drain stone, inside",
        "Bleeders through the footing",
        "Bleeder invert",
        "Drain invert, outside",
    )
    for line in lines:
        assert line in words
    assert show_level(-7 * 0.0254, "ft-in") in words
    # The trench outside is 1 ft 4 in wide, the one inside 1 ft, the footing 1 ft 8 in between.
    assert all(size in words for size in ("1'-4\"", "1'-8\"", "1'-0\""))


def test_the_detail_of_the_footing_shows_the_drains_on_both_its_faces() -> None:
    words = said("both to the pit", "detail-footing")
    assert "Perforated pipe, inside" in words
    assert "Perforated pipe, outside" in words
    assert "Bleeder" not in words
    # Both trenches reach down to the underside of the footing: one level for all three.
    assert words.count("drain trench bottom") == 1


def test_an_upper_drain_is_named_by_its_area() -> None:
    words = said("upper to lower stone", "section-across")
    assert "Drain invert, garage" in words
    assert "Drain invert at the left, basement" in words


def test_an_only_drain_needs_no_name() -> None:
    words = said("inside", "detail-footing")
    assert "Perforated pipe" in words.splitlines()
    assert "Drain invert" in words.splitlines()


def stair(count: int) -> str:
    """Return an invented row of areas, each half a metre above the last; the lowest has a drain."""
    areas = "".join(
        f'[[area]]\nname = "a{k}"\nstep = "{500 * k} mm"\n'
        f"corners = [[{6 * k}, 0], [{6 * k + 6}, 0], [{6 * k + 6}, 8], [{6 * k}, 8]]\n"
        for k in range(count)
    )
    return (
        '[project]\nname = "invented"\nnumbers = "m"\nunits = "metric"\n'
        f'{areas}[drain]\nfall = "level"\n'
    )


@pytest.mark.parametrize("count", [1, 3])
def test_the_detail_of_the_footing_stays_at_the_one_that_has_a_drain(count: int) -> None:
    work = job(stair(count))
    (wanted,) = (s for s in shots(work) if s.name == "detail-footing")
    picture = picture_of(work, wanted)
    assert picture.size[0] < 3.0
    words = "\n".join(m.words for m in read(picture, SOME[0]).figure.marks if isinstance(m, Text))
    for line in ("Perforated pipe", "Foundation wall", "Strip footing", "Backfill"):
        assert line in words
