"""Property sets and quantities of an element."""

from collections.abc import Mapping
from typing import Any

from geometry.layout.lay import Layout
from geometry.materials.catalogue import find
from viz.export.ifc.book import Book
from viz.export.ifc.dress import single
from viz.export.ifc.part import Part, Value
from viz.export.ifc.quantities import quantities

METHOD = "closed form, in place; earthworks from their flat-faced solids"


def figures(book: Book, layout: Layout, part: Part, element: Any) -> None:
    """Write what is known of a part beside its element."""
    sets = {"Bedcourse_Part": _identity(part), "Bedcourse_Levels": _levels(layout, part)}
    for name, values in {**sets, **part.sets}.items():
        _property_set(book, part.key, name, values, element)
    for name, found in quantities(part).items():
        rows = [_quantity(book, which, kind, value) for which, (kind, value) in found.items()]
        made = book.root(
            "IfcElementQuantity", f"{part.key}\n{name}", Name=name, MethodOfMeasurement=METHOD,
            Quantities=rows,
        )  # fmt: skip
        _defined(book, part.key, name, made, element)


def _identity(part: Part) -> Mapping[str, Value]:
    label, row = part.label, find(part.label.material)
    source = str(row.source) if row else ""
    return {
        "Part": ("IfcIdentifier", label.part),
        "Role": ("IfcLabel", label.role),
        "Area": ("IfcLabel", label.area),
        "Stage": ("IfcInteger", label.stage),
        "Material": ("IfcIdentifier", label.material),
        "Source": ("IfcText", source),
    }


def _levels(layout: Layout, part: Part) -> Mapping[str, Value]:
    """Return lowest and highest level: against the project's TOF, and as elevation."""
    datum = layout.design.datum.top_of_footing
    low, high = part.levels
    rows = {
        "BottomFromTopOfFooting": low, "TopFromTopOfFooting": high,
        "BottomElevation": datum + low, "TopElevation": datum + high,
    }  # fmt: skip
    return {name: ("IfcLengthMeasure", value) for name, value in rows.items()}


def _property_set(
    book: Book, key: str, name: str, values: Mapping[str, Value], element: Any
) -> None:
    rows = [single(book, which, *value) for which, value in values.items()]
    made = book.root("IfcPropertySet", f"{key}\n{name}", Name=name, HasProperties=rows)
    _defined(book, key, name, made, element)


def _defined(book: Book, key: str, name: str, made: Any, element: Any) -> None:
    book.root(
        "IfcRelDefinesByProperties", f"{key}\n{name}", RelatedObjects=[element],
        RelatingPropertyDefinition=made,
    )  # fmt: skip


def _quantity(book: Book, name: str, kind: str, value: float) -> Any:
    return book.make(f"IfcQuantity{kind}", Name=name, **{f"{kind}Value": value})
