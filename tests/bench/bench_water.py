"""Times of the water: a day at one second, and the study of an example.

Run it with `python -m tests.bench.bench_water`. Every figure is a median.
"""

import platform
from collections.abc import Callable
from os import cpu_count
from pathlib import Path
from statistics import median
from typing import Any

import numpy as np

from geometry.designfile import load, read_design
from geometry.formulas.storms import scs_storm
from geometry.formulas.sump import march
from geometry.layout.lay import lay_out
from geometry.water.inflow import inflow
from geometry.water.pumping import marching_pump
from geometry.water.store import storage
from geometry.water.study import study
from tests.bench.clock import now
from tests.bench.row import MS, Row

EXAMPLE = Path(__file__).parents[2] / "assets" / "examples" / "l-basement.toml"
REPEATS = 9


def timed(work: Callable[[], Any]) -> float:
    """Return the median time of a call in milliseconds, the first call not counted."""
    work()
    times = []
    for _ in range(REPEATS):
        start = now()
        work()
        times.append((now() - start) * MS)
    return median(times)


def rows() -> list[Row]:
    layout = lay_out(read_design(load(EXAMPLE)))
    pit, coming = layout.sump, inflow(layout)
    assert pit is not None
    assert coming is not None
    pump, store = marching_pump(pit), storage(layout, pit)
    steady = coming.ground_m3s or 0.0

    def day() -> None:
        """Another inflow every second (so none are joined), levels read off every second."""
        storm = scs_storm("II", 0.1).in_steps(1.0)
        ripple = 1 + 0.1 * np.sin(np.arange(86400))
        flows = storm.intensities() * ripple * coming.surface_m2 + steady
        marched = march(store, pump, storm.times_s, flows, pit.floor)
        assert len(marched.sampled(1.0).levels_m) == 86401

    def fresh() -> None:
        study.cache_clear()
        study(layout)

    return [
        Row("24 h of rain at 1 s, marched and sampled at 1 s", timed(day), aim=200),
        Row("all of an example's water, its storm by blocks", timed(fresh)),
    ]


def main() -> None:
    print(f"{platform.platform()}, {cpu_count()} cores, Python {platform.python_version()}")
    print(f"medians of {REPEATS} runs; example {EXAMPLE.name}, invented")
    print(*rows(), sep="\n")


if __name__ == "__main__":
    main()
