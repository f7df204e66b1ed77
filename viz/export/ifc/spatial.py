"""Project, site, building and a storey an area, in metres, level 0 at the project's TOF."""

from collections.abc import Mapping
from dataclasses import dataclass
from math import cos, radians, sin
from typing import Any

from geometry.layout.lay import Layout
from viz.export.ifc.book import PRECISION_M, Book

# What the file says of itself where every reader shows it.
CAUTION = (
    "These figures inform; they are no engineer's stamp. Level 0 is the project's top of footing. "
    "Volumes are in place."
)
_UNITS = (
    ("LENGTHUNIT", "METRE"), ("AREAUNIT", "SQUARE_METRE"), ("VOLUMEUNIT", "CUBIC_METRE"),
    ("PLANEANGLEUNIT", "RADIAN"), ("MASSUNIT", "GRAM"), ("TIMEUNIT", "SECOND"),
)  # fmt: skip


@dataclass(frozen=True, eq=False)
class Places:
    """What stands in space: the body context, site, building, storeys by area, their levels."""

    body: Any
    site: Any
    building: Any
    storeys: Mapping[str, Any]
    levels: Mapping[str, float]

    def of(self, area: str, ground: bool) -> tuple[Any, float]:
        """Return what holds a part of an area, of the whole house or of the ground; its level."""
        if ground:
            return self.site, 0.0
        if area in self.storeys:
            return self.storeys[area], self.levels[area]
        return self.building, 0.0


def places(book: Book, layout: Layout) -> Places:
    """Write the project down to its storeys."""
    design, about = layout.design, layout.design.project
    context, body = _contexts(book, design.datum.north)
    units = [book.make("IfcSIUnit", UnitType=kind, Name=name, Prefix=_prefix(name))
             for kind, name in _UNITS]  # fmt: skip
    project = book.root(
        "IfcProject", "project", Name=about.name, Description=CAUTION, Phase=about.revision or None,
        RepresentationContexts=[context],
        UnitsInContext=book.make("IfcUnitAssignment", Units=units),
    )  # fmt: skip
    elevation, address = design.datum.top_of_footing, _address(book, about.address)
    site = book.root(
        "IfcSite", "site", Name="Site", ObjectPlacement=placed(book, None, 0.0),
        CompositionType="ELEMENT", RefElevation=elevation, SiteAddress=address,
    )  # fmt: skip
    building = book.root(
        "IfcBuilding", "building", Name=about.name,
        ObjectPlacement=placed(book, site.ObjectPlacement, 0.0), CompositionType="ELEMENT",
        ElevationOfRefHeight=elevation, BuildingAddress=address,
    )  # fmt: skip
    levels = {area.name: area.finished_floor for area in layout.areas}
    storeys = {
        name: book.root(
            "IfcBuildingStorey", name, Name=name, CompositionType="ELEMENT", Elevation=level,
            ObjectPlacement=placed(book, building.ObjectPlacement, level),
        )
        for name, level in levels.items()
    }  # fmt: skip
    for whole, pieces in ((project, [site]), (site, [building]), (building, [*storeys.values()])):
        aggregate(book, whole, pieces)
    return Places(body, site, building, storeys, levels)


def _prefix(name: str) -> str | None:
    return "KILO" if name == "GRAM" else None


def _contexts(book: Book, north: float) -> tuple[Any, Any]:
    """Return the model's context and that of bodies; north: degrees clockwise from sheet up."""
    turn = radians(north)
    context = book.make(
        "IfcGeometricRepresentationContext", ContextType="Model", CoordinateSpaceDimension=3,
        Precision=PRECISION_M, WorldCoordinateSystem=book.frame((0.0, 0.0, 0.0)),
        TrueNorth=book.way(sin(turn), cos(turn)),
    )  # fmt: skip
    body = book.make(
        "IfcGeometricRepresentationSubContext", ContextIdentifier="Body", ContextType="Model",
        ParentContext=context, TargetView="MODEL_VIEW",
    )  # fmt: skip
    return context, body


def _address(book: Book, address: str) -> Any:
    return book.make("IfcPostalAddress", AddressLines=[address]) if address else None


def placed(book: Book, within: Any, level: float) -> Any:
    """Return a placement at a level above what it is within."""
    frame = book.frame((0.0, 0.0, level))
    return book.make("IfcLocalPlacement", PlacementRelTo=within, RelativePlacement=frame)


def aggregate(book: Book, whole: Any, pieces: list[Any]) -> None:
    """Say that pieces make up a whole."""
    book.root("IfcRelAggregates", whole.GlobalId, RelatingObject=whole, RelatedObjects=pieces)
