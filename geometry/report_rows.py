"""The records of the report, and the report as one of them: what its JSON and schema say."""

from typing import Literal

from pydantic import BaseModel, ConfigDict

from geometry.checks.board import BoardLoad
from geometry.checks.finding import Severity
from geometry.heat.floors import FloorHeat
from geometry.parts.ground import BackfillState
from geometry.takeoff.row import Order
from geometry.water.drain_figures import DrainFigures
from geometry.water.filtering import Filters
from geometry.water.outlet_figures import OutletFigures
from geometry.water.reported import WaterFigures
from geometry.water.wall import WallRun

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


class ReportRecord(_Row):
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
