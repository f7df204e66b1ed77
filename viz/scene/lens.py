"""A magnified look at the corner of wall, footing and drain, set into a cutaway's free corner."""

from collections.abc import Sequence
from dataclasses import replace

import numpy as np
import shapely
from PIL import Image, ImageDraw

from geometry.solids.solid import Solid
from viz.scene import square
from viz.scene.anchors import SEEN, eroded
from viz.scene.bodies import HIDING, Cap, Composition
from viz.scene.camera import Array, Camera, Margins, aimed, framed
from viz.scene.composition import composed
from viz.scene.cutting import placed
from viz.scene.free import Box, Free
from viz.scene.paint import painted
from viz.scene.painting import FINER, Painting
from viz.scene.palette import INK, PAPER
from viz.scene.view import View, Window

BESIDE, ABOVE, FLOOR = 0.15, 0.35, 0.45  # metres shown around the footing, and of the floor
AROUND = 0.4  # metres shown around a pit
PIT = frozenset({"basin", "pit stone"})
NEAR = 1.0  # metres from a footing to the drain that belongs to it
THIN = 5  # a cut face that is gone when its rim is taken off so often is named in the lens


def with_lens(
    painting: Painting,
    scene: Composition,
    camera: Camera,
    solids: Sequence[Solid],
    view: View,
    margins: Margins,
) -> Painting:
    """The cutaway with a lens in a free corner, or as it was where there is no footing or room."""
    spot = Free(camera.size, margins).largest(painting.parts >= 0)
    window = _window(scene, view)
    if spot is None or window is None or scene.line is None:
        return painting
    square_on = replace(view, kind="face the cut", window=window)
    closer, corners = _closer(solids, square_on, spot, camera.size[0])
    marked = camera.pixels(placed(corners, scene.line))
    return _joined(painting, closer, spot, marked)


def _closer(solids: Sequence[Solid], view: View, spot: Box, wide: int) -> tuple[Painting, Array]:
    """The square look at the window, as large as the lens, and the window's corners in the cut."""
    scene = composed(solids, view)
    size, none = (spot[2] - spot[0], spot[3] - spot[1]), Margins(0, 0, 0, 0)
    axes = aimed(scene.ahead, 0.0, 0.0)
    points = square.window(scene, axes, size, none)
    camera = framed(axes, points, size, none)
    start = np.zeros(2) if scene.line is None else np.array(scene.line.start)
    across = (points[:, :2] - start) @ axes[0][:2]
    (left, right), (low, high) = sorted(across), sorted(points[:, 2])
    corners = np.array([[left, low], [right, low], [right, high], [left, high]])
    painting = painted(scene, camera, True)
    return square.finished(painting, scene, camera, points, size[0] / wide), corners


def _window(scene: Composition, view: View) -> Window | None:
    """Around a footing of the cut, its drain, and some of the wall and of the floor; or the pit.

    Unless the view is for other parts it is the first, because its floor lies to the right, where
    the floor's layers are named.
    """
    footings = _pieces(scene.caps, "footing")
    if not footings or scene.line is None or view.cut is None:
        return None
    shift = float(np.hypot(*np.subtract(view.cut.start, scene.line.start)))
    asked = [cap for cap in scene.caps if cap.label.part in view.focus]
    pit = [cap.shape for cap in asked if cap.label.role in PIT]
    if pit:
        left, low, right, high = shapely.union_all(pit).bounds
        return Window(left - AROUND - shift, right + AROUND - shift, low - BESIDE, high + BESIDE)
    footing = _nearest(footings, [cap.shape for cap in asked])
    drains = [p for p in _pieces(scene.caps, "drain stone") if p.distance(footing) < NEAR]
    left, low, right, high = shapely.union_all([footing, *drains]).bounds
    # A floor may lie high above its footing; fill and soil are as tall as the wall.
    high = max(high, *(cap.shape.bounds[3] for cap in asked if cap.label.role not in HIDING), high)
    before, after = (BESIDE, FLOOR) if _floor_after(footing, scene.caps) else (FLOOR, BESIDE)
    return Window(left - before - shift, right + after - shift, low - BESIDE, high + ABOVE)


def _nearest(
    footings: Sequence[shapely.Polygon], asked: Sequence[shapely.Geometry]
) -> shapely.Polygon:
    """The footing next to what is asked for; of several, the first along the cut."""
    there = shapely.union_all(asked) if asked else None
    apart = [round(f.distance(there), 1) if there else 0.0 for f in footings]
    near = [f for f, away in zip(footings, apart, strict=True) if away == min(apart)]
    return min(near, key=lambda piece: piece.bounds[0])


def _floor_after(footing: shapely.Polygon, caps: Sequence[Cap]) -> bool:
    """Whether the floor lies farther along the cut than the footing."""
    slabs = _pieces(caps, "slab")
    near = min(slabs, key=footing.distance, default=None)
    return near is None or near.centroid.x >= footing.centroid.x


def _pieces(caps: Sequence[Cap], role: str) -> list[shapely.Polygon]:
    return [p for cap in caps if cap.label.role == role for p in cap.shape.geoms]


def _joined(painting: Painting, closer: Painting, spot: Box, marked: Array) -> Painting:
    """Both in one picture; parts too thin to be told in the cutaway are seen in the lens only."""
    left, top, right, bottom = spot
    image = Image.fromarray(painting.pixels)
    _mark(ImageDraw.Draw(image), marked * FINER, np.array(spot).reshape(2, 2) * FINER)
    image.paste(Image.fromarray(closer.pixels), (left * FINER, top * FINER))
    parts, cut = painting.parts.copy(), painting.cut.copy()
    inside = np.s_[top:bottom, left:right]
    for number, name in enumerate(painting.names):
        there = closer.names.index(name) if name in closer.names else -1
        shown = closer.cut & (closer.parts == there)
        if there >= 0 and shown.sum() >= SEEN and _thin(painting, number):
            parts[parts == number] = -1
            parts[inside][shown] = number
            cut[inside][shown] = True
    return replace(painting, pixels=np.asarray(image), parts=parts, cut=cut)


def _thin(painting: Painting, number: int) -> bool:
    """Whether a part's face in the cut is too thin to point at; one that is not cut is not."""
    face = painting.cut & (painting.parts == number)
    if not face.any():
        return True
    rows, columns = np.nonzero(face)
    near = face[rows.min() : rows.max() + 1, columns.min() : columns.max() + 1]
    return bool(np.array_equal(eroded(near, THIN), eroded(near, THIN - 1)))


def _mark(pen: ImageDraw.ImageDraw, marked: Array, lens: Array) -> None:
    """A frame around what the lens shows, and a line from it to the lens."""
    middle = marked.mean(axis=0)
    nearest = np.clip(middle, lens[0], lens[1])
    start = marked[np.hypot(*(marked - nearest).T).argmin()]
    for tone, wide in ((PAPER, 4), (INK, 2)):
        pen.line([*map(tuple, marked), tuple(marked[0])], fill=tone, width=wide * FINER)
        pen.line([tuple(start), tuple(nearest)], fill=tone, width=wide * FINER)
