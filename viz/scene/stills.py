"""Stills: bodies composed, painted and lettered. Runs in the drawing process only."""

from collections.abc import Sequence
from io import BytesIO

from PIL import Image

from geometry.solids.solid import Solid
from viz.scene import square
from viz.scene.callouts import Side
from viz.scene.camera import aimed, framed
from viz.scene.composition import composed
from viz.scene.legend import legend_of, lettered
from viz.scene.lens import with_lens
from viz.scene.paint import painted
from viz.scene.painting import FINER
from viz.scene.view import Size, View


def picture(solids: Sequence[Solid], view: View, size: Size) -> bytes:
    """The still as a PNG."""
    scene = composed(solids, view)
    flat = view.kind == "face the cut"
    legend = legend_of(view, scene, (size[0] * FINER, size[1] * FINER))
    closer = view.kind == "cutaway" and bool(legend.texts)
    margins = legend.margins.divided(FINER)
    axes = aimed(scene.ahead, *((0.0, 0.0) if flat else (view.turn, view.tilt)))
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
