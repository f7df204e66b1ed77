"""How time and memory grow with a number of things: a fresh process for every size.

`python -m tests.bench.bench_growth NAME SIZE REPEATS` is such a process: it prints the least
milliseconds of its runs and the most memory it ever held, MB.
"""

import subprocess
import sys
from collections.abc import Callable
from dataclasses import dataclass
from itertools import cycle
from math import cos, pi, sin
from typing import Any

from geometry.designfile import edited, read_design
from geometry.layout.bodies import Body
from geometry.layout.lay import lay_out
from geometry.sections.cut import cut
from tests.bench.bench_engine import everything, lines
from tests.bench.forgetting import forget
from tests.bench.memory import peak_mb
from tests.bench.row import Curve
from tests.bench.suites import EXAMPLE
from tests.bench.timing import once

HEAD = '[project]\nname = "invented"\nnumbers = "m"\nunits = "metric"\n'
DRAIN = '[drain]\nfall = "level"\n'
Work = Callable[[], Any]
ENGINE, FLAT, DRAWING, SURVEY = "solids and report", "flat bodies", "drawings", "survey"


@dataclass(frozen=True)
class Growth:
    """What grows. begun: makes the work for a size; quick, whole: sizes; afresh: all forgotten."""

    work: str
    what: str
    begun: Callable[[int], Work]
    quick: tuple[int, ...]
    whole: tuple[int, ...]
    afresh: bool = False


def with_holes(text: str, wanted: int) -> str:
    """Return the design with the hole spacing that gives about a number of holes."""
    drain = lay_out(read_design(text)).drain
    assert drain is not None
    rows = [0] if wanted < 300 else [-60, -30, 30, 60]
    spacing = drain.route.length * len(rows) / wanted
    smaller = edited(text, ("drain", "holes", "diameter"), "1/8 in")
    smaller = edited(smaller, ("drain", "holes", "rows"), rows)
    return edited(smaller, ("drain", "holes", "spacing"), f"{spacing:.4f} m")


def ring_house(corners: int, drain: bool) -> str:
    """Return an invented round house of so many corners, with or without a drain.

    Bends need a foot of pipe beside each corner, so 80 corners are the most that a drain can have.
    """
    turn = [2 * pi * n / corners for n in range(corners)]
    plan = ", ".join(f"[{9 * cos(t):.6f}, {9 * sin(t):.6f}]" for t in turn)
    return f'{HEAD}[[area]]\nname = "a"\ncorners = [{plan}]\n' + (DRAIN if drain else "")


def row_of_areas(count: int) -> str:
    """Return an invented row of areas, each a step above the one before, with a drain."""
    areas = "".join(
        f'[[area]]\nname = "a{k}"\n'
        f"corners = [[{6 * k}, 0], [{6 * k + 6}, 0], [{6 * k + 6}, 8], [{6 * k}, 8]]\n"
        + (f'step = "{500 * k} mm"\n' if k else "")
        for k in range(count)
    )
    return f"{HEAD}{areas}{DRAIN}"


def engine(text: str) -> Work:
    """Return the whole engine at work on a design's text."""
    return lambda: everything(text)


def section(corners: int) -> Work:
    """Return one more cut through a house that is built, at ever other places."""
    from viz.job import job

    work = job(ring_house(corners, True))
    solids, places = work.foundation.solids, cycle(lines(work.layout))
    cut(solids, next(places))
    return lambda: cut(solids, next(places))


def papers(areas: int) -> Work:
    """Return the permit set of a house that is built."""
    from viz.job import job
    from viz.sheets.permit import permit_set

    work = job(row_of_areas(areas))
    _ = work.foundation
    return lambda: permit_set(work, "ARCH C")


def survey(count: int) -> Work:
    """Return a survey of so many shots."""
    from geometry.survey.asdug import as_dug
    from tests.bench.bench_survey import shots
    from tests.houses import house

    layout = house()
    taken = shots(layout, count, 0.004)
    return lambda: as_dug(layout, taken)


def raised(corners: int) -> Work:
    """Return the flat bodies of a round house raised, with their volumes."""
    from geometry.solids.foundation import body_mesh

    bodies = _flat(corners)
    return lambda: [body_mesh(body).volume for body in bodies]


def peers_raised(corners: int) -> Work:
    """Return the same in Open CASCADE."""
    from tests.bench.bench_cascade import built

    bodies = _flat(corners)
    # The kernel is imported here, before anything is timed.
    built(bodies[:1])
    return lambda: [solid.volume for solid in built(bodies)]


def _flat(corners: int) -> list[Body]:
    layout = lay_out(read_design(ring_house(corners, False)))
    return [body for body in layout.bodies if not body.bores]


GROWTHS = {
    "holes": Growth(
        ENGINE, "holes in the drain, about",
        lambda n: engine(with_holes(EXAMPLE.read_text(encoding="utf-8"), n)),
        (100, 1_000, 10_000), (100, 1_000, 4_000, 14_000), afresh=True),
    "corners": Growth(
        ENGINE, "corners, with a drain", lambda n: engine(ring_house(n, True)),
        (4, 20, 80), (4, 10, 20, 40, 80), afresh=True),
    "bare": Growth(
        ENGINE, "corners, without a drain", lambda n: engine(ring_house(n, False)),
        (4, 20, 200), (4, 10, 40, 80, 200), afresh=True),
    "areas": Growth(
        ENGINE, "areas side by side", lambda n: engine(row_of_areas(n)),
        (1, 3, 6), (1, 2, 4, 8, 12), afresh=True),
    "raised": Growth(
        FLAT, "corners, engine", raised, (4, 20, 80), (4, 10, 20, 40, 80, 200), afresh=True),
    "peers_raised": Growth(
        FLAT, "corners, Open CASCADE", peers_raised, (4, 20, 80), (4, 10, 20, 40, 80, 200)),
    "section": Growth(
        DRAWING, "one cut, against corners", section, (4, 20, 80), (4, 10, 20, 40, 80)),
    "papers": Growth(
        DRAWING, "permit set, against areas", papers, (1, 2, 4), (1, 2, 4, 6)),
    "survey": Growth(
        SURVEY, "shots", survey, (1_000, 10_000, 100_000), (1_000, 10_000, 100_000, 500_000)),
}  # fmt: skip


def rows(quick: bool) -> list[Curve]:
    """Return all curves."""
    return [curve(name, quick) for name in GROWTHS]


def curve(name: str, quick: bool) -> Curve:
    """Return one curve, each size in a process of its own."""
    kind = GROWTHS[name]
    sizes = kind.quick if quick else kind.whole
    found = [_measured(name, size, 3 if quick else 7) for size in sizes]
    return Curve(kind.work, kind.what, sizes, *zip(*found, strict=True))


def _measured(name: str, size: int, repeats: int) -> tuple[float, float]:
    words = [sys.executable, "-m", "tests.bench.bench_growth", name, str(size), str(repeats)]
    done = subprocess.run(words, capture_output=True, text=True, check=False)
    if done.returncode:
        raise RuntimeError(f"{name} of {size:,}: {done.stderr.strip().splitlines()[-1]}")
    ms, mb = map(float, done.stdout.split())
    return ms, mb


def main() -> None:
    """Time one size, with all forgotten before each run where the growth says so."""
    name, size, repeats = sys.argv[1], int(sys.argv[2]), int(sys.argv[3])
    kind = GROWTHS[name]
    work, before = kind.begun(size), forget if kind.afresh else None
    found = [once(work, before)]
    # Long ones fewer times, short ones more.
    while (len(found) < repeats and sum(found) < 8_000) or sum(found) < 300:
        found.append(once(work, before))
    print(min(found), peak_mb())


if __name__ == "__main__":
    main()
