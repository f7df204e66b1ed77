"""Names of the parts that are no stacks of prisms: pipework and earthworks."""

from geometry.label import STAGE, Label, Role
from geometry.layout.drain import DrainLayout
from geometry.layout.sump import SumpLayout
from geometry.project import Design

_Row = tuple[str, str, Role, str, str]


def labels(design: Design, drain: DrainLayout | None, sump: SumpLayout | None) -> dict[str, Label]:
    """Return labels by part id."""
    rows = [*_drain(drain), *_lead(sump), *_ground(design)]
    return {row[0]: Label(*row, STAGE[row[2]]) for row in rows}


def _drain(drain: DrainLayout | None) -> list[_Row]:
    if drain is None:
        return []
    key, area = drain.pipe.key, drain.area.name
    rows: list[_Row] = [
        ("drain/pipe", "Perforated pipe", "pipe", key, area),
        ("drain/fittings", "Bends and tee", "fitting", key, area),
    ]
    for corner in drain.drain.cleanouts:
        name = f"Cleanout at corner {corner}"
        rows.append((f"drain/cleanout {corner}", name, "cleanout", key, area))
    return rows


def _lead(sump: SumpLayout | None) -> list[_Row]:
    if sump is None or sump.lead is None:
        return []
    lead, area = sump.lead, sump.area.name
    return [
        ("sump/pipe", "Solid pipe to the sump", "lead", lead.pipe.key, area),
        ("sump/sleeve", "Sleeve through the footing", "sleeve", lead.sleeve.key, area),
    ]


def _ground(design: Design) -> list[_Row]:
    soil = design.soil.group
    fill = design.backfill.material or soil
    return [
        ("ground/wall stone", "Washed stone up the wall", "wall stone", design.backfill.stone, ""),
        ("ground/backfill", "Backfill", "backfill", fill, ""),
        ("ground/grading", "Finished grade", "grading", fill, ""),
        ("ground/excavation", "Excavation", "excavation", soil, ""),
    ]
