"""The vent pipe for soil gas laid out: from the middle of the stone to its stub over the floor."""

from dataclasses import dataclass
from functools import cached_property

from shapely import Polygon

from geometry.label import STAGE, Label
from geometry.layout.areas import AreaLayout
from geometry.layout.bodies import Body, Prism
from geometry.materials.catalogue import PIPES
from geometry.materials.kinds import Pipe
from geometry.parts.vent import Vent
from geometry.plan.outline import circle

VENT_PART = "vent/pipe"
_SIDES = 32


@dataclass(frozen=True, eq=False)
class VentLayout:
    """The vent pipe in its area's floor; levels against the project's TOF, metres."""

    vent: Vent
    area: AreaLayout

    @property
    def pipe(self) -> Pipe:
        """The pipe of the catalogue."""
        return PIPES[self.vent.pipe]

    @property
    def foot(self) -> float:
        """Level of its open foot: half way up the lowest stone, or under the floor without any."""
        levels, layers = self.area.stack.levels, self.area.floor.layers
        stone = next((n for n, x in enumerate(layers) if x.role == "base"), None)
        return levels[0] if stone is None else (levels[stone] + levels[stone + 1]) / 2

    @property
    def top(self) -> float:
        """Level of its stub's end, over the finished floor."""
        return self.area.finished_floor + self.vent.stub

    @cached_property
    def outside(self) -> Polygon:
        """Plan of its outside."""
        return circle(self.vent.at, self.pipe.outside_diameter_m / 2, _SIDES)

    @property
    def opening(self) -> Prism:
        """What it takes out of the floor."""
        return Prism(self.outside, self.foot, self.top)

    @property
    def body(self) -> Body:
        """The pipe."""
        inner = circle(self.vent.at, self.pipe.outside_diameter_m / 2 - self.pipe.wall_m, _SIDES)
        ring = Prism(self.outside.difference(inner), self.foot, self.top)
        label = Label(
            VENT_PART, "Vent pipe for soil gas", "vent", self.vent.pipe, self.area.name,
            STAGE["vent"],
        )  # fmt: skip
        return Body(label, (ring,))
