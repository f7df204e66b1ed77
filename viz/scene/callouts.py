"""Labels beside a picture: two columns, no overlap, leaders that do not cross."""

from collections.abc import Collection, Mapping, Sequence
from dataclasses import dataclass, replace
from itertools import combinations
from typing import Literal

import numpy as np
from numpy.typing import NDArray

from viz.scene.view import Size

Side = Literal["left", "right"]
SEEN = 30  # fewer pixels than this are not worth a label
INSET = 6  # pixels from a part's rim to the leader's dot, where it is wide enough
REACH = 70  # pixels of a part's end to look for a spot in; leaders stay short
APART = 14.0  # least distance between two dots, pixels
Spot = tuple[float, float]


@dataclass(frozen=True)
class Callout:
    """A label's lines (bold or not), the spot it points at and the height of its middle, pixels."""

    rows: tuple[tuple[str, bool], ...]
    side: Side
    spot: Spot
    middle: float


def called_out(
    masks: Mapping[str, NDArray[np.bool_]],
    labels: Collection[str],
    one_column: bool,
    rising: Side,
    together: Collection[str] = (),
) -> list[tuple[str, Side, Spot]]:
    """Part, side and the spot to point at, for every labelled part that is seen.

    masks: the (height, width) pixels that show each part.
    rising: the side towards which level things climb in the picture.
    together: parts to name on the right, one under another, wherever they are seen.
    """
    seen = {name: masks[name] for name in labels if name in masks and masks[name].sum() >= SEEN}
    if not seen:
        return []
    ranked = sorted(seen, key=lambda name: (name in together, _middle(seen[name])[0]))
    half = 0 if one_column else len(ranked) // 2
    sides: tuple[tuple[Side, list[str]], ...] = (("left", ranked[:half]), ("right", ranked[half:]))
    found: list[tuple[str, Side, Spot]] = []
    for side, names in sides:
        # The part that takes the spot nearest its column is the one farthest up (or down) there,
        # so that the leaders of a stack of thin layers keep the layers' order.
        names.sort(key=lambda name: _middle(seen[name])[1], reverse=side != rising)
        for name in names:
            spot = _spot(seen[name], side, [taken for *_, taken in found])
            found.append((name, side, spot))
    return found


def _middle(mask: NDArray[np.bool_]) -> tuple[float, float]:
    rows, columns = np.nonzero(mask)
    return float(columns.mean()), float(rows.mean())


def _spot(mask: NDArray[np.bool_], side: Side, taken: Sequence[Spot]) -> Spot:
    """A point well inside the part, as near to its column as can be and clear of other dots."""
    rows, columns = np.nonzero(_near(mask, side))
    free = np.ones(len(rows), dtype=bool)
    for x, y in taken:
        free &= np.hypot(columns - x, rows - y) >= APART
    if not free.any():
        rows, columns = np.nonzero(mask)
        free = np.ones(len(rows), dtype=bool)
    rows, columns = rows[free], columns[free]
    edge = columns.min() if side == "left" else columns.max()
    near = np.flatnonzero(np.abs(columns - edge) <= 2)
    middle = near[len(near) // 2]
    return float(columns[middle]), float(rows[middle])


def _near(mask: NDArray[np.bool_], side: Side) -> NDArray[np.bool_]:
    """The end of the part that is nearest to the column, less its rim where it is wide enough."""
    sure = _eroded(mask) if _eroded(mask).sum() >= SEEN else mask
    columns = np.flatnonzero(sure.any(axis=0))
    near = np.zeros_like(mask)
    if side == "left":
        near[:, columns[0] : columns[0] + REACH] = sure[:, columns[0] : columns[0] + REACH]
    else:
        near[:, max(columns[-1] - REACH, 0) :] = sure[:, max(columns[-1] - REACH, 0) :]
    for _ in range(INSET - 1):
        smaller = _eroded(near)
        if smaller.sum() < SEEN:
            break
        near = smaller
    return near


def _eroded(mask: NDArray[np.bool_]) -> NDArray[np.bool_]:
    inner = np.zeros_like(mask)
    inner[1:-1, 1:-1] = (
        mask[1:-1, 1:-1] & mask[:-2, 1:-1] & mask[2:, 1:-1] & mask[1:-1, :-2] & mask[1:-1, 2:]
    )
    return inner


def stacked(callouts: Sequence[Callout], height: float, size: Size) -> list[Callout]:
    """One column's callouts, moved so that none overlaps and no two leaders cross.

    height: the room each label takes, pixels.
    """
    ordered = sorted(callouts, key=lambda item: item.spot[1])
    slots = _spread([item.spot[1] for item in ordered], height, size[1])
    placed = [replace(c, middle=slot) for c, slot in zip(ordered, slots, strict=True)]
    rim = 0.0 if placed and placed[0].side == "left" else float(size[0])
    swapped = True
    while swapped:
        swapped = False
        for i, j in combinations(range(len(placed)), 2):
            one, two = placed[i], placed[j]
            if _length(one, two.middle, rim) + _length(two, one.middle, rim) < (
                _length(one, one.middle, rim) + _length(two, two.middle, rim) - 1e-6
            ):
                placed[i], placed[j] = (
                    replace(one, middle=two.middle),
                    replace(two, middle=one.middle),
                )
                swapped = True
    return placed


def _length(item: Callout, middle: float, rim: float) -> float:
    return float(np.hypot(item.spot[0] - rim, item.spot[1] - middle))


def _spread(wished: Sequence[float], height: float, room: float) -> list[float]:
    """Heights as near to the wished ones as non-overlap allows (pooled, least squares)."""
    blocks: list[list[float]] = []  # each: sum of (wish - rank * height), count
    for rank, wish in enumerate(wished):
        blocks.append([wish - rank * height, 1.0])
        while len(blocks) > 1 and blocks[-2][0] / blocks[-2][1] > blocks[-1][0] / blocks[-1][1]:
            total, count = blocks.pop()
            blocks[-1][0] += total
            blocks[-1][1] += count
    bases = [total / count for total, count in blocks for _ in range(int(count))]
    lowest, highest = height / 2 + 6, room - 6 - height / 2 - (len(wished) - 1) * height
    return [min(max(base, lowest), highest) + k * height for k, base in enumerate(bases)]
