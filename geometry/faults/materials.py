"""Faults of materials: unknown keys, and kinds that do not fit their place."""

from collections.abc import Iterator

from geometry.faults.common import At
from geometry.faults.lines import Path
from geometry.materials.catalogue import MATERIALS, find, nearest
from geometry.parts.floor import Floor, LayerRole
from geometry.project import Design

FITTING: dict[LayerRole, tuple[str, ...]] = {
    "base": ("stone", "sand"),
    "blinding": ("sand", "stone"),
    "fill": ("stone", "sand", "soil"),
    "retarder": ("sheet",),
    "insulation": ("board",),
    "slab": ("concrete",),
}


def material_faults(design: Design) -> Iterator[At]:
    """Yield every material that is not in the catalogue, or of the wrong kind for its place."""
    for path, key, kinds in _named(design):
        row = find(key)
        fitting = [k for k, m in MATERIALS.items() if m.kind in kinds]
        if row is None or row.key != key:
            close = nearest(key, fitting)
            hint = f"did you mean {close}?" if close else f"write one of {', '.join(fitting)}"
            yield At(path, f'"{key}" is no material here; {hint}')
        elif row.kind not in kinds:
            yield At(
                path,
                f"{key} is {_article(row.kind)}; this place takes {_article(kinds[0])}, "
                f"such as {fitting[0]}",
            )


def _article(kind: str) -> str:
    return kind if kind in {"stone", "sand", "concrete", "soil", "plastic"} else f"a {kind}"


def _named(design: Design) -> Iterator[tuple[Path, str, tuple[str, ...]]]:
    concrete = ("concrete",)
    yield ("footing", "material"), design.footing.material, concrete
    yield ("wall", "material"), design.wall.material, concrete
    yield from _floor(("floor",), design.floor)
    for n, area in enumerate(design.areas):
        path = ("area", n)
        if area.footing:
            yield (*path, "footing", "material"), area.footing.material, concrete
        if area.wall:
            yield (*path, "wall", "material"), area.wall.material, concrete
        if area.floor:
            yield from _floor((*path, "floor"), area.floor)
        for p, pier in enumerate(area.piers):
            yield (*path, "pier", p, "material"), pier.material, concrete
    yield from _drainage(design)
    yield ("backfill", "stone"), design.backfill.stone, ("stone", "sand")
    if design.backfill.material:
        yield ("backfill", "material"), design.backfill.material, ("soil", "stone", "sand")
    yield ("soil", "group"), design.soil.group, ("soil",)


def _floor(path: Path, floor: Floor) -> Iterator[tuple[Path, str, tuple[str, ...]]]:
    for n, layer in enumerate(floor.layers):
        yield (*path, "layer", n, "material"), layer.material, FITTING[layer.role]
    if floor.edge_board:
        yield (*path, "edge_board", "material"), floor.edge_board.material, ("board",)


def _drainage(design: Design) -> Iterator[tuple[Path, str, tuple[str, ...]]]:
    for number, drain in enumerate(design.drains):
        path: Path = ("drain", number)
        yield (*path, "pipe"), drain.pipe, ("pipe",)
        yield (*path, "stone", "material"), drain.stone.material, ("stone",)
        yield (*path, "wrap", "material"), drain.wrap.material, ("fabric",)
        yield (*path, "bleeders", "pipe"), drain.bleeders.pipe, ("pipe",)
        for place, outlet in enumerate(drain.daylight):
            if outlet.pipe:
                yield (*path, "daylight", place, "pipe"), outlet.pipe, ("pipe",)
    if design.sump:
        yield ("sump", "stone"), design.sump.stone, ("stone",)
        yield ("sump", "material"), design.sump.material, ("plastic", "concrete")
        yield ("sump", "sleeve"), design.sump.sleeve, ("pipe",)
        if design.sump.pipe:
            yield ("sump", "pipe"), design.sump.pipe, ("pipe",)
    if design.vent:
        yield ("vent", "pipe"), design.vent.pipe, ("pipe",)
