"""The part of a cut that is shown, on paper: faces cropped to the window, and scaled."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass

import numpy as np
import shapely
from numpy.typing import NDArray
from shapely import MultiPolygon, Polygon

from geometry.errors import BedcourseError
from geometry.label import Label
from geometry.sections.face import CutFace
from viz.drawing.marks import Point
from viz.drawing.page import Box
from viz.drawing.scale import Scale

# Undisturbed ground is drawn as a band of this width along the dig, mm on paper.
GROUND_BAND = 8.0
# Corners on paper lie on this grid, mm: far below what ink shows, and sound to cut and join.
GRID = 1e-6
Window = tuple[float, float, float, float]
Coordinates = NDArray[np.float64]


@dataclass(frozen=True)
class PaperFace:
    """A cut face on paper, mm, cropped to what is shown."""

    label: Label
    shape: MultiPolygon


@dataclass(frozen=True)
class View:
    """What is shown of a cut. extent: (s0, z0, s1, z1) metres. corner: paper point of (s0, z0)."""

    extent: Window
    corner: Point
    scale: Scale
    cropped: bool

    def at(self, along: float, level: float) -> Point:
        """Return the paper point of a distance along the cut and a level, metres."""
        per = self.scale.per_metre
        left, low = self.extent[0], self.extent[1]
        return (self.corner[0] + (along - left) * per, self.corner[1] + (level - low) * per)

    @property
    def box(self) -> Box:
        """The box of the view on paper."""
        return Box(*self.corner, *self.at(self.extent[2], self.extent[3]))

    def shows(self, along: float, level: float) -> bool:
        """Tell whether a place of the cut lies within the view."""
        left, low, right, high = self.extent
        return left <= along <= right and low <= level <= high

    def on_paper(self, face: CutFace) -> PaperFace:
        """Return a face cropped to the view and brought to paper."""
        crop = shapely.box(*self.extent)
        shown = shapely.intersection(face.shape, crop) if self.cropped else face.shape
        drawn = shapely.transform(shown, self._transform())
        return PaperFace(face.label, polygons(shapely.set_precision(drawn, GRID)))

    def seen(self, faces: Sequence[CutFace]) -> tuple[PaperFace, ...]:
        """Return on paper the faces of which the view shows anything."""
        return tuple(face for face in map(self.on_paper, faces) if not face.shape.is_empty)

    def _transform(self) -> Callable[[Coordinates], Coordinates]:
        start, corner = np.array(self.extent[:2]), np.array(self.corner)
        return lambda xy: (xy - start) * self.scale.per_metre + corner


def polygons(shape: shapely.Geometry) -> MultiPolygon:
    """Return the polygons of a geometry alone: touching leaves points and lines behind."""
    parts = shapely.get_parts(shape, return_index=False)
    flat = [p for part in parts for p in shapely.get_parts(part)]
    return MultiPolygon([p for p in flat if isinstance(p, Polygon) and not p.is_empty])


def extent_of(faces: Sequence[CutFace], window: Window | None) -> Window:
    """Return the part of the cut to show, metres. Raises BedcourseError if nothing is there."""
    shapes = shapely.GeometryCollection([face.shape for face in faces])
    if window is not None:
        if shapes.intersects(shapely.box(*checked(window))):
            return window
    elif not shapes.is_empty:
        left, low, right, high = shapes.bounds
        return (left, low, right, high)
    raise BedcourseError(
        "the section shows nothing; move the cut or the window onto the foundation"
    )


def checked(window: Window) -> Window:
    """Return a window as it is. Raises BedcourseError where its sides are the wrong way round."""
    if not (window[0] < window[2] and window[1] < window[3]):
        raise BedcourseError(
            "the window of a section needs its left below its right and its bottom below its top"
        )
    return window
