"""The one frozen result everybody reads, made subject by subject; its JSON form and its schema.

Whoever asks for one subject loads and makes that one: the imports stand where they are needed.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property
from typing import TYPE_CHECKING, Any, ClassVar, Literal

from pydantic_core import to_jsonable_python

from geometry.report_rows import CAUTIONS, FORMAT, Bars, Found, Level, Verdict, Volume

if TYPE_CHECKING:
    from collections.abc import Callable

    from geometry.checks.board import BoardLoad
    from geometry.checks.find import Foam
    from geometry.checks.finding import Severity
    from geometry.heat.floors import FloorHeat
    from geometry.layout.lay import Layout
    from geometry.parts.ground import BackfillState
    from geometry.solids.foundation import Foundation
    from geometry.takeoff.row import Order
    from geometry.water.drain_figures import DrainFigures
    from geometry.water.filtering import Filters
    from geometry.water.outlet_figures import OutletFigures
    from geometry.water.reported import WaterFigures
    from geometry.water.wall import WallRun

__all__ = ["CAUTIONS", "FORMAT", "Bars", "Found", "Level", "Report", "Verdict", "Volume", "report"]


@dataclass(frozen=True, eq=False)
class Report:
    """Everything computed for one design, each subject when it is first asked for.

    Levels in metres against the project's top of footing. solids: gives the design's bodies;
    without them the volumes leave out the earthworks. Each subject is what `ReportRecord` says of
    it. Threads may ask at once: a subject is kept when it is whole.
    """

    layout: Layout
    solids: Callable[[], Foundation] | None = None
    format: ClassVar[Literal[1]] = FORMAT
    cautions: ClassVar[tuple[str, ...]] = CAUTIONS

    @property
    def design(self) -> str:
        """The project's name."""
        return self.layout.design.project.name

    @property
    def units(self) -> str:
        """The system lengths are told in."""
        return self.layout.design.project.units

    @property
    def top_of_footing_elevation_m(self) -> float:
        """The elevation of the project's top of footing."""
        return self.layout.design.datum.top_of_footing

    @cached_property
    def levels(self) -> tuple[Level, ...]:
        """Every level."""
        from geometry.report_making import level_records

        return level_records(self.layout)

    @cached_property
    def volumes(self) -> tuple[Volume, ...]:
        """Every part's space in place."""
        from geometry.report_making import volume_record
        from geometry.takeoff.volumes import earthwork_volumes, part_volumes

        earthworks = earthwork_volumes(self.solids()) if self.solids else ()
        return tuple(volume_record(v) for v in (*part_volumes(self.layout), *earthworks))

    @cached_property
    def _foam(self) -> tuple[Foam, ...]:
        from geometry.checks.cold import cold_concrete
        from geometry.checks.foam import foam_verdict

        colds = ((a, cold_concrete(self.layout, a)) for a in self.layout.areas)
        return tuple((foam_verdict(area, cold), cold) for area, cold in colds)

    @cached_property
    def foam(self) -> tuple[Verdict, ...]:
        """How each area's foam meets its top of footing."""
        from geometry.report_making import verdict_record

        pairs = zip(self.layout.areas, self._foam, strict=True)
        return tuple(verdict_record(area, *found) for area, found in pairs)

    @cached_property
    def warmth(self) -> tuple[FloorHeat, ...]:
        """The heat of each area's floor."""
        from geometry.report_making import warmth_records

        return warmth_records(self.layout, self._foam)

    @cached_property
    def boards(self) -> tuple[BoardLoad, ...]:
        """The foam under each slab and its load."""
        from geometry.checks.board import board_loads

        return board_loads(self.layout)

    @cached_property
    def findings(self) -> tuple[Found, ...]:
        """What was found, in words."""
        from geometry.checks.find import findings
        from geometry.report_making import found_record

        return tuple(found_record(f) for f in findings(self.layout, self._foam))

    @cached_property
    def drains(self) -> tuple[DrainFigures, ...]:
        """Every drain, the main one first."""
        from geometry.water.drain_figures import drains_figures

        return drains_figures(self.layout)

    @cached_property
    def outlets(self) -> tuple[OutletFigures, ...]:
        """Every outlet to daylight, each beside the pit; without any, the pit alone."""
        from geometry.water.outlet_figures import reported_outlets

        return reported_outlets(self.layout)

    @cached_property
    def filter(self) -> Filters:
        """What holds soil back at the main drain."""
        from geometry.water.filtering import filters

        return filters(self.layout)

    @cached_property
    def walls(self) -> tuple[WallRun, ...]:
        """What the fill pushes on each area's walls."""
        from geometry.water.wall import wall_runs

        return wall_runs(self.layout)

    @property
    def backfill_state(self) -> BackfillState:
        """What the fill meets on the day it goes in."""
        return self.layout.design.backfill.state

    @cached_property
    def water(self) -> WaterFigures:
        """The study of the water."""
        from geometry.water.reported import water_figures
        from geometry.water.study import study

        return water_figures(study(self.layout))

    @cached_property
    def bars(self) -> tuple[Bars, ...]:
        """The footing bars of each area that has any."""
        from geometry.report_making import bars_records

        return bars_records(self.layout)

    @cached_property
    def order(self) -> Order:
        """What to buy."""
        from geometry.takeoff.order import order

        return order(self.layout)

    @property
    def drain(self) -> DrainFigures | None:
        """The main drain: the one that empties into the pit, else the first."""
        return self.drains[0] if self.drains else None

    @cached_property
    def worst(self) -> Severity:
        """The gravest severity among the findings."""
        order: list[Severity] = ["fine", "look", "stop"]
        return max((f.severity for f in self.findings), key=order.index, default="fine")

    def to_json(self) -> str:
        """Return the report as JSON text."""
        from geometry.report_record import ReportRecord

        subjects = {name: getattr(self, name) for name in ReportRecord.model_fields}
        return ReportRecord.model_construct(**subjects).model_dump_json(indent=2) + "\n"

    def figures(self, *subjects: str) -> dict[str, Any]:
        """Return some subjects in the values of JSON; no other is made. Raises AttributeError."""
        return {name: to_jsonable_python(getattr(self, name), by_alias=False) for name in subjects}

    @staticmethod
    def schema() -> dict[str, Any]:
        """Return the JSON schema of `to_json`."""
        from geometry.report_record import ReportRecord

        return ReportRecord.model_json_schema(mode="serialization")


def report(layout: Layout, foundation: Foundation | None = None) -> Report:
    """Return the report; without solids it leaves out the earthworks' volumes."""
    return Report(layout, (lambda: foundation) if foundation else None)
