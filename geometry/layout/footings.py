"""Strip footings as one body, stepped where areas step; walls; pads and columns."""

from collections.abc import Iterator, Sequence

from shapely.geometry.base import BaseGeometry

from geometry.label import STAGE, Label
from geometry.layout.areas import AreaLayout
from geometry.layout.bodies import SAME_LEVEL_M, TOUCHING_M2, Body, Prism, merged
from geometry.parts.pier import Pier
from geometry.plan.outline import circle, minus, rectangle

COLUMN_SIDES = 48


def footing_body(areas: Sequence[AreaLayout]) -> Body:
    """Return all strip footings as one body.

    Where an upper strip runs over a lower one, concrete fills down to it: the step. Over several
    it stands on the highest, which stands on the others itself.
    """
    prisms: list[Prism] = []
    for number, area in enumerate(areas):
        rest: BaseGeometry = area.footings
        for place in reversed(range(number)):
            lower = areas[place]
            over = rest.intersection(lower.footings)
            if over.area > TOUCHING_M2:
                if area.tof > lower.tof + SAME_LEVEL_M:
                    prisms.append(Prism(over, lower.tof, area.tof))
                prisms += _under(over, area, lower, areas[:place])
                rest = minus(rest, [lower.footings])
        prisms.append(Prism(rest, area.footing_bottom, area.tof))
    label = Label(
        "footing", "Strip footing", "footing", areas[0].footing.material, "", STAGE["footing"]
    )
    return Body(label, merged(prisms))


def _under(
    region: BaseGeometry, area: AreaLayout, lower: AreaLayout, earlier: Sequence[AreaLayout]
) -> Iterator[Prism]:
    """Yield what an area's strip adds below a lower area's, in a region that both cover.

    Where that one stands on an earlier one, concrete goes down to the bottom of the deepest.
    """
    rest, bottom = region, area.footing_bottom
    deeper = [one for one in earlier if one.footing_bottom < lower.footing_bottom - SAME_LEVEL_M]
    for one in (*sorted(deeper, key=lambda a: a.footing_bottom), lower):
        over = rest if one is lower else rest.intersection(one.footings)
        if over.area > TOUCHING_M2:
            if bottom < one.footing_bottom - SAME_LEVEL_M:
                yield Prism(over, bottom, one.footing_bottom)
            rest = minus(rest, [one.footings])


def wall_body(area: AreaLayout) -> Body:
    """Return an area's foundation wall."""
    label = Label(
        f"{area.name}/wall",
        f"Foundation wall, {area.wall.kind}",
        "wall",
        area.wall.material,
        area.name,
        STAGE["wall"],
    )
    return Body(label, (Prism(area.walls, area.tof, area.wall_top),))


def pad_prism(area: AreaLayout, pier: Pier) -> Prism:
    """Return a pier's pad."""
    top = area.level(pier.pad_top)
    return Prism(rectangle(pier.at, pier.width, pier.pad_depth), top - pier.thickness, top)


def column_prism(area: AreaLayout, pier: Pier) -> Prism | None:
    """Return a pier's column on its pad, if it has one."""
    if pier.column == "none":
        return None
    size = pier.column_size
    round_one = circle(pier.at, size / 2, COLUMN_SIDES)
    region = round_one if pier.column == "round" else rectangle(pier.at, size, size)
    return Prism(region, area.level(pier.pad_top), area.level(pier.column_top))


def pier_name(area: AreaLayout, number: int) -> str:
    """Return a pier's name: its own, or P1, P2, ..."""
    return area.area.piers[number].name or f"P{number + 1}"


def pier_bodies(area: AreaLayout) -> list[Body]:
    """Return an area's pads and columns."""
    bodies = []
    for number, pier in enumerate(area.area.piers):
        name = pier_name(area, number)
        part = f"{area.name}/pier {name}"
        label = Label(
            f"{part} pad", f"Pier pad {name}", "pad", pier.material, area.name, STAGE["pad"]
        )
        bodies.append(Body(label, (pad_prism(area, pier),)))
        column = column_prism(area, pier)
        if column and column.top > column.bottom + SAME_LEVEL_M:
            label = Label(
                f"{part} column",
                f"Pier column {name}",
                "column",
                pier.material,
                area.name,
                STAGE["column"],
            )
            bodies.append(Body(label, (column,)))
    return bodies
