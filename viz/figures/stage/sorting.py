"""The cut faces of a stage: what is there already, what is laid now, what comes later."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

import shapely

from geometry.site.records import Stage
from viz.figures.section.view import PaperFace, polygons

# Wider and higher than any picture, mm.
_FAR = 1e4
_BACKFILL = ("backfill", "grading", "wall stone")
_THIN_LAP = 0.05


@dataclass(frozen=True)
class Sorted:
    """Faces on paper, by when they are built. dug: the hole."""

    dug: tuple[PaperFace, ...]
    there: tuple[PaperFace, ...]
    now: tuple[PaperFace, ...]
    later: tuple[PaperFace, ...]


def sorted_faces(faces: Sequence[PaperFace], stages: Sequence[Stage], number: int) -> Sorted:
    """Return the faces by when they are built, seen from the stage of this number (from 0).

    Backfill that is not there yet is left out: it would hide the work.
    """
    found: dict[str, list[PaperFace]] = {"there": [], "now": [], "later": []}
    for face in faces:
        for when, part in _parts(face, faces, stages, number):
            hidden = when == "later" and face.label.role in _BACKFILL
            if not part.shape.is_empty and not hidden:
                found[when].append(part)
    dug = tuple(face for face in faces if face.label.role == "excavation")
    return Sorted(dug, *(tuple(found[when]) for when in ("there", "now", "later")))


def _parts(
    face: PaperFace, faces: Sequence[PaperFace], stages: Sequence[Stage], number: int
) -> Iterator[tuple[str, PaperFace]]:
    """Yield a face whole with its time, or in two where it is built in two stages."""
    if face.label.role == "excavation":
        return
    mine = [n for n, stage in enumerate(stages) if face.label.part in stage.parts]
    if not mine:
        yield "there", face
        return
    if len(mine) == 1 or stages[mine[0]].portion == "whole":
        yield "now" if number in mine else _when(mine[0], number), face
        return
    under, over = _halves(face, faces, stages[mine[0]].drain)
    first, last = mine[0], mine[-1]
    if number == last and face.label.role == "wrap":
        yield "now", face
        return
    yield _when(first, number), under
    yield _when(last, number), over


def _when(stage: int, number: int) -> str:
    return "now" if stage == number else "there" if stage < number else "later"


def _halves(face: PaperFace, faces: Sequence[PaperFace], drain: str) -> tuple[PaperFace, PaperFace]:
    """Return a drain's stone under the pipe and the rest; its wrap open at the top and the top."""
    stone = [f.shape for f in faces if f.label.part == f"{drain}/stone"]
    level = _FAR
    if face.label.role == "wrap" and stone:
        level = max(shape.bounds[3] for shape in stone) - _THIN_LAP
    elif face.label.role != "wrap":
        level = _under_pipe(face, faces, drain)
    low = shapely.box(-_FAR, -_FAR, _FAR, level)
    return (
        replace(face, shape=polygons(face.shape & low)),
        replace(face, shape=polygons(face.shape - low)),
    )


def _under_pipe(face: PaperFace, faces: Sequence[PaperFace], drain: str) -> float:
    round_ones = [f.shape for f in faces if f.label.part in (f"{drain}/pipe", f"{drain}/fittings")]
    if round_ones:
        return float(min(shape.bounds[1] for shape in round_ones))
    _, low, _, high = face.shape.bounds
    return float(low + (high - low) / 3)
