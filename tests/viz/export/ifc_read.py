"""An IFC file as another program reads it: its schema's rules, bodies in a kernel, its figures."""

from collections import defaultdict

import ifcopenshell
import ifcopenshell.geom
import ifcopenshell.util.element
import ifcopenshell.validate

from geometry.layout import pipework
from geometry.layout.bodies import bored
from geometry.layout.lay import Layout
from geometry.solids.foundation import Foundation
from geometry.solids.kernel import Mesh
from geometry.takeoff.volumes import earthwork_volumes, part_volumes

# The closed form of a round hole in a round wall is a quadrature: good to this share of the hole.
BORED = 1e-3
TUBES = ("pipe", "lead", "sleeve", "bleeder")


def read(data: bytes):
    return ifcopenshell.file.from_string(data.decode())


def faults(model, rules: bool) -> list[str]:
    log = ifcopenshell.validate.json_logger()
    ifcopenshell.validate.validate(model, log, express_rules=rules)
    return [str(row) for row in log.statements]


def bodies(model) -> list:
    """Elements that have a body of their own, openings left out."""
    found = model.by_type("IfcElement")
    return [e for e in found if e.Representation and not e.is_a("IfcFeatureElement")]


def sets(element) -> dict[str, dict]:
    return ifcopenshell.util.element.get_psets(element)


def part_of(element) -> str:
    return sets(element)["Bedcourse_Part"]["Part"]


def volume(element) -> float:
    """Volume of the body in the kernel of the library: true curves, openings cut."""
    settings = ifcopenshell.geom.settings()
    settings.set("iterator-output", ifcopenshell.ifcopenshell_wrapper.NATIVE)
    shape = ifcopenshell.geom.create_shape(settings, element, geometry_library="opencascade")
    items = shape.geometry
    return sum(items.item(n).volume().to_double() for n in range(items.size()))


def corners(element):
    """(n, 3) corners of the body in the house's own coordinates."""
    from ifcopenshell.util.shape import get_vertices

    settings = ifcopenshell.geom.settings()
    settings.set("use-world-coords", True)
    shape = ifcopenshell.geom.create_shape(settings, element, geometry_library="opencascade")
    return get_vertices(shape.geometry)


def volumes_read(model) -> dict[str, float]:
    """Volume of each part, its pieces together, as the kernel reads it."""
    found: dict[str, float] = defaultdict(float)
    for element in bodies(model):
        found[part_of(element)] += volume(element)
    return dict(found)


def volumes_stated(model) -> dict[str, float]:
    found: dict[str, float] = defaultdict(float)
    for element in bodies(model):
        found[part_of(element)] += sets(element)["Bedcourse_InPlace"]["NetVolume"]
    return dict(found)


def volumes_reported(layout: Layout, foundation: Foundation) -> dict[str, float]:
    rows = (*part_volumes(layout), *earthwork_volumes(foundation))
    parts = {s.label.part for s in foundation.solids}
    return {row.label.part: row.volume for row in rows if row.label.part in parts}


def volumes_drawn(layout: Layout, foundation: Foundation) -> dict[str, tuple[float, float]]:
    """What each part's body should hold, and by how much it may differ.

    Round things by their closed form (perforated pipe is drawn undrilled), others as their solid.
    """
    closed = volumes_reported(layout, foundation)
    bores = {b.label.part: b for b in layout.bodies if b.bores and not b.taken}
    drawn = {}
    for solid in foundation.solids:
        part, allowed = solid.label.part, 0.0
        size = Mesh(solid.vertices, solid.faces).volume
        if part in bores:
            body = bores[part]
            size, holes = closed[part], sum(bored(p, b) for p in body.prisms for b in body.bores)
            allowed = BORED * holes
        elif solid.label.role in TUBES:
            size = closed[part]
        drawn[part] = (size, 1e-6 * size + allowed)
    for drain in layout.drains:
        hole = pipework.hole_volume(drain.radius, drain.bore, drain.drain.holes.diameter / 2)
        size = drawn[f"{drain.key}/pipe"][0] + drain.hole_count * hole
        drawn[f"{drain.key}/pipe"] = (size, 1e-6 * size)
    return drawn
