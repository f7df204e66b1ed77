"""The floor's edge and the walls against the energy codes' least insulation."""

from collections.abc import Callable, Iterator, Sequence

from geometry.checks.finding import Finding
from geometry.checks.rulings import Ruling, in_area, ruling_findings
from geometry.heat.buildup import insulation
from geometry.heat.words import show_resistance
from geometry.layout.areas import AreaLayout
from geometry.layout.lay import Layout
from geometry.materials.catalogue import BOARDS
from geometry.rules.energy import (
    AT_GRADE_M,
    EnergyEdition,
    Zone,
    energy_editions,
    heated,
    slab_limit,
    wall_limit,
)
from geometry.units import System, show_length

# Boards are sold to the nearest tenth of R; an R is met within it.
_WITHIN = 0.02


def energy_findings(layout: Layout) -> Iterator[Finding]:
    """Yield what the energy codes ask of heated areas; nothing without a climate zone."""
    climate, codes = layout.design.climate, layout.design.rules.codes
    warm = [area for area in layout.areas if area.name not in climate.unheated]
    found = [in_area(layout, a.name, one) for a in warm for one in _tubes(layout, a)]
    if climate.zone:
        editions = energy_editions(codes)
        found += [
            in_area(layout, area.name, one)
            for area in warm
            for one in _held(layout, area, editions, climate.zone)
        ]
    yield from ruling_findings(layout, "energy-rules", "insulation by the energy code", found)


def _tubes(layout: Layout, area: AreaLayout) -> Iterator[Ruling]:
    """Yield what is asked under a slab with tubes, in any zone."""
    if area.floor.tubing is None:
        return
    system, under = layout.design.project.units, insulation(area.floor)
    limit = heated()
    words = f"heated slab, {show_resistance(under, system)} of boards under it"
    yield Ruling(limit, under >= limit.least - _WITHIN, words, "Lay foam under the whole slab.")


def _held(
    layout: Layout, area: AreaLayout, editions: Sequence[EnergyEdition], zone: Zone
) -> Iterator[Ruling]:
    depth = layout.ground.at_wall - area.finished_floor
    if depth < AT_GRADE_M:
        for alike in _alike(editions, lambda e: (e.rules[zone].slab_r, e.rules[zone].slab_depth_m)):
            yield from _slab(layout, area, alike, zone)
    else:
        for alike in _alike(editions, lambda e: (e.rules[zone].continuous, e.rules[zone].cavity)):
            yield from _wall(layout, alike, zone)


def _alike(
    editions: Sequence[EnergyEdition], asked: Callable[[EnergyEdition], tuple[float, float]]
) -> list[list[EnergyEdition]]:
    """Return the editions that ask for the same together, in their order."""
    found: dict[tuple[float, float], list[EnergyEdition]] = {}
    for one in editions:
        found.setdefault(asked(one), []).append(one)
    return list(found.values())


def _slab(
    layout: Layout, area: AreaLayout, editions: Sequence[EnergyEdition], zone: Zone
) -> Iterator[Ruling]:
    rule, system = editions[0].rules[zone], layout.design.project.units
    if not rule.slab_r:
        return
    edge = _edge(area)
    limit = slab_limit(editions, zone, show_length(rule.slab_depth_m, system))
    words = f"slab at grade, {show_resistance(edge, system)} at its edge"
    yield Ruling(
        limit, edge >= limit.least - _WITHIN, words,
        "Set a board between slab and wall, and lay it on under the slab, or down the wall.",
    )  # fmt: skip


def _edge(area: AreaLayout) -> float:
    """Return the resistance of the board at a slab's edge, m2K/W."""
    board = area.floor.edge_board
    row = BOARDS.get(board.material) if board else None
    return row.r_per_m * board.thickness if row and board else 0.0


def _wall(layout: Layout, editions: Sequence[EnergyEdition], zone: Zone) -> Iterator[Ruling]:
    rule, system = editions[0].rules[zone], layout.design.project.units
    if not rule.continuous:
        return
    given = layout.design.climate.wall_resistance
    limit = wall_limit(editions, zone)
    words = _wall_words(given, system)
    met = given is not None and given >= limit.least - _WITHIN
    yield Ruling(limit, met, words, "Tell what insulates the walls (climate.wall_resistance).")


def _wall_words(given: float | None, system: System) -> str:
    if given is None:
        return "nothing is said of insulation on the basement's walls"
    return f"basement walls with {show_resistance(given, system)}"
