"""The vent pipe for soil gas to buy: what is set before the slab is poured."""

from collections.abc import Iterator
from dataclasses import replace

from geometry.layout.lay import Layout
from geometry.takeoff.pipes import piece_row
from geometry.takeoff.row import Row


def vent_rows(layout: Layout) -> Iterator[Row]:
    """Yield the pipe up to its stub, the tee in the stone and the cap; none without a vent."""
    vent = layout.vent
    if vent is None:
        return
    length = vent.top - vent.foot
    pipe = replace(
        piece_row("pit", "Vent pipe for soil gas", vent.vent.pipe, 1),
        area=vent.area.name, in_place=length, unit="m", to_buy=length,
        note="up to its stub; from there up through the roof is not counted",
    )  # fmt: skip
    yield pipe
    yield piece_row("pit", "Tee in the stone, for the vent", vent.vent.pipe, 1)
    yield piece_row("pit", "Cap or plug on the vent's stub", vent.vent.pipe, 1)
