"""The floor build-up: ordered layers, the tie that places them, the edge board."""

from typing import Annotated, Literal

from pydantic import Field

from geometry.materials.tubes import TUBES
from geometry.parts.fields import (
    BoardThickness,
    LayerThickness,
    Level,
    LevelAt,
    Name,
    PlanPoint,
    Record,
    Span,
    Tie,
    Ties,
)
from geometry.units import FOOT, INCH, MIL

LayerRole = Literal["base", "blinding", "retarder", "insulation", "slab", "fill"]


class Layer(Record):
    """One layer: a name to speak of it, a material, an in-place thickness, what it is for."""

    name: Name
    material: Name
    thickness: LayerThickness
    role: LayerRole


class EdgeBoard(Record):
    """A board standing between the floor and the wall, all round the room."""

    material: Name = "xps-iv"
    thickness: BoardThickness = 1 * INCH
    bottom: Level = LevelAt(base="slab bottom")
    top: Level = LevelAt(base="finished floor")


USUAL_LAYERS = (
    Layer(name="stone", material="stone-57", thickness=6 * INCH, role="base"),
    Layer(name="sand", material="sand-c33", thickness=0.5 * INCH, role="blinding"),
    Layer(name="retarder", material="poly-10mil", thickness=10 * MIL, role="retarder"),
    Layer(name="foam", material="xps-iv", thickness=2 * INCH, role="insulation"),
    Layer(name="slab", material="concrete", thickness=4 * INCH, role="slab"),
)


Pattern = Literal["serpentine", "counterflow"]
TubeKey = Literal["pex-3/8", "pex-1/2", "pex-5/8", "pex-3/4", "pex-16", "pex-20"]


class Tubing(Record):
    """Heating tubes in the slab.

    spacing: between two runs. tube: its size. pattern: a serpentine, or counterflow, where warm
    and cool runs lie side by side. loop: the longest one, its way to the manifold and back with it;
    unless given, what is usual for the tube. edge: the floor's edge, piers and pit to the nearest
    tube. manifold: its place on the plan; unless given, the middle of a wall. way: from the slab,
    at the manifold's place, up to it, once.
    """

    spacing: Annotated[float, Span("4 in", "2 ft", "12 in")] = 12 * INCH
    tube: TubeKey = "pex-1/2"
    pattern: Pattern = "serpentine"
    loop: Annotated[float, Span("50 ft", "1000 ft", "300 ft")] | None = None
    edge: Annotated[float, Span("2 in", "2 ft", "6 in")] = 6 * INCH
    manifold: PlanPoint | None = None
    way: Annotated[float, Span("0", "60 ft", "4 ft")] = 4 * FOOT

    @property
    def longest(self) -> float:
        """The longest loop, metres: as given, or as is usual for the tube."""
        return TUBES[self.tube].loop if self.loop is None else self.loop


class Floor(Record):
    """Layers from the bottom up, and the ties that place them.

    The first tie places the stack; further ties are checked against it. Unless one is given,
    the lowest insulation and the sheet right under it run over the footing at TOF; without
    insulation the top layer does. joints: how far apart the slab is cut or jointed, both ways.
    """

    layers: Annotated[tuple[Layer, ...], Field(min_length=1, max_length=30)] = Field(
        USUAL_LAYERS, alias="layer"
    )
    tie: Ties = ()
    edge_board: EdgeBoard | None = None
    tubing: Tubing | None = None
    joints: Annotated[float, Span("3 ft", "40 ft", "10 ft")] | None = None

    @property
    def ties(self) -> tuple[Tie, ...]:
        """The ties that are given, or the usual one."""
        return self.tie or (
            Tie(interface=f"{self._first_over().name} bottom", at=LevelAt(base="TOF")),
        )

    def _first_over(self) -> Layer:
        """The lowest layer that usually runs over the footing."""
        places = [n for n, layer in enumerate(self.layers) if layer.role == "insulation"]
        first = places[0] if places else len(self.layers) - 1
        sheet_under = first > 0 and self.layers[first - 1].role == "retarder"
        return self.layers[first - 1] if sheet_under else self.layers[first]
