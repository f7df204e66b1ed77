"""Materials with their sources, the floor's layer sets, colours."""

from typing import Any

from geometry.label import Label
from geometry.layout.areas import AreaLayout
from geometry.materials.catalogue import find
from viz.export.ifc.book import Book
from viz.style.materials import look_of
from viz.words import material_name


def material(book: Book, key: str) -> Any:
    """Return a material by its catalogue key, written once: name, kind, key and source."""
    if ("IfcMaterial", key) in book.kept:
        return book.kept["IfcMaterial", key]
    row = find(key)
    made = book.once(
        "IfcMaterial", key, Name=material_name(key), Category=row.kind if row else None
    )
    if row:
        values = {"Key": ("IfcIdentifier", row.key), "Source": ("IfcText", str(row.source))}
        book.make(
            "IfcMaterialProperties", Name="Bedcourse_Material", Material=made,
            Properties=[single(book, name, *value) for name, value in values.items()],
        )  # fmt: skip
    return made


def layer_set(book: Book, area: AreaLayout) -> Any:
    """Return a floor's build-up, from the bottom up."""
    layers = [
        book.make(
            "IfcMaterialLayer", Material=material(book, layer.material),
            LayerThickness=layer.thickness, Name=layer.name, Category=layer.role,
        )
        for layer in area.floor.layers
    ]  # fmt: skip
    return book.make(
        "IfcMaterialLayerSet", MaterialLayers=layers, LayerSetName=f"Floor, {area.name}"
    )


def paint(book: Book, items: list[Any], label: Label) -> None:
    """Give a body its colour."""
    colour = look_of(label).solid
    for item in items:
        book.make("IfcStyledItem", Item=item, Styles=[_style(book, colour)])


def _style(book: Book, colour: str) -> Any:
    if ("IfcSurfaceStyle", colour) in book.kept:
        return book.kept["IfcSurfaceStyle", colour]
    red, green, blue = (int(colour[at : at + 2], 16) / 255 for at in (1, 3, 5))
    tone = book.make("IfcColourRgb", Red=red, Green=green, Blue=blue)
    shade = book.make("IfcSurfaceStyleShading", SurfaceColour=tone, Transparency=0.0)
    return book.once("IfcSurfaceStyle", colour, Name=colour, Side="BOTH", Styles=[shade])


def single(book: Book, name: str, kind: str, value: float | str) -> Any:
    """Return one property; kind: its defined type in IFC."""
    nominal = book.file.create_entity(kind, value)
    return book.make("IfcPropertySingleValue", Name=name, NominalValue=nominal)
