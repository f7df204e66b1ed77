"""Which pictures a design has, what they are made of, and what they look like."""

import io
from math import cos, radians, sin

import numpy as np
import pytest
from PIL import Image

from geometry.layout.drain_stone import developed_width
from geometry.layout.lay import lay_out
from tests.designs import design_of, seeded_raw
from tests.rolls import seeds
from viz.carried import demo
from viz.job import Job, job
from viz.scene.camera import aimed
from viz.scene.drainlength import flaps, from_below, opened, trough
from viz.scene.palette import PAPER
from viz.scene.profile import profile_of, square_cut
from viz.scene.worker import Studio
from viz.stills import BELOW, OPENED, shown, still_named, stills

WORK = job(demo().read_text())
SMALL = (400, 300)


def profile(work=WORK):
    return profile_of(work.layout.drain, work.foundation, work.cuts.values())


def without_holes():
    return job(demo().read_text().replace("rows = [-60, -30, 30, 60]", "rows = []"))


def holes_up():
    return job(demo().read_text().replace("rows = [-60, -30, 30, 60]", "rows = [-120, 120]"))


def test_the_pictures_are_the_house_the_drain_and_every_stage():
    names = [still.name for still in stills(WORK)]
    assert names[:5] == ["whole", "cutaway", "exploded", BELOW, OPENED]
    assert names[5] == "stage-01-subgrade"
    assert names[-1] == f"stage-{len(names) - 5:02}-slab"
    assert len(set(names)) == len(names)
    titles = [still.title for still in stills(WORK)]
    assert len(set(titles)) == len(titles)


def test_a_name_that_is_none_is_refused_with_those_there_are():
    with pytest.raises(Exception, match="stage-07-base"):
        still_named(WORK, "upside down")


def test_every_label_names_a_body_of_its_picture_and_something_is_labelled():
    for still in stills(WORK)[3:]:
        solids, view = shown(WORK, still.name)
        parts = {solid.label.part for solid in solids}
        assert view.title.startswith(still.title)
        assert len(parts & set(view.labels)) >= 3, still.name
        # Parts of the house the trench's window leaves out may go unnamed; the drain's may not.
        assert {p for p in view.labels if p.startswith("drain/")} <= parts, still.name
        assert view.focus <= parts


def test_the_drain_is_looked_at_from_below_and_holes_that_look_up_from_above():
    for work, way in ((WORK, 1), (holes_up(), -1)):
        _, view = shown(work, BELOW)
        forward = aimed((0.0, 1.0), view.turn, view.tilt)[2]
        assert np.sign(forward[2]) == way


def test_holes_stand_where_the_design_has_them_by_the_clock():
    found = profile()
    dark = next(s for s in from_below(found).solids if s.label.part == "drain/holes")
    drain = WORK.layout.drain
    out = drain.bore + 0.35 * drain.pipe.wall_m
    discs = dark.vertices.reshape(-1, 16, 3).mean(axis=1)
    wished = {
        (round(-out * sin(radians(row)), 5), round(-out * cos(radians(row)), 5))
        for row in drain.drain.holes.rows
    }
    there = {(round(x, 5), round(z, 5)) for x, _, z in discs - (found.axis[0], 0, found.axis[1])}
    assert there == wished
    steps = np.unique(np.diff(np.unique(discs[:, 1].round(6))).round(6))
    assert steps == pytest.approx([drain.drain.holes.spacing], abs=1e-5)


def test_the_open_fabric_is_as_wide_as_the_sheet_that_closes_and_laps():
    found = profile()
    inner, outer = flaps(found)
    assert trough(found).length + inner.length + outer.length == pytest.approx(
        developed_width(WORK.layout.drain)
    )
    drain = WORK.layout.drain
    over_the_stone = drain.drain.stone.width + drain.shelf
    assert inner.length + outer.length - over_the_stone == pytest.approx(drain.drain.wrap.overlap)
    assert outer.intersection(found.ground).is_empty


def test_stone_and_pipe_of_the_trench_lie_inside_the_open_fabric():
    found = profile()
    drain = WORK.layout.drain
    stone, pipe = (
        np.vstack([s.vertices for s in opened(found).solids if s.label.part == part])
        for part in ("drain/stone", "drain/pipe")
    )
    for body in (stone, pipe):
        assert body[:, 0].min() > -drain.shelf - 1e-3
        assert body[:, 0].max() < drain.drain.stone.width + 1e-3
        assert body[:, 2].min() > drain.stone_bottom
        assert body[:, 2].max() < drain.stone_top + 1e-3


@pytest.mark.slow
@pytest.mark.parametrize("seed", seeds(12))
def test_the_drain_of_any_design_is_pictured_with_its_own_sheet_of_fabric(seed):
    raw = seeded_raw(seed)
    if raw is None:
        pytest.skip("not a sound design")
    work = Job(f"seed {seed}", lay_out(design_of(raw)))
    drain = work.layout.drain
    assert (OPENED in [still.name for still in stills(work)]) == bool(drain)
    if drain:
        found = profile_of(drain, work.foundation, [square_cut(drain)])
        inner, outer = flaps(found)
        length = trough(found).length + inner.length + outer.length
        assert length == pytest.approx(developed_width(drain))
        for name in (BELOW, OPENED):
            assert len(shown(work, name)[0]) >= 4


@pytest.fixture(scope="module")
def drawn():
    studio = Studio()

    def draw(name, work=WORK, size=SMALL):
        solids, view = shown(work, name, upright=size[1] > size[0])
        return np.asarray(Image.open(io.BytesIO(studio.still(solids, view, size))), dtype=int)

    yield draw
    studio.close()


@pytest.mark.slow
@pytest.mark.pictures
@pytest.mark.parametrize("size", [SMALL, (360, 480)])
@pytest.mark.parametrize("name", [BELOW, OPENED, "stage-03-pipe", "stage-06-pit", "whole"])
def test_nothing_is_clipped_and_the_picture_is_not_mostly_paper(drawn, name, size):
    pixels = drawn(name, size=size)
    inked = np.abs(pixels - np.array(PAPER)).max(axis=2) > 12
    rows, columns = np.nonzero(inked)
    assert min(columns.min(), rows.min()) >= 2
    assert columns.max() <= size[0] - 3
    assert rows.max() <= size[1] - 3
    assert inked.mean() > 0.22


@pytest.mark.slow
@pytest.mark.pictures
def test_the_holes_are_seen_in_the_underside_of_the_pipe(drawn):
    bare, drilled = (drawn(BELOW, work, (640, 480)) for work in (without_holes(), WORK))

    def dark(pixels):
        """Pixels in ink with pale pipe on both sides, a few pixels away."""
        ink, pale = pixels.max(axis=2) < 110, pixels.min(axis=2) > 190
        beside = np.roll(pale, 6, axis=1) & np.roll(pale, -6, axis=1)
        words = np.zeros_like(ink)
        words[:70], words[:, :150], words[:, -150:] = True, True, True
        return int((ink & beside & ~words).sum())

    assert dark(drilled) > 30
    assert dark(bare) < dark(drilled) / 3


@pytest.mark.slow
@pytest.mark.pictures
def test_a_picture_can_be_stopped_and_the_next_one_is_drawn():
    studio = Studio()

    class StopIt(BaseException):
        pass

    beats = []

    def beat():
        beats.append(1)
        if len(beats) == 2:
            raise StopIt

    try:
        solids, view = shown(WORK, "whole")
        with pytest.raises(StopIt):
            studio.still(solids, view, (1600, 1200), beat)
        assert studio.still(solids, view, (200, 150), lambda: None).startswith(b"\x89PNG")
    finally:
        studio.close()
