"""A run's figures as a page with plots, and as JSON beside it."""

import json
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import asdict, dataclass
from itertools import groupby
from pathlib import Path
from typing import TypeVar

from tests.bench.clock import by_processor
from tests.bench.plots import picture
from tests.bench.row import Beside, Curve, Row, ranged, shown
from tests.bench.suites import EXAMPLE, GROUPS, Line

FIGURES, PAGE = "figures.json", "index.md"
T = TypeVar("T", Row, Beside, Curve)
WAYS = {"ms": "time", "MB": "memory"}


@dataclass(frozen=True)
class Group:
    """One group's lines, or why there are none.

    took_s, used_s: seconds by the wall's clock and the processor's, with its children; peak_mb:
    the most memory its process held.
    """

    name: str
    took_s: float = 0.0
    used_s: float = 0.0
    peak_mb: float = 0.0
    lines: tuple[Line, ...] = ()
    why: str = ""

    @property
    def told(self) -> str:
        """How long it took and what memory, or why there is nothing."""
        if self.why:
            return f"Not run: {self.why}"
        return f"({self.took_s:.0f} s, processor {self.used_s:.0f} s, peak {self.peak_mb:,.0f} MB)"

    @property
    def rows(self) -> list[Row]:
        """Its plain figures."""
        return [line for line in self.lines if isinstance(line, Row)]


def write(folder: Path, about: Mapping[str, str], groups: Sequence[Group], quick: bool) -> None:
    """Write the page, its plots and the figures."""
    folder.mkdir(parents=True, exist_ok=True)
    for old in folder.glob("growth-*.svg"):
        old.unlink()
    for name, unit, curves in _plots(groups):
        values = [curve.ms if unit == "ms" else curve.mb for curve in curves]
        (folder / name).write_text(picture(curves, values, unit), encoding="utf-8")
    figures = {"machine": dict(about), "quick": quick, "groups": [asdict(g) for g in groups]}
    (folder / FIGURES).write_text(json.dumps(figures, indent=1) + "\n", encoding="utf-8")
    page = "\n".join(_lines(about, groups, quick))
    (folder / PAGE).write_text(page + "\n", encoding="utf-8")


def _plots(groups: Sequence[Group]) -> Iterator[tuple[str, str, list[Curve]]]:
    """Yield name, unit and curves of each plot: what is timed alike stands in one."""
    curves = sorted(_all(groups, Curve), key=lambda curve: curve.work)
    for work, some in groupby(curves, key=lambda curve: curve.work):
        found = list(some)
        ways = WAYS if all(curve.mb for curve in found) else {"ms": "time"}
        for unit, way in ways.items():
            yield f"growth-{work.replace(' ', '-')}-{way}.svg", unit, found


def _all(groups: Sequence[Group], kind: type[T]) -> list[T]:
    return [line for group in groups for line in group.lines if isinstance(line, kind)]


def _lines(about: Mapping[str, str], groups: Sequence[Group], quick: bool) -> Iterator[str]:
    words = (" --quick" if quick else "") + (" --processor" if by_processor() else "")
    clock = "the processor's, of all threads" if by_processor() else "the wall's"
    yield "# Times and memory\n"
    yield (
        f"Written by `.venv/bin/python -m tests.bench{words}` on {about['day']}: "
        f"{about['processor']}, {about['cores']} cores, Python {about['Python']}. Times are "
        f"medians of three runs at least, by {clock} clock. Where no other house is named it is "
        f"[{EXAMPLE.stem}](../examples/{EXAMPLE.name}); houses, shots and storms are invented."
    )
    yield f"\nFor programs: [{FIGURES}]({FIGURES}).\n"
    yield from _aims(groups)
    yield from _beside(_all(groups, Beside))
    yield from _growth(groups)
    for group in groups:
        yield from _group(group)
    yield from _run(about, groups)


def _aims(groups: Sequence[Group]) -> Iterator[str]:
    ratios = [line.row for line in _all(groups, Beside) if line.aim and line.theirs]
    aimed = [row for row in (*_all(groups, Row), *ratios) if row.aim is not None]
    missed = [row for row in aimed if not row.met]
    yield "## Aims\n"
    yield f"{len(aimed) - len(missed)} of {len(aimed)} are met." + (" Not met:\n" if missed else "")
    yield from (f"- {row.what}: {row.figure}, aim {row.aimed}" for row in missed)


def _beside(lines: Sequence[Beside]) -> Iterator[str]:
    yield "\n## Beside peers\n"
    yield (
        "The same input in the same process, in turns: median (least–greatest). The ratio is "
        "the peer's median over ours. How far the results agree was found before anything was "
        "timed; a peer that gives a wrong body is named and not timed.\n"
    )
    heads = ("what", "ours", "peer", "peer's", "ratio", "results")
    yield from _table(heads, "l r l r r l", _pairs(lines))


def _pairs(lines: Sequence[Beside]) -> Iterator[Sequence[str]]:
    """Yield the table's rows; what is done and our time stand once for all its peers."""
    for _, some in groupby(lines, key=lambda line: line.what):
        for number, b in enumerate(some):
            ours = ("", "") if number else (b.what, ranged(b.own))
            yield *ours, b.peer, ranged(b.theirs) if b.theirs else "", b.times, b.result


def _growth(groups: Sequence[Group]) -> Iterator[str]:
    curves = _all(groups, Curve)
    if not curves:
        return
    yield "\n## Growth\n"
    yield (
        "Each size in a fresh process, its least time; the power is fitted to the three largest "
        "sizes: 1 is linear, less is better.\n"
    )
    yield from _table(
        ("what", "against", "from, to", "time", "power", "peak memory"), "l l r r r r",
        (
            (c.work, c.what, _ends(f"{n:,}" for n in c.sizes), _ends(map(shown, c.ms)),
             f"{c.power:.2f}", _ends(f"{mb:,.0f} MB" for mb in c.mb) if c.mb else "")
            for c in curves
        ),
    )  # fmt: skip
    for name, unit, some in _plots(groups):
        words = f"{some[0].work.capitalize()}: {WAYS[unit]} against size, both by powers of ten"
        # Time and memory of the same work beside each other, where the page is wide enough.
        yield ("\n" if unit == "ms" else "") + f"![{words}]({name})"


def _ends(words: Iterable[str]) -> str:
    row = list(words)
    return f"{row[0]}, {row[-1]}"


def _group(group: Group) -> Iterator[str]:
    if not group.rows and not group.why:
        return
    yield f"\n## {group.name.capitalize()}\n\n{GROUPS[group.name]}\n"
    if group.why:
        yield group.told
        return
    yield from _table(
        ("what", "median", "least to greatest", "aim", ""), "l r r l l",
        ((row.what, row.figure, row.spread, row.held, row.note) for row in group.rows),
    )  # fmt: skip


def _run(about: Mapping[str, str], groups: Sequence[Group]) -> Iterator[str]:
    yield "\n## This run\n"
    yield from _table(
        ("group", "took", "processor", "peak memory of its process"),
        "l r r r",
        (
            (g.name, f"{g.took_s:.0f} s", f"{g.used_s:.0f} s", f"{g.peak_mb:,.0f} MB")
            for g in groups
            if not g.why
        ),
    )
    yield ""
    yield from _table(("", ""), "l l", about.items())


def _table(heads: Sequence[str], ways: str, rows: Iterable[Sequence[str]]) -> Iterator[str]:
    """Yield a table of Markdown. ways: l or r for each column."""
    marks = {"l": "---", "r": "---:"}
    for row in (heads, [marks[way] for way in ways.split()], *rows):
        yield f"| {' | '.join(row)} |"
