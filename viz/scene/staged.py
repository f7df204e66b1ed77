"""What stands, what is laid and what is still to come at each stage of the build."""

from collections.abc import Iterator
from dataclasses import dataclass

import shapely

from geometry.label import Label, Role
from geometry.layout.lay import Layout
from geometry.site.records import Stage
from geometry.site.stages import stages
from geometry.solids.carving import carved
from geometry.solids.foundation import Foundation
from geometry.solids.kernel import Mesh, raised
from geometry.solids.solid import Solid

_STANDS: frozenset[Role] = frozenset(
    ("footing", "wall", "pad", "column", "sleeve", "bleeder", "excavation")
)
_BEDDING = ("bedding_high", "bedding")
# Farther, and higher or deeper, than any house reaches, metres.
_FAR_M = 1000.0
# Ends the id of what is still to come of a part that has been begun.
TO_COME = ", to come"


@dataclass(frozen=True)
class Built:
    """When a part is built: the stage that begins it and that which finishes it, by number.

    -1: it stands already. top: the level up to which it is there in between, metres.
    """

    begins: int
    finished: int
    top: float | None = None


@dataclass(frozen=True, eq=False)
class Standing:
    """One stage: all its bodies, and ids of those still to come and of those laid in it."""

    solids: tuple[Solid, ...]
    ghosts: frozenset[str]
    laid: tuple[str, ...]


def pictured(layout: Layout) -> tuple[int, ...]:
    """Return the numbers of the stages that lay something: levels alone change no picture."""
    return tuple(n for n, stage in enumerate(stages(layout)) if stage.key != "inverts")


def built(layout: Layout, label: Label) -> Built:
    """Return when a part is built."""
    found = stages(layout)
    mine = [n for n, stage in enumerate(found) if label.part in stage.parts]
    if label.role in _STANDS or not found:
        return Built(-1, -1)
    if not mine:
        later = (n for n, stage in enumerate(found) if stage.step >= label.stage)
        number = next(later, len(found) - 1)
        return Built(number, number)
    if found[mine[0]].portion == "under pipe":
        return Built(mine[0], mine[-1], _top(found[mine[0]]))
    return Built(mine[0], mine[0])


def _top(stage: Stage) -> float | None:
    levels = {shot.key: shot.level for shot in stage.shots}
    return next((levels[key] for key in _BEDDING if key in levels), None)


def standing(layout: Layout, foundation: Foundation, number: int) -> Standing:
    """Return what a stage's picture shows: all parts, and those it draws as ghosts."""
    solids: list[Solid] = []
    ghosts: list[str] = []
    laid: list[str] = []
    for solid in foundation.solids:
        when = built(layout, solid.label)
        begun = when.begins <= number < when.finished
        pieces = list(_begun(layout, solid, when)) if begun else [solid]
        solids += pieces
        ghosts += [p.label.part for p in pieces if p.label.part.endswith(TO_COME)]
        if when.begins > number:
            ghosts.append(solid.label.part)
        if number in (when.begins, when.finished):
            laid.append(solid.label.part)
    return Standing((*solids, foundation.excavation), frozenset(ghosts), tuple(laid))


def _begun(layout: Layout, solid: Solid, when: Built) -> Iterator[Solid]:
    """Yield what there is of a part and what is to come; of a wrap, all but what closes it."""
    wrapped = {f"{drain.key}/wrap": drain.stone_top - 2 * drain.wrap_m for drain in layout.drains}
    top = wrapped.get(solid.label.part, when.top)
    if top is None:
        yield solid
        return
    yield _less(solid, top, _FAR_M, solid.label)
    part = solid.label.part + TO_COME
    come = Label(
        part, solid.label.name, solid.label.role, solid.label.material, solid.label.area,
        solid.label.stage,
    )  # fmt: skip
    yield _less(solid, -_FAR_M, top, come)


def _less(solid: Solid, bottom: float, top: float, label: Label) -> Solid:
    """A solid without what lies between two levels."""
    low, high = solid.vertices.min(axis=0) - 1, solid.vertices.max(axis=0) + 1
    away = raised(shapely.box(low[0], low[1], high[0], high[1]), bottom, top)
    left = carved(Mesh(solid.vertices, solid.faces), [away])
    return Solid(label, left.vertices, left.faces)
