"""Labels of the parts in ordered columns left and right, with leaders that never cross.

A leader runs level from its dot to the edge of the picture, bends once in the gutter and ends at
its label. Level runs at different heights cannot meet, and in the gutter the order is the same on
both sides, so no two leaders can cross.
"""

from collections.abc import Iterator, Mapping, Sequence

from shapely import MultiPolygon

from viz.drawing.lettering import text_box
from viz.drawing.marks import Circle, Leader, Mark, Point, Text
from viz.drawing.page import Box
from viz.drawing.place import Item, NoRoomError, spread
from viz.figures.section.anchors import SIDES, Side, anchor
from viz.figures.section.blocks import Block, Lettering
from viz.figures.section.layout import Layout
from viz.style.lines import LEADER, PAPER
from viz.style.text import PITCH

GAP = 2.2
# Radius of the circle round a key number, in text heights.
KEY_RADIUS = 1.0


def label_marks(
    shapes: Mapping[str, MultiPolygon],
    sides: Mapping[str, Side],
    lettering: Lettering,
    plan: Layout,
    kept: Mapping[Side, Sequence[float]],
    datum: float | None,
) -> tuple[Mark, ...]:
    """Return all labels with their leaders; each wording once.

    shapes: on paper, by wording. sides: the column of each wording; those without one are left
    to the flags. kept: heights at which something else crosses to that side. datum: height of
    the datum line, which crosses the right column where there is room.
    """
    marks: list[Mark] = []
    for side in SIDES:
        mine = {w: shape for w, shape in shapes.items() if sides.get(w) == side}
        lane = datum if side == "right" else None
        column = plan.left if side == "left" else plan.right
        for label, top in stacked(
            choose(mine, side, lettering, kept[side]), column, plan.text, lane
        ):
            marks += _drawn(label, top, side, plan, bool(lettering.keys))
    return tuple(sorted(marks, key=lambda mark: isinstance(mark, Text)))


def choose(
    shapes: Mapping[str, MultiPolygon],
    side: Side,
    lettering: Lettering,
    kept: Sequence[float] = (),
) -> list[Block]:
    """Return the blocks of one column, every dot on a height of its own.

    kept: heights to stay off. Thin layers have little choice of height, so they choose first.
    """
    blocks: list[Block] = []
    for wording in sorted(shapes, key=lambda w: (_tallest(shapes[w]), w)):
        taken = [label.dot[1] for label in blocks]
        dot = anchor(shapes[wording], side, taken, kept)
        blocks.append(lettering.block(wording, dot))
    return blocks


def _tallest(shape: MultiPolygon) -> float:
    return float(max(polygon.bounds[3] - polygon.bounds[1] for polygon in shape.geoms))


def stacked(
    blocks: Sequence[Block], column: Box, text: float, lane: float | None = None
) -> Iterator[tuple[Block, float]]:
    """Yield every block with the height of its top, from the lowest up.

    lane: a height that stays free for the datum line, where there is room for it.
    """
    ordered = sorted(blocks, key=lambda label: label.dot[1])
    items = [_item(label, text) for label in ordered]
    spots = _with_lane(ordered, items, column, lane)
    if spots is None:
        spots = spread(items, column.low, column.high, GAP)
    for label, item, middle in zip(ordered, items, spots, strict=True):
        yield label, middle + item.height / 2


def _item(label: Block, text: float) -> Item:
    """Return the block as an item that wants its first line level with its dot."""
    height = label.height(text)
    return Item(label.dot[1] + text / 2 - height / 2, height)


def _with_lane(
    blocks: Sequence[Block], items: Sequence[Item], column: Box, lane: float | None
) -> tuple[float, ...] | None:
    if lane is None:
        return None
    below = sum(label.dot[1] < lane for label in blocks)
    under, over = items[:below], items[below:]
    try:
        return (
            *spread(under, column.low, lane - GAP, GAP),
            *spread(over, lane + GAP, column.high, GAP),
        )
    except NoRoomError:
        return None


def lane_is_free(texts: Sequence[Text], column: Box, level: float) -> bool:
    """Tell whether a level line can cross the column without touching a text."""
    lane = Box(column.left, level - 0.5, column.right, level + 0.5)
    return not any(text_box(text).overlaps(lane) for text in texts)


def _drawn(label: Block, top: float, side: Side, plan: Layout, keyed: bool) -> Iterator[Mark]:
    left = side == "left"
    text, column = plan.text, plan.left if left else plan.right
    way = 1 if left else -1
    attach = top - text / 2
    edge = plan.strip.left if left else plan.strip.right
    start = column.right if left else column.left
    end, knee = start + way * 1.0, start + way * 3.0
    yield Leader((label.dot, (edge, label.dot[1]), (knee, attach), (end, attach)), layer="leaders")
    if keyed:
        yield from key_mark((start - way * text, attach), label.lines[0], text)
        return
    for index, line in enumerate(label.lines):
        at = (start, top - text - index * text * PITCH)
        yield Text(at, line, text, index < label.bold, "end" if left else "start", layer="labels")


def key_mark(middle: Point, number: str, text: float) -> Iterator[Mark]:
    """Yield the number of a key in its circle."""
    yield Circle(middle, KEY_RADIUS * text, LEADER, fill=PAPER, layer="labels")
    at = (middle[0], middle[1] - text / 2)
    yield Text(at, number, text, bold=True, anchor="middle", layer="labels")
