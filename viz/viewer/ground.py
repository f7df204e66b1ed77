"""The undisturbed ground around the hole, as a body that is shown where it is cut."""

import shapely

from geometry.label import Label
from geometry.layout.lay import Layout
from geometry.solids.carving import carved
from geometry.solids.foundation import Foundation
from geometry.solids.kernel import Mesh, raised
from geometry.solids.solid import Solid

PART = "ground/undisturbed"
# How much of it is drawn beside and below the hole, metres: enough to read, not to hide the work.
BESIDE_M = 0.9
BELOW_M = 0.5


def undisturbed(layout: Layout, foundation: Foundation) -> Solid | None:
    """Return the ground beside and below the hole, up to its level before the dig."""
    hole = foundation.excavation
    if not len(hole.faces):
        return None
    low, high = hole.vertices.min(axis=0), hole.vertices.max(axis=0)
    block = shapely.box(*(low[:2] - BESIDE_M), *(high[:2] + BESIDE_M))
    whole = raised(block, float(low[2]) - BELOW_M, layout.ground.existing)
    left = carved(whole, [Mesh(hole.vertices, hole.faces)])
    label = Label(PART, "Undisturbed ground", "excavation", hole.label.material, "", 0)
    return Solid(label, left.vertices, left.faces) if len(left.faces) else None
