"""Which small changes of the sources does no test see?

`python -m tests.mutants.run FILE... [--sample N] [--seed S]`: a change is tried in a copy of the
sources in a folder of its own, on the tests that name its module, else on those of its room below.
Printed are the changes that live.
Libraries are read once; every change runs in a fork of this process.
"""

import argparse
import os
import random
import re
import shutil
import signal
import sys
import tempfile
import time
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

from tests.mutants.change import Change, changes

HOME = Path(__file__).parents[2]
COPIED = ("geometry", "viz", "tests", "assets", ".streamlit", "app.py", "pyproject.toml")
# The tests that should see a change, by the beginning of the file's path; the first that fits.
ROOMS = {
    "geometry/units.py": [
        "tests/geometry/test_units.py",
        "tests/published/test_against_nist_sp811.py",
    ],
    "geometry/levels.py": ["tests/geometry/levels"],
    "geometry/plan": ["tests/geometry/layout", "tests/geometry/faults/test_faults.py"],
    "geometry/layout": [
        "tests/geometry/layout",
        "tests/whole/test_same_house.py",
        "tests/geometry/water",
    ],
    "geometry/takeoff": [
        "tests/geometry/takeoff",
        "tests/published/test_against_order_practice.py",
    ],
    "geometry/formulas": ["tests/geometry/formulas", "tests/published"],
}
PATIENCE = 300


def main() -> None:
    """Try a sample of the changes and print what became of them."""
    asked = argparse.ArgumentParser(description=__doc__)
    asked.add_argument("files", nargs="+")
    asked.add_argument("--sample", type=int, default=40)
    asked.add_argument("--seed", type=int, default=1)
    told = asked.parse_args()
    every = [
        (file, change) for file in told.files
        for change in changes((HOME / file).read_text(encoding="utf-8"))
    ]  # fmt: skip
    dice = random.Random(told.seed)  # noqa: S311
    some = dice.sample(every, min(told.sample, len(every)))
    lived = 0
    with tempfile.TemporaryDirectory() as folder:
        _copy(Path(folder))
        for file in sorted({file for file, _ in some}):
            unchanged = Change(0, "", (HOME / file).read_text(encoding="utf-8"))
            if not _lives(Path(folder), file, unchanged):
                print(f"left out, for its tests fail without any change: {file}", flush=True)
                some = [row for row in some if row[0] != file]
        for file, change in sorted(some, key=lambda row: (row[0], row[1].line)):
            if _lives(Path(folder), file, change):
                lived += 1
                print(f"lives: {file}:{change.line}: {change.what}", flush=True)
    print(f"{len(every)} changes, {len(some)} tried, {len(some) - lived} seen, {lived} live")


def _copy(folder: Path) -> None:
    left = shutil.ignore_patterns("node_modules", "__pycache__")
    for name in COPIED:
        if (HOME / name).is_dir():
            shutil.copytree(HOME / name, folder / name, ignore=left)
        else:
            shutil.copy(HOME / name, folder / name)


def _lives(folder: Path, file: str, change: Change) -> bool:
    """Whether the tests of the file's room pass with the change."""
    place, kept = folder / file, (HOME / file).read_text(encoding="utf-8")
    place.write_text(change.text, encoding="utf-8")
    child = os.fork()
    if child == 0:
        _judge(folder, _tests(file))
    ended, state, stops = 0, 0, time.monotonic() + PATIENCE
    while not ended and time.monotonic() < stops:
        ended, state = os.waitpid(child, os.WNOHANG)
        time.sleep(0.05)
    if not ended:
        os.kill(child, signal.SIGKILL)
        os.waitpid(child, 0)
    place.write_text(kept, encoding="utf-8")
    return bool(ended) and state == 0


def _tests(file: str) -> list[str]:
    """Return the tests that name the file's module; those of its room where none does."""
    room, _, name = file.removesuffix(".py").replace("/", ".").rpartition(".")
    named = re.compile(rf"from {room}\.{name} import|from {room} import [^\n]*\b{name}\b")
    tests = [p for p in (HOME / "tests").rglob("test_*.py") if named.search(p.read_text("utf-8"))]
    small = [p for p in tests if not {"browser", "app", "scene"} & set(p.parts)]
    found = [str(p.relative_to(HOME)) for p in small]
    return found or next(found for start, found in ROOMS.items() if file.startswith(start))


def _judge(folder: Path, tests: list[str]) -> None:
    """Run the tests on the sources of the folder and end this process with their verdict."""
    nowhere = os.open(os.devnull, os.O_WRONLY)
    os.dup2(nowhere, 1)
    os.dup2(nowhere, 2)
    os.chdir(folder)
    for name in [n for n in sys.modules if n.split(".")[0] in ("tests", "geometry", "viz")]:
        del sys.modules[name]
    sys.path[:] = [str(folder), *(p for p in sys.path if p not in ("", str(HOME)))]
    sys.dont_write_bytecode = True
    try:
        os._exit(int(pytest.main(["-q", "-x", "-p", "no:cacheprovider", *tests])))
    finally:
        os._exit(99)


if __name__ == "__main__":
    main()
