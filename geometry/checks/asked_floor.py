"""What is asked of floors, drain and grade, and how a design stands to it."""

from collections.abc import Iterator, Sequence

from geometry.checks.asked import (
    ALBERTVILLE,
    AUGUSTA,
    HILLSBOROUGH,
    NEEDHAM,
    SEVERAL,
    Ask,
    Item,
)
from geometry.layout.lay import Layout
from geometry.materials.catalogue import BOARDS, SHEETS
from geometry.parts.floor import Layer, LayerRole
from geometry.units import show_fall, show_length, show_thickness, to_unit

_FLOOR, _DRAIN, _GRADE = "Floor", "Drain", "Grade"
_LAYER = "a [floor] layer with role"


def floor_items(layout: Layout) -> Iterator[Item]:
    """Yield the items on slab, layers, retarder and foam."""
    yield _layered(layout, Ask(_FLOOR, "slab thickness", HILLSBOROUGH), "slab")
    yield _joints(layout)
    yield Ask(_FLOOR, "each layer by name and thickness", SEVERAL).shown("sections, floor schedule")
    yield _layered(layout, Ask(_FLOOR, "vapor retarder, class and laps", HILLSBOROUGH), "retarder")
    yield _layered(layout, Ask(_FLOOR, "insulation, kind, strength, R", NEEDHAM), "insulation")


def _joints(layout: Layout) -> Item:
    ask, system = Ask(_FLOOR, "slab joints and steel", HILLSBOROUGH), layout.design.project.units
    apart = [area.floor.joints for area in layout.areas if area.floor.joints is not None]
    if not apart:
        return ask.outside("add them")
    sizes = ", ".join(dict.fromkeys(show_length(metres, system) for metres in apart))
    return ask.stated(f"joints {sizes} apart at most; add steel and a plan of joints")


def _layered(layout: Layout, ask: Ask, role: LayerRole) -> Item:
    """Return an item on layers of one role: what there is, and which areas have none."""
    found: dict[str, None] = {}
    without = []
    for area in layout.areas:
        layers = [x for x in area.floor.layers if x.role == role]
        found.update(dict.fromkeys(_said(layout, x) for x in layers))
        without += [] if layers else [area.name]
    if not found:
        return ask.empty(f"{_LAYER} {role}", "none; ")
    missing = f"; none in {', '.join(without)}" if without else ""
    return ask.shown(f"sections, floor schedule: {'; '.join(found)}{missing}")


def _said(layout: Layout, layer: Layer) -> str:
    thick = show_thickness(layer.thickness, layout.design.project.units)
    return ", ".join(filter(None, (thick, _graded(layout, layer))))


def _graded(layout: Layout, layer: Layer) -> str:
    """Return the class of a sheet, or strength and thermal resistance of a board."""
    sheet, board = SHEETS.get(layer.material), BOARDS.get(layer.material)
    if sheet:
        return f"Class {sheet.e1745_class}" if sheet.e1745_class else "class not stated"
    if board is None:
        return ""
    resistance = board.r_per_m * layer.thickness
    if layout.design.project.units == "metric":
        return f"{board.strength_kpa:.0f} kPa, R {resistance:.2f} m²K/W"
    psi = to_unit(board.strength_kpa, "kPa", "psi")
    return f"{psi:.0f} psi, R-{to_unit(resistance, 'K*m**2/W', _R_IP):.3g}"


_R_IP = "hour*delta_degF*foot**2/Btu"


def drain_items(layout: Layout) -> Iterator[Item]:
    """Yield the items on drain, outlet and sump; one alone where there is no drain."""
    laid, system = layout.drain, layout.design.project.units
    pipe = Ask(_DRAIN, "pipe, size, place and holes", AUGUSTA)
    if laid is None:
        yield pipe.empty("[drain]", "none; ")
        return
    slope = f": {show_fall(laid.drain.fall, system)}" if laid.drain.fall else ": laid level"
    yield pipe.shown("plan, sections, drain schedule")
    yield Ask(_DRAIN, "slope and inverts", SEVERAL).shown(f"plan, schedules{slope}")
    yield Ask(_DRAIN, "stone envelope and fabric", ALBERTVILLE).shown("sections, drain schedule")
    yield _where(Ask(_DRAIN, "cleanouts", SEVERAL), laid.drain.cleanouts)
    yield from _outlet(layout)


def _where(ask: Ask, corners: Sequence[int]) -> Item:
    if corners:
        return ask.shown(f"plan: corners {', '.join(map(str, corners))}")
    return ask.empty("[drain] cleanouts", "none; ")


def _outlet(layout: Layout) -> Iterator[Item]:
    outlet = Ask(_DRAIN, "where the drain empties", ALBERTVILLE)
    if layout.sump is None:
        yield outlet.empty("[sump]", "water's way from the low point is open; ")
        return
    yield outlet.shown("plan, sections: to the sump")
    pump = Ask(_DRAIN, "sump pump, its levels", SEVERAL)
    if layout.sump.sump.pump:
        yield pump.stated("level table")
    else:
        yield pump.empty("[sump] pump")
    yield Ask(_DRAIN, "where the pump empties", SEVERAL).outside("add the discharge line")


def grade_items(layout: Layout) -> Iterator[Item]:
    """Yield the items on the finished grade."""
    system, grade = layout.design.project.units, layout.design.grade
    yield Ask(_GRADE, "grade line at the wall", SEVERAL).shown("sections")
    away = Ask(_GRADE, "slope away from the house", SEVERAL)
    if grade.fall and grade.fall_length:
        drop, far = (
            show_length(m, system) for m in (grade.fall * grade.fall_length, grade.fall_length)
        )
        yield away.shown(f"notes: {drop} in {far}")
    else:
        yield away.empty("[grade] fall and fall_length")
