"""The drain's stone and wrap as bodies, and the wrap laid flat."""

from shapely.geometry.base import BaseGeometry

from geometry.label import STAGE, Label
from geometry.layout.bodies import Body, Prism, merged
from geometry.layout.drain import DrainLayout
from geometry.plan.outline import minus, offset


def stone_bodies(drain: DrainLayout, steps: BaseGeometry, which: str) -> tuple[Body, Body]:
    """Return the drain stone (its pipe still in it) and the wrap.

    steps: plan of footing steps that stand in the stone's way above the lower footing.
    which: words that tell the drain from others.
    """
    t, low, tof = drain.wrap_m, drain.low_space, drain.area.tof
    high = minus(drain.high_space, [steps])
    bottom, top = drain.stone_bottom, drain.stone_top
    inner_low, inner_high = offset(low, -t), offset(high, -t)
    # Inside, no footing stands out under the stone: there is no ledge in its outline.
    ledge = bottom + t if drain.inside else min(max(tof, bottom + t), top - t)
    stone = merged(
        (
            Prism(inner_low, bottom + t, ledge),
            Prism(minus(inner_low, [steps]), ledge, ledge + t),
            Prism(inner_high, ledge + t, top - t),
        )
    )
    wrap = merged(
        (
            Prism(low, bottom, bottom + t),
            Prism(low.difference(inner_low), bottom + t, ledge),
            Prism(high.difference(inner_low), ledge, ledge + t),
            Prism(high.difference(inner_high), ledge + t, top - t),
            Prism(high, top - t, top),
            Prism(minus(drain.lap, [steps]), top, top + t),
        )
    )
    name = drain.area.name
    stone_label = Label(
        f"{drain.key}/stone",
        f"Drain stone{which}",
        "drain stone",
        drain.drain.stone.material,
        name,
        STAGE["drain stone"],
    )
    wrap_label = Label(
        f"{drain.key}/wrap",
        f"Fabric wrap{which}",
        "wrap",
        drain.drain.wrap.material,
        name,
        STAGE["wrap"],
    )
    return Body(stone_label, stone), Body(wrap_label, wrap)


def developed_width(drain: DrainLayout) -> float:
    """Flat width of the wrap: round the stone's outline plus the overlap, metres.

    Below TOF the wrap runs from the footing's face, above it from the wall's.
    """
    shelf = drain.shelf
    tall = drain.stone_top - drain.stone_bottom
    return 2 * (drain.drain.stone.width + shelf) + 2 * tall + drain.drain.wrap.overlap
