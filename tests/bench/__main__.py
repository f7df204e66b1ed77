"""Every bench with one command: `python -m tests.bench`; figures printed, page and JSON written.

`--quick` takes fewer repeats and sizes; `--only NAME` one group (may be given again) and no page;
`--out` its folder, assets/bench unless given. `--processor` counts the processor's time, for a
machine that has other work: groups that wait for other processes are then left out. Groups run
one after the other, each in a process of its own.
"""

import argparse
import json
import os
import subprocess
import sys
import time
from dataclasses import asdict
from pathlib import Path
from tempfile import TemporaryDirectory

from tests.bench.clock import CLOCK, PROCESSOR, by_processor
from tests.bench.machine import busy, machine
from tests.bench.memory import peak_mb
from tests.bench.page import Group, write
from tests.bench.row import Beside, Curve, Row
from tests.bench.suites import GROUPS, WAITING, Line, lines

OUT = Path(__file__).parents[2] / "assets" / "bench"
LIMIT_S = 1800.0
KINDS = {kind.__name__: kind for kind in (Row, Beside, Curve)}


def main() -> None:
    """Run the groups and write what was found."""
    asked = _asked()
    if asked.into:
        found = [(type(line).__name__, asdict(line)) for line in lines(asked.only[0], asked.quick)]
        asked.into.write_text(json.dumps([peak_mb(), found]), encoding="utf-8")
        return
    out = asked.out or (None if asked.only else OUT)
    if asked.processor:
        os.environ[CLOCK] = PROCESSOR
    about, groups, begun = machine(), [], time.perf_counter()
    for name in asked.only or [n for n in GROUPS if not (by_processor() and n in WAITING)]:
        print(f"\n{name}: {GROUPS[name]}", flush=True)
        groups.append(alone(name, asked.quick))
        print(*groups[-1].lines, groups[-1].told, sep="\n", flush=True)
        # After every group, so that a run that is broken off leaves what it found.
        if out:
            whole = f"{(time.perf_counter() - begun) / 60:.0f} min"
            write(out, {**about, "other work at the end": busy(), "whole run": whole},
                  groups, asked.quick)  # fmt: skip
    print(f"\nWrote {out}." if out else "\nNo page written: name its folder with --out.")


def _asked() -> argparse.Namespace:
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--quick", action="store_true", help="fewer repeats and sizes")
    parser.add_argument("--processor", action="store_true", help="count the processor's time")
    parser.add_argument("--only", action="append", choices=GROUPS, help="one group")
    parser.add_argument("--out", type=Path, help="folder of page and figures")
    parser.add_argument("--into", type=Path, help=argparse.SUPPRESS)
    return parser.parse_args()


def alone(name: str, quick: bool) -> Group:
    """Return what one group finds in a process of its own, or the sentence that says why none."""
    words = [sys.executable, "-m", "tests.bench", "--only", name, *(["--quick"] if quick else [])]
    begun, before = time.perf_counter(), _used()
    with TemporaryDirectory() as folder:
        file = Path(folder) / "lines.json"
        try:
            done = subprocess.run(
                [*words, "--into", str(file)],
                capture_output=True, text=True, timeout=LIMIT_S, check=False,
            )  # fmt: skip
        except subprocess.TimeoutExpired:
            return Group(name, why=f"it took more than {LIMIT_S:.0f} s")
        took, used = time.perf_counter() - begun, _used() - before
        if done.returncode:
            said = done.stderr.strip().splitlines() or ["it ended without a word"]
            return Group(name, took, used, why=said[-1])
        peak, found = json.loads(file.read_text(encoding="utf-8"))
    return Group(name, took, used, peak, tuple(_read(kind, line) for kind, line in found))


def _used() -> float:
    """Return the processor's seconds of all processes started and ended so far."""
    return sum(os.times()[2:4])


def _read(kind: str, line: dict[str, object]) -> Line:
    kept = {name: tuple(v) if isinstance(v, list) else v for name, v in line.items()}
    made: Line = KINDS[kind](**kept)
    return made


if __name__ == "__main__":
    main()
