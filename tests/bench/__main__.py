"""Every bench with one command: `python -m tests.bench`; figures printed, page and JSON written.

`--processor` counts the processor's time, for a machine that has other work: groups that wait for
other processes are then left out. `--quick` takes fewer repeats and sizes; `--only NAME` one group
(may be given again) and no page; `--out` its folder, assets/bench unless given. Groups run one
after the other, each in a process of its own.
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
from tests.bench.page import write
from tests.bench.row import Curve, Row
from tests.bench.suites import SUITES, WAITING

OUT = Path(__file__).parents[2] / "assets" / "bench"
LIMIT_S = 1800.0


def main() -> None:
    """Run the groups and write what was found."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--quick", action="store_true", help="fewer repeats and sizes")
    parser.add_argument("--processor", action="store_true", help="count the processor's time")
    parser.add_argument("--only", action="append", choices=SUITES, help="one group")
    parser.add_argument("--out", type=Path, help="folder of page and figures")
    parser.add_argument("--into", type=Path, help=argparse.SUPPRESS)
    asked = parser.parse_args()
    if asked.into:
        rows = SUITES[asked.only[0]](asked.quick)
        asked.into.write_text(json.dumps([asdict(row) for row in rows]), encoding="utf-8")
        return
    out = asked.out or (None if asked.only else OUT)
    about, found = machine(), {}
    if asked.processor:
        os.environ[CLOCK] = PROCESSOR
    clock = "the processor's, of all threads" if by_processor() else "the wall's"
    for name in asked.only or [n for n in SUITES if not (by_processor() and n in WAITING)]:
        print(f"\n{name}: {SUITES[name].__doc__}", flush=True)
        found[name] = alone(name, asked.quick)
        rows = found[name]
        print(rows if isinstance(rows, str) else "\n".join(map(str, rows)), flush=True)
        # After every group, so that a run that is broken off leaves what it found.
        told = {**about, "other work at the end": busy(), "clock": clock}
        if out:
            write(out, told, found, asked.quick)
    print(f"\nWrote {out}." if out else "\nNo page written: name its folder with --out.")


def alone(name: str, quick: bool) -> list[Row | Curve] | str:
    """Return what one group finds in a process of its own, or the sentence that says why none."""
    words = [sys.executable, "-m", "tests.bench", "--only", name, *(["--quick"] if quick else [])]
    begun = time.perf_counter()
    with TemporaryDirectory() as folder:
        file = Path(folder) / "rows.json"
        try:
            done = subprocess.run(
                [*words, "--into", str(file)],
                capture_output=True, text=True, timeout=LIMIT_S, check=False,
            )  # fmt: skip
        except subprocess.TimeoutExpired:
            return f"it took more than {LIMIT_S:.0f} s"
        if done.returncode:
            said = done.stderr.strip().splitlines() or ["it ended without a word"]
            return said[-1]
        rows = json.loads(file.read_text(encoding="utf-8"))
    print(f"({time.perf_counter() - begun:.0f} s)")
    return [_read(row) for row in rows]


def _read(row: dict[str, object]) -> Row | Curve:
    if "sizes" not in row:
        return Row(**row)  # type: ignore[arg-type]
    kept = {name: tuple(v) if isinstance(v, list) else v for name, v in row.items()}
    return Curve(**kept)  # type: ignore[arg-type]


if __name__ == "__main__":
    main()
