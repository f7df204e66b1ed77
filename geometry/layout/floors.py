"""The floor's layers as bodies: split at the top of footing, opened for piers and pit."""

from collections.abc import Sequence

from geometry.label import FIRST_LAYER, STAGE, Label
from geometry.layout.areas import AreaLayout
from geometry.layout.bodies import Body, Prism, layered, merged
from geometry.layout.footings import column_prism, pad_prism
from geometry.plan.outline import offset


def openings(area: AreaLayout) -> list[Prism]:
    """Return what an area's piers take out of its floor."""
    taken: list[Prism] = []
    for pier in area.area.piers:
        column = column_prism(area, pier)
        taken += [pad_prism(area, pier), *([column] if column else [])]
    return taken


def edge_prism(area: AreaLayout) -> Prism | None:
    """Return the board standing along the wall, if the floor has one."""
    board = area.floor.edge_board
    if board is None:
        return None
    region = area.room.difference(offset(area.room, -board.thickness))
    return Prism(region, area.level(board.bottom), area.level(board.top))


def floor_bodies(area: AreaLayout, taken: Sequence[Prism]) -> list[Body]:
    """Return the layers, and the edge board; `taken` are all openings in this floor."""
    edge = edge_prism(area)
    cuts = [*taken, *([edge] if edge else [])]
    bodies = []
    levels = area.stack.levels
    for number, layer in enumerate(area.floor.layers):
        prisms = layered(levels[number], levels[number + 1], area.core, area.room, area.tof, cuts)
        label = Label(
            f"{area.name}/{layer.name}",
            layer.name.capitalize(),
            layer.role,
            layer.material,
            area.name,
            FIRST_LAYER + number,
        )
        bodies.append(Body(label, prisms))
    return [*bodies, *_edge_body(area, edge, taken)]


def _edge_body(area: AreaLayout, edge: Prism | None, taken: Sequence[Prism]) -> list[Body]:
    board = area.floor.edge_board
    if edge is None or board is None:
        return []
    stage = STAGE["edge board"] + len(area.floor.layers) - 1
    part = f"{area.name}/edge board"
    label = Label(part, "Edge board", "edge board", board.material, area.name, stage)
    low = edge.region.intersection(area.core)
    return [Body(label, layered(edge.bottom, edge.top, low, edge.region, area.tof, taken))]


def fill_body(area: AreaLayout, ground: float, taken: Sequence[Prism]) -> Body | None:
    """Return the fill under a floor that lies above the ground, if any; `taken` stands in it."""
    if area.subgrade <= ground + 1e-9:
        return None
    prisms = merged(layered(ground, area.subgrade, area.core, area.room, area.tof, taken))
    label = Label(
        f"{area.name}/fill", "Fill under the floor", "fill", "stone-57", area.name, STAGE["fill"]
    )
    return Body(label, prisms)
