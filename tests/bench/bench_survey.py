"""Times of the as-dug survey: half a million shots, whole, against their triangulation alone.

Run it with `python -m tests.bench.bench_survey`. Every figure is the median of runs that take
turns, so that a busy machine slows all alike.
"""

import platform
from collections.abc import Callable
from os import cpu_count
from statistics import median

import numpy as np
from scipy.spatial import Delaunay

from geometry.layout.lay import Layout
from geometry.survey.asdug import as_dug
from geometry.survey.reading import read_shots
from geometry.survey.shots import Floats, Shots, ground_shots
from geometry.survey.surface import neighbourly
from tests.bench.clock import now
from tests.bench.row import MS, Row
from tests.houses import house

COUNT, REPEATS = 500_000, 5


def timed(works: dict[str, Callable[[], object]]) -> dict[str, float]:
    """Return the median time of each in milliseconds, taken in turns."""
    times: dict[str, list[float]] = {name: [] for name in works}
    for _ in range(REPEATS):
        for name, work in works.items():
            start = now()
            work()
            times[name].append((now() - start) * MS)
    return {name: median(found) for name, found in times.items()}


def shots(layout: Layout, count: int, noise: float) -> Shots:
    """Invented shots over the first area: waves, and the rod's own error, metres."""
    left, low, right, high = layout.areas[0].outline.bounds
    dice = np.random.default_rng(1)
    x, y = dice.uniform(left, right, count), dice.uniform(low, high, count)
    waves = 0.03 * np.sin(2.1 * x) * np.cos(1.9 * y) + dice.normal(0, noise, count)
    return ground_shots(x, y, layout.areas[0].subgrade + waves)


def as_text(taken: Shots) -> bytes:
    columns: Floats = np.column_stack((taken.x, taken.y, taken.level))
    lines = [f"{n},{x:.4f},{y:.4f},{z:.4f}," for n, (x, y, z) in enumerate(columns.tolist(), 1)]
    return "\n".join(["point,x (m),y (m),level (m),what", *lines]).encode()


def rows() -> list[Row]:
    layout = house()
    smooth, rough = (shots(layout, COUNT, noise) for noise in (0.0, 0.004))
    text, few = as_text(rough), shots(layout, 100, 0.004)
    points = np.column_stack((rough.x, rough.y)) - (rough.x.mean(), rough.y.mean())
    ordered = points[neighbourly(rough.x, rough.y)]
    found = timed({
        "alone": lambda: Delaunay(points),
        "ordered": lambda: Delaunay(ordered),
        "smooth": lambda: as_dug(layout, smooth),
        "rough": lambda: as_dug(layout, rough),
        "read": lambda: read_shots(text, layout.design),
        "few": lambda: as_dug(layout, few),
    })  # fmt: skip
    alone = found["alone"]
    return [
        Row(f"{COUNT:,} places triangulated, nothing else", alone),
        Row("  the same, neighbours beside each other in memory", found["ordered"]),
        Row(f"{COUNT:,} shots of smooth ground, whole", found["smooth"]),
        Row("  that against the triangulation alone", found["smooth"] / alone, "x", aim=1.3),
        Row(f"{COUNT:,} shots of rough ground, whole", found["rough"]),
        Row("  that against the triangulation alone", found["rough"] / alone, "x", aim=1.3),
        Row("  against the triangulation in that order", found["rough"] / found["ordered"], "x"),
        Row(f"{COUNT:,} rows of CSV read", found["read"]),
        Row("100 shots, whole", found["few"]),
    ]


def main() -> None:
    print(f"{platform.platform()}, {cpu_count()} cores, Python {platform.python_version()}")
    print(f"medians of {REPEATS} runs in turns; house and shots invented")
    print(*rows(), sep="\n")


if __name__ == "__main__":
    main()
