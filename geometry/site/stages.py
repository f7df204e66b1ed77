"""The stages of a design in the order they are built, from the open hole to the slab."""

from collections.abc import Iterator, Sequence
from dataclasses import replace
from functools import lru_cache

from geometry.label import STAGE, Label
from geometry.layout.areas import AreaLayout
from geometry.layout.bodies import Body
from geometry.layout.drain import DrainLayout
from geometry.layout.lay import Layout
from geometry.layout.vent import VENT_PART
from geometry.site import amounts
from geometry.site.cautions import cautions
from geometry.site.holds import holds
from geometry.site.records import Amount, Figure, Shot, Stage, StageKey
from geometry.site.shots import invert_shots, shot

_OF_ROLE: dict[str, StageKey] = {
    "base": "base", "blinding": "blinding", "retarder": "retarder", "insulation": "insulation",
    "slab": "slab", "fill": "fill", "edge board": "edge_board",
}  # fmt: skip
# Levels nearer than this are one level.
_SAME_M = 1e-6
# More inverts than this are too many for one card.
MOST_INVERTS = 8


@lru_cache(maxsize=8)
def stages(layout: Layout) -> tuple[Stage, ...]:
    """Return the stages in build order; footings and walls stand already.

    Areas whose floors are the same on the same levels share theirs.
    """
    found = [s for s in _all(layout) if s.parts or s.key == "subgrade"]
    return tuple(
        replace(
            stage,
            holds=holds(layout, stage, _pours_next(stage, found[number + 1 :])),
            cautions=cautions(layout, stage),
        )
        for number, stage in enumerate(found)
    )


def _pours_next(stage: Stage, later: Sequence[Stage]) -> bool:
    return bool(later) and later[0].key == "slab" and later[0].areas == stage.areas


def _all(layout: Layout) -> Iterator[Stage]:
    groups = alike(layout.areas)
    yield _subgrade(layout, groups)
    for drain in layout.drains:
        yield from () if drain.inside else _drain(layout, drain)
    yield from _backfill(layout)
    # What lies under the floor waits until the walls are held and filled.
    for drain in layout.drains:
        yield from _drain(layout, drain) if drain.inside else ()
    yield from _pit(layout)
    for group in groups:
        yield from _floor(layout, group)


def alike(areas: Sequence[AreaLayout]) -> tuple[tuple[AreaLayout, ...], ...]:
    """Return the areas in groups whose floors are the same on the same levels, lowest first."""
    groups: list[list[AreaLayout]] = []
    for area in areas:
        mine = next((g for g in groups if _same_floor(g[0], area)), None)
        if mine is None:
            groups.append([area])
        else:
            mine.append(area)
    return tuple(map(tuple, groups))


def _same_floor(one: AreaLayout, other: AreaLayout) -> bool:
    same = (one.floor.layers, one.floor.edge_board) == (other.floor.layers, other.floor.edge_board)
    return same and abs(one.subgrade - other.subgrade) < _SAME_M and one.tof == other.tof


def _subgrade(layout: Layout, groups: Sequence[Sequence[AreaLayout]]) -> Stage:
    ground, pit = layout.ground, layout.sump
    shots: list[Shot] = [
        shot(layout, "subgrade", area, area.subgrade)
        for area, *_ in groups
        if area.subgrade <= ground.existing
    ]
    for drain in layout.drains:
        shots.append(shot(layout, "trench", drain.area, drain.stone_bottom, drain.key))
    if pit:
        shots.append(shot(layout, "pocket", pit.area, pit.pocket.bottom))
    return Stage(
        "subgrade", STAGE["excavation"], _names(layout.areas), ("ground/excavation",),
        shots=tuple(shots), instructions=("subgrade",),
    )  # fmt: skip


def _drain(layout: Layout, drain: DrainLayout) -> Iterator[Stage]:
    key, area, made = drain.key, (drain.area.name,), drain.drain
    wrap, stone = layout.label(f"{key}/pipe"), made.stone.material
    fabric = tuple(amounts.fabric(layout, drain))
    rock = tuple(amounts.bulk(layout, _stone_label(layout, drain)))
    bed = (made.stone.bedding, made.stone.bedding)
    yield Stage(
        "bedding", STAGE["wrap"], area, (f"{key}/wrap", f"{key}/stone"), key, "under pipe",
        (made.wrap.material, stone), bed, made.fall,
        (
            shot(layout, "bedding_low", drain.area, drain.outlet_invert - drain.pipe.wall_m, key),
            shot(layout, "bedding_high", drain.area, drain.high_invert - drain.pipe.wall_m, key),
            shot(layout, "trench", drain.area, drain.stone_bottom, key),
        ) if drain.rise > 0 else (
            shot(layout, "bedding", drain.area, drain.outlet_invert - drain.pipe.wall_m, key),
            shot(layout, "trench", drain.area, drain.stone_bottom, key),
        ),
        fabric, ("bedding" if drain.rise > 0 else "bedding_level",),
    )  # fmt: skip
    yield from _pipe(layout, drain, wrap)
    over = drain.stone_top - drain.wrap_m - drain.crown
    yield Stage(
        "drain_stone", STAGE["drain stone"], area, (f"{key}/stone", f"{key}/wrap"), key,
        "over pipe", (stone, made.wrap.material), (over, over), None,
        (shot(layout, "top", drain.area, drain.stone_top, key),), rock, ("drain_stone",),
        (Figure("cover", over), Figure("lap", made.wrap.overlap)),
    )  # fmt: skip


def _stone_label(layout: Layout, drain: DrainLayout) -> Label:
    return layout.drain_beds[layout.drains.index(drain)][0].label


def _pipe(layout: Layout, drain: DrainLayout, label: Label) -> Iterator[Stage]:
    """Yield the laying of the pipe, and the shooting of its inverts; many go on in further ones."""
    key, shots = drain.key, invert_shots(layout, drain)
    parts = tuple(
        part
        for part in (
            label.part,
            f"{key}/fittings",
            *(f"{key}/cleanout {corner}" for corner in drain.drain.cleanouts),
            *(f"{key}/daylight {n}" for n in range(1, len(drain.drain.daylight) + 1)),
        )
    )
    area, fall = (drain.area.name,), drain.drain.fall
    yield Stage(
        "pipe", STAGE["pipe"], area, parts, key, materials=(drain.pipe.key,), fall=fall,
        amounts=tuple(amounts.pipework(layout, drain)), instructions=("pipe", _holes(drain)),
    )  # fmt: skip
    how = "inverts" if drain.rise > 0 else "inverts_level"
    size = -(-len(shots) // -(-len(shots) // MOST_INVERTS))
    for start in range(0, len(shots), size):
        yield Stage(
            "inverts", STAGE["pipe"], area, parts, key, materials=(drain.pipe.key,), fall=fall,
            shots=shots[start : start + size], instructions=(how,),
            figures=(Figure("fall", fall, "fall"),),
        )  # fmt: skip


def _holes(drain: DrainLayout) -> str:
    rows = drain.drain.holes.rows
    if not rows:
        return "holes_none"
    up = [abs(row) > 90 for row in rows]
    return "holes_up" if all(up) else "holes_round" if any(up) else "holes_down"


def _backfill(layout: Layout) -> Iterator[Stage]:
    ground, design = layout.ground, layout.design
    if all(ground.hole(area) is None for area in layout.areas):
        return
    area, fill, strip = layout.areas[0], design.backfill, ground.wall_stone()
    shots = [shot(layout, "grade_wall", area, ground.at_wall)]
    bought: tuple[Amount, ...] = ()
    parts = ["ground/backfill", "ground/grading"]
    if strip:
        shots.insert(0, shot(layout, "wall_stone", area, strip.top))
        bought = tuple(a for a in amounts.bulk(layout, layout.label("ground/wall stone")))
        parts.insert(0, "ground/wall stone")
    yield Stage(
        "backfill", STAGE["backfill"], _names(layout.areas), tuple(parts),
        materials=(*((fill.stone,) if strip else ()), fill.material or design.soil.group),
        shots=tuple(shots), amounts=bought,
        instructions=("wall_stone", "backfill") if strip else ("backfill",),
        figures=(Figure("wide", fill.stone_width), Figure("away", design.grade.fall_length),
                 Figure("fall", design.grade.fall, "share")),
    )  # fmt: skip


def _pit(layout: Layout) -> Iterator[Stage]:
    pit = layout.sump
    if pit is None:
        return
    stone = [b.label for b in layout.pit if b.label.role == "pit stone"]
    levels = [
        ("rim", pit.rim),
        ("pit_invert", pit.lead.end_invert if pit.lead else None),
        ("pit_floor", pit.floor),
        ("pocket", pit.pocket.bottom),
    ]
    parts = [b.label.part for b in layout.pit if b.label.role != "lid"]
    yield Stage(
        "pit", STAGE["basin"], (pit.area.name,), (*parts, *(["sump/pipe"] if pit.lead else [])),
        materials=(pit.sump.material, pit.sump.stone),
        thickness=(pit.sump.stone_below, pit.sump.stone_below),
        fall=pit.sump.fall if pit.lead else None,
        shots=tuple(shot(layout, key, pit.area, z) for key, z in levels if z is not None),
        amounts=tuple(amounts.pit(layout, *stone)),
        instructions=("pit", "pit_pipe") if pit.lead else ("pit",),
        figures=(Figure("below", pit.sump.stone_below), Figure("beside", pit.sump.stone_beside)),
    )  # fmt: skip


def _floor(layout: Layout, group: Sequence[AreaLayout]) -> Iterator[Stage]:
    """Yield the layers of alike floors from the bottom up; the edge board before the top one."""
    area = group[0]
    mine = [b for b in layout.floors if b.label.area == area.name]
    fills = [b for b in mine if b.label.part == f"{area.name}/fill"]
    edges = [b for b in mine if b.label.role == "edge board"]
    layers = [b for b in mine if b not in fills and b not in edges]
    ordered = [*fills, *layers[:-1], *edges, *layers[-1:]]
    for body in ordered:
        yield _layer(layout, group, body, _last(body, layers))


def _last(body: Body, layers: Sequence[Body]) -> bool:
    """Whether no later layer has the same role."""
    later = layers[layers.index(body) + 1 :] if body in layers else []
    return all(b.label.role != body.label.role for b in later)


def _layer(layout: Layout, group: Sequence[AreaLayout], body: Body, last: bool) -> Stage:
    area, label = group[0], body.label
    key = _OF_ROLE[label.role]
    top, bottom = _span(area, body)
    twins = [
        b
        for b in layout.floors
        if b.label.part.removeprefix(f"{b.label.area}/") == label.part.removeprefix(f"{area.name}/")
        and b.label.area in _names(group)
    ]
    lid = ["sump/lid"] if key == "slab" and layout.sump and layout.sump.area in group else []
    lid += _vent(layout, group, key)
    board = area.floor.edge_board
    wide = board.thickness if board and key == "edge_board" else top - bottom
    return Stage(
        key, label.stage, _names(group), (*(b.label.part for b in twins), *lid),
        materials=(label.material,), thickness=(wide, wide),
        shots=(shot(layout, "top", area, top), shot(layout, "under", area, bottom)),
        amounts=tuple(a for b in twins for a in amounts.layer(layout, b, last)),
        instructions=(key, *(["isolation"] if key == "slab" else [])),
    )  # fmt: skip


def _vent(layout: Layout, group: Sequence[AreaLayout], key: str) -> list[str]:
    """Return the vent pipe with the stone it stands in, or with the slab of a floor without any."""
    vent = layout.vent
    if vent is None or vent.area not in group:
        return []
    stone = any(layer.role == "base" for layer in vent.area.floor.layers)
    return [VENT_PART] if key == ("base" if stone else "slab") else []


def _span(area: AreaLayout, body: Body) -> tuple[float, float]:
    """Return top and bottom of a layer; of fill and edge board as they stand."""
    names = [name.capitalize() for name in area.stack.names]
    if body.label.name in names and body.label.role != "edge board":
        number = names.index(body.label.name)
        return area.stack.levels[number + 1], area.stack.levels[number]
    return body.top, body.bottom


def _names(areas: Sequence[AreaLayout]) -> tuple[str, ...]:
    return tuple(area.name for area in areas)
