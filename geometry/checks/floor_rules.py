"""The floor against the rules on slab, base, sheet, order of layers and joints."""

from collections.abc import Iterator
from dataclasses import replace
from math import ceil

from geometry.checks.finding import Finding
from geometry.checks.rulings import Ruling, in_area, ruling_findings
from geometry.layout.areas import AreaLayout
from geometry.layout.lay import Layout
from geometry.materials.catalogue import AGGREGATES, SHEETS, SOILS
from geometry.parts.floor import Layer
from geometry.parts.usual import ordering_factor
from geometry.rules.editions import Edition, editions
from geometry.rules.slabs import (
    BASE,
    EDGE_JOINT,
    GAS_BASE,
    GAS_LAP_M,
    GAS_SOURCE,
    LAP,
    LEAST_TIMES,
    PANEL_RATIO,
    SAND_OVER,
    SHEET,
    SLAB,
    saw_depth,
    spacing,
)
from geometry.units import System, show_length, show_thickness

_LOOSE = ("base", "blinding", "fill")


def floor_findings(layout: Layout) -> Iterator[Finding]:
    """Yield what the rules on floors find: build-up, then joints."""
    slabs = [area for area in layout.areas if _slab(area) is not None]
    built = [in_area(layout, a.name, one) for a in slabs for one in _built(layout, a)]
    built += [*_laps(layout, slabs), *_vent(layout, slabs)]
    yield from ruling_findings(layout, "floor-rules", "floor build-up", built)
    jointed = [in_area(layout, a.name, one) for a in slabs for one in _jointed(layout, a)]
    yield from ruling_findings(layout, "slab-joint-rules", "slab joints", jointed)


def _slab(area: AreaLayout) -> int | None:
    """Number of the topmost slab among the layers."""
    return max((n for n, x in enumerate(area.floor.layers) if x.role == "slab"), default=None)


def _built(layout: Layout, area: AreaLayout) -> Iterator[Ruling]:
    system, layers = layout.design.project.units, area.floor.layers
    top = _slab(area) or 0
    thick = show_length(layers[top].thickness, system)
    yield Ruling(SLAB, SLAB.met(layers[top].thickness), f"slab {thick}", "Pour it thicker.")
    yield from _base(layout, area, system)
    sheets = [n for n, x in enumerate(layers[:top]) if x.role == "retarder"]
    if not sheets:
        yield _no_sheet(layout, area)
        return
    sheet = layers[sheets[-1]]
    yield from _sheet(editions(layout.design.rules.codes), sheet, system)
    yield _order(layers, sheets[-1], top)


def _base(layout: Layout, area: AreaLayout, system: System) -> Iterator[Ruling]:
    if area.finished_floor >= layout.ground.at_wall:
        return
    soil = SOILS[layout.design.soil.group]
    if soil.drainage_group == "I":
        yield Ruling(BASE, True, f"{soil.group} drains well: no base is asked for")
        return
    clean = sum(x.thickness for x in area.floor.layers if x.role == "base" and _clean(x))
    words = f"{show_length(clean, system)} of clean base" if clean else "no clean base"
    yield Ruling(BASE, BASE.met(clean), words, "Thicken it, or use stone without fines.")


def _clean(layer: Layer) -> bool:
    row = AGGREGATES.get(layer.material)
    return row is not None and not row.with_fines


def _no_sheet(layout: Layout, area: AreaLayout) -> Ruling:
    if area.name in layout.design.climate.unheated:
        return Ruling(SHEET, True, "no sheet: not heated, where the code lets it be left out")
    advice = "Lay one. The code lets it be left out of garages and rooms that are not heated."
    return Ruling(SHEET, False, "no vapor retarder under the slab", advice)


def _sheet(held_to: tuple[Edition, ...], sheet: Layer, system: System) -> Iterator[Ruling]:
    """Yield the sheet against the editions that count: those it meets, those it does not."""
    row = SHEETS.get(sheet.material)
    grade = row.e1745_class if row else None
    found = f"{show_thickness(sheet.thickness, system)} sheet, "
    found += f"Class {grade}" if grade else "no E1745 class"
    met = [one for one in held_to if one.sheet.met(sheet.thickness, grade)]
    broken = [one for one in held_to if one not in met]
    advice = "Take the sheet that is asked for."
    if met and broken:
        advice = "Editions differ on the sheet: ask which one is in force here."
    for some, good in ((met, True), (broken, False)):
        if some:
            titles = ", ".join(one.title for one in some)
            asked = "; ".join(dict.fromkeys(one.sheet.words for one in some))
            limit = replace(SHEET, title=f"{titles}: {asked}", source=some[0].sheet.source)
            words = f"{found}: {'enough' if good else 'not enough'} for {titles}"
            yield Ruling(limit, good, words, advice)


def _order(layers: tuple[Layer, ...], sheet: int, slab: int) -> Ruling:
    """Return the order of layers over the sheet, with what each order brings."""
    over = [x.role for x in layers[sheet + 1 : slab]]
    if any(role in _LOOSE for role in over):
        return Ruling(
            SAND_OVER, False, "sand or stone lies between sheet and slab",
            "Sand there lets the slab dry downward and curl less; it also holds water. Slab "
            "straight on the sheet stays dry under it and wants a mix that does not bleed, and "
            "curing. Order is a choice: move the layer in the list to change it.",
        )  # fmt: skip
    if "insulation" in over:
        return Ruling(
            SAND_OVER, True,
            "foam lies on the sheet: it shields the sheet, and water that gets under the slab "
            "stands in its joints; foam under the sheet keeps the slab on the sheet",
        )  # fmt: skip
    return Ruling(SAND_OVER, True, "the slab lies on the sheet")


def _laps(layout: Layout, slabs: list[AreaLayout]) -> Iterator[Ruling]:
    """Yield the lap that is ordered, against both rules on it."""
    system = layout.design.project.units
    if not any(x.role == "retarder" for area in slabs for x in area.floor.layers):
        return
    lap = ordering_factor(layout.design.order, system == "metric", "sheet.lap").value
    gas = show_length(GAS_LAP_M, system)
    also = f"soil-gas rules ask {gas} ({GAS_SOURCE})"
    enough = lap >= GAS_LAP_M - 0.01
    words = f"laps of {show_length(lap, system)}; {also}{'' if enough else ', this is less'}"
    yield Ruling(LAP, LAP.met(lap), words, f"Lap it {gas} and tape it.")


def _vent(layout: Layout, slabs: list[AreaLayout]) -> Iterator[Ruling]:
    """Yield what a vent pipe for soil gas needs, where one is wanted."""
    if not layout.design.site.radon_vent:
        return
    system = layout.design.project.units
    lap = ordering_factor(layout.design.order, system == "metric", "sheet.lap").value
    for area in slabs:
        layers = area.floor.layers
        base = sum(x.thickness for x in layers if x.role == "base" and _clean(x))
        sheet = any(x.role == "retarder" for x in layers)
        met = GAS_BASE.met(base) and sheet and lap >= GAS_LAP_M - 0.01
        found = (
            f"vent for soil gas: {show_length(base, system)} of clean stone, "
            f"{'a' if sheet else 'no'} sheet, laps {show_length(lap, system)}"
        )
        advice = "Set a tee in the stone, a pipe from it through the roof, and seal pit and joints."
        yield in_area(layout, area.name, Ruling(GAS_BASE, met, found, advice))


def _jointed(layout: Layout, area: AreaLayout) -> Iterator[Ruling]:
    system = layout.design.project.units
    thick = area.floor.layers[_slab(area) or 0].thickness
    yield _edge(area)
    if area.floor.joints is None:
        return
    limit, apart = spacing(thick), area.floor.joints
    sawn = show_length(saw_depth(thick), system)
    near = show_length(LEAST_TIMES * thick, system)
    words = (
        f"joints {show_length(apart, system)} apart in {show_length(thick, system)} of slab, "
        f"{near} for most mixes, {show_length(limit.most, system)} at most; sawn {sawn} deep"
    )
    yield Ruling(limit, limit.met(apart), words, "Saw them nearer to each other.")
    yield _panels(area, apart, system)


def _panels(area: AreaLayout, apart: float, system: System) -> Ruling:
    """Return the panels of the room's bounds cut evenly both ways."""
    west, south, east, north = area.room.bounds
    sides = [whole / ceil(whole / apart - 1e-6) for whole in (east - west, north - south)]
    ratio = max(sides) / min(sides)
    size = " x ".join(show_length(round(side, 3), system) for side in sides)
    corners = "; start a joint at every corner that looks inward" if _looks_inward(area) else ""
    return Ruling(
        PANEL_RATIO, ratio <= PANEL_RATIO.most + 1e-6,
        f"panels {size}, {ratio:.2f} to 1{corners}", "Cut the longer side once more.",
    )  # fmt: skip


def _looks_inward(area: AreaLayout) -> bool:
    """Whether a corner of the outline looks inward: a plan without one is its own hull."""
    return float(area.outline.convex_hull.area - area.outline.area) > 1e-4


def _edge(area: AreaLayout) -> Ruling:
    """Return the slab's joint to the wall: a board, or poured tight where that braces the wall."""
    piers = "; wrap the piers that pass through it" if area.area.piers else ""
    if area.floor.edge_board:
        return Ruling(EDGE_JOINT, True, f"a board parts slab and wall{piers}")
    if area.wall.foot in ("keyway", "dowels"):
        words = f"slab poured to the wall, though its foot is held by {area.wall.foot}"
        return Ruling(EDGE_JOINT, False, words, "Nothing needs it tight there: set an edge board.")
    return Ruling(EDGE_JOINT, True, f"slab poured tight to the wall, as its foot's brace{piers}")
