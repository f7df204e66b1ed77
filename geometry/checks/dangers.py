"""The dangers of the job with this design's own figures: hole, wall, pump; each with its source."""

from collections.abc import Iterator
from dataclasses import dataclass

from geometry.checks.ground_rules import dug_depth
from geometry.layout.lay import Layout
from geometry.sources import Source
from geometry.units import FOOT, System, show_length
from geometry.water.wall import WallRun, highest, wall_runs

_SIDES = Source("29 CFR 1926.651, .652", clause=".652(a)(1), (b)(1)(i); .651(c)(2), (j)(2), (k)(1)")
_UNDER = Source("29 CFR 1926.651", clause="(i)(2)", sure="memory")
_WALL = Source("IRC", clause="R404.1.7", sure="memory")
_GFCI = Source(
    "NEC", "2020", "210.8(A)(5) basements, 422.5(A)(6) sump pumps; 29 CFR 1926.404(b)(1) on sites",
    sure="second-hand",
)  # fmt: skip

# Depths and distances of the rule in feet, and the round metric figure that is not less safe.
_FIGURES: dict[System, tuple[float, ...]] = {
    "ft-in": (5 * FOOT, 4 * FOOT, 25 * FOOT, 2 * FOOT), "metric": (1.5, 1.2, 7.6, 0.61),
}  # fmt: skip


@dataclass(frozen=True)
class Danger:
    """One danger: what it is called, what to do in sentences, and who says so."""

    key: str
    title: str
    words: str
    source: Source


def dangers(layout: Layout) -> tuple[Danger, ...]:
    """Return the dangers this design has, the gravest first."""
    system = layout.design.project.units
    return tuple(_dangers(layout, system))


def _dangers(layout: Layout, system: System) -> Iterator[Danger]:
    deep = dug_depth(layout)
    if deep > 0:
        yield _hole(layout, deep, system)
        yield Danger(
            "undermining", "Digging beside a footing",
            "Nothing is dug below the base of a footing, or into the ground that carries it, "
            "without support or an engineer's word.", _UNDER,
        )  # fmt: skip
    run = highest(wall_runs(layout))
    if run is not None:
        yield _unbraced(run, system)
    if layout.sump:
        yield Danger(
            "pump", "Electricity at water",
            "A pump in a pit is electricity at water: the circuit is protected by a ground-fault "
            "circuit interrupter, wired by someone licensed where the code asks it, and switched "
            "off before a hand goes into the pit. A pump that trips in a storm floods the floor: "
            "give it an alarm, and a spare that does not hang on the same circuit.", _GFCI,
        )  # fmt: skip


def _hole(layout: Layout, deep: float, system: System) -> Danger:
    limit, ladder, reach, back = (show_length(metres, system) for metres in _FIGURES[system])
    over = "more" if deep >= _FIGURES[system][0] else "less"
    return Danger(
        "hole", "Sides of the hole",
        f"The hole is about {show_length(round(deep, 3), system, 1)} deep, {over} than the {limit} "
        "from which its sides are protected whatever the ground; less deep only where a competent "
        "person sees no sign of a slide. Unless the ground is classed, a side is laid back 1 1/2 "
        f"across for 1 up; {layout.design.excavation.slope:.3g} to 1 is drawn. A ladder within "
        f"{reach} wherever it is {ladder} deep or more; spoil and machines {back} back from the "
        "edge; a competent person looks before every shift and after every rain. Have pipes and "
        "cables marked before the dig.", _SIDES,
    )  # fmt: skip


def _unbraced(run: WallRun, system: System) -> Danger:
    fill = show_length(round(run.fill_to_foot_m, 3), system)
    tall = show_length(round(run.unbraced_without_slab_m, 3), system)
    return Danger(
        "wall", "A wall nothing holds yet",
        f"Before deck and slab are in, the wall stands {tall} free and would hold {fill} of fill "
        "over its foot. No fill before the concrete has its strength and the wall is braced or "
        "tied to the floor above; nobody between an unbraced wall and the fill; no machine near "
        "it.", _WALL,
    )  # fmt: skip
