"""Invented situations as design files (`scenarios/`), and how their reports are read in tests."""

from functools import lru_cache
from pathlib import Path

from geometry.designfile import edited, read_design
from geometry.layout.lay import lay_out
from geometry.report import Found, Report, report
from geometry.takeoff.row import Row

IN, FT = 0.0254, 0.3048
FT3, YD3, TON = FT**3, 27 * FT**3, 907.18474
HERE = Path(__file__).parent / "scenarios"
Change = tuple[tuple[str | int, ...], object]

# 6 oz fabric of 1.75 mm; pipe D2729 of 4 in: inside 4.065 in, its wall 0.075 in. In inches.
FABRIC, BORE, PIPE_WALL = 1.75 / 25.4, 4.065, 0.075


def text(name: str, *changes: Change) -> str:
    """Return a design file's text with values changed."""
    found = (HERE / f"{name}.toml").read_text(encoding="utf-8")
    assert "INVENTED" in found
    for path, value in changes:
        found = edited(found, path, value)
    return found


def of(name: str, *changes: Change) -> Report:
    """Return the report on a design file."""
    return report_on(text(name, *changes))


@lru_cache(maxsize=32)
def report_on(design_text: str) -> Report:
    """Return the report on a design's text."""
    return report(lay_out(read_design(design_text)))


def level(found: Report, interface: str) -> float:
    """Return a level in inches."""
    return next(r.level_m for r in found.levels if r.interface == interface) / IN


def ids(found: Report) -> dict[str, list[Found]]:
    """Return the findings by id."""
    rows: dict[str, list[Found]] = {}
    for finding in found.findings:
        rows.setdefault(finding.id, []).append(finding)
    return rows


def row(found: Report, item: str) -> Row:
    """Return a row of the order."""
    return next(r for r in found.order.rows if r.item == item)
