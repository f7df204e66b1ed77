"""A part of the house in the terms of IFC: its class, its body, its figures; no file yet."""

from collections.abc import Mapping
from dataclasses import dataclass, field

import numpy as np

from geometry.label import Label
from geometry.layout.bodies import Bore, Point3, Prism
from geometry.solids.kernel import Mesh
from viz.export.ifc.kinds import Kind

# A defined type of IFC and the value in SI units.
Value = tuple[str, float | int | str]


@dataclass(frozen=True)
class Tube:
    """A straight round pipe between the centres of its ends, metres."""

    start: Point3
    end: Point3
    outer: float
    inner: float

    @property
    def length(self) -> float:
        """Length along the pipe, metres."""
        return float(np.linalg.norm(np.subtract(self.end, self.start)))


Shape = Prism | Tube | Mesh


@dataclass(frozen=True, eq=False)
class Part:
    """One element.

    key: its identity, the part id or a piece of one; the GUID follows from it. volume: in place,
    m3, what the report says. gross: before bores and drilled holes. floor: area of the floor whose
    layer it is. system: key of the drain it belongs to. sets: properties by set and name.
    """

    key: str
    name: str
    label: Label
    kind: Kind
    shapes: tuple[Shape, ...]
    volume: float
    gross: float
    bores: tuple[Bore, ...] = ()
    floor: str = ""
    system: str = ""
    sets: Mapping[str, Mapping[str, Value]] = field(default_factory=dict)

    @property
    def levels(self) -> tuple[float, float]:
        """Lowest and highest level against the project's top of footing, metres."""
        ends = [_levels(shape) for shape in self.shapes]
        return min(low for low, _ in ends), max(high for _, high in ends)


def _levels(shape: Shape) -> tuple[float, float]:
    if isinstance(shape, Prism):
        return shape.bottom, shape.top
    if isinstance(shape, Mesh):
        heights = shape.vertices[:, 2]
        return float(heights.min()), float(heights.max())
    ends = (shape.start[2], shape.end[2])
    run = float(np.hypot(*np.subtract(shape.end, shape.start)[:2]))
    reach = shape.outer * run / shape.length
    return min(ends) - reach, max(ends) + reach
