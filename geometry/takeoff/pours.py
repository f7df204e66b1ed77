"""Concrete, a pour at a time: neat, what thickness strays, loss, the supplier's step, trucks."""

from collections.abc import Iterator
from math import ceil

from geometry.layout.bodies import Body
from geometry.layout.lay import Layout
from geometry.parts.usual import Factor
from geometry.project import Design
from geometry.takeoff.bulk import sold
from geometry.takeoff.row import Pour, Row
from geometry.takeoff.usual import factor
from geometry.units import INCH

# So much more of a slab's thickness is what the sensitivity line speaks of.
STEP_M = {"ft-in": INCH / 8, "metric": 0.003}
_MASONRY = ("block", "masonry", "brick", "cmu")
Made = tuple[Row, Pour]


def pours(layout: Layout) -> Iterator[Made]:
    """Yield each pour with its row: footings with pads, walls with columns, each area's slabs."""
    design = layout.design
    strip = [b for b in layout.structure if b.label.role in ("footing", "pad")]
    upright = [b for b in layout.structure if b.label.role in ("wall", "column")]
    poured = [b for b in upright if not _laid(layout, b)]
    yield from _by_mix(design, "Footings and pads", strip, "concrete.footing_variation")
    yield from _by_mix(design, "Walls and columns", poured, "concrete.wall_variation")
    for body in layout.floors:
        if body.label.role == "slab" and body.volume > 0:
            yield slab(design, body, layout)


def masonry_walls(layout: Layout) -> list[str]:
    """Return the areas whose walls are laid of blocks, which no truck brings."""
    return [b.label.area for b in layout.structure if _laid(layout, b)]


def _laid(layout: Layout, body: Body) -> bool:
    if body.label.role != "wall":
        return False
    kind = layout.area(body.label.area).wall.kind.casefold()
    return any(word in kind for word in _MASONRY)


def _by_mix(design: Design, name: str, bodies: list[Body], key: str) -> Iterator[Made]:
    """Yield a pour for each concrete among the bodies: one truck brings one mix."""
    for material in dict.fromkeys(b.label.material for b in bodies):
        neat = sum(b.volume for b in bodies if b.label.material == material)
        strays = factor(design, key)
        if neat > 0:
            yield _made(design, (name, "", material), neat, neat * strays.value, strays)


def slab(design: Design, body: Body, layout: Layout) -> Made:
    """Return the pour of one slab; its variation is a thickness over all its area."""
    strays, step = factor(design, "concrete.slab_variation"), STEP_M[design.project.units]
    area = layout.area(body.label.area)
    thick = next(x.thickness for x in area.floor.layers if x.name.capitalize() == body.label.name)
    surface = body.volume / thick
    names = (body.label.name, body.label.area, body.label.material)
    return _made(
        design, names, body.volume, surface * strays.value, strays,
        (step, surface * step, step / thick),
    )  # fmt: skip


def _made(
    design: Design,
    names: tuple[str, str, str],
    neat: float,
    variation: float,
    strays: Factor,
    thicker: tuple[float, float, float] | None = None,
) -> Made:
    name, area, material = names
    loss, step = factor(design, "concrete.loss"), factor(design, "concrete.step")
    truck, least = factor(design, "concrete.truck"), factor(design, "concrete.least")
    lost = (neat + variation) * loss.value
    whole = neat + variation + lost
    ordered = ceil(whole / step.value - 1e-9) * step.value
    brought = loads(ordered, truck.value, least.value)
    pour = Pour(
        name, area, material, neat, variation, lost, ordered, brought, *(thicker or (None,) * 3)
    )
    row = Row(
        "concrete", name, material, area, neat, "m3", (strays, loss, step, truck, least), whole,
        *sold(design, ordered), trucks=len(brought),
        note=_note(brought, least.value),
    )  # fmt: skip
    return row, pour


def loads(ordered_m3: float, truck_m3: float, least_m3: float) -> tuple[float, ...]:
    """Return what each truck brings: full ones, the last with at least the least load.

    What the last one lacks to the least is held back from the one before it. One load alone may
    be less than the least.
    """
    count = max(1, ceil(ordered_m3 / truck_m3 - 1e-9))
    last = ordered_m3 - (count - 1) * truck_m3
    if count == 1:
        return (ordered_m3,)
    held = max(0.0, least_m3 - last)
    return (*(truck_m3,) * (count - 2), truck_m3 - held, last + held)


def _note(brought: tuple[float, ...], least: float) -> str:
    if brought[-1] < least - 1e-9:
        return "less than the least load; suppliers charge for that"
    return ""
