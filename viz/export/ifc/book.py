"""The file being written: entities, GUIDs that stay from one writing to the next, names."""

from dataclasses import dataclass, field
from typing import Any
from uuid import UUID, uuid5

from viz.export.ifc.library import library

_NAMESPACE = UUID("8f0f7b62-3a0c-5e0b-9c39-0c5a5b1d6c11")
# The same model gives the same file; no clock is read.
_NO_DAY = "2000-01-01T00:00:00"
# Finest length that readers must keep apart, metres: a sheet of 6 mil has 150 of them.
PRECISION_M = 1e-6


@dataclass(frozen=True, eq=False)
class Book:
    """An IFC4 file and the house it is of.

    house: names the house, so that two houses share no GUID; the same key in the same house has
    the same GUID in every writing.
    """

    house: str
    file: Any
    kept: dict[tuple[str, object], Any] = field(default_factory=dict)

    def make(self, ifc: str, **fields: Any) -> Any:
        """Return a new entity."""
        return self.file.create_entity(ifc, **fields)

    def root(self, ifc: str, key: str, **fields: Any) -> Any:
        """Return a new entity that has a GUID, made from its class and its key."""
        name = uuid5(_NAMESPACE, "\n".join((self.house, ifc, key)))
        guid = library().guid.compress(name.hex)
        return self.file.create_entity(ifc, GlobalId=guid, **fields)

    def once(self, ifc: str, key: object, **fields: Any) -> Any:
        """Return the entity of this class and key, made when first asked for."""
        if (ifc, key) not in self.kept:
            self.kept[ifc, key] = self.make(ifc, **fields)
        return self.kept[ifc, key]

    def point(self, *where: float) -> Any:
        """Return a point of two or three coordinates, metres."""
        return self.make("IfcCartesianPoint", Coordinates=[float(x) for x in where])

    def way(self, *along: float) -> Any:
        """Return a direction."""
        ratios = tuple(float(x) for x in along)
        return self.once("IfcDirection", ratios, DirectionRatios=ratios)

    def frame(self, where: tuple[float, float, float], up: Any = None, right: Any = None) -> Any:
        """Return a place in space, its axes those of the house unless given."""
        point = self.point(*where)
        return self.make("IfcAxis2Placement3D", Location=point, Axis=up, RefDirection=right)

    def text(self) -> str:
        """Return the file as text."""
        return str(self.file.to_string())


def open_book(house: str, title: str, author: str, program: str) -> Book:
    """Return an empty file with its head: title, author, program, a fixed day.

    Raises IfcLibraryError.
    """
    ifc = library()
    file = ifc.file(schema="IFC4")
    head = file.header
    head.file_description.description = ("ViewDefinition [DesignTransferView_V1.0]",)
    head.file_name.name = title
    head.file_name.time_stamp = _NO_DAY
    head.file_name.author = (author,)
    head.file_name.organization = ("",)
    head.file_name.preprocessor_version = f"IfcOpenShell {ifc.version}"
    head.file_name.originating_system = program
    head.file_name.authorization = ""
    return Book(house, file)
