"""What stands in a picture, by its kind."""

from collections.abc import Sequence

import numpy as np

from geometry.errors import BedcourseError
from geometry.solids.solid import Solid
from viz.scene.bodies import HIDING, HOLE, Composition, lifted
from viz.scene.cutting import bodies_of, cut_through
from viz.scene.view import View


def composed(solids: Sequence[Solid], view: View) -> Composition:
    """The picture's bodies and cut faces for a view."""
    cutting = view.kind in ("cutaway", "face the cut")
    bare = cutting or view.kind == "as given"
    hidden = view.without | (frozenset() if bare else HIDING | {HOLE})
    shown = [solid for solid in solids if solid.label.role not in hidden]
    if not shown:
        raise BedcourseError("There is nothing to draw: every part is left out of this view.")
    if cutting:
        return cut_through(shown, view)
    bodies = bodies_of(shown, view)
    if view.kind == "exploded":
        bodies = lifted(bodies)
    everything = np.vstack([body.vertices for body in bodies])
    return Composition(bodies, (), None, (0.0, 1.0), everything, lamp=_lamp(view))


def _lamp(view: View) -> float:
    """The light comes from where the viewer has not walked to; from the house's side it hides."""
    return 1.0 if view.turn > 0 else -1.0
