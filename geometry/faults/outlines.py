"""Faults of outlines, footings and walls."""

from collections.abc import Iterator

import shapely

from geometry.faults.common import At, Words
from geometry.layout.areas import AreaLayout
from geometry.plan.outline import crossing_sides, polygon, polygons, repeated_corners, signed_area
from geometry.project import Design

LEAST_AREA_M2 = 1.0


def outline_faults(design: Design, words: Words) -> Iterator[At]:
    """Yield faults of the corners themselves; what comes after needs sound outlines."""
    names: set[str] = set()
    for number, area in enumerate(design.areas):
        if area.name in names:
            yield At(
                ("area", number, "name"),
                f'two areas are named "{area.name}"; give each its own name',
            )
        names.add(area.name)
        path = ("area", number, "corners")
        if pair := repeated_corners(area.corners):
            yield At(path, f"corners {pair[0]} and {pair[1]} are the same point; leave one out")
        elif sides := crossing_sides(area.corners):
            yield At(
                path,
                f"sides {sides[0]} and {sides[1]} cross or touch; put the corners in order round the house",
            )
        elif abs(signed_area(area.corners)) < LEAST_AREA_M2:
            yield At(
                path, "the corners enclose less than 1 m² (11 ft²); check their units and order"
            )


def overlap_faults(design: Design) -> Iterator[At]:
    """Yield areas that lie on each other."""
    shapes = [polygon(a.corners) for a in design.areas]
    for number, shape in enumerate(shapes):
        for other in range(number):
            shared = shape.intersection(shapes[other]).area
            if shared > 1e-3:
                name = design.areas[other].name
                yield At(
                    ("area", number, "corners"),
                    f'the outline lies over area "{name}" by {shared:.2f} m²; areas may share a side, not ground',
                )


def footing_faults(number: int, area: AreaLayout, words: Words) -> Iterator[At]:
    """Yield faults of one area's footing and wall."""
    path = ("area", number)
    width, thick = area.footing.width, area.wall.thickness
    if width < thick:
        yield At(
            (*path, "footing", "width"),
            f"the footing is {words.size(width)} wide, narrower than its wall of {words.size(thick)}; "
            f"make it at least {words.size(thick)}",
        )
    elif min(area.projection_in, area.projection_out) < -1e-9:
        yield At(
            (*path, "footing", "offset"),
            f"shifted by {words.size(area.footing.offset)} the footing no longer carries the whole wall; "
            f"shift it by at most {words.size((width - thick) / 2)}",
        )
    if len(polygons(area.room)) != 1:
        yield At(
            (*path, "corners"),
            "the walls meet across the outline and leave no single room; make it wider",
        )
    elif len(polygons(area.core)) != 1:
        yield At(
            (*path, "corners"),
            "the footings meet across the outline and leave no single floor between them; "
            "make the outline wider or the footings narrower",
        )
    cover = area.footing.bars.cover
    if area.footing.bars.count and 2 * cover >= min(width, area.footing.thickness):
        yield At(
            (*path, "footing", "bars", "cover"),
            f"{words.size(cover)} cover leaves no room for bars in this footing",
        )


def sharing_faults(areas: tuple[AreaLayout, ...], numbers: dict[str, int]) -> Iterator[At]:
    """Yield areas that touch at a point only: walls there would not join."""
    for place, area in enumerate(areas):
        for other in areas[:place]:
            touch = area.outline.intersection(other.outline)
            line = touch.length if not touch.is_empty else None
            if line is not None and shapely.get_dimensions(touch) == 0:
                yield At(
                    ("area", numbers[area.name], "corners"),
                    f'the outline touches area "{other.name}" at a corner only; share a side or keep apart',
                )
