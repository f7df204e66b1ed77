"""The labels of one still: their lines, the room they need beside it, and where each stands."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace

import numpy as np
from PIL import Image

from viz.scene import lettering
from viz.scene.anchors import SEEN, Found, Mask, called_out
from viz.scene.bodies import Composition
from viz.scene.callouts import Callout, Side, Spot, stacked
from viz.scene.camera import Camera, Margins
from viz.scene.painting import Painting
from viz.scene.view import Size, View

AIR = 0.03  # of the picture's shorter side, left free all round
COLUMN = 0.135  # widest line of a label, as a share of the picture
HINT = 0.008  # of the picture's width; a narrower glimpse of a wider part bears no label
FLOOR = frozenset({"base", "blinding", "retarder", "insulation", "slab", "fill"})


@dataclass(frozen=True)
class Legend:
    """Words by part, the height of letters, and one column for all or two; pixels of size."""

    texts: Mapping[str, str]
    size: Size
    height: int
    one_column: bool = False
    title: str = ""

    def rows(self, part: str) -> tuple[lettering.Row, ...]:
        """The lines of one label."""
        return lettering.rows(self.texts[part], self.height, COLUMN * self.size[0])

    def tall(self, part: str) -> float:
        """The height one label takes in its column."""
        return lettering.room(self.height, len(self.rows(part)))

    @property
    def air(self) -> float:
        """What is left free all round."""
        return AIR * min(self.size)

    @property
    def margins(self) -> Margins:
        """A rim of air, and room for the columns."""
        air, top = self.air, self.air + self.head
        if not self.texts:
            return Margins(air, air, top, air)
        column = lettering.width(map(self.rows, self.texts), self.height)
        return Margins(air if self.one_column else column, column, top, air)

    @property
    def head(self) -> float:
        """The height the title takes at the top."""
        return lettering.TITLE * lettering.LINE * self.height if self.title else 0.0

    def holds(self, parts: Sequence[str]) -> bool:
        """Whether one column holds the labels of so many parts."""
        return sum(map(self.tall, parts)) <= self.size[1] - self.air - self.head


def legend_of(view: View, scene: Composition, size: Size) -> Legend:
    """All the labels a picture may bear: one column for layers pulled apart, where it holds all."""
    parts = {item.label.part for item in scene.items}
    texts = {part: text for part, text in view.labels.items() if part in parts and text.strip()}
    legend = Legend(texts, size, lettering.letter_height(size), title=view.title)
    one = view.kind == "exploded" and legend.holds(list(texts))
    return replace(legend, one_column=one)


def lettered(
    image: Image.Image,
    legend: Legend,
    painting: Painting,
    scene: Composition,
    camera: Camera,
    rising: Side,
) -> Image.Image:
    """The picture with a label for every part that is seen in it; see `called_out` for rising."""
    floor = {item.label.part for item in scene.items if item.label.role in FLOOR}
    masks = _one_each(seen_masks(painting, scene, camera), legend.texts)
    found = called_out(masks, legend.texts, legend.one_column, rising, floor)
    finer = image.size[0] / painting.parts.shape[1]
    fine = [(part, side, (x * finer, y * finer)) for part, side, (x, y) in found]
    height, callouts = arranged(legend, fine)
    if legend.title:
        lettering.headed(image, legend.title, legend.air / 2, legend.height)
    return lettering.lettered(image, callouts, height)


def arranged(legend: Legend, found: Sequence[Found]) -> tuple[int, list[Callout]]:
    """The labels in their columns, and the height of their letters.

    The letters are smaller where a column would not hold its labels, and if even the smallest
    do not fit, the last labels found are left out.
    """
    columns = [[item for item in found if item[1] == side] for side in ("left", "right")]
    fitting = replace(legend, texts={part: legend.texts[part] for part, *_ in found})
    while fitting.height > lettering.SMALLEST and not all(map(fitting.holds, map(_names, columns))):
        fitting = replace(fitting, height=fitting.height - 1)
    for column in columns:
        while not fitting.holds(_names(column)):
            column.pop()
    placed = [_stacked(fitting, column) for column in columns if column]
    return fitting.height, [callout for column in placed for callout in column]


def _names(column: Sequence[Found]) -> list[str]:
    return [name for name, *_ in column]


def _stacked(legend: Legend, column: Sequence[Found]) -> list[Callout]:
    height, (wide, high) = legend.height, legend.size
    bend = lettering.bend(map(legend.rows, _names(column)), height)

    def callout(part: str, side: Side, spot: Spot) -> Callout:
        turn = bend if side == "left" else wide - bend
        drop = lettering.drop(height)
        return Callout(legend.rows(part), side, spot, turn, legend.tall(part), drop)

    top = legend.air / 2 + legend.head
    return stacked([callout(*item) for item in column], top, high - legend.air / 2)


def seen_masks(painting: Painting, scene: Composition, camera: Camera) -> dict[str, Mask]:
    """Where each part is seen: on the cut where it is cut, else anywhere but for mere glimpses."""
    masks = {}
    for number, name in enumerate(painting.names):
        seen = painting.parts == number
        cut = seen & painting.cut
        if cut.sum() >= SEEN:
            masks[name] = cut
        elif seen.any() and not _glimpsed(seen, scene, camera, name):
            masks[name] = seen
    return masks


def _one_each(masks: Mapping[str, Mask], texts: Mapping[str, str]) -> dict[str, Mask]:
    """Of parts with the same words, the one that shows most."""
    most = sorted(masks, key=lambda name: masks[name].sum())
    best = {texts.get(name, name): name for name in most}
    return {name: mask for name, mask in masks.items() if best[texts.get(name, name)] == name}


def _glimpsed(seen: Mask, scene: Composition, camera: Camera, name: str) -> bool:
    """Whether so little looks out from behind other parts that nobody would know it."""
    parts = [item.vertices for item in scene.items if item.label.part == name]
    full = np.ptp(camera.pixels(np.vstack(parts)), axis=0)
    shown = np.array([np.ptp(where) + 1 for where in np.nonzero(seen)[::-1]])
    return bool(((shown < HINT * seen.shape[1]) & (shown < full / 2)).any())
