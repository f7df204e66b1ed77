"""Times of the engine, alone and beside a boundary-representation kernel in the same run.

Run it with `python -m tests.bench.bench_engine`; add `--quick` for fewer repeats. Every figure
is a median. The peer drills a part of the holes; the table says how many and how its time for
all of them was reckoned.
"""

import argparse
import gc
import platform
import subprocess
import sys
from collections.abc import Callable
from importlib.metadata import version
from math import cos, pi, sin
from os import cpu_count
from pathlib import Path
from statistics import median
from typing import Any

import numpy as np

from geometry.designfile import edited, read_design
from geometry.layout.lay import Layout, lay_out
from geometry.report import report
from geometry.solids import carving
from geometry.solids.foundation import body_mesh, build
from geometry.solids.pipes import perforated_pipe, run_mesh
from tests.bench.clock import now
from tests.bench.forgetting import forget
from tests.bench.row import MS, Row
from tests.whole import brep

EXAMPLE = Path(__file__).parents[2] / "assets" / "examples" / "l-basement.toml"


def timed(work: Callable[[], Any], repeats: int) -> float:
    """Return the median time of a call in milliseconds, the first call not counted.

    What the engine remembers of earlier calls is forgotten before each, so every run is fresh.
    """
    work()
    times = []
    for _ in range(repeats):
        forget()
        carving.forget()
        gc.collect()
        start = now()
        work()
        times.append((now() - start) * MS)
    return median(times)


def figures(text: str, *subjects: str) -> None:
    made = report(lay_out(read_design(text)))
    for subject in subjects:
        getattr(made, subject)


def everything(text: str) -> None:
    layout = lay_out(read_design(text))
    report(layout, build(layout)).to_json()


def hole_count(text: str) -> int:
    drain = lay_out(read_design(text)).drain
    return drain.hole_count if drain else 0


def example_rows(text: str, repeats: int) -> list[Row]:
    holes = hole_count(text)
    return [
        Row("design text to levels", timed(lambda: figures(text, "levels"), repeats), aim=10),
        Row("design text to volumes", timed(lambda: figures(text, "volumes"), repeats)),
        Row("design text to findings", timed(lambda: figures(text, "findings"), repeats)),
        Row("design text to the order", timed(lambda: figures(text, "order"), repeats)),
        Row(
            "design text to the whole report as JSON, no solids",
            timed(lambda: report(lay_out(read_design(text))).to_json(), repeats),
        ),
        Row(
            f"all solids alone, {holes} holes",
            timed(lambda: build(lay_out(read_design(text))), repeats)
            - timed(lambda: lay_out(read_design(text)), repeats),
            aim=60,
        ),
        Row(
            f"design text to all solids and report, {holes} holes",
            timed(lambda: everything(text), repeats),
        ),
    ]


def with_holes(text: str, wanted: int) -> str:
    """Return the design with the hole spacing that gives about a number of holes."""
    drain = lay_out(read_design(text)).drain
    assert drain is not None
    rows = [0] if wanted < 300 else [-60, -30, 30, 60]
    spacing = drain.route.length * len(rows) / wanted
    smaller = edited(text, ("drain", "holes", "diameter"), "1/8 in")
    smaller = edited(smaller, ("drain", "holes", "rows"), rows)
    return edited(smaller, ("drain", "holes", "spacing"), f"{spacing:.4f} m")


def hole_rows(text: str, repeats: int) -> list[Row]:
    rows, times, counts = [], [], []
    for wanted in (100, 1_000, 10_000):
        changed = with_holes(text, wanted)
        counts.append(hole_count(changed))
        times.append(timed(lambda changed=changed: everything(changed), repeats))
        aim = 120 if wanted == 10_000 else None
        rows.append(Row(f"all solids and report, {counts[-1]} holes", times[-1], aim=aim))
    return [*rows, _growth("holes", counts, times)]


def ring_house(corners: int, drain: bool) -> str:
    """Return an invented round house of so many corners, with or without a drain."""
    radius = 9.0
    turn = [2 * pi * n / corners for n in range(corners)]
    plan = ", ".join(f"[{radius * cos(t):.6f}, {radius * sin(t):.6f}]" for t in turn)
    return (
        '[project]\nname = "invented"\nnumbers = "m"\nunits = "metric"\n'
        f'[[area]]\nname = "a"\ncorners = [{plan}]\n'
        + ('[drain]\nfall = "level"\n' if drain else "")
    )


def corner_rows(repeats: int) -> list[Row]:
    """Bends need a foot of pipe beside each corner, so 200 corners fit without a drain only."""
    rows: list[Row] = []
    for drain, counts in ((True, (4, 20, 80)), (False, (4, 20, 80, 200))):
        times = []
        words = "with drain" if drain else "no drain"
        for corners in counts:
            text = ring_house(corners, drain)
            times.append(timed(lambda text=text: everything(text), repeats))
            rows.append(Row(f"all solids and report, {corners} corners, {words}", times[-1]))
        rows.append(_growth(f"corners, {words}", list(counts), times))
    return rows


def _growth(what: str, counts: list[int], times: list[float]) -> Row:
    """The power of the count that the whole time grows with over the last step; 1 is linear."""
    power = float(np.log(times[-1] / times[-2]) / np.log(counts[-1] / counts[-2]))
    return Row(f"growth with {what}: power of the count, last step", power, "", aim=1.1)


def flat_parts(layout: Layout) -> list[Any]:
    """Bodies of prisms without round holes: both kernels raise the same outlines."""
    return [b for b in layout.bodies if not b.bores]


def peer_flat(layout: Layout) -> float:
    """Raise every flat body in the peer from its outlines; return the volume."""
    total = 0.0
    for body in flat_parts(layout):
        for prism in body.prisms:
            for polygon in getattr(prism.region, "geoms", [prism.region]):
                solid = brep.prism(list(polygon.exterior.coords)[:-1], prism.bottom, prism.top)
                for hole in polygon.interiors:
                    solid -= brep.prism(list(hole.coords)[:-1], prism.bottom, prism.top)
                total += brep.volume(solid)
    return total


def own_flat(layout: Layout) -> float:
    return sum(body_mesh(b).volume for b in flat_parts(layout))


def peer_pipe(layout: Layout, holes: int) -> tuple[float, float]:
    """Sweep the run and drill some holes in one straight; return (sweep, drill) milliseconds."""
    drain = layout.drain
    assert drain is not None
    points = [(x, y, drain.centre(float(s))) for (x, y), s in zip(
        drain.route.points, drain.route.stations, strict=False)]  # fmt: skip
    points.append(points[0])
    start = now()
    for outer, inner in zip(
        brep.legs(points, drain.radius), brep.legs(points, drain.bore), strict=True
    ):
        outer - inner
    swept = (now() - start) * MS
    step, rows = drain.drain.holes.spacing, drain.drain.holes.rows
    count = holes // len(rows)
    pipe = brep.bar((0, 0, 0), (step * (count + 1), 0, 0), drain.radius)
    pipe -= brep.bar((0, 0, 0), (step * (count + 1), 0, 0), drain.bore)
    axes = []
    for n in range(1, count + 1):
        for row in rows:
            t = np.radians(row)
            tip = (step * n, 2 * drain.radius * np.sin(t), -2 * drain.radius * np.cos(t))
            axes.append(((step * n, 0, 0), tip))
    start = now()
    brep.volume(brep.drilled(pipe, axes, drain.drain.holes.diameter / 2))
    return swept, (now() - start) * MS


def peer_rows(text: str, repeats: int) -> list[Row]:
    layout = lay_out(read_design(text))
    drain = layout.drain
    assert drain is not None
    own, peer = own_flat(layout), peer_flat(layout)
    assert abs(own - peer) < 1e-6 * own, "the two kernels disagree on the flat parts"
    own_ms = timed(lambda: own_flat(layout), repeats)
    peer_ms = timed(lambda: peer_flat(layout), max(1, repeats // 4))
    rows = [
        Row(f"flat parts ({len(flat_parts(layout))} bodies), engine", own_ms),
        Row("flat parts, peer", peer_ms),
        Row("flat parts: times faster than the peer", peer_ms / own_ms, "x", 20, True),
    ]
    pipe_ms = timed(lambda: (perforated_pipe(drain), run_mesh(drain)), repeats)
    half, part = peer_pipe(layout, 40), peer_pipe(layout, 80)
    every = drain.hole_count
    # Straight line through the two measured counts: kinder to the peer than its own growth.
    slope = max(0.0, (part[1] - half[1]) / 40)
    drilled = part[1] + slope * (every - 80)
    note = f"40 holes {half[1]:.0f} ms, 80 holes {part[1]:.0f} ms, on in a straight line"
    return [
        *rows,
        Row(f"pipe swept, {every} holes drilled, engine", pipe_ms),
        Row("run swept and bored, peer", part[0]),
        Row(f"{every} holes drilled, peer: EXTRAPOLATED", drilled, note=note),
        Row("pipe: times faster than the peer", (part[0] + drilled) / pipe_ms, "x", 100, True),
    ]


PEAK = """
import sys
from geometry.designfile import read_design
from geometry.layout.lay import lay_out
from geometry.report import report
from geometry.solids.foundation import build
layout = lay_out(read_design(sys.stdin.read()))
report(layout, build(layout)).to_json()
print(next(line.split()[1] for line in open("/proc/self/status") if line.startswith("VmHWM")))
"""


def peak_rows(text: str) -> list[Row]:
    """Peak memory of a fresh process that builds the example once; Linux only."""
    if not sys.platform.startswith("linux"):
        return []
    done = subprocess.run(
        [sys.executable, "-c", PEAK], input=text, capture_output=True, text=True, check=True
    )
    return [Row("peak memory, one build in a fresh process", int(done.stdout) / 1024, "MB")]


def main() -> None:
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--quick", action="store_true", help="fewer repeats")
    repeats = 5 if parser.parse_args().quick else 15
    text = EXAMPLE.read_text(encoding="utf-8")
    libraries = ("numpy", "shapely", "manifold3d", "build123d")
    print(f"{platform.platform()}, {cpu_count()} cores, Python {platform.python_version()}")
    print(", ".join(f"{name} {version(name)}" for name in libraries))
    print(f"medians of {repeats} runs; example {EXAMPLE.name}, invented")
    for rows in (
        example_rows(text, repeats),
        hole_rows(text, repeats),
        corner_rows(repeats),
        peer_rows(text, repeats),
        peak_rows(text),
    ):
        print()
        print(*rows, sep="\n")


if __name__ == "__main__":
    main()
