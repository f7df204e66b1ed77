"""Faults of the ground: levels that leave no hole or bury the house, a grading that is none."""

from collections.abc import Iterator
from difflib import get_close_matches
from itertools import pairwise

from geometry.faults.common import At, Words
from geometry.faults.lines import Path
from geometry.layout.ground import GroundLayout
from geometry.materials.catalogue import AGGREGATES
from geometry.parts.graded import SievePoint
from geometry.project import Design
from geometry.units import read_length

# A laser stands within sight of the footing; farther off, two elevation systems were mixed.
FARTHEST_LASER = "100 ft"


def ground_faults(design: Design, ground: GroundLayout, words: Words) -> Iterator[At]:
    """Yield impossible levels of ground and grade."""
    low = ground.areas[0]
    if ground.existing <= low.footing_bottom:
        yield At(
            ("excavation", "existing"),
            f"the ground at {words.level(ground.existing)} lies below the underside of the lowest "
            f"footing at {words.level(low.footing_bottom)}; check the sign and the datum",
        )
    lowest = min(ground.areas, key=lambda area: area.wall_top)
    if ground.at_wall > lowest.wall_top + 1e-9:
        yield At(
            ("grade", "at_wall"),
            f"the finished grade at {words.level(ground.at_wall)} buries the wall's top in "
            f'area "{lowest.name}" at {words.level(lowest.wall_top)}; '
            "lower the grade or raise the wall",
        )
    yield from working_faults(design, words)


def laser_faults(design: Design, words: Words) -> Iterator[At]:
    """Yield a laser out of sight of the footing."""
    datum = design.datum
    if datum.instrument is None:
        return
    if abs(datum.instrument - datum.top_of_footing) > read_length(FARTHEST_LASER):
        limit = words.limit(FARTHEST_LASER, up=False)
        yield At(
            ("datum", "instrument"),
            f"the laser is more than {limit} above or below top of footing; "
            "give both elevations in the same system",
        )


def working_faults(design: Design, words: Words) -> Iterator[At]:
    """Yield a hole too narrow for the drain stone beside the footing."""
    widths = [drain.stone.width for drain in design.drains if drain.line == "outside"]
    widest = max(widths, default=0.0)
    if design.excavation.working_space < widest - 1e-9:
        yield At(
            ("excavation", "working_space"),
            f"{words.size(design.excavation.working_space)} beside the footing is narrower than "
            f"the drain stone; dig at least {words.least(widest)}",
        )


def grading_faults(design: Design) -> Iterator[At]:
    """Yield gradings that are no curves, of the soil and of what is delivered."""
    if design.soil.grading:
        yield from _curve_faults(("soil", "grading"), design.soil.grading)
    named = [row.material for row in design.gradings]
    for number, row in enumerate(design.gradings):
        path: Path = ("grading", number, "material")
        if row.material not in AGGREGATES:
            close = get_close_matches(row.material, AGGREGATES, n=1) or ["stone-57"]
            yield At(path, f'"{row.material[:40]}" is no stone or sand here; such as "{close[0]}"')
        elif row.material in named[:number]:
            yield At(path, f"{row.material} has a grading already; leave one of the two out")
        yield from _curve_faults(("grading", number, "sieves"), row.sieves)


def _curve_faults(path: Path, sieves: tuple[SievePoint, ...]) -> Iterator[At]:
    """Yield too few sieves, a sieve twice, or less that passes a larger one."""
    curve = sorted(sieves)
    if len(curve) < 2:
        yield At(
            path, "fewer than two sieves are no curve; add those the test used, or leave it out"
        )
    for (small, below), (large, above) in pairwise(curve):
        if large - small < 1e-9:
            yield At(path, f"the sieve of {_mm(large)} stands here twice; leave one out")
        elif below > above:
            yield At(
                path,
                f"{below:.0%} pass the sieve of {_mm(small)} and only {above:.0%} the larger one "
                f"of {_mm(large)}; what passes must fall with the opening",
            )


def _mm(metres: float) -> str:
    return f"{metres * 1000:.4g} mm"
