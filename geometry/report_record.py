"""The report as one record: what its JSON and its schema say, subject by subject."""

from typing import Literal

from pydantic import ConfigDict

from geometry.checks.board import BoardLoad
from geometry.heat.floors import FloorHeat
from geometry.parts.ground import BackfillState
from geometry.report_rows import (
    CAUTIONS,
    FORMAT,
    Bars,
    Found,
    Level,
    ReportRow,
    Verdict,
    Volume,
)
from geometry.takeoff.row import Order
from geometry.water.drain_figures import DrainFigures
from geometry.water.filtering import Filters
from geometry.water.outlet_figures import OutletFigures
from geometry.water.reported import WaterFigures
from geometry.water.wall import WallRun


class ReportRecord(ReportRow):
    """Everything computed for one design. Levels in metres against the project's top of footing."""

    model_config = ConfigDict(title="Report")

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
