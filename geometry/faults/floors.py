"""Faults of floors: layers, ties, the edge board."""

from collections.abc import Iterator

from geometry.faults.common import At, Words
from geometry.faults.lines import Path
from geometry.layout.areas import AreaLayout
from geometry.layout.floors import edge_prism
from geometry.levels import interface_index
from geometry.parts.fields import LevelAt
from geometry.parts.floor import Floor, LayerRole
from geometry.units import FOOT, read_length

# Thinnest and thickest that each role is built; common practice, no source.
ROLE_SPAN: dict[LayerRole, tuple[str, str]] = {
    "slab": ("1 in", "24 in"),
    "insulation": ("1/4 in", "16 in"),
    "retarder": ("0.1 mm", "4 mm"),
    "blinding": ("1/8 in", "8 in"),
    "base": ("1 in", "6 ft"),
    "fill": ("1 in", "6 ft"),
}
# No level of a house lies farther from the one it is said by.
FARTHEST = "50 ft"


def layer_faults(path: Path, floor: Floor, words: Words) -> Iterator[At]:
    """Yield faults of the layers' thicknesses, and of ties that name nothing."""
    for place, layer in enumerate(floor.layers):
        low, high = ROLE_SPAN[layer.role]
        if not read_length(low) <= layer.thickness <= read_length(high):
            yield At(
                (*path, "layer", place, "thickness"),
                f"{words.thickness(layer.thickness)} is out of range for a layer with the role "
                f"{layer.role}; give {words.span(low, high)}{_meant(layer.thickness, high)}",
            )
    yield from _tie_faults(path, floor, words)
    tubing = floor.tubing
    if tubing and tubing.longest <= 2 * tubing.way:
        yield At(
            (*path, "tubing", "way"),
            f"{words.size(tubing.way)} to the manifold and back leave nothing of a loop of "
            f"{words.size(tubing.longest)}; set the manifold nearer or allow a longer loop",
        )


def _meant(thickness: float, high: str) -> str:
    """Return a hint where feet were written for inches."""
    inches = thickness / FOOT
    if thickness > read_length(high) and abs(inches * 4 - round(inches * 4)) < 1e-6:
        return f"; did you mean {inches:g} in?"
    return ""


def _tie_faults(path: Path, floor: Floor, words: Words) -> Iterator[At]:
    names = [layer.name for layer in floor.layers]
    for place, tie in enumerate(floor.tie):
        where = (*path, "tie", place)
        try:
            interface_index(names, tie.interface)
        except KeyError:
            listed = ", ".join(f"{n.lower()} top" for n in names)
            yield At(
                where,
                f'"{tie.interface}" is no face of this floor; '
                f"write subgrade, finished floor, {listed}, or one of these with bottom",
            )
        if tie.at.base not in {"TOF", "footing bottom"}:
            yield At(
                where,
                f'"{tie.at.base}" cannot place a floor; '
                "tie it to TOF, footing bottom or a level such as +6 in",
            )
        yield from far_faults(where, tie.at, words)


def far_faults(path: Path, at: LevelAt, words: Words) -> Iterator[At]:
    """Yield a level that no house reaches."""
    if abs(at.offset_m) > read_length(FARTHEST):
        limit = words.limit(FARTHEST, up=False)
        yield At(
            path,
            f"{words.level(at.offset_m)} is out of range; stay within {limit} of {at.base}, "
            "and check the unit",
        )


def unknown_level(path: Path, area: AreaLayout, at: LevelAt) -> Iterator[At]:
    """Yield a level whose name means nothing in this area."""
    if at.base not in area.level_names():
        known = ", ".join(area.level_names())
        yield At(path, f'"{at.base}" is no level here; write one of {known}')


def edge_faults(path: Path, area: AreaLayout, words: Words) -> Iterator[At]:
    """Yield faults of the edge board's levels; `path` is the floor's."""
    board = area.floor.edge_board
    if board is None:
        return
    path = (*path, "edge_board")
    found = [
        *unknown_level((*path, "bottom"), area, board.bottom),
        *unknown_level((*path, "top"), area, board.top),
        *far_faults((*path, "bottom"), board.bottom, words),
        *far_faults((*path, "top"), board.top, words),
    ]
    yield from found
    edge = None if found else edge_prism(area)
    if edge and edge.top <= edge.bottom:
        yield At(
            (*path, "top"),
            f'the edge board in area "{area.name}" would end at {words.level(edge.top)}, not above '
            f"its bottom at {words.level(edge.bottom)}; raise its top or lower its bottom",
        )
    elif edge and edge.bottom < area.tof - 1e-9:
        yield At(
            (*path, "bottom"),
            f'the edge board in area "{area.name}" would begin at {words.level(edge.bottom)}, '
            "inside the footing; set its bottom to TOF or above",
        )
    elif edge and edge.bottom < area.subgrade - 1e-9:
        yield At(
            (*path, "bottom"),
            f'the edge board in area "{area.name}" would begin at {words.level(edge.bottom)}, '
            f"below the floor's cut at {words.level(area.subgrade)}; "
            "set its bottom to subgrade or above",
        )
