"""Which small changes of the program does no test see?

`python -m tests.mutants.ran` once, then `python -m tests.mutants.run PATH... [--each N] [--seed S]`
tries N changes of each file, chosen by chance, each in a fork, on the tests that run its line.
Printed are those that live.

Why not a library: mutmut 3 leaves out every decorated function (here some 300 properties and kept
results) and all constants outside of functions; cosmic-ray starts all tests anew for each change.
"""

import argparse
import gc
import io
import os
import random
import tempfile
from collections import Counter
from collections.abc import Callable
from contextlib import redirect_stdout
from dataclasses import dataclass, field
from pathlib import Path

# Read before the fork, so that no change waits for them again.
import hypothesis.strategies  # noqa: F401
import numpy as np  # noqa: F401
import pint  # noqa: F401
import pydantic  # noqa: F401
import pytest
import scipy.spatial  # noqa: F401
import shapely  # noqa: F401
import tomlkit  # noqa: F401

from tests.mutants import fork
from tests.mutants.change import Change, changes
from tests.mutants.choose import PATIENCE, Chooser
from tests.mutants.ran import ASKED, Ran, Usual, copy_of_the_sources, stores

# A verdict of pytest: all passed; none was there to run; anything of ours went wrong.
PASSED, NONE, TROUBLE = 0, (4, 5), 99
Tried = tuple[str, Change]


@dataclass
class Bench:
    """The copied sources, the chooser, the functions alive; how many forks at once."""

    folder: Path
    chooser: Chooser
    jobs: int
    alive: fork.Alive = field(default_factory=fork.Alive)

    def passing(
        self, some: list[Tried], ask: Callable[[str, Change], list[str]], anew: bool = False
    ) -> list[Tried]:
        """Return the changes under which all tests asked pass, or which nothing is asked of."""
        lives, running = [], dict[int, Tried]()
        for row in some:
            tests = ask(*row)
            if not tests:
                lives.append(row)
                continue
            while len(running) >= self.jobs:
                lives += self._ended(running)
            running[self._begun(row, tests, anew)] = row
        while running:
            lives += self._ended(running)
        return sorted(lives, key=lambda row: (row[0], row[1].line, row[1].number))

    def _begun(self, row: Tried, tests: list[str], anew: bool) -> int:
        file, change = row
        seconds = 30 + 5 * sum(self.chooser.ran.seconds[t] for t in tests)
        source = self.chooser.sources[file]
        place = self.folder / file
        return fork.judged(place, source, change, tests, self.alive, seconds, anew)

    def _ended(self, running: dict[int, Tried]) -> list[Tried]:
        child, state = os.wait()
        row = running.pop(child)
        verdict = os.waitstatus_to_exitcode(state)
        if verdict in (*NONE, TROUBLE):
            print(f"no verdict ({verdict}): {row[0]}:{row[1].line}: {row[1].what}", flush=True)
        # Without a verdict nothing was seen; a child stopped for its time or memory was.
        return [row] if verdict in (PASSED, *NONE, TROUBLE) else []


def main() -> None:
    """Try a sample of the changes and print what became of them."""
    asked = argparse.ArgumentParser(description=__doc__)
    asked.add_argument("paths", nargs="+", help="files or folders of the program")
    asked.add_argument("--each", type=int, default=25, help="changes tried of each file")
    asked.add_argument("--seed", type=int, default=1)
    asked.add_argument("--jobs", type=int, default=1)
    asked.add_argument("--patience", type=float, default=PATIENCE, help="seconds for what lives")
    asked.add_argument("--lines", help="only changes of these lines: 12,15-18")
    told = asked.parse_args()
    with tempfile.TemporaryDirectory() as made:
        folder = Path(made).resolve()
        copy_of_the_sources(folder)
        files = [f for path in told.paths for f in _files(folder, path)]
        bench = Bench(folder, _chooser(folder, told.patience), told.jobs)
        tests = sorted({t.split("::")[0] for t in bench.chooser.ran.seconds})
        with redirect_stdout(io.StringIO()):
            there = _There()
            pytest.main([*ASKED, "-qq", "--collect-only", *tests], plugins=[Usual(), there])
        bench.chooser.ran.keep(there.tests)
        bench.alive = fork.Alive(fork.functions(folder), stores())
        gc.freeze()  # A fork that counts what is alive would copy all of it.
        total = Counter[str]()
        for file in files:
            total += _tried(bench, file, told)
        print("in all:", _said(total))


class _There:
    """Notes which tests there are by now."""

    tests: frozenset[str] = frozenset()

    def pytest_collection_modifyitems(self, items: list[pytest.Item]) -> None:
        self.tests = frozenset(item.nodeid for item in items)


def _tried(bench: Bench, file: str, told: argparse.Namespace) -> Counter[str]:
    every = changes(bench.chooser.sources[file])
    wanted = [c for c in every if not told.lines or c.line in _numbers(told.lines)]
    dice = random.Random(f"{told.seed} {file}")  # noqa: S311
    some = [(file, c) for c in dice.sample(wanted, min(told.each, len(wanted)))]
    lives = bench.passing(some, bench.chooser.first)
    lives = bench.passing(lives, bench.chooser.rest)
    # What tests make while they are read was made before the change.
    again = [row for row in lives if row[1].door and bench.chooser.made_before(*row)]
    seen = set(again) - set(bench.passing(again, bench.chooser.first, anew=True))
    lives = [row for row in lives if row not in seen]
    for _, change in lives:
        count = len(bench.chooser.first(file, change) + bench.chooser.rest(file, change))
        edge = " (edge)" if change.edge else ""
        print(f"lives: {file}:{change.line}: {change.what}{edge}, {count} tests", flush=True)
    found = Counter(
        changes=len(every), tried=len(some), seen=len(some) - len(lives), living=len(lives),
        edges=sum(c.edge for _, c in some), living_edges=sum(c.edge for _, c in lives),
    )  # fmt: skip
    print(f"{file}: {_said(found)}", flush=True)
    return found


def _said(count: Counter[str]) -> str:
    return (
        f"{count['changes']} changes, {count['tried']} tried, {count['seen']} seen, "
        f"{count['living']} live; of these at the edge of a comparison "
        f"{count['edges']} tried, {count['living_edges']} live"
    )


def _files(folder: Path, path: str) -> list[str]:
    place = folder / path
    files = sorted(place.rglob("*.py")) if place.is_dir() else [place]
    return [str(f.relative_to(folder)) for f in files if f.name != "__init__.py"]


def _numbers(lines: str) -> set[int]:
    ends = [part.split("-") for part in lines.split(",")]
    return {n for e in ends for n in range(int(e[0]), int(e[-1]) + 1)}


def _chooser(folder: Path, patience: float) -> Chooser:
    def read(room: str) -> dict[str, str]:
        return {
            str(p.relative_to(folder)): p.read_text("utf-8") for p in (folder / room).rglob("*.py")
        }

    return Chooser(read("geometry"), Ran(), read("tests"), patience)


if __name__ == "__main__":
    main()
