"""Where things stand in the figure: low point at the left, high point at the right, floor between.

Millimetres of paper; the area's top of footing is y = 0, the middle of the floor x = 0. Distances
outward are true to scale from the walls' inside faces; the floor between them is shortened.
"""

from dataclasses import dataclass

from shapely import Polygon, box

from geometry.layout.drain import DrainLayout

# The soil shown under and beside everything, mm.
SOIL = 7.0
# Gap of the break in the floor, mm, and how far it stands from the right wall.
BREAK, BREAK_IN = 3.0, 8.0


@dataclass(frozen=True)
class Frame:
    """The drain, millimetres for a metre, half the width of the room, and the walls' cut top.

    inverts: at the left and at the right end, metres; the low and the high point's unless given.
    """

    drain: DrainLayout
    per_metre: float
    half: float
    top: float
    inverts: tuple[float, float] | None = None

    def y(self, level: float) -> float:
        """Return the height on paper of a level of the project."""
        return (level - self.drain.area.tof) * self.per_metre

    @property
    def footing_in(self) -> float:
        """Where the footing's inner edge stands, outward from the middle."""
        return self.half - self.drain.area.projection_in * self.per_metre

    @property
    def footing_out(self) -> float:
        """Where its outer edge stands, where the trench begins."""
        return self.footing_in + self.drain.area.footing.width * self.per_metre

    @property
    def pipe(self) -> float:
        """Where the pipe's centre stands: beside the footing, or inside it under the floor."""
        if self.drain.inside:
            return self.footing_in - self.drain.drain.offset * self.per_metre
        return self.footing_out + self.drain.drain.offset * self.per_metre

    @property
    def edge(self) -> float:
        """Where the stone ends, or the footing where the stone lies inside it."""
        return self.footing_out if self.drain.inside else self.stone[1]

    @property
    def stone(self) -> tuple[float, float]:
        """Where the stone beside the footing begins and ends."""
        width = self.drain.drain.stone.width * self.per_metre
        if self.drain.inside:
            return self.footing_in - width, self.footing_in
        return self.footing_out, self.footing_out + width

    @property
    def inner(self) -> float:
        """Where the floor begins that has no drain in it."""
        return min(self.footing_in, self.stone[0])

    @property
    def low(self) -> float:
        """The lowest line shown."""
        area = self.drain.area
        levels = (self.drain.stone_bottom, area.footing_bottom, area.subgrade)
        return self.y(min(levels)) - SOIL

    def centre(self, side: int) -> float:
        """Return the height on paper of the pipe's centre at one end; side: -1 left, 1 right."""
        ends = self.inverts or (self.drain.outlet_invert, self.drain.high_invert)
        return self.y(ends[0 if side < 0 else 1] + self.drain.bore)

    def block(self, side: int, near: float, far: float, low: float, high: float) -> Polygon:
        """Return a box between two distances outward on one side; side: -1 left, 1 right."""
        ends = sorted((side * near, side * far))
        return box(ends[0], low, ends[1], high)
