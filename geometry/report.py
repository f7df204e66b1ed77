"""The one frozen result everybody reads, its JSON form and its schema."""

from collections.abc import Iterator
from dataclasses import replace
from functools import cached_property
from typing import Literal

from pydantic import BaseModel, ConfigDict

from geometry.checks.board import BoardLoad, board_findings, board_loads
from geometry.checks.cleanouts import cleanout_findings
from geometry.checks.cold import ColdConcrete, cold_concrete
from geometry.checks.drain_rules import drain_rule_findings
from geometry.checks.filter import drain_filter_findings, filter_findings
from geometry.checks.finding import Finding, Severity
from geometry.checks.floor_rules import floor_findings
from geometry.checks.foam import FoamVerdict, foam_finding, foam_verdict
from geometry.checks.footing_rules import footing_findings
from geometry.checks.ground_rules import ground_findings
from geometry.checks.hillside import hillside_findings
from geometry.checks.levels import level_findings
from geometry.checks.networks import network_findings
from geometry.checks.outlets import daylight_findings
from geometry.checks.strength import strength_findings
from geometry.checks.wall import wall_findings
from geometry.checks.wall_rules import wall_rule_findings
from geometry.checks.water import water_findings
from geometry.checks.whole import whole_findings
from geometry.heat.floors import FloorHeat, floor_heat
from geometry.layout.lay import Layout
from geometry.layout.leveltable import level_rows
from geometry.parts.ground import BackfillState
from geometry.solids.foundation import Foundation
from geometry.takeoff.order import order
from geometry.takeoff.row import Order
from geometry.takeoff.volumes import PartVolume, earthwork_volumes, part_volumes
from geometry.units import to_unit
from geometry.water.drain_figures import DrainFigures, drains_figures
from geometry.water.filtering import Filters, filters
from geometry.water.outlet_figures import OutletFigures, reported_outlets
from geometry.water.reported import WaterFigures, water_figures
from geometry.water.study import study
from geometry.water.wall import WallRun, wall_runs

FORMAT: Literal[1] = 1

CAUTIONS = (
    "These figures inform; they are no engineer's stamp. "
    "The local code and the building department decide.",
    "Excavation: a trench or hole can cave in. At 5 ft and deeper (less where ground is poor) "
    "protect or slope the sides; a competent person looks daily and after rain "
    "(29 CFR 1926.651, .652). Keep spoil 2 ft back. Call before you dig.",
    "Do not dig below or beside a footing's bearing without advice.",
    "Backfill only when the wall has its strength and is braced or tied to the floor above; "
    "nobody between an unbraced wall and the backfill (IRC R404.1.7).",
    "A pump in a pit is electricity at water: protected circuit, "
    "licensed work where the code asks it.",
)


class _Row(BaseModel):
    model_config = ConfigDict(frozen=True, extra="forbid")


class Level(_Row):
    """One level: against top of footing, as elevation, as rod reading where a laser is given."""

    area: str
    group: str
    interface: str
    level_m: float
    elevation_m: float
    rod_reading_m: float | None
    thickness_below_m: float | None


class Volume(_Row):
    """One part's space in place."""

    part: str
    name: str
    area: str
    role: str
    material: str
    volume_m3: float
    volume_ft3: float
    volume_yd3: float


class Verdict(_Row):
    """How an area's foam meets its top of footing; levels against the area's TOF."""

    area: str
    meeting: str
    foam_bottom_m: float | None
    foam_top_m: float | None
    gap_m: float
    cold_ledge_m2: float
    cold_concrete_m2: float
    cold_share: float
    cold_faces_m2: dict[str, float]


class Found(_Row):
    """One finding in words."""

    id: str
    severity: Severity
    subject: str
    found: str
    asked: str
    source: str
    advice: str


class Bars(_Row):
    """Continuous footing bars of one area: neat length without laps."""

    area: str
    count: int
    size: str
    length_m: float


class Report(_Row):
    """Everything computed for one design. Levels in metres against the project's top of footing."""

    format: Literal[1] = FORMAT
    design: str
    units: str
    top_of_footing_elevation_m: float
    levels: tuple[Level, ...]
    volumes: tuple[Volume, ...]
    foam: tuple[Verdict, ...]
    warmth: tuple[FloorHeat, ...]
    boards: tuple[BoardLoad, ...]
    findings: tuple[Found, ...]
    drains: tuple[DrainFigures, ...]
    outlets: tuple[OutletFigures, ...]
    filter: Filters
    walls: tuple[WallRun, ...]
    backfill_state: BackfillState
    water: WaterFigures
    bars: tuple[Bars, ...]
    order: Order
    cautions: tuple[str, ...] = CAUTIONS

    def to_json(self) -> str:
        """Return the report as JSON text."""
        return self.model_dump_json(indent=2) + "\n"

    @property
    def drain(self) -> DrainFigures | None:
        """The main drain: the one that empties into the pit, else the first."""
        return self.drains[0] if self.drains else None

    @cached_property
    def worst(self) -> Severity:
        """The gravest severity among the findings."""
        order: list[Severity] = ["fine", "look", "stop"]
        return max((f.severity for f in self.findings), key=order.index, default="fine")


def report(layout: Layout, foundation: Foundation | None = None) -> Report:
    """Return the report; without solids it leaves out the earthworks' volumes."""
    colds = [cold_concrete(layout, a) for a in layout.areas]
    verdicts = [foam_verdict(a, c) for a, c in zip(layout.areas, colds, strict=True)]
    volumes = part_volumes(layout) + (earthwork_volumes(foundation) if foundation else ())
    design = layout.design
    return Report(
        design=design.project.name,
        units=design.project.units,
        top_of_footing_elevation_m=design.datum.top_of_footing,
        levels=_levels(layout),
        volumes=tuple(_volume(v) for v in volumes),
        foam=tuple(_verdict(layout, v, c) for v, c in zip(verdicts, colds, strict=True)),
        warmth=_warmth(layout, colds),
        boards=board_loads(layout),
        findings=tuple(_found(f) for f in _findings(layout, verdicts, colds)),
        drains=drains_figures(layout),
        outlets=reported_outlets(layout),
        filter=filters(layout),
        walls=wall_runs(layout),
        backfill_state=design.backfill.state,
        water=water_figures(study(layout)),
        bars=_bars(layout),
        order=order(layout),
    )


def _findings(
    layout: Layout, verdicts: list[FoamVerdict], colds: list[ColdConcrete]
) -> list[Finding]:
    system = layout.design.project.units
    rows = zip(layout.areas, verdicts, colds, strict=True)
    return [
        *(foam_finding(a, v, c, system) for a, v, c in rows),
        *level_findings(layout),
        *(f for view in layout.views() for f in _drain_findings(view)),
        *network_findings(layout),
        *hillside_findings(layout),
        *filter_findings(layout),
        *wall_findings(layout),
        *water_findings(layout),
        *board_findings(layout),
        *footing_findings(layout),
        *wall_rule_findings(layout),
        *floor_findings(layout),
        *ground_findings(layout),
        *whole_findings(layout),
    ]


def _warmth(layout: Layout, colds: list[ColdConcrete]) -> tuple[FloorHeat, ...]:
    found = (floor_heat(layout, a, c.share) for a, c in zip(layout.areas, colds, strict=True))
    return tuple(heat for heat in found if heat)


def _drain_findings(view: Layout) -> Iterator[Finding]:
    """Yield the findings on the drain in view, under its own name where there are several."""
    found = (
        *drain_rule_findings(view),
        *drain_filter_findings(view),
        *strength_findings(view),
        *cleanout_findings(view),
        *daylight_findings(view),
    )
    title = view.drain.title if view.drain and len(view.drains) > 1 else "drain"
    for finding in found:
        yield replace(finding, subject=finding.subject.replace("drain", title, 1))


def _levels(layout: Layout) -> tuple[Level, ...]:
    return tuple(
        Level(
            area=r.area,
            group=r.group,
            interface=r.interface,
            level_m=r.level,
            elevation_m=r.elevation,
            rod_reading_m=r.rod,
            thickness_below_m=r.thickness_below,
        )
        for r in level_rows(layout)
    )


def _volume(part: PartVolume) -> Volume:
    label, volume = part.label, part.volume
    return Volume(
        part=label.part,
        name=label.name,
        area=label.area,
        role=label.role,
        material=label.material,
        volume_m3=volume,
        volume_ft3=to_unit(volume, "m**3", "ft**3"),
        volume_yd3=to_unit(volume, "m**3", "yd**3"),
    )


def _verdict(layout: Layout, verdict: FoamVerdict, cold: ColdConcrete) -> Verdict:
    tof = layout.area(verdict.area).tof
    bottom, top = verdict.foam_bottom_m, verdict.foam_top_m
    return Verdict(
        area=verdict.area,
        meeting=verdict.meeting,
        foam_bottom_m=None if bottom is None else bottom - tof,
        foam_top_m=None if top is None else top - tof,
        gap_m=verdict.gap_m,
        cold_ledge_m2=verdict.ledge_m2,
        cold_concrete_m2=cold.cold_m2,
        cold_share=cold.share,
        cold_faces_m2={f.contact: f.area_m2 for f in cold.faces},
    )


def _found(finding: Finding) -> Found:
    return Found(
        id=finding.id,
        severity=finding.severity,
        subject=finding.subject,
        found=finding.found,
        asked=finding.asked,
        source=str(finding.source),
        advice=finding.advice,
    )


def _bars(layout: Layout) -> tuple[Bars, ...]:
    rows = []
    for area in layout.areas:
        bars = area.footing.bars
        if bars.count:
            # The strip's area over its width is its length along the middle.
            along = float(area.footings.area) / area.footing.width
            rows.append(
                Bars(area=area.name, count=bars.count, size=bars.size, length_m=bars.count * along)
            )
    return tuple(rows)
