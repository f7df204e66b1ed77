"""Two to four designs side by side: all that differs, the greatest consequence first."""

from collections import Counter
from collections.abc import Callable, Hashable, Iterable, Iterator, Sequence
from dataclasses import dataclass
from functools import cached_property
from typing import TypeVar

from geometry.designfile import read_design
from geometry.errors import BedcourseError
from geometry.faults.text import cleaned, raw_design
from geometry.layout.lay import lay_out
from geometry.project import Design
from geometry.report import Found, Report, report
from geometry.solids.foundation import build
from geometry.takeoff.row import Row
from geometry.variants.rows import (
    Cost,
    DrainRow,
    DrainWhat,
    FindingRow,
    HeatRow,
    HeatWhat,
    LevelRow,
    OrderRow,
    Values,
    VolumeRow,
    differ,
    farthest,
)
from geometry.variants.written import Written, differing
from geometry.water.drain_figures import DrainFigures

FEWEST, MOST = 2, 4
# Earth is moved, not bought; its bodies are counted by name, not with the materials.
EARTH = ("excavation", "backfill", "grading")
_HEAT: tuple[HeatWhat, ...] = ("loss", "u", "resistance")
_DRAIN: tuple[DrainWhat, ...] = (
    "room over the fall", "low invert", "high invert", "fall", "longest", "length",
)  # fmt: skip
T = TypeVar("T")


@dataclass(frozen=True)
class Variant:
    """A sound design under the name it is compared by, its file's text and its report."""

    name: str
    text: str
    design: Design
    report: Report


@dataclass(frozen=True)
class Comparison:
    """What differs between designs, the first being the one the others are held against.

    In every list the greatest consequence stands first. volumes: part by part; materials: each
    material in all, earth left out. costs: of the whole order, None without prices.
    """

    names: tuple[str, ...]
    written: tuple[Written, ...]
    levels: tuple[LevelRow, ...]
    volumes: tuple[VolumeRow, ...]
    materials: tuple[VolumeRow, ...]
    order: tuple[OrderRow, ...]
    costs: tuple[Cost | None, ...]
    currency: str
    findings: tuple[FindingRow, ...]
    warmth: tuple[HeatRow, ...]
    drains: tuple[DrainRow, ...]

    @cached_property
    def same(self) -> bool:
        """Whether nothing differs at all."""
        lists = (self.written, self.levels, self.volumes, self.order, self.findings, self.warmth)
        return not any((*lists, self.drains)) and len(set(self.costs)) == 1


def variant(name: str, text: str) -> Variant:
    """Return a design file's text as a variant, earthworks and all. Raises DesignError."""
    layout = lay_out(read_design(text))
    return Variant(name, text, layout.design, report(layout, build(layout)))


def compare(variants: Sequence[Variant]) -> Comparison:
    """Return what differs between two to four variants. Raises BedcourseError for other numbers."""
    if not FEWEST <= len(variants) <= MOST:
        raise BedcourseError(f"{FEWEST} to {MOST} designs can be compared, not {len(variants)}")
    reports = [one.report for one in variants]
    return Comparison(
        names=tuple(one.name for one in variants),
        written=differing([(one.design, raw_design(cleaned(one.text))) for one in variants]),
        levels=_levels(reports),
        volumes=_volumes(reports),
        materials=_materials(reports),
        order=_order(reports),
        costs=tuple(one.order.cost for one in reports),
        currency=next((r.order.currency for r in reports if r.order.currency), ""),
        findings=_findings(reports),
        warmth=tuple(_warmth(reports)),
        drains=tuple(_drains(reports)),
    )


def _beside(
    lists: Sequence[Iterable[T]], key: Callable[[T], Hashable]
) -> list[tuple[T, tuple[T | None, ...]]]:
    """Return what stands under one key in each list: the first there is, and one for each list.

    Of several under one key, the first of one list stands beside the first of another.
    """
    found: list[dict[Hashable, T]] = []
    for rows in lists:
        seen: Counter[Hashable] = Counter()
        own: dict[Hashable, T] = {}
        for row in rows:
            own[key(row), seen[key(row)]] = row
            seen[key(row)] += 1
        found.append(own)
    keys = dict.fromkeys(k for own in found for k in own)
    return [
        (next(own[k] for own in found if k in own), tuple(own.get(k) for own in found))
        for k in keys
    ]


def _values(rows: Sequence[T | None], figure: Callable[[T], float | None]) -> Values:
    return tuple(None if row is None else figure(row) for row in rows)


def _levels(reports: Sequence[Report]) -> tuple[LevelRow, ...]:
    listed = _beside([r.levels for r in reports], lambda r: (r.area, r.group, r.interface))
    rows = [
        LevelRow(one.area, one.group, one.interface, _values(beside, lambda r: r.level_m))
        for one, beside in listed
    ]
    moved = [row for row in rows if differ(row.levels_m)]
    # To the micrometre: levels moved alike keep the order of the level table.
    return tuple(sorted(moved, key=lambda r: (None in r.levels_m, -round(farthest(r.levels_m), 6))))


def _volumes(reports: Sequence[Report]) -> tuple[VolumeRow, ...]:
    listed = _beside([r.volumes for r in reports], lambda v: (v.part, v.name, v.material))
    return _largest(
        VolumeRow(v.area, v.name, v.role, v.material, _values(beside, lambda b: b.volume_m3))
        for v, beside in listed
    )


def _materials(reports: Sequence[Report]) -> tuple[VolumeRow, ...]:
    sums: list[Counter[str]] = []
    for one in reports:
        own: Counter[str] = Counter()
        for volume in one.volumes:
            if volume.role not in EARTH:
                # A counter takes any number for a count.
                own[volume.material] += volume.volume_m3  # type: ignore[assignment]
        sums.append(own)
    keys = dict.fromkeys(key for own in sums for key in own)
    return _largest(
        VolumeRow("", "", "", key, tuple(float(own[key]) if key in own else None for own in sums))
        for key in keys
    )


def _largest(rows: Iterable[VolumeRow]) -> tuple[VolumeRow, ...]:
    """Return the rows that differ, the largest difference first."""
    differing = [row for row in rows if differ(row.volumes_m3)]
    return tuple(sorted(differing, key=lambda row: -farthest(row.volumes_m3)))


def _order(reports: Sequence[Report]) -> tuple[OrderRow, ...]:
    listed = _beside(
        [r.order.rows for r in reports], lambda r: (r.group, r.item, r.material, r.area)
    )
    rows = [_order_row(one, beside) for one, beside in listed]
    differing = [row for row in rows if differ(row.counts) or len(set(row.costs)) > 1]
    return tuple(sorted(differing, key=lambda row: (-farthest(row.middles), -row.share)))


def _order_row(one: Row, beside: Sequence[Row | None]) -> OrderRow:
    return OrderRow(
        one.group, one.item, one.material, one.area,
        tuple(row.sold if row else None for row in beside),
        _values(beside, lambda row: row.count),
        _values(beside, lambda row: row.to_buy),
        tuple(row.cost if row else None for row in beside),
    )  # fmt: skip


def _findings(reports: Sequence[Report]) -> tuple[FindingRow, ...]:
    def key(found: Found) -> Hashable:
        return found.id, found.subject

    rows = [
        FindingRow(
            one.id, one.subject,
            tuple(f.severity if f else None for f in beside),
            tuple(f.found if f else "" for f in beside),
        )
        for one, beside in _beside([r.findings for r in reports], key)
    ]  # fmt: skip
    differing = [row for row in rows if len(set(row.severities)) > 1]
    return tuple(sorted(differing, key=lambda row: row.gravity, reverse=True))


def _warmth(reports: Sequence[Report]) -> Iterator[HeatRow]:
    for one, beside in _beside([r.warmth for r in reports], lambda heat: heat.area):
        figures = (
            _values(beside, lambda heat: heat.loss_w_k),
            _values(beside, lambda heat: heat.u_floor),
            _values(beside, lambda heat: heat.mean_resistance),
        )
        rows = zip(_HEAT, figures, strict=True)
        yield from (HeatRow(one.area, what, found) for what, found in rows if differ(found))


def _drains(reports: Sequence[Report]) -> Iterator[DrainRow]:
    for one, beside in _beside([r.drains for r in reports], lambda d: (d.name, d.area)):
        figures = (
            _values(beside, _spare),
            _values(beside, lambda d: d.outlet_invert_m),
            _values(beside, lambda d: d.high_invert_m),
            _values(beside, lambda d: d.fall_m_per_m),
            _values(beside, lambda d: d.longest_run_m),
            _values(beside, lambda d: d.length_m),
        )
        rows = zip(_DRAIN, figures, strict=True)
        yield from (DrainRow(one.name, what, found) for what, found in rows if differ(found))


def _spare(drain: DrainFigures) -> float | None:
    """Return the room its first rule leaves beyond what the fall needs, m."""
    slope = drain.slope
    return slope.by_rule[0].room_m - slope.needed_m if slope and slope.by_rule else None
