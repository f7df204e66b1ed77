"""Which tests run which line of the program?

`python -m tests.mutants.ran [TESTS]`: run the tests once, each in a context of its own under
coverage.py, and keep what they ran beside their times in a folder of the machine's temporary ones.
Every store that remembers (lru_cache) is emptied before each test, so that a test is seen to run
what another one left behind. Without TESTS those of geometry, published values and whole designs
are run (some ten minutes), not those of pictures, papers and pages, which say little of geometry.
"""

import functools
import gc
import json
import os
import re
import shutil
import sys
import tempfile
import time
import zlib
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest

HOME = Path(__file__).parents[2]
KEPT = Path(tempfile.gettempdir()) / f"bedcourse-mutants-{os.getuid()}"
TESTS = ("tests/geometry", "tests/published", "tests/whole")
# Takes minutes, and asks the independent kernel about solids alone.
LEFT = ("tests/whole/test_against_brep.py",)
COPIED = (
    "geometry", "viz", "tests", "assets", ".streamlit", "app.py", "pyproject.toml", "README.md",
    "DEVELOPERS.md",
)  # fmt: skip
# What pytest does about exceptions nobody caught counts all that is alive after every run: slow.
ASKED = [
    "-q", "-p", "no:cacheprovider", "-p", "no:unraisableexception", "-p", "no:threadexception",
    "-m", "(slow or not slow) and not pictures and not browser",
]  # fmt: skip


def copy_of_the_sources(folder: Path) -> None:
    """Copy what the tests need, so that nobody's work under way is half in it, and go there."""
    left = shutil.ignore_patterns("node_modules", "__pycache__", "app", "browser", "bench")
    for name in COPIED:
        if (HOME / name).is_dir():
            shutil.copytree(HOME / name, folder / name, ignore=left)
        else:
            shutil.copy(HOME / name, folder / name)
    os.chdir(folder)
    for name in [n for n in sys.modules if n.split(".")[0] in ("tests", "geometry", "viz")]:
        del sys.modules[name]
    sys.path[:] = [str(folder), *(p for p in sys.path if p not in ("", str(HOME)))]


def stores() -> list[Any]:
    """Return every store of program and tests that remembers what it was asked before."""
    return [
        kept for kept in gc.get_objects()
        if isinstance(kept, functools._lru_cache_wrapper)
        and re.match(r"geometry|viz|test", kept.__module__ or "")
    ]  # fmt: skip


class Usual:
    """Properties are tried in the same order every time; a failure is enough, none is shrunk."""

    @pytest.hookimpl(trylast=True)
    def pytest_configure(self) -> None:
        from hypothesis import Phase, settings

        steady = settings.get_profile("steady")
        phases = (Phase.explicit, Phase.generate)
        settings.register_profile(
            "tried", steady, phases=phases, derandomize=True, database=None
        )  # fmt: skip
        settings.load_profile("tried")


class Told:
    """Tells coverage.py which test runs; keeps each test's seconds of the processor."""

    def __init__(self, watch: Any) -> None:
        self.watch, self.seconds, self.failed = watch, dict[str, float](), set[str]()
        self.stores: list[Any] = []
        self.known = 0

    def _forget(self) -> None:
        if len(sys.modules) != self.known:
            self.known = len(sys.modules)
            self.stores = stores()
        for store in self.stores:
            store.cache_clear()

    @pytest.hookimpl(wrapper=True)
    def pytest_make_collect_report(self, collector: pytest.Collector) -> Iterator[None]:
        if isinstance(collector, pytest.Module):
            self.watch.switch_context(collector.nodeid)
        return (yield)

    @pytest.hookimpl(wrapper=True)
    def pytest_runtest_protocol(self, item: pytest.Item) -> Iterator[None]:
        self._forget()
        self.watch.switch_context(item.nodeid)
        before = time.process_time()
        try:
            return (yield)
        finally:
            self.seconds[item.nodeid] = time.process_time() - before

    @pytest.hookimpl(wrapper=True)
    def pytest_fixture_setup(self, fixturedef: Any, request: Any) -> Iterator[None]:
        shared = fixturedef.scope != "function"
        if shared:
            self.watch.switch_context(request._pyfuncitem.nodeid.split("::")[0])
        try:
            return (yield)
        finally:
            if shared:
                self.watch.switch_context(request._pyfuncitem.nodeid)

    def pytest_runtest_logreport(self, report: pytest.TestReport) -> None:
        if not report.passed:
            self.failed.add(report.nodeid)


def main(tests: list[str]) -> None:
    """Run the tests and keep what they ran."""
    import coverage

    KEPT.mkdir(exist_ok=True)
    name = f"{zlib.crc32(' '.join(tests).encode()):08x}" if tests else "all"
    with tempfile.TemporaryDirectory() as made:
        folder = Path(made).resolve()
        copy_of_the_sources(folder)
        data = KEPT / f"{name}.coverage"
        data.unlink(missing_ok=True)
        watch = coverage.Coverage(
            data_file=str(data), include=[f"{folder}/geometry/*"], config_file=False
        )  # fmt: skip
        told = Told(watch)
        left = [f"--ignore={path}" for path in LEFT]
        watch.start()
        pytest.main([*ASKED, *left, *(tests or TESTS)], plugins=[Usual(), told])
        watch.stop()
        watch.save()
        passed = {k: v for k, v in told.seconds.items() if k not in told.failed}
        sources = {
            str(p.relative_to(folder)): p.read_text("utf-8")
            for p in (folder / "geometry").rglob("*.py")
        }  # fmt: skip
        rows = {"folder": str(folder), "seconds": passed, "sources": sources}
        (KEPT / f"{name}.json").write_text(json.dumps(rows), "utf-8")
        print(f"{len(passed)} tests kept, {len(told.failed)} left out (failed or skipped)")


class Ran:
    """What was kept, of all runs: a test's seconds, and the tests that run a line."""

    def __init__(self) -> None:
        import coverage

        self.seconds: dict[str, float] = {}
        self.of_file: dict[str, list[str]] = {}
        # Lines run while a test's module is read, or in what its tests share.
        self.shared: set[tuple[str, int]] = set()
        self._data: list[tuple[Any, str, dict[str, str]]] = []
        self._lines: dict[str, dict[int, set[str]]] = {}
        for told in sorted(KEPT.glob("*.json")):
            rows = json.loads(told.read_text("utf-8"))
            self.seconds |= rows["seconds"]
            data = coverage.CoverageData(str(told.with_suffix(".coverage")))
            data.read()
            self._data.append((data, rows["folder"], rows["sources"]))
        for test in self.seconds:
            self.of_file.setdefault(test.split("::")[0], []).append(test)

    def keep(self, there: frozenset[str]) -> None:
        """Forget tests that are there no more, or have another name."""
        self.seconds = {test: took for test, took in self.seconds.items() if test in there}
        self.of_file = {
            file: kept for file, tests in self.of_file.items()
            if (kept := [test for test in tests if test in there])
        }  # fmt: skip

    def lines(self, file: str, source: str) -> dict[int, set[str]]:
        """Return for each line of the program's file, as it is now, the tests that run it."""
        if file not in self._lines:
            found: dict[int, set[str]] = {}
            for data, folder, sources in self._data:
                now = _moved(sources.get(file, ""), source)
                for line, names in data.contexts_by_lineno(f"{folder}/{file}").items():
                    if line in now:
                        found.setdefault(now[line], set()).update(self._tests(names))
                        if any(name in self.of_file for name in names):
                            self.shared.add((file, now[line]))
            self._lines[file] = found
        return self._lines[file]

    def _tests(self, contexts: list[str]) -> Iterator[str]:
        for name in contexts:
            if name in self.seconds:
                yield name
            elif name in self.of_file:
                yield from self.of_file[name]


@functools.lru_cache(maxsize=512)
def _moved(before: str, after: str) -> dict[int, int]:
    """Return where each line of a text stands in the text as it is now."""
    import difflib

    if before == after:
        return {n: n for n in range(1, before.count("\n") + 2)}
    same = difflib.SequenceMatcher(None, before.splitlines(), after.splitlines(), autojunk=False)
    return {
        block.a + k + 1: block.b + k + 1
        for block in same.get_matching_blocks() for k in range(block.size)
    }  # fmt: skip


if __name__ == "__main__":
    main(sys.argv[1:])
