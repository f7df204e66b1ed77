"""What each part is called on pictures: a heading line, and a line of sizes under it."""

import math
from collections.abc import Iterator, Mapping, Sequence
from typing import TYPE_CHECKING

from geometry.label import Label
from geometry.layout.areas import AreaLayout
from geometry.layout.drain import DrainLayout
from geometry.layout.footings import pier_name
from geometry.layout.lay import Layout
from geometry.layout.vent import VENT_PART
from geometry.materials.catalogue import find
from geometry.materials.tubes import TUBES
from geometry.parts.drain import Drain
from geometry.parts.pier import Pier
from geometry.units import INCH, System, show_fall, show_length, show_thickness

if TYPE_CHECKING:
    from geometry.solids.foundation import Foundation

CUTS: Mapping[str, str] = {
    "across": "Section across the house",
    "step": "Section over the step",
    "pier": "Section through a pier",
    "sump": "Section through the sump",
    "bleeder": "Section through a bleeder",
    "drain": "Section through another drain",
    "own": "Section",
}
SEVERITIES: Mapping[str, str] = {"fine": "fine", "look": "look again", "stop": "stop"}

_FOR: Mapping[str, str] = {
    "base": "base", "blinding": "blinding", "retarder": "laps taped", "insulation": "insulation",
    "slab": "finished floor", "fill": "fill",
}  # fmt: skip


def part_words(
    layout: Layout, foundation: "Foundation", areas: Sequence[AreaLayout] = ()
) -> dict[str, str]:
    """Return the wording of every part by its id: a heading, a line break, sizes.

    areas: those the picture shows; all unless given.
    """
    sizes = dict(_sizes(layout, areas or layout.areas))
    which = {drain.key: told_apart(drain, layout.drains) for drain in layout.drains}
    labels = [solid.label for solid in foundation.solids]
    return {
        label.part: "\n".join(filter(None, (_heading(label, which), sizes.get(label.part, ""))))
        for label in labels
    }


def material_name(key: str) -> str:
    """Return a material's name for people; the key itself where the catalogue lacks it."""
    row = find(key) or TUBES.get(key)
    return row.name if row else key


def _heading(label: Label, which: Mapping[str, str]) -> str:
    """Floor layers and bulk stuff are called by their material, made things by their name.

    which: words that tell drains apart, by their keys; wraps are alike and do without.
    """
    if label.role == "slab":
        row = find(label.material)
        return "Concrete slab" if row and row.kind == "concrete" else material_name(label.material)
    if label.role in _FOR:
        return material_name(label.material)
    if label.role in ("pad", "column"):
        return "Pier pad" if label.role == "pad" else "Pier column"
    of = "" if label.role == "wrap" else which.get(label.part.split("/")[0], "")
    return ", ".join(filter(None, (label.name.split(",")[0], of)))


def _sizes(layout: Layout, areas: Sequence[AreaLayout]) -> Iterator[tuple[str, str]]:
    system = layout.design.project.units
    yield "footing", _footings(areas, system)
    for area in areas:
        yield f"{area.name}/wall", f"{size(area.wall.thickness, system)}, {area.wall.kind}"
        yield from _layers(area, system)
        for number, pier in enumerate(area.area.piers):
            yield from _pier(area, number, pier, system)
    yield from _drain(layout, system)
    yield from _sump(layout, system)
    if layout.vent:
        yield VENT_PART, f"{layout.vent.pipe.name.split(', ', 1)[-1]}, from the stone up"
    yield from _ground(layout, system)


def told_apart(drain: DrainLayout, drains: Sequence[DrainLayout]) -> str:
    """Return the shortest words that tell a drain from a house's others; empty for an only one."""
    others = [d for d in drains if d is not drain]
    if not others or drain.drain.name:
        return drain.drain.name if others else ""
    if all(d.drain.line != drain.drain.line for d in others):
        return str(drain.drain.line)
    if all(d.area is not drain.area for d in others):
        return drain.area.name
    return drain.title


def size(metres: float, system: System) -> str:
    """Return a size in words; up to three feet in whole inches it is said in inches alone."""
    inches = metres / INCH
    if system == "ft-in" and inches <= 36 and math.isclose(inches, round(inches), abs_tol=1e-3):
        return f'{round(inches)}"'
    return show_length(metres, system)


def _footings(areas: Sequence[AreaLayout], system: System) -> str:
    kinds = dict.fromkeys(
        f"{size(a.footing.width, system)} × {size(a.footing.thickness, system)}" for a in areas
    )
    return " and ".join(kinds)


def _layers(area: AreaLayout, system: System) -> Iterator[tuple[str, str]]:
    for layer in area.floor.layers:
        words = f"{show_thickness(layer.thickness, system)}, {_FOR[layer.role]}"
        yield f"{area.name}/{layer.name}", words
    if area.floor.edge_board:
        thick = size(area.floor.edge_board.thickness, system)
        yield f"{area.name}/edge board", f"{thick}, between slab and wall"


def _pier(area: AreaLayout, number: int, pier: Pier, system: System) -> Iterator[tuple[str, str]]:
    part = f"{area.name}/pier {pier_name(area, number)}"
    wide, deep, thick = (
        size(metres, system) for metres in (pier.width, pier.pad_depth, pier.thickness)
    )
    yield f"{part} pad", f"{wide} × {deep} × {thick}"
    yield f"{part} column", f"{size(pier.column_size, system)}, {pier.column}"


def _drain(layout: Layout, system: System) -> Iterator[tuple[str, str]]:
    for laid in layout.drains:
        yield from _one_drain(laid.key, laid.drain, system)
    for bleeder in layout.bleeders[:1]:
        yield "bleeders", f"{bleeder.pipe.name.split(', ', 1)[-1]}, level"


def _one_drain(key: str, drain: Drain, system: System) -> Iterator[tuple[str, str]]:
    name = material_name(drain.pipe).split(", ", 1)[-1]
    fall = f"falls {show_fall(drain.fall, system)}" if drain.fall else "laid level"
    yield f"{key}/pipe", f"{name}; {holes_words(drain.holes.rows)}, {fall}"
    yield f"{key}/fittings", name
    for corner in drain.cleanouts:
        yield f"{key}/cleanout {corner}", f"{name}, up to grade"
    for number, outlet in enumerate(drain.daylight, 1):
        solid = material_name(outlet.pipe or drain.pipe).split(", ", 1)[-1]
        falling = show_fall(outlet.fall, system)
        yield f"{key}/daylight {number}", f"{solid}, falls {falling}, drawn to the hole's edge"
    stone = material_name(drain.stone.material)
    yield f"{key}/stone", f"{stone}, {size(drain.stone.width, system)} wide"
    lap = size(drain.wrap.overlap, system)
    yield f"{key}/wrap", f"{material_name(drain.wrap.material)}, laps {lap} on top"


def holes_words(rows: Sequence[float]) -> str:
    """Return where holes look; rows are angles from straight down: within 90 degrees, down."""
    if not rows:
        return "no holes"
    up = [abs(row) > 90 for row in rows]
    if all(up):
        return "holes up"
    return "holes all round" if any(up) else "holes down"


def _sump(layout: Layout, system: System) -> Iterator[tuple[str, str]]:
    if layout.sump is None:
        return
    sump, lead = layout.sump.sump, layout.sump.lead
    inside, deep = size(sump.diameter, system), size(sump.depth, system)
    yield "sump/basin", f"{inside} inside, {deep} deep"
    yield "sump/lid", size(sump.lid, system)
    yield "sump/stone", material_name(sump.stone)
    yield "sump/trench", material_name(sump.stone)
    if lead:
        fall = show_fall(sump.fall, system)
        yield "sump/pipe", f"{lead.pipe.name.split(', ', 1)[-1]}, falls {fall}"
        if lead.sleeve:
            yield "sump/sleeve", lead.sleeve.name.split(", ", 1)[-1]


def _ground(layout: Layout, system: System) -> Iterator[tuple[str, str]]:
    design = layout.design
    wide = size(design.backfill.stone_width, system)
    yield "ground/wall stone", f"{material_name(design.backfill.stone)}, {wide} wide"
    yield "ground/backfill", material_name(design.backfill.material or design.soil.group)
    fall = f"{design.grade.fall * 100:.3g} %"
    away = size(design.grade.fall_length, system)
    yield "ground/grading", f"falls {fall} for {away}" if design.grade.fall else "level"
