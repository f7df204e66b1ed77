"""The labels of one still: their lines, the room they need beside it, and where each points."""

from collections.abc import Mapping
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray
from PIL import Image

from viz.scene import lettering
from viz.scene.bodies import Composition
from viz.scene.callouts import SEEN, Callout, Side, Spot, called_out, stacked
from viz.scene.camera import Margins
from viz.scene.paint import Painting
from viz.scene.view import Size, View

AIR = 0.03  # of the picture's shorter side, left free all round
COLUMN = 0.19  # widest line of a label, as a share of the picture
SMALLEST = 9  # pixels; smaller letters cannot be read
FLOOR = frozenset({"base", "blinding", "retarder", "insulation", "slab", "fill"})


@dataclass(frozen=True)
class Legend:
    """Words by part, the height of letters, and one column for all or two; pixels of size."""

    texts: Mapping[str, str]
    size: Size
    height: int
    one_column: bool = False

    def rows(self, part: str) -> tuple[lettering.Row, ...]:
        """The lines of one label."""
        return lettering.rows(self.texts[part], self.height, COLUMN * self.size[0])

    @property
    def room(self) -> float:
        """The height the tallest label takes in its column."""
        return lettering.room(self.height, max((len(self.rows(p)) for p in self.texts), default=1))

    @property
    def margins(self) -> Margins:
        """A rim of air, and room for the columns."""
        air = AIR * min(self.size)
        if not self.texts:
            return Margins(air, air, air, air)
        column = lettering.width(map(self.rows, self.texts), self.height)
        return Margins(air if self.one_column else column, column, air, air)


def legend_of(view: View, scene: Composition, size: Size) -> Legend:
    """All the labels a picture may bear: one column for layers pulled apart, where it holds all."""
    parts = {item.label.part for item in scene.items}
    texts = {part: text for part, text in view.labels.items() if part in parts and text.strip()}
    height = lettering.letter_height(size)
    one = view.kind == "exploded" and len(texts) * Legend(texts, size, height).room <= size[1]
    return Legend(texts, size, height, one)


def lettered(
    image: Image.Image, legend: Legend, painting: Painting, scene: Composition, rising: Side
) -> Image.Image:
    """The picture with a label for every part that is seen in it; see `called_out` for rising."""
    floor = {body.label.part for body in scene.bodies if body.label.role in FLOOR}
    found = called_out(_masks(painting), legend.texts, legend.one_column, rising, floor)
    finer = image.size[0] / painting.parts.shape[1]
    spots = {part: (side, (x * finer, y * finer)) for part, side, (x, y) in found}
    legend = _fitting(legend, spots)
    return lettering.lettered(image, _placed(legend, spots), legend.height)


def _fitting(legend: Legend, spots: Mapping[str, tuple[Side, Spot]]) -> Legend:
    """The labels that are seen, in smaller letters where a column would not hold them."""
    texts = {part: legend.texts[part] for part in spots}
    sides = [side for side, _ in spots.values()]
    most = max((sides.count(side) for side in sides), default=0)
    height = legend.height
    while True:
        fitting = Legend(texts, legend.size, height, legend.one_column)
        if most * fitting.room <= legend.size[1] or height <= SMALLEST:
            return fitting
        height -= 1


def _placed(legend: Legend, spots: Mapping[str, tuple[Side, Spot]]) -> list[Callout]:
    callouts = [
        Callout(legend.rows(part), side, spot, spot[1]) for part, (side, spot) in spots.items()
    ]
    columns = [[c for c in callouts if c.side == side] for side in ("left", "right")]
    return [item for column in columns for item in stacked(column, legend.room, legend.size)]


def _masks(painting: Painting) -> dict[str, NDArray[np.bool_]]:
    """Where each part is seen: on the cut where it is cut, else anywhere."""
    masks = {}
    for number, name in enumerate(painting.names):
        seen = painting.parts == number
        cut = seen & painting.cut
        masks[name] = cut if cut.sum() >= SEEN else seen
    return masks
