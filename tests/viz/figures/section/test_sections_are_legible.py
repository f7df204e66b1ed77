"""Sections and details on paper: true to scale, legible, nothing over anything else."""

from collections.abc import Callable
from dataclasses import replace
from itertools import cycle, islice

import numpy as np
import pytest
import shapely

from geometry.sections.face import CutLine
from tests.rolls import seeds
from tests.viz.figures import invented_section as invented
from tests.viz.figures.section.drawn_sections import (
    ALL,
    SOME,
    drawn,
    example,
    read,
    rolled,
    shots,
)
from tests.viz.figures.section.legible import problems
from tests.viz.figures.section.section_read import Read
from viz.carried import examples
from viz.drawing.figure import Figure
from viz.drawing.marks import Circle, Fill, Leader, Line, Mark, Text
from viz.figures.section.setting import Labelling
from viz.job import Job
from viz.pictures import Shot, picture_of
from viz.style.lines import CHAIN, SEEN
from viz.style.materials import look


@pytest.mark.parametrize("whole", [False, True], ids=["wall", "house"])
@pytest.mark.parametrize("system", ["ft-in", "metric"])
@pytest.mark.parametrize("way", ALL, ids=str)
def test_the_invented_section(whole: bool, system: str, way: tuple) -> None:
    assert not problems(read(invented.picture(whole, system), way))


@pytest.mark.parametrize("name", examples())
def test_every_section_of_the_examples(name: str) -> None:
    assert not [p for one in drawn(example(name), SOME) for p in problems(one)]


@pytest.mark.slow
@pytest.mark.parametrize("name", examples())
def test_every_section_of_the_examples_in_every_way(name: str) -> None:
    assert not [p for one in drawn(example(name), ALL) for p in problems(one)]


@pytest.mark.parametrize("seed", range(6))
def test_sections_of_rolled_designs(seed: int) -> None:
    work = sound(seed)
    ways = islice(cycle(ALL), seed, None)
    pictures = [picture_of(work, shot) for shot in shots(work)]
    assert pictures
    assert not [p for one in map(read, pictures, ways) for p in problems(one)]


@pytest.mark.slow
@pytest.mark.parametrize("seed", seeds(20, 6))
def test_sections_of_many_rolled_designs_in_every_way(seed: int) -> None:
    assert not [p for one in drawn(sound(seed), ALL) for p in problems(one)]


def sound(seed: int) -> Job:
    work = rolled(seed)
    if work is None:
        pytest.skip("this seed's design has faults")
    return work


@pytest.mark.parametrize("name", examples())
def test_a_jogged_cut_is_drawn_with_its_step(name: str) -> None:
    work = example(name)
    picture = picture_of(work, Shot("own", "Own", jogged(work, 0.45, 1.0)))
    assert len(picture.steps) == 1
    for way in SOME:
        one = read(picture, way)
        assert not problems(one)
        assert len([m for m in one.of(Line, "outline") if m.dash == CHAIN]) == 1


@pytest.mark.slow
@pytest.mark.parametrize("seed", seeds(10))
def test_jogged_cuts_of_rolled_designs(seed: int) -> None:
    work = sound(seed)
    for share, aside in ((0.3, 0.8), (0.5, -1.5), (0.62, 2.4)):
        shot = Shot("own", "Own", jogged(work, share, aside))
        picture = picture_of(work, shot)
        assert not [p for way in ALL for p in problems(read(picture, way))]


def jogged(work: Job, share: float, aside: float) -> CutLine:
    """The cut across with a step aside, metres, at a share of its length."""
    line = work.cuts["across"]
    start, run = np.array(line.start), np.subtract(line.end, line.start)
    step = np.array((-run[1], run[0])) / np.hypot(*run) * aside
    corners = (start + share * run, start + share * run + step, start + run + step)
    first, second, end = ((float(x), float(y)) for x, y in corners)
    return CutLine(line.start, end, (first, second))


def swapped(figure: Figure, old: Mark, new: Mark) -> tuple[Mark, ...]:
    return tuple(new if mark is old else mark for mark in figure.marks)


def first(figure: Figure, kind: type, layer: str, **more: object) -> Mark:
    """The first mark of a kind in a layer with such attributes."""
    return next(
        m
        for m in figure.marks
        if isinstance(m, kind) and m.layer == layer
        and all(getattr(m, name) == value for name, value in more.items())
    )  # fmt: skip


def words_over_words(figure: Figure) -> tuple[Mark, ...]:
    level, label = first(figure, Text, "levels"), first(figure, Text, "labels")
    return swapped(figure, label, replace(label, at=level.at, anchor=level.anchor))


def words_on_the_cut(figure: Figure) -> tuple[Mark, ...]:
    text, wall = first(figure, Text, "dimensions"), first(figure, Fill, "cut")
    spot = wall.shape.representative_point()
    return swapped(figure, text, replace(text, at=(spot.x, spot.y)))


def a_label_twice(figure: Figure) -> tuple[Mark, ...]:
    return (*figure.marks, replace(first(figure, Text, "labels"), at=(-900.0, 0.0)))


def a_leader_astray(figure: Figure) -> tuple[Mark, ...]:
    old = first(figure, Leader, "leaders")
    return swapped(figure, old, replace(old, points=((-500.0, 0.0), *old.points[1:])))


def leaders_that_cross(figure: Figure) -> tuple[Mark, ...]:
    low, high = figure.box.low - 30, figure.box.low - 20
    return (*figure.marks, Leader(((0, low), (9, high))), Leader(((0, high), (9, low))))


def a_leader_over_words(figure: Figure) -> tuple[Mark, ...]:
    x, y = first(figure, Text, "dimensions").at
    return (*figure.marks, Leader(((x - 9, y + 1), (x + 9, y + 1))))


def a_stop_aside(figure: Figure) -> tuple[Mark, ...]:
    slash = first(figure, Line, "dimensions", weight=SEEN)
    aside = tuple((x + 2e-3, y + 2e-3) for x, y in slash.points)
    return swapped(figure, slash, replace(slash, points=aside))


def another_length(figure: Figure) -> tuple[Mark, ...]:
    text = first(figure, Text, "dimensions")
    return swapped(figure, text, replace(text, words="9'-9\""))


def an_area_too_small(figure: Figure) -> tuple[Mark, ...]:
    old = first(figure, Fill, "cut", colour=look("wall").fill)
    return swapped(figure, old, replace(old, shape=old.shape.buffer(-0.01)))


def a_thin_part_missing(figure: Figure) -> tuple[Mark, ...]:
    gone = first(figure, Line, "outline", weight=look("retarder").thin_mm)
    return tuple(m for m in figure.marks if m is not gone)


def a_step_nobody_cut(figure: Figure) -> tuple[Mark, ...]:
    return (*figure.marks, Line(((5, 0), (5, 9)), SEEN, dash=CHAIN, layer="outline"))


def rings_that_touch(figure: Figure) -> tuple[Mark, ...]:
    ring = first(figure, Circle, "labels")
    (x, y), near = ring.centre, ring.radius * 1.5
    return (*figure.marks, replace(ring, centre=(x + near, y)))


@pytest.mark.parametrize(
    ("spoil", "way", "said"),
    [
        (words_over_words, "words", "overlaps"),
        (words_on_the_cut, "words", "stands on the cut"),
        (a_label_twice, "words", "each once"),
        (a_leader_astray, "words", "points at"),
        (leaders_that_cross, "words", "two leaders cross"),
        (a_leader_over_words, "words", "a leader crosses"),
        (a_stop_aside, "words", "not drawn true"),
        (another_length, "words", "another length"),
        (an_area_too_small, "words", "covers"),
        (a_thin_part_missing, "words", "drawn nowhere"),
        (a_step_nobody_cut, "words", "steps stand"),
        (rings_that_touch, "keyed", "touch"),
    ],
)
def test_the_reader_of_these_tests_sees(
    spoil: Callable[[Figure], tuple[Mark, ...]], way: Labelling, said: str
) -> None:
    good = read(invented.picture(), (0, way))
    assert not problems(good)
    bad = Read(replace(good.figure, marks=spoil(good.figure)), good.picture)
    assert any(said in problem for problem in problems(bad))


def test_what_is_cut_covers_its_place_alone() -> None:
    one = read(invented.picture(), (0, "words"))
    areas = [f.shape for f in one.fills]
    whole = shapely.union_all(areas).area
    assert sum(a.area for a in areas) == pytest.approx(whole, rel=1e-6)
