"""Stills: bodies composed, painted and lettered. Runs in the drawing process only."""

from collections.abc import Sequence
from io import BytesIO
from itertools import product

import numpy as np
from PIL import Image

from geometry.solids.solid import Solid
from viz.scene import square
from viz.scene.bodies import Composition
from viz.scene.callouts import Side
from viz.scene.camera import Axes, Margins, aimed, framed
from viz.scene.composition import composed
from viz.scene.legend import legend_of, lettered
from viz.scene.lens import with_lens
from viz.scene.paint import painted
from viz.scene.painting import FINER
from viz.scene.view import Size, View

# Degrees the viewer may walk and look down to fill the picture better, about a house and about a
# piece of it: added to what is asked.
WALKS = (0.0, -10.0, -20.0, -30.0, -40.0)
LOOKS = (0.0, 6.0, 12.0, 18.0, 24.0)
BETTER = 1.1  # how much more of the paper must be filled to leave the usual view


def _stand(scene: Composition, view: View, size: Size, margins: Margins) -> tuple[float, float]:
    """Turn and tilt of the viewer: as asked, or where the scene fills most of the picture."""
    cutting = view.kind == "cutaway"
    if not view.fitted or (cutting and size[0] >= size[1]):
        return view.turn, view.tilt
    # A cut seen from far aside is a slit.
    walks = (0.0,) if view.kind == "as given" else WALKS[:2] if cutting else WALKS
    best, fullest = (view.turn, view.tilt), 0.0
    for walk, look in product(walks, LOOKS):
        turn, tilt = view.turn + walk, view.tilt + look
        filled = _filled(scene, aimed(scene.ahead, turn, tilt), size, margins)
        if filled > fullest * BETTER:
            best, fullest = (turn, tilt), filled
    return best


def _filled(scene: Composition, axes: Axes, size: Size, margins: Margins) -> float:
    """How many pixels the box round the scene takes."""
    camera = framed(axes, scene.frame, size, margins)
    return float(np.prod(np.ptp(camera.pixels(scene.frame), axis=0)))


def picture(solids: Sequence[Solid], view: View, size: Size) -> bytes:
    """The still as a PNG."""
    scene = composed(solids, view)
    flat = view.kind == "face the cut"
    legend = legend_of(view, scene, (size[0] * FINER, size[1] * FINER))
    closer = view.kind == "cutaway" and bool(legend.texts)
    margins = legend.margins.divided(FINER)
    turn, tilt = (0.0, 0.0) if flat else _stand(scene, view, size, margins)
    axes = aimed(scene.ahead, turn, tilt)
    points = square.window(scene, axes, size, margins) if flat else scene.frame
    camera = framed(axes, points, size, margins, 0.0 if closer else 0.5)
    painting = painted(scene, camera, flat)
    if flat:
        painting = square.finished(painting, scene, camera, points)
    if closer:
        painting = with_lens(painting, scene, camera, solids, view, margins)
    rising: Side = "right" if view.turn < 0 else "left"
    image = Image.fromarray(painting.pixels)
    image = lettered(image, legend, painting, scene, camera, rising)
    out = BytesIO()
    image.resize(size, Image.Resampling.LANCZOS).save(out, "PNG")
    return out.getvalue()
