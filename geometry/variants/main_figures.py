"""The main figures of one design, for a line of a table of many."""

from collections.abc import Iterable
from dataclasses import dataclass

from geometry.checks.finding import Severity
from geometry.layout.lay import Layout
from geometry.materials.catalogue import find
from geometry.materials.kinds import Kind
from geometry.report import Found, Report

_GRAVEST_FIRST: tuple[Severity, ...] = ("stop", "look", "fine")


@dataclass(frozen=True)
class MainFigures:
    """One design in figures; SI. Volumes are in place, nothing added for waste.

    tof_m: elevation of the project's top of footing. floor_m2: inside the walls, all areas.
    finished_floor_m: of the lowest area, against TOF. drain_m, drain_fall: of all drains together,
    and of the main one. worst, worst_about, worst_found: the gravest finding. loss_w_k: heat to
    the ground of all heated areas. What a design does not have is None.
    """

    project: str
    units: str
    tof_m: float
    floor_m2: float
    finished_floor_m: float
    concrete_m3: float
    stone_m3: float
    sand_m3: float
    foam_m3: float
    foam_boards: int
    drain_m: float | None
    drain_fall: float | None
    worst: Severity
    worst_about: str
    worst_found: str
    stops: int
    looks: int
    fines: int
    loss_w_k: float | None
    cost_least: float | None
    cost_most: float | None


def main_figures(layout: Layout) -> MainFigures:
    """Return a sound design's main figures; none of them needs solids."""
    made = Report(layout)
    worst = _worst(made.findings)
    boards = [r for r in made.order.rows if r.group == "foam" and r.sold == "board"]
    count = {s: sum(f.severity == s for f in made.findings) for s in _GRAVEST_FIRST}
    cost = made.order.cost
    return MainFigures(
        project=made.design,
        units=made.units,
        tof_m=made.top_of_footing_elevation_m,
        floor_m2=sum(float(area.room.area) for area in layout.areas),
        finished_floor_m=min(area.finished_floor for area in layout.areas),
        concrete_m3=_volume(made, "concrete"),
        stone_m3=_volume(made, "stone"),
        sand_m3=_volume(made, "sand"),
        foam_m3=_volume(made, "board"),
        foam_boards=round(sum(row.count for row in boards)),
        drain_m=sum(d.length_m for d in made.drains) if made.drains else None,
        drain_fall=made.drain.fall_m_per_m if made.drain else None,
        worst=worst.severity if worst else "fine",
        worst_about=worst.subject if worst else "",
        worst_found=worst.found if worst else "",
        stops=count["stop"],
        looks=count["look"],
        fines=count["fine"],
        loss_w_k=sum(heat.loss_w_k for heat in made.warmth) if made.warmth else None,
        cost_least=cost[0] if cost else None,
        cost_most=cost[1] if cost else None,
    )


def _worst(found: Iterable[Found]) -> Found | None:
    """Return the first of the gravest findings."""
    return min(found, key=lambda f: _GRAVEST_FIRST.index(f.severity), default=None)


def _volume(made: Report, kind: Kind) -> float:
    """Return the volume in place of all materials of a kind, m3."""
    rows = ((find(volume.material), volume.volume_m3) for volume in made.volumes)
    return sum((size for row, size in rows if row and row.kind == kind), 0.0)
