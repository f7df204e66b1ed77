"""A run's figures as a page with plots, and as JSON beside it."""

import json
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import asdict
from pathlib import Path
from typing import Any

from tests.bench.clock import by_processor
from tests.bench.plots import picture
from tests.bench.row import Curve, Row
from tests.bench.suites import SUITES

FIGURES, PAGE, TIMES, MEMORY = "figures.json", "index.md", "growth-time.svg", "growth-memory.svg"
Found = Mapping[str, Sequence[Row | Curve] | str]


def write(folder: Path, about: Mapping[str, str], found: Found, quick: bool) -> None:
    """Write the page, its plots and the figures. found: for each suite its lines, or why none."""
    folder.mkdir(parents=True, exist_ok=True)
    curves = [row for rows in found.values() for row in rows if isinstance(row, Curve)]
    if curves:
        (folder / TIMES).write_text(picture(curves, [c.ms for c in curves], "ms"), encoding="utf-8")
        (folder / MEMORY).write_text(
            picture(curves, [c.mb for c in curves], "MB"), encoding="utf-8"
        )
    figures = {
        "machine": dict(about),
        "quick": quick,
        "suites": {n: _plain(r) for n, r in found.items()},
    }
    (folder / FIGURES).write_text(json.dumps(figures, indent=1) + "\n", encoding="utf-8")
    page = "\n".join(_lines(about, found, quick, bool(curves)))
    (folder / PAGE).write_text(page + "\n", encoding="utf-8")


def _plain(rows: Sequence[Row | Curve] | str) -> Any:
    return rows if isinstance(rows, str) else [asdict(row) for row in rows]


def _lines(about: Mapping[str, str], found: Found, quick: bool, plots: bool) -> Iterator[str]:
    yield "# Times and memory\n"
    yield (
        "Written by `.venv/bin/python -m tests.bench"
        + (" --quick" if quick else "")
        + (" --processor" if by_processor() else "")
        + "`. Each group runs in a process of its own; peers run in the same process as what they "
        "are held against. Houses are invented. A busy machine makes times longer; ratios stay."
    )
    yield f"\nThe same figures for programs: [{FIGURES}]({FIGURES}).\n"
    yield "| | |\n| --- | --- |"
    yield from (f"| {name} | {value} |" for name, value in about.items())
    for name, rows in found.items():
        yield f"\n## {name.capitalize()}\n\n{(SUITES[name].__doc__ or '').strip()}\n"
        if isinstance(rows, str):
            yield f"Not run: {rows}"
            continue
        yield from _table([row for row in rows if isinstance(row, Row)])
        if plots and any(isinstance(row, Curve) for row in rows):
            yield f"![Times against sizes, both by powers of ten]({TIMES})\n"
            yield f"![Peak memory against sizes]({MEMORY})"
        for curve in rows:
            if isinstance(curve, Curve):
                yield from _curve(curve)


def _table(rows: Sequence[Row]) -> Iterator[str]:
    if not rows:
        return
    yield "| what | | aim | |\n| --- | ---: | --- | --- |"
    for row in rows:
        yield f"| {row.what.strip()} | {row.value:,.2f} {row.unit} | {row.held} | {row.note} |"


def _curve(curve: Curve) -> Iterator[str]:
    grows = f"over the last step the time grows as n to the {curve.power:.2f}"
    yield f"\nAgainst {curve.what}: {grows}.\n"
    yield "| how many | ms | MB |\n| ---: | ---: | ---: |"
    for size, ms, mb in zip(curve.sizes, curve.ms, curve.mb, strict=True):
        yield f"| {size:,} | {ms:,.1f} | {mb:,.0f} |"
