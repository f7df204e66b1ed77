"""What is special about a square look at the cut: its window, its frame and its hatches."""

from dataclasses import replace

import numpy as np
import shapely
from PIL import Image, ImageDraw

from viz.scene.bodies import HOLE, Composition
from viz.scene.camera import Array, Axes, Camera, Margins, grown
from viz.scene.cutting import placed
from viz.scene.hatching import SHEET_MM, hatched
from viz.scene.painting import FINER, Painting
from viz.scene.palette import INK, PAPER
from viz.scene.view import Size


def window(scene: Composition, axes: Axes, size: Size, margins: Margins) -> Array:
    """Two opposite corners of the window, grown to fill the picture where there is more to see."""
    aspect = (size[0] - margins.left - margins.right) / (size[1] - margins.top - margins.bottom)
    across = np.array(axes)
    asked = scene.frame @ across.T
    parts = [cap.vertices for cap in scene.caps if cap.label.role != HOLE]
    there = np.vstack([asked, np.vstack(parts) @ across.T])
    box = grown(_box(asked[:, :2]), _box(there[:, :2]), aspect)
    return np.asarray(np.column_stack([box, np.full(2, asked[0, 2])]) @ across)


def finished(
    painting: Painting, scene: Composition, camera: Camera, corners: Array, share: float = 1.0
) -> Painting:
    """Hatched, and only what lies in the window, in a thin frame.

    corners: (2, 3), metres. share: how wide this is in the whole picture, which sizes hatches.
    """
    edges = np.round(_box(camera.pixels(corners))).astype(int)
    (left, top), (right, bottom) = edges.tolist()
    parts, inside = np.full_like(painting.parts, -1), np.s_[top:bottom, left:right]
    parts[inside] = painting.parts[inside]
    box = tuple((FINER * edges).ravel().tolist())
    within, sheet = shapely.box(*box), SHEET_MM * share
    image = _with_hatches(Image.fromarray(painting.pixels), scene, camera, within, sheet)
    framed = Image.new("RGB", image.size, PAPER)
    framed.paste(image.crop(box), box)
    ImageDraw.Draw(framed).rectangle(box, outline=INK, width=FINER)
    return replace(painting, pixels=np.asarray(framed), parts=parts)


def _with_hatches(
    image: Image.Image, scene: Composition, camera: Camera, within: shapely.Polygon, sheet: float
) -> Image.Image:
    line = scene.line
    if line is None:
        return image

    def fine(flat: Array) -> Array:
        return camera.pixels(placed(flat, line)) * FINER

    solid = [cap for cap in scene.caps if not cap.ghost]
    faces = [(cap.label, shapely.transform(cap.shape, fine)) for cap in solid]
    return hatched(image, faces, within, sheet)


def _box(flat: Array) -> Array:
    return np.array([flat.min(axis=0), flat.max(axis=0)])
