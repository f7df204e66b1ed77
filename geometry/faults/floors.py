"""Faults of floors, materials and piers."""

from collections.abc import Iterator

import shapely

from geometry.faults.common import At, Words
from geometry.layout.areas import AreaLayout
from geometry.layout.floors import edge_prism
from geometry.layout.footings import column_prism, pad_prism, pier_name
from geometry.levels import interface_index
from geometry.parts.floor import LayerRole
from geometry.units import read_length

# Thinnest and thickest that each role is built; common practice, no source.
ROLE_SPAN: dict[LayerRole, tuple[str, str]] = {
    "slab": ("1 in", "24 in"),
    "insulation": ("1/4 in", "16 in"),
    "retarder": ("0.1 mm", "4 mm"),
    "blinding": ("1/8 in", "8 in"),
    "base": ("1 in", "6 ft"),
    "fill": ("1 in", "6 ft"),
}


def layer_faults(number: int, area: AreaLayout, words: Words) -> Iterator[At]:
    """Yield faults of the layers' thicknesses and names, and of ties that name nothing."""
    path = ("area", number, "floor") if area.area.floor else ("floor",)
    names: set[str] = set()
    for place, layer in enumerate(area.floor.layers):
        low, high = ROLE_SPAN[layer.role]
        if not read_length(low) <= layer.thickness <= read_length(high):
            yield At(
                (*path, "layer", place, "thickness"),
                f"{words.size(layer.thickness)} is out of range for a {layer.role} layer ({low} to {high}); "
                f"check the unit{_meant(layer.thickness, high)}",
            )
        if layer.name.lower() in names:
            yield At(
                (*path, "layer", place, "name"),
                f'two layers are named "{layer.name}"; give each its own name',
            )
        names.add(layer.name.lower())
    yield from _tie_faults(path, area)


def _meant(thickness: float, high: str) -> str:
    inches = thickness / 12
    if thickness > read_length(high) and inches >= read_length("1 in"):
        return f", did you mean {inches / read_length('1 in'):.3g} in?"
    return ""


def _tie_faults(path: tuple[str | int, ...], area: AreaLayout) -> Iterator[At]:
    names = [layer.name for layer in area.floor.layers]
    for place, tie in enumerate(area.floor.tie):
        where = (*path, "tie", place)
        try:
            interface_index(names, tie.interface)
        except KeyError:
            listed = ", ".join(f"{n.lower()} top" for n in names)
            yield At(
                where,
                f'"{tie.interface}" is no face of this floor; write one of subgrade, {listed}, or the same with bottom',
            )
        if tie.at.base not in {"TOF", "footing bottom"}:
            yield At(
                where,
                f'"{tie.at.base}" cannot place a floor; tie it to TOF, footing bottom or a level such as +6 in',
            )


def pier_faults(number: int, area: AreaLayout, words: Words) -> Iterator[At]:
    """Yield faults of one area's piers; its floor must be sound."""
    pads: list[tuple[str, shapely.Polygon]] = []
    for place, pier in enumerate(area.area.piers):
        path, name = ("area", number, "pier", place), pier_name(area, place)
        missing = [
            f for f in ("pad_top", "column_top") if _unknown_level(area, getattr(pier, f).base)
        ]
        for field in missing:
            known = ", ".join(area.level_names())
            yield At(
                (*path, field),
                f'"{getattr(pier, field).base}" is no level here; write one of {known}',
            )
        if missing:
            continue
        pad = pad_prism(area, pier)
        if not area.room.contains(shapely.Point(pier.at)):
            yield At(
                (*path, "at"),
                f'pier {name} stands outside the floor of area "{area.name}"; move it inside the walls',
            )
        elif not area.core.buffer(1e-6).contains(pad.region):
            yield At(
                (*path, "at"),
                f"the pad of pier {name} runs into the strip footing; move it inward or make the pad smaller",
            )
        yield from _column_faults(path, name, area, place, words)
        for other, region in pads:
            if region.intersection(pad.region).area > 1e-9:
                yield At(
                    (*path, "at"),
                    f"the pads of piers {other} and {name} overlap; move them apart or make one pad of both",
                )
        pads.append((name, pad.region))


def _column_faults(
    path: tuple[str | int, ...], name: str, area: AreaLayout, place: int, words: Words
) -> Iterator[At]:
    pier = area.area.piers[place]
    column = column_prism(area, pier)
    if column is None:
        return
    if column.top < column.bottom - 1e-9:
        yield At(
            (*path, "column_top"),
            f"the column of pier {name} would end at {words.level(column.top)}, below its pad's top at {words.level(column.bottom)}",
        )
    if not pad_prism(area, pier).region.buffer(1e-9).contains(column.region):
        yield At((*path, "column_size"), f"the column of pier {name} is wider than its pad")


def _unknown_level(area: AreaLayout, base: str) -> bool:
    return base not in area.level_names()


def edge_faults(number: int, area: AreaLayout, words: Words) -> Iterator[At]:
    """Yield faults of the edge board's levels."""
    board = area.floor.edge_board
    if board is None:
        return
    path = (("area", number, "floor") if area.area.floor else ("floor",)) + ("edge_board",)
    unknown = [f for f in ("bottom", "top") if _unknown_level(area, getattr(board, f).base)]
    for field in unknown:
        known = ", ".join(area.level_names())
        yield At(
            (*path, field), f'"{getattr(board, field).base}" is no level here; write one of {known}'
        )
    if unknown:
        return
    edge = edge_prism(area)
    if edge and edge.top <= edge.bottom:
        yield At(
            (*path, "top"),
            f"the edge board would end at {words.level(edge.top)}, not above its bottom",
        )
    elif edge and edge.bottom < area.tof - 1e-9:
        yield At(
            (*path, "bottom"),
            "the edge board stands on the wall's side of the floor and cannot reach below TOF",
        )
