"""The drain's stone and wrap as bodies, and the wrap laid flat."""

from collections.abc import Sequence

from geometry.label import STAGE, Label
from geometry.layout.bodies import Body, Prism, without
from geometry.layout.drain import DrainLayout
from geometry.plan.outline import offset


def stone_bodies(drain: DrainLayout, standing: Sequence[Prism], which: str) -> tuple[Body, Body]:
    """Return the drain stone (its pipe still in it) and the wrap.

    standing: pieces of footings that stand or hang in the stone. The wrap lies against them too.
    which: words that tell the drain from others.
    """
    t, tof = drain.wrap_m, drain.area.tof
    bottom, top = drain.stone_bottom, drain.stone_top
    inner_low, inner_high = offset(drain.low_space, -t), offset(drain.high_space, -t)
    # Inside, no footing stands out under the stone: there is no ledge in its outline.
    ledge = (bottom if drain.inside else max(tof, bottom)) + t
    whole = (Prism(inner_low, bottom + t, ledge), Prism(inner_high, ledge, top - t))
    wrapped = [Prism(offset(p.region, t), p.bottom - t, p.top + t) for p in standing]
    stone = without(whole, wrapped)
    wrap = without(drain.space(standing), stone)
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
