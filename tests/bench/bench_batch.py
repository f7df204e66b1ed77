"""Times of many designs: a thousand on the machine's workers, on one, and of going on.

The designs are a grid of changes of an example; starting the workers counts.
"""

import time
from pathlib import Path
from tempfile import TemporaryDirectory

from tests.bench.row import MS, Curve, Row
from viz.batch.designs import Asked, asked_grid
from viz.batch.outcome import outcome_of
from viz.batch.run import How, run
from viz.batch.table import write_tables
from viz.carried import demo

LIMIT_S = 300.0
# For one worker a part of the grid will do.
SHARE = 5


def grid(count: int) -> tuple[Asked, ...]:
    """Return so many designs: foam, footing and wall in steps that leave the house sound."""
    base = Asked("demo", demo().read_text(encoding="utf-8"))
    side = round(count ** (1 / 3))
    varies = [
        "floor.layer[foam].thickness=" + ",".join(f"{2 + n / 8} in" for n in range(side)),
        "footing.width=" + ",".join(f"{20 + n / 4} in" for n in range(side)),
        "wall.height=" + ",".join(f"{100 + n / 2} in" for n in range(-(-count // side**2))),
    ]
    return asked_grid(base, varies)[:count]


def timed(asked: tuple[Asked, ...], out: Path, workers: int) -> float:
    """Return the seconds of a run; all of its designs must come out done."""
    begun = time.perf_counter()
    lines = run(asked, How(out, workers, LIMIT_S))
    took = time.perf_counter() - begun
    assert all(line.outcome.status == "done" for line in lines)
    return took


def alone(asked: tuple[Asked, ...]) -> float:
    """Return the processor's seconds that one of these designs takes in this process."""
    outcome_of(asked[0], False)
    begun = time.process_time()
    for one in asked:
        outcome_of(one, False)
    return (time.process_time() - begun) / len(asked)


def rows(quick: bool) -> list[Row | Curve]:
    """Return the timings."""
    sizes = (16, 32, 64) if quick else (60, 250, 1000)
    took = []
    with TemporaryDirectory() as folder:
        for count in sizes:
            out = Path(folder) / str(count)
            took.append(timed(grid(count), out, 2))
        count, asked = sizes[-1], grid(sizes[-1])
        again = timed(asked, out, 2)
        begun = time.perf_counter()
        files = list(write_tables(run(asked, How(out, 2, LIMIT_S)), out))
        tables = time.perf_counter() - begun - again
        part = asked[::SHARE]
        one = timed(part, Path(folder) / "one", 1)
    assert len(files) == 3
    by_one, each = one / len(part), took[-1] / count
    return [
        Row(f"{count:,} designs, 2 workers", took[-1], "s"),
        Row("of it for each design", each * MS, "ms"),
        Row("processor's time of a design alone", alone(part[:40]) * MS, "ms"),
        Row(f"{len(part):,} designs, 1 worker, for each design", by_one * MS, "ms"),
        Row("2 workers against 1", by_one / each, "x", aim=1.6, at_least=True),
        Row(f"{count:,} designs that are finished: going on", again, "s"),
        Row(f"{count:,} designs: CSV, workbook and Parquet", tables, "s"),
        Curve("batch", "designs, 2 workers", sizes, tuple(s * MS for s in took), ()),
    ]
