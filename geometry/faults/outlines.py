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
    for number, area in enumerate(design.areas):
        path = ("area", number, "corners")
        if pair := repeated_corners(area.corners):
            yield At(
                path,
                f"corners {pair[0]} and {pair[1]} are the same point; leave one out "
                "(the outline closes by itself)",
            )
        elif sides := crossing_sides(area.corners):
            yield At(
                path,
                f"sides {sides[0]} and {sides[1]} cross or touch; "
                "put the corners in order round the house",
            )
        elif abs(signed_area(area.corners)) < LEAST_AREA_M2:
            yield At(
                path,
                f"the corners enclose less than {words.area(LEAST_AREA_M2)}; "
                "check their units and order",
            )


def overlap_faults(design: Design, words: Words) -> Iterator[At]:
    """Yield areas that lie on each other."""
    shapes = [polygon(a.corners) for a in design.areas]
    for number, shape in enumerate(shapes):
        for other in range(number):
            shared = shape.intersection(shapes[other]).area
            if shared > 1e-3:
                name = design.areas[other].name
                yield At(
                    ("area", number, "corners"),
                    f'the outline lies over area "{name}" by {words.area(shared)}; '
                    "areas may share a side, not ground",
                )


def footing_faults(number: int, area: AreaLayout, words: Words) -> Iterator[At]:
    """Yield faults of one area's footing and wall."""
    path = ("area", number)
    width, thick = area.footing.width, area.wall.thickness
    if width < thick - 1e-9:
        yield At(
            (*path, "footing", "width"),
            f'the footing of area "{area.name}" is {words.size(width)} wide, narrower than its '
            f"wall of {words.size(thick)}; make it at least {words.least(thick)}",
        )
    elif min(area.projection_in, area.projection_out) < -1e-9:
        yield At(
            (*path, "footing", "offset"),
            f"shifted by {words.size(area.footing.offset)}, the footing no longer carries the "
            f"whole wall; shift it by at most {words.most((width - thick) / 2)}",
        )
    yield from _room_faults(number, area)
    cover, least = area.footing.bars.cover, min(width, area.footing.thickness)
    if area.footing.bars.count and 2 * cover >= least:
        yield At(
            (*path, "footing", "bars", "cover"),
            f"{words.size(cover)} of cover on both sides leaves no room for bars in this footing; "
            f"make the cover less than {words.most(least / 2)}, or set count = 0",
        )


def _room_faults(number: int, area: AreaLayout) -> Iterator[At]:
    path = ("area", number, "corners")
    if len(polygons(area.room)) != 1:
        yield At(path, "the walls meet across the outline and leave no single room; make it wider")
    elif len(polygons(area.core)) != 1:
        yield At(
            path,
            "the footings meet across the outline and leave no single floor between them; "
            "make the outline wider or the footings narrower",
        )


def sharing_faults(
    areas: tuple[AreaLayout, ...], numbers: dict[str, int], words: Words
) -> Iterator[At]:
    """Yield areas that touch at a point only, or all but touch: walls there would not join."""
    for place, area in enumerate(areas):
        for other in areas[:place]:
            path = ("area", numbers[area.name], "corners")
            touch = area.outline.intersection(other.outline)
            if not touch.is_empty and shapely.get_dimensions(touch) == 0:
                yield At(
                    path,
                    f'the outline touches area "{other.name}" at a corner only; '
                    "share a side or keep apart",
                )
            elif other.outline not in area.earlier and _under(area, other):
                apart = max(area.projection_out, other.projection_out)
                yield At(
                    path,
                    f'the footings run under area "{other.name}", which it all but touches; '
                    f"share a side or keep {words.least(apart)} apart",
                )


def _under(area: AreaLayout, other: AreaLayout) -> bool:
    """Whether either's footings run into the other's outline by more than rounding."""
    pairs = ((area.footing_outer, other.outline), (other.footing_outer, area.outline))
    return any(one.intersection(two).area > 1e-6 for one, two in pairs)
