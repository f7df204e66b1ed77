"""Faults of the drain's own numbers: names, sides, corners, the pipe's section."""

from collections.abc import Iterator, Sequence

import numpy as np

from geometry.faults.common import At, Words
from geometry.faults.lines import Path
from geometry.materials.catalogue import FABRICS, PIPES
from geometry.parts.area import Area
from geometry.parts.drain import Drain, Holes, Sump
from geometry.parts.vent import Vent
from geometry.project import Design

CLEAR_M = 0.005
# Least wall left between two holes.
WEB_M = 1e-3


def numbers_faults(design: Design) -> Iterator[At]:
    """Yield names, sides and corners that do not exist; what follows needs them."""
    names = [a.name for a in design.areas]
    parts: list[tuple[Path, Drain | Sump | Vent]] = []
    parts += [(("sump",), design.sump)] if design.sump else []
    parts += [(("vent",), design.vent)] if design.vent else []
    parts = [*((("drain", n), d) for n, d in enumerate(design.drains)), *parts]
    for path, part in parts:
        if part.area and part.area not in names:
            known = ", ".join(names)
            yield At((*path, "area"), f'there is no area "{part.area}"; write one of {known}')
    for number, drain in enumerate(design.drains):
        yield from _drain_numbers(("drain", number), design, drain)


def _drain_numbers(path: Path, design: Design, drain: Drain) -> Iterator[At]:
    area = drained_area(design, drain)
    yield from _side_faults(path, drain, len(area.corners))
    yield from _corner_faults(path, drain, len(area.corners))


def drained_area(design: Design, drain: Drain) -> Area:
    """Return the area a drain runs round: the lowest for an empty or unknown name."""
    lowest = min(design.areas, key=lambda a: a.step)
    return next((a for a in design.areas if a.name == drain.area), lowest)


def _side_faults(path: Path, drain: Drain, count: int) -> Iterator[At]:
    if drain.sides == "all":
        return
    wrong = sorted({s for s in drain.sides if not 1 <= s <= count})
    if wrong or not drain.sides:
        what = f"there is no side {_listed(wrong)}" if wrong else "no side is named"
        yield At((*path, "sides"), f'{what}; write "all" or numbers from 1 to {count}')


def _corner_faults(path: Path, drain: Drain, count: int) -> Iterator[At]:
    corners = [("high_corner", drain.high_corner), ("low_corner", drain.low_corner)]
    corners += [("cleanouts", c) for c in drain.cleanouts]
    for key, corner in corners:
        if corner is not None and not 1 <= corner <= count:
            yield At((*path, key), f"there is no corner {corner}; number them from 1 to {count}")
    if len(set(drain.cleanouts)) < len(drain.cleanouts):
        sentence = "a corner is listed twice; one cleanout stands at a corner"
        yield At((*path, "cleanouts"), sentence)
    if drain.high_corner and drain.high_corner == drain.low_corner:
        sentence = "the low point is the high point; leave one out or choose another corner"
        yield At((*path, "low_corner"), sentence)


def _listed(numbers: Sequence[int]) -> str:
    shown = [str(n) for n in numbers[:5]]
    return ", ".join(shown) + (", ..." if len(numbers) > len(shown) else "")


def section_faults(path: Path, drain: Drain, words: Words) -> Iterator[At]:
    """Yield faults of the pipe's own section and of its place in the stone."""
    pipe, wrap = PIPES[drain.pipe], FABRICS[drain.wrap.material]
    least = pipe.outside_diameter_m / 2 + wrap.thickness_m + CLEAR_M
    if drain.offset < least:
        yield At(
            (*path, "offset"),
            f"the pipe's centre is {words.size(drain.offset)} from the footing and the pipe would "
            f"run into it; keep at least {words.least(least)}",
        )
    if drain.stone.width < drain.offset + least:
        yield At(
            (*path, "stone", "width"),
            f"stone {words.size(drain.stone.width)} wide does not reach past the pipe; "
            f"make it at least {words.least(drain.offset + least)}",
        )
    yield from _hole_faults(path, drain.holes, pipe.inside_diameter_m, words)


def _hole_faults(path: Path, holes: Holes, bore: float, words: Words) -> Iterator[At]:
    if holes.spacing < holes.diameter + WEB_M:
        yield At(
            (*path, "holes", "spacing"),
            f"holes of {words.size(holes.diameter)} every {words.size(holes.spacing)} run into "
            f"each other; space them at least {words.least(holes.diameter + WEB_M)}",
        )
    if holes.diameter > 0.5 * bore:
        yield At(
            (*path, "holes", "diameter"),
            f"{words.size(holes.diameter)} is more than half the pipe's bore; "
            f"drill at most {words.most(0.5 * bore)}",
        )
    elif apart := _too_near(holes, bore):
        yield At(
            (*path, "holes", "rows"),
            "two rows of holes run into each other; "
            f"set their angles at least {apart:.0f} degrees apart",
        )


def _too_near(holes: Holes, bore: float) -> float:
    """Return the degrees two rows of holes need between them, or 0 where they have it."""
    apart = 2 * float(np.degrees(np.arcsin(min(1.0, 1.1 * holes.diameter / bore))))
    turned = sorted(r % 360 for r in holes.rows)
    gaps = np.diff([*turned, turned[0] + 360]) if len(turned) > 1 else np.array([360.0])
    return float(np.ceil(apart)) if gaps.min() < apart else 0.0
