"""Quantities of a part: the standard's own sets where they fit, and its volume in place."""

from collections.abc import Callable, Mapping

import numpy as np
import shapely

from geometry.layout.bodies import Prism
from geometry.plan.outline import polygons
from viz.export.ifc.part import Part, Tube

# A quantity of IFC and its value in SI units, by the quantity's name.
Figures = dict[str, tuple[str, float]]
IN_PLACE = "Bedcourse_InPlace"


def quantities(part: Part) -> dict[str, Figures]:
    """Return the quantities of a part by set and name; volumes are in place, nothing is added."""
    found = {IN_PLACE: _volumes(part)}
    if part.kind.ifc in _STANDARD:
        name, figures = _STANDARD[part.kind.ifc]
        if own := figures(part):
            found[name] = own
    return found


def _volumes(part: Part) -> Figures:
    return {"GrossVolume": _volume(part.gross), "NetVolume": _volume(part.volume)}


def _slab(part: Part) -> Figures:
    width, plan = _flat(part)
    return {"Width": _length(width), "Perimeter": _length(plan.length), **_areas(plan)} | (
        _volumes(part)
    )


def _covering(part: Part) -> Figures:
    """Only what lies flat: a board on edge and a wrap have no thickness upward."""
    if part.label.role not in ("insulation", "retarder"):
        return {}
    width, plan = _flat(part)
    return {"Width": _length(width), **_areas(plan)}


def _footing(part: Part) -> Figures:
    if part.label.role != "pad":
        return _volumes(part)
    height, plan = _flat(part)
    left, low, right, high = plan.bounds
    return {
        "Length": _length(right - left), "Width": _length(high - low), "Height": _length(height),
        **_volumes(part),
    }  # fmt: skip


def _wall(part: Part) -> Figures:
    height, plan = _flat(part)
    foot = {f"{name}FootprintArea": _area(plan.area) for name in ("Gross", "Net")}
    return {"Height": _length(height), **foot, **_volumes(part)}


def _column(part: Part) -> Figures:
    height, plan = _flat(part)
    return {"Length": _length(height), "CrossSectionArea": _area(plan.area), **_volumes(part)}


def _segment(part: Part) -> Figures:
    tubes = [shape for shape in part.shapes if isinstance(shape, Tube)]
    if not tubes:
        return {}
    surface = sum(2 * np.pi * tube.outer * tube.length for tube in tubes)
    length = sum(tube.length for tube in tubes)
    return {"Length": _length(length), "OuterSurfaceArea": _area(float(surface))}


_STANDARD: Mapping[str, tuple[str, Callable[[Part], Figures]]] = {
    "IfcSlab": ("Qto_SlabBaseQuantities", _slab),
    "IfcCovering": ("Qto_CoveringBaseQuantities", _covering),
    "IfcFooting": ("Qto_FootingBaseQuantities", _footing),
    "IfcWall": ("Qto_WallBaseQuantities", _wall),
    "IfcColumn": ("Qto_ColumnBaseQuantities", _column),
    "IfcPipeSegment": ("Qto_PipeSegmentBaseQuantities", _segment),
    "IfcDistributionChamberElement": ("Qto_DistributionChamberElementBaseQuantities", _volumes),
}


def _flat(part: Part) -> tuple[float, shapely.Geometry]:
    """Return how tall a part of prisms is, and its plan."""
    low, high = part.levels
    regions = [shape.region for shape in part.shapes if isinstance(shape, Prism)]
    return high - low, shapely.union_all(regions)


def _areas(plan: shapely.Geometry) -> Figures:
    """Return the plan's area, with what stands in it (piers, pit) and without."""
    whole = sum(shapely.Polygon(p.exterior).area for p in polygons(plan))
    return {"GrossArea": _area(whole), "NetArea": _area(plan.area)}


def _length(metres: float) -> tuple[str, float]:
    return "Length", metres


def _area(square_metres: float) -> tuple[str, float]:
    return "Area", square_metres


def _volume(cubic_metres: float) -> tuple[str, float]:
    return "Volume", cubic_metres
