"""Names of the parts that are no stacks of prisms: pipework and earthworks."""

from collections.abc import Iterator, Sequence

from geometry.label import STAGE, Label, Role
from geometry.layout.bleeders import Bleeder
from geometry.layout.drain import DrainLayout
from geometry.layout.sump import SumpLayout
from geometry.project import Design

_Row = tuple[str, str, Role, str, str]


def labels(
    design: Design,
    drains: Sequence[DrainLayout],
    sump: SumpLayout | None,
    bleeders: Sequence[Bleeder],
) -> dict[str, Label]:
    """Return labels by part id."""
    rows = [row for drain in drains for row in _drain(drain, named(drain, drains))]
    rows += [*_bleeders(bleeders), *_lead(sump), *_ground(design)]
    return {row[0]: Label(*row, STAGE[row[2]]) for row in rows}


def named(drain: DrainLayout, drains: Sequence[DrainLayout]) -> str:
    """Return what tells a drain's parts from those of the house's other drains."""
    return f", {drain.title}" if len(drains) > 1 else ""


def _drain(drain: DrainLayout, which: str) -> Iterator[_Row]:
    key, material, area = drain.key, drain.pipe.key, drain.area.name
    yield f"{key}/pipe", f"Perforated pipe{which}", "pipe", material, area
    yield f"{key}/fittings", f"Bends and tee{which}", "fitting", material, area
    for corner in drain.drain.cleanouts:
        name = f"Cleanout at corner {corner}{which}"
        yield f"{key}/cleanout {corner}", name, "cleanout", material, area
    for number, outlet in enumerate(drain.drain.daylight, 1):
        name = f"Solid pipe to daylight{which}"
        pipe = outlet.pipe or material
        yield f"{key}/daylight {number}", name, "lead", pipe, area


def _bleeders(bleeders: Sequence[Bleeder]) -> Iterator[_Row]:
    if bleeders:
        pipe = bleeders[0].pipe.key
        yield "bleeders", "Bleeders through the footing", "bleeder", pipe, ""


def _lead(sump: SumpLayout | None) -> Iterator[_Row]:
    if sump is None or sump.lead is None:
        return
    lead, area = sump.lead, sump.area.name
    yield "sump/pipe", "Solid pipe to the sump", "lead", lead.pipe.key, area
    if lead.sleeve:
        yield "sump/sleeve", "Sleeve through the footing", "sleeve", lead.sleeve.key, area


def _ground(design: Design) -> Iterator[_Row]:
    soil = design.soil.group
    fill = design.backfill.material or soil
    stone = design.backfill.stone
    yield "ground/wall stone", "Washed stone up the wall", "wall stone", stone, ""
    yield "ground/backfill", "Backfill", "backfill", fill, ""
    yield "ground/grading", "Finished grade", "grading", fill, ""
    yield "ground/excavation", "Excavation", "excavation", soil, ""
