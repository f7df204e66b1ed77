"""The sections that tests look at: of the examples and of rolled designs, at several scales."""

from collections.abc import Iterator
from functools import cache
from typing import get_args

from geometry.layout.lay import lay_out
from tests.designs import design_of, seeded_raw
from tests.viz.figures.section.section_read import Read
from viz.carried import examples
from viz.drawing.scale import SCALES, Scale
from viz.figures.section.section import section_figure
from viz.figures.section.setting import Labelling, Picture
from viz.job import Job, job
from viz.pictures import Shot, detail_shots, picture_of, section_shots

LABELLINGS: tuple[Labelling, ...] = get_args(Labelling)
# Least ratio of a scale with the height of its text, mm: of whole houses, of details.
WHOLE = ((48, 3.0), (96, 2.5))
CLOSE = ((8, 3.0), (16, 2.5))
Way = tuple[int, Labelling]
# Both scales with the labellings that are most unlike; all there are.
SOME: tuple[Way, ...] = ((0, "words"), (1, "keyed"))
ALL: tuple[Way, ...] = tuple((n, way) for n in (0, 1) for way in LABELLINGS)


@cache
def example(name: str) -> Job:
    return job(examples()[name].read_text(encoding="utf-8"))


def rolled(seed: int) -> Job | None:
    """The job of a random design, of every second seed in metres; None where it has faults."""
    raw = seeded_raw(seed)
    if raw is None:
        return None
    raw["project"]["units"] = ("ft-in", "metric")[seed % 2]
    return Job("", lay_out(design_of(raw)))


def shots(work: Job) -> tuple[Shot, ...]:
    return (*section_shots(work), *detail_shots(work))


def scale_of(picture: Picture, number: int) -> tuple[Scale, float]:
    """The first or second scale for a picture, and the height of text with it."""
    least, text = (CLOSE if picture.window else WHOLE)[number]
    return next(s for s in SCALES[picture.system] if s.ratio >= least), text


def read(picture: Picture, way: Way, widest: float = 0.0) -> Read:
    scale, text = scale_of(picture, way[0])
    return Read(section_figure(picture, scale, text, way[1], widest), picture)


def drawn(work: Job, ways: tuple[Way, ...]) -> Iterator[Read]:
    """Every section and detail of a job in these ways."""
    for shot in shots(work):
        picture = picture_of(work, shot)
        for way in ways:
            yield read(picture, way)
