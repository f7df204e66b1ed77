"""What is looked at inside: the pit, stone and sheet, foam, and the last look before the pour."""

from collections.abc import Iterator

from geometry.layout.areas import AreaLayout
from geometry.layout.footings import column_prism, pier_name
from geometry.layout.lay import Layout
from geometry.materials.catalogue import AGGREGATES
from geometry.report import Report
from geometry.site.holds import BOARD_FLAT_M, GRADE_M, JOINTS
from geometry.site.seen import Line, Value, level_values
from geometry.takeoff.usual import factor

PIT_PHOTOS = (Line("pit_hole"), Line("pit_in"), Line("pit_pipe"))


def pit(layout: Layout) -> Iterator[Line]:
    """Yield the pit: size, stone, rim, the pipe into it, floats."""
    pit = layout.sump
    if pit is None:
        return
    sump = pit.sump
    yield Line("pit_size", (Value("wide", sump.diameter), Value("deep", sump.depth)))
    yield Line("pit_stone", (Value("below", sump.stone_below), Value("beside", sump.stone_beside)))
    yield Line("rim", level_values(layout, pit.rim))
    if pit.lead:
        yield Line("pit_pipe", (*level_values(layout, pit.lead.end_invert),
                                Value("fall", sump.fall, "fall")))  # fmt: skip
    pump = sump.pump
    if pump is None:
        yield Line("no_pump")
        return
    yield Line("floats", (Value("off", pump.off), Value("on", pump.on)))
    if pump.alarm is not None:
        yield Line("alarm", (Value("alarm", pump.alarm),))


def under(layout: Layout, area: AreaLayout) -> Iterator[Line]:
    """Yield what lies under foam and slab: stone, sand, sheet."""
    system, layers = layout.design.project.units, area.floor.layers
    for layer, top in zip(layers, area.stack.levels[1:], strict=True):
        thick = Value("thick", layer.thickness)
        material = Value("material", layer.material, "material")
        if layer.role == "base":
            stone = AGGREGATES.get(layer.material)
            key = "base_fines" if stone and stone.with_fines else "base"
            stray = Value("stray", GRADE_M[system])
            yield Line(key, (material, thick, *level_values(layout, top), stray))
        elif layer.role == "blinding":
            flat = Value("flat", BOARD_FLAT_M[system])
            yield Line("blinding", (material, thick, *level_values(layout, top), flat))
        elif layer.role == "retarder":
            lap, up = (factor(layout.design, f"sheet.{key}").value for key in ("lap", "turn_up"))
            yield Line("retarder", (material, Value("lap", lap), Value("up", up)))
            yield Line("seals")


def foam(layout: Layout, report: Report, area: AreaLayout) -> Iterator[Line]:
    """Yield the foam, how it meets top of footing, and its edge."""
    for layer, top in zip(area.floor.layers, area.stack.levels[1:], strict=True):
        if layer.role == "insulation":
            material = Value("material", layer.material, "material")
            yield Line(
                "foam", (material, Value("thick", layer.thickness), *level_values(layout, top))
            )
    verdict = next(v for v in report.foam if v.area == area.name)
    gap = Value("gap", abs(verdict.gap_m))
    if verdict.foam_bottom_m is not None:
        yield Line(f"foam_{verdict.meeting.replace(' ', '_')}", (gap,))
    board = area.floor.edge_board
    if board:
        yield Line("edge_board", (Value("material", board.material, "material"),
                                  Value("thick", board.thickness)))  # fmt: skip
    yield Line("foam_joints")


def slab(layout: Layout, report: Report, area: AreaLayout) -> Iterator[Line]:
    """Yield the last look before the pour."""
    top = area.floor.layers[-1]
    material = Value("material", top.material, "material")
    yield Line("slab", (material, Value("thick", top.thickness),
                        *level_values(layout, area.finished_floor)))  # fmt: skip
    pours = [p for p in report.order.pours if p.area == area.name and p.step_m is not None]
    for pour in pours:
        yield Line("pour", (Value("volume", pour.ordered_m3, "volume"),))
    for number, pier in enumerate(area.area.piers):
        column = column_prism(area, pier)
        if column:
            name = Value("name", pier_name(area, number), "words")
            yield Line("column", (name, *level_values(layout, column.top)))
    if top.role == "slab":
        yield Line("joints", (Value("apart", JOINTS * top.thickness),))
    yield Line("isolation")
    yield Line("earlier")
