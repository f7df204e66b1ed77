"""Hatches on the faces of a square cut, so that materials can be told in black and white."""

from collections.abc import Iterable

import numpy as np
import shapely
from PIL import Image, ImageDraw
from shapely import MultiPolygon, Polygon

from geometry.label import Label
from viz.drawing.hatches import hatch_strokes
from viz.drawing.marks import Hatch
from viz.style.materials import look_of

SHEET_MM = 190.0  # the width of paper a picture is taken for, which sets the size of a hatch


def hatched(
    image: Image.Image,
    faces: Iterable[tuple[Label, MultiPolygon]],
    window: Polygon,
    sheet: float = SHEET_MM,
) -> Image.Image:
    """The picture with hatches on the faces inside the window; shapes in its pixels, y down.

    sheet: the width of paper the picture stands for, mm.
    """
    pen = ImageDraw.Draw(image)
    per_mm = image.size[0] / sheet
    for label, shape in faces:
        look = look_of(label)
        area = _areas(shapely.transform(shapely.intersection(shape, window), lambda p: p / per_mm))
        if area.is_empty:
            continue
        for strokes in hatch_strokes(Hatch(area, look.hatch, look.ink)):
            wide = max(1, round(strokes.weight * per_mm))
            for line in strokes.lines:
                pen.line(np.multiply(line, per_mm).ravel().tolist(), look.ink, wide)
    return image


def _areas(shape: shapely.Geometry) -> MultiPolygon:
    parts = shapely.get_parts(shape)
    return MultiPolygon([part for part in parts if isinstance(part, Polygon)])
