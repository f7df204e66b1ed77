"""A drawn section with the picture it was drawn of: its marks as shapes, its parts on paper."""

from dataclasses import dataclass
from functools import cached_property

import numpy as np
import shapely
from shapely import LineString, MultiPolygon, Polygon

from viz.drawing.figure import Figure
from viz.drawing.lettering import text_box
from viz.drawing.marks import Circle, Fill, Leader, Mark, Text
from viz.figures.section.setting import Picture
from viz.figures.section.view import GROUND_BAND


@dataclass(frozen=True, eq=False)
class Read:
    """A section figure with the picture it was drawn of, as shapes."""

    figure: Figure
    picture: Picture

    def of(self, kind: type, *layers: str) -> list[Mark]:
        """The marks of a kind, in these layers or in all."""
        found = [m for m in self.figure.marks if isinstance(m, kind)]
        return [m for m in found if not layers or m.layer in layers]

    @cached_property
    def per_metre(self) -> float:
        assert self.figure.scale is not None
        return 1000 / self.figure.scale.ratio

    @cached_property
    def texts(self) -> list[Text]:
        return self.of(Text)  # type: ignore[return-value]

    @cached_property
    def boxes(self) -> list[Polygon]:
        """The box of every text."""
        around = [text_box(t) for t in self.texts]
        return [shapely.box(b.left, b.low, b.right, b.high) for b in around]

    @cached_property
    def keys(self) -> list[Circle]:
        """The rings round key numbers."""
        return self.of(Circle, "labels")  # type: ignore[return-value]

    @cached_property
    def leaders(self) -> list[LineString]:
        return [LineString(m.points) for m in self.of(Leader)]  # type: ignore[attr-defined]

    @cached_property
    def fills(self) -> list[Fill]:
        return self.of(Fill, "cut")  # type: ignore[return-value]

    def at(self, along: float, level: float) -> tuple[float, float]:
        """Where a place of the cut must stand on paper: its shown part begins at (0, 0)."""
        left, low, band = self._corner
        return (along - left) * self.per_metre + band, (level - low) * self.per_metre + band

    @cached_property
    def _corner(self) -> tuple[float, float, float]:
        if self.picture.window:
            return self.picture.window[0], self.picture.window[1], 0.0
        left, low, _, _ = shapely.total_bounds([f.shape for f in self.picture.faces])
        return float(left), float(low), GROUND_BAND

    def cropped(self, shape: MultiPolygon) -> list[Polygon]:
        """The pieces of a shape of the job that are shown, in their place on paper."""
        window = self.picture.window
        shown = shapely.intersection(shape, shapely.box(*window)) if window else shape
        start, end = np.array(self.at(0.0, 0.0)), self.per_metre
        placed = shapely.transform(shown, lambda xy: xy * end + start)
        parts = [p for part in shapely.get_parts(placed) for p in shapely.get_parts(part)]
        return [p for p in parts if isinstance(p, Polygon) and p.area > 0]

    @cached_property
    def wordings(self) -> dict[str, list[Polygon]]:
        """What each wording names, on paper."""
        found: dict[str, list[Polygon]] = {}
        for face in self.picture.faces:
            wording = self.picture.words.get(face.label.part, "").strip()
            pieces = self.cropped(face.shape) if wording else []
            if pieces:
                found.setdefault(wording, []).extend(pieces)
        return found
