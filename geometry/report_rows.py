"""The records that are the report's own."""

from typing import Literal

from pydantic import BaseModel, ConfigDict

from geometry.checks.finding import Severity

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


class ReportRow(BaseModel):
    """A frozen record of the report."""

    model_config = ConfigDict(frozen=True, extra="forbid")


class Level(ReportRow):
    """One level: against top of footing, as elevation, as rod reading where a laser is given."""

    area: str
    group: str
    interface: str
    level_m: float
    elevation_m: float
    rod_reading_m: float | None
    thickness_below_m: float | None


class Volume(ReportRow):
    """One part's space in place."""

    part: str
    name: str
    area: str
    role: str
    material: str
    volume_m3: float
    volume_ft3: float
    volume_yd3: float


class Verdict(ReportRow):
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


class Found(ReportRow):
    """One finding in words."""

    id: str
    severity: Severity
    subject: str
    found: str
    asked: str
    source: str
    advice: str


class Bars(ReportRow):
    """Continuous footing bars of one area: neat length without laps."""

    area: str
    count: int
    size: str
    length_m: float
