"""The vent pipe for soil gas: wanted and placed, wide enough, in stone, one for so much floor."""

from collections.abc import Iterator

from geometry.checks.finding import Finding
from geometry.checks.rulings import Ruling, ruling_findings
from geometry.layout.lay import Layout
from geometry.rules.radon import FLOOR_OF_ONE, PIPE, PLACED
from geometry.units import show_area, show_length


def radon_findings(layout: Layout) -> Iterator[Finding]:
    """Yield what the rules on vents find; nothing where none is wanted or placed."""
    yield from ruling_findings(layout, "radon-pipe", "vent for soil gas", _rulings(layout))


def _rulings(layout: Layout) -> Iterator[Ruling]:
    system, vent = layout.design.project.units, layout.vent
    if vent is None:
        if layout.design.site.radon_vent:
            yield Ruling(
                PLACED, False, "a vent is wanted and none is placed",
                "Give its place on the plan: [vent] at. Where walls above let it go straight up.",
            )  # fmt: skip
        return
    wide = vent.pipe.outside_diameter_m - 2 * vent.pipe.wall_m
    stands = any(x.role == "base" for x in vent.area.floor.layers)
    words = f"vent of {vent.pipe.name.split(', ', 1)[-1]} {'in' if stands else 'without'} stone"
    yield Ruling(PLACED, stands, words, "Give the floor a layer of clean stone it can draw from.")
    inside = f"{show_length(round(wide, 3), system)} inside"
    yield Ruling(PIPE, PIPE.met(wide), inside, "Take one of 3 or 4 in.")
    floor = float(vent.area.room.area)
    yield Ruling(
        FLOOR_OF_ONE, floor <= FLOOR_OF_ONE.most, f"one pipe for {show_area(floor, system)}",
        "Set a second one, or join them under the roof.",
    )  # fmt: skip
