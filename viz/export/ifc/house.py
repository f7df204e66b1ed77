"""A whole house as one IFC4 file."""

from collections import defaultdict
from importlib.metadata import version
from typing import Any

from geometry.layout.lay import Layout
from geometry.solids.foundation import Foundation
from viz.export.ifc.book import Book, open_book
from viz.export.ifc.dress import layer_set, material, paint
from viz.export.ifc.figures import figures
from viz.export.ifc.part import Part
from viz.export.ifc.parts import parts
from viz.export.ifc.shapes import bore, items
from viz.export.ifc.spatial import Places, aggregate, placed, places

GROUND = "ground/"


def to_ifc(layout: Layout, foundation: Foundation) -> bytes:
    """Return the house as an IFC4 file; the same design gives the same bytes.

    GUIDs follow from the name and address of the project and the part ids, and stay the same in
    every writing. Raises IfcLibraryError.
    """
    about = layout.design.project
    house = f"{about.name}\n{about.address}"
    book = open_book(house, about.name, about.prepared_by, f"Bedcourse {version('bedcourse')}")
    where = places(book, layout)
    found = parts(layout, foundation)
    floors = _floors(book, layout, where)
    elements = {part.key: _element(book, where, floors, part) for part in found}
    for part in found:
        figures(book, layout, part, elements[part.key])
    _hold_together(book, where, floors, found, elements)
    _materials(book, layout, floors, found, elements)
    _systems(book, layout, where, found, elements)
    return book.text().encode()


def _floors(book: Book, layout: Layout, where: Places) -> dict[str, Any]:
    """Return an assembly for every floor; its layers are its parts."""
    return {
        area.name: book.root(
            "IfcElementAssembly", f"{area.name}/floor", Name=f"Floor, {area.name}",
            ObjectType="FLOOR BUILD-UP", PredefinedType="USERDEFINED", AssemblyPlace="SITE",
            ObjectPlacement=placed(book, where.storeys[area.name].ObjectPlacement, 0.0),
        )
        for area in layout.areas
    }  # fmt: skip


def _element(book: Book, where: Places, floors: dict[str, Any], part: Part) -> Any:
    holder, level = where.of(part.label.area, part.key.startswith(GROUND))
    within = floors.get(part.floor, holder)
    element = book.root(
        part.kind.ifc, part.key, Name=part.name, ObjectType=part.kind.words or None,
        ObjectPlacement=placed(book, within.ObjectPlacement, -level),
        Representation=_body(book, where, part), PredefinedType=part.kind.predefined,
        Tag=part.key,
    )  # fmt: skip
    for number, hole in enumerate(part.bores, 1):
        body = _shown(book, where, [bore(book, hole)], "SweptSolid")
        opening = book.root(
            "IfcOpeningElement", f"{part.key}\n{number}", Name=f"Bore {number}, {part.name}",
            ObjectPlacement=placed(book, element.ObjectPlacement, 0.0), Representation=body,
            PredefinedType="OPENING",
        )  # fmt: skip
        book.root(
            "IfcRelVoidsElement", f"{part.key}\n{number}", RelatingBuildingElement=element,
            RelatedOpeningElement=opening,
        )  # fmt: skip
    return element


def _body(book: Book, where: Places, part: Part) -> Any:
    found, kind = items(book, part.shapes)
    paint(book, found, part.label)
    return _shown(book, where, found, kind)


def _shown(book: Book, where: Places, found: list[Any], kind: str) -> Any:
    shape = book.make(
        "IfcShapeRepresentation", ContextOfItems=where.body, RepresentationIdentifier="Body",
        RepresentationType=kind, Items=found,
    )  # fmt: skip
    return book.make("IfcProductDefinitionShape", Representations=[shape])


def _hold_together(
    book: Book, where: Places, floors: dict[str, Any], found: tuple[Part, ...],
    elements: dict[str, Any],
) -> None:  # fmt: skip
    """Say which storey, building or site holds each part, and which layers make a floor."""
    held: dict[Any, list[Any]] = defaultdict(list)
    layers: dict[str, list[Any]] = defaultdict(list)
    for part in found:
        if part.floor in floors:
            layers[part.floor].append(elements[part.key])
        else:
            holder, _ = where.of(part.label.area, part.key.startswith(GROUND))
            held[holder].append(elements[part.key])
    for name, pieces in layers.items():
        aggregate(book, floors[name], pieces)
        held[where.storeys[name]].append(floors[name])
    for holder, pieces in held.items():
        book.root(
            "IfcRelContainedInSpatialStructure", holder.GlobalId, RelatingStructure=holder,
            RelatedElements=pieces,
        )  # fmt: skip


def _materials(
    book: Book, layout: Layout, floors: dict[str, Any], found: tuple[Part, ...],
    elements: dict[str, Any],
) -> None:  # fmt: skip
    """Give each part its material, and each floor its layers."""
    made: dict[str, list[Any]] = defaultdict(list)
    for part in found:
        made[part.label.material].append(elements[part.key])
    for key, pieces in made.items():
        _made_of(book, key, pieces, material(book, key))
    for area in layout.areas:
        _made_of(book, f"{area.name}/floor", [floors[area.name]], layer_set(book, area))


def _made_of(book: Book, key: str, pieces: list[Any], what: Any) -> None:
    book.root("IfcRelAssociatesMaterial", key, RelatedObjects=pieces, RelatingMaterial=what)


def _systems(
    book: Book, layout: Layout, where: Places, found: tuple[Part, ...], elements: dict[str, Any]
) -> None:
    """Put the pipes and fittings of each drain together as one drainage system."""
    for drain in layout.drains:
        mine = [p for p in found if p.system == drain.key and p.kind.ifc.startswith("IfcPipe")]
        system = book.root(
            "IfcDistributionSystem", drain.key, Name=drain.title, PredefinedType="DRAINAGE"
        )
        book.root(
            "IfcRelAssignsToGroup", drain.key, RelatingGroup=system,
            RelatedObjects=[elements[p.key] for p in mine],
        )  # fmt: skip
        book.root(
            "IfcRelServicesBuildings", drain.key, RelatingSystem=system,
            RelatedBuildings=[where.building],
        )  # fmt: skip
