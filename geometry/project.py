"""The whole job as one frozen record."""

from typing import Annotated, Any, Literal

from pydantic import Field, model_validator

from geometry.parts.area import Area
from geometry.parts.climate import Climate
from geometry.parts.drain import DrainList, Sump
from geometry.parts.fields import Elevation, Name, Record
from geometry.parts.floor import Floor
from geometry.parts.footing import Footing, Wall
from geometry.parts.ground import Backfill, Delivered, Excavation, Grade, Soil
from geometry.parts.loads import Loads
from geometry.parts.order import Ordering
from geometry.parts.rules import OwnRule, Rules
from geometry.parts.site import Site
from geometry.parts.vent import Vent
from geometry.parts.water import Water
from geometry.units import FOOT, BareUnit, System

FORMAT: Literal[1] = 1


class About(Record):
    """Names for the title block, and how lengths are printed and plain numbers read.

    drawn_for: who builds. parcel: the lot as the land register knows it. date, revision: of the
    drawings, as they shall read. code: edition of the local code, as the office names it.
    """

    name: Name
    address: str = ""
    prepared_by: str = ""
    drawn_for: Name = ""
    parcel: Name = ""
    date: Name = ""
    revision: Name = ""
    code: Name = ""
    note: str = ""
    units: System = "ft-in"
    numbers: BareUnit | None = None


class Datum(Record):
    """The survey: elevation of the project's top of footing, of the laser, and north.

    north: degrees clockwise from straight up the sheet to north.
    """

    top_of_footing: Elevation = 100 * FOOT
    instrument: Elevation | None = None
    north: Annotated[float, Field(ge=-360, le=360)] = 0.0


class Design(Record):
    """Everything the design file says, defaults filled in, lengths in metres."""

    format: Literal[1] = FORMAT
    project: About
    datum: Datum = Datum()
    footing: Footing = Footing()
    wall: Wall = Wall()
    floor: Floor = Floor()
    areas: Annotated[tuple[Area, ...], Field(min_length=1, max_length=20)] = Field(alias="area")
    drains: DrainList = Field((), alias="drain")
    sump: Sump | None = None
    vent: Vent | None = None
    excavation: Excavation = Excavation()
    backfill: Backfill = Backfill()
    soil: Soil = Soil()
    grade: Grade = Grade()
    height_rules: Annotated[tuple[OwnRule, ...], Field(max_length=50)] = Field(
        (), alias="height_rule"
    )
    gradings: Annotated[tuple[Delivered, ...], Field(max_length=20)] = Field((), alias="grading")
    rules: Rules = Rules()
    loads: Loads = Loads()
    site: Site = Site()
    climate: Climate = Climate()
    water: Water = Water()
    order: Ordering = Ordering()

    @model_validator(mode="before")
    @classmethod
    def _areas_follow_the_house(cls, raw: Any) -> Any:
        return inherited(raw) if isinstance(raw, dict) else raw

    def footing_of(self, area: Area) -> Footing:
        """Return the area's own footing, or the house's."""
        return area.footing or self.footing

    def wall_of(self, area: Area) -> Wall:
        """Return the area's own wall, or the house's."""
        return area.wall or self.wall

    def floor_of(self, area: Area) -> Floor:
        """Return the area's own floor, or the house's."""
        return area.floor or self.floor


def inherited(raw: dict[str, Any]) -> dict[str, Any]:
    """Return the raw design with the house's footing, wall and floor keys under each area's own."""
    areas = raw.get("area")
    if not isinstance(areas, list):
        return raw
    return {**raw, "area": [_under(raw, area) for area in areas]}


def _under(raw: dict[str, Any], area: Any) -> Any:
    if not isinstance(area, dict):
        return area
    own = {
        key: area[key] for key in ("footing", "wall", "floor") if isinstance(area.get(key), dict)
    }
    house = {key: raw[key] for key in own if isinstance(raw.get(key), dict)}
    return {**area, **{key: {**house.get(key, {}), **own[key]} for key in own}}
