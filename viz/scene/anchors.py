"""Which parts a picture labels, on which side, and the spot each leader points at."""

from collections.abc import Collection, Mapping, Sequence

import numpy as np
from numpy.typing import NDArray

from viz.scene.callouts import Side, Spot

SEEN = 30  # fewer pixels than this are not worth a label
INSET = 6  # pixels from a part's rim to the leader's dot, where it is wide enough
REACH = 70  # pixels of a part's end to look for a spot in; leaders stay short
APART = 14.0  # least distance between two dots, pixels
Mask = NDArray[np.bool_]
SIDES: tuple[Side, Side] = ("left", "right")
Found = tuple[str, Side, Spot]


def called_out(
    masks: Mapping[str, Mask],
    labels: Collection[str],
    one_column: bool,
    rising: Side,
    together: Collection[str] = (),
) -> list[Found]:
    """Part, side and the spot to point at, for every labelled part that is seen.

    The spots of the two columns lie on two sides of one upright line, so that leaders of
    different columns cannot meet.

    masks: the (height, width) pixels that show each part.
    rising: the side towards which level things climb in the picture.
    together: parts to name on the right, one under another, if they show there.
    """
    seen = {name: masks[name] for name in labels if name in masks and masks[name].sum() >= SEEN}
    if not seen:
        return []
    middles = {name: _middle(mask) for name, mask in seen.items()}
    divide = 0 if one_column else round(float(np.median([x for x, _ in middles.values()])))
    left = _lefts(seen, middles, divide, together)
    found: list[Found] = []
    for side in SIDES:
        names = [name for name in seen if (name in left) == (side == "left")]
        # The part that takes the spot nearest its column is the one farthest up (or down) there,
        # so that the leaders of a stack of thin layers keep the layers' order.
        names.sort(key=lambda name: middles[name][1], reverse=side != rising)
        for name in names:
            taken = [spot for *_, spot in found]
            found.append((name, side, _spot(_beside(seen[name], side, divide), side, taken)))
    return found


def _lefts(
    seen: Mapping[str, Mask], middles: Mapping[str, Spot], divide: int, together: Collection[str]
) -> set[str]:
    """The parts for the left column: those seen there, a third of all if so many show there."""
    stack = {n for n in together if n in seen and _shows(seen[n], "right", divide)}
    free = sorted(set(seen) - stack, key=lambda name: (middles[name][0], name))
    left = [name for name in free if middles[name][0] < divide]
    more = [n for n in free if n not in left and _shows(seen[n], "left", divide)]
    return {*left, *more[: max(len(seen) // 3 - len(left), 0)]}


def _shows(mask: Mask, side: Side, divide: int) -> bool:
    return bool(_beside(mask, side, divide).sum() >= SEEN)


def _beside(mask: Mask, side: Side, divide: int) -> Mask:
    """What of a part lies on one side of the picture's divide."""
    kept = mask.copy()
    kept[:, slice(divide, None) if side == "left" else slice(0, divide)] = False
    return kept


def _middle(mask: Mask) -> Spot:
    rows, columns = np.nonzero(mask)
    return float(columns.mean()), float(rows.mean())


def _spot(mask: Mask, side: Side, taken: Sequence[Spot]) -> Spot:
    """A point well inside the part, as near to its column as can be and clear of other dots."""
    for part in (_near(mask, side), mask):
        rows, columns = np.nonzero(part)
        free = np.ones(len(rows), dtype=bool)
        for x, y in taken:
            free &= np.hypot(columns - x, rows - y) >= APART
        if free.any():
            rows, columns = rows[free], columns[free]
            break
    edge = columns.min() if side == "left" else columns.max()
    near = np.flatnonzero(np.abs(columns - edge) <= 2)
    middle = near[len(near) // 2]
    return float(columns[middle]), float(rows[middle])


def _near(mask: Mask, side: Side) -> Mask:
    """The end of the part that is nearest to the column, less its rim where it is wide enough."""
    sure = eroded(mask)
    columns = np.flatnonzero(sure.any(axis=0))
    near = np.zeros_like(mask)
    if side == "left":
        near[:, columns[0] : columns[0] + REACH] = sure[:, columns[0] : columns[0] + REACH]
    else:
        near[:, max(columns[-1] - REACH, 0) :] = sure[:, max(columns[-1] - REACH, 0) :]
    return eroded(near, INSET - 1)


def eroded(mask: Mask, times: int = 1) -> Mask:
    """The mask less its rim, so many times, or as often as enough of it is left."""
    for _ in range(times):
        inner = np.zeros_like(mask)
        inner[1:-1, 1:-1] = (
            mask[1:-1, 1:-1] & mask[:-2, 1:-1] & mask[2:, 1:-1] & mask[1:-1, :-2] & mask[1:-1, 2:]
        )
        if inner.sum() < SEEN:
            break
        mask = inner
    return mask
