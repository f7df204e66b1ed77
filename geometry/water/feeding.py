"""Which drains bring their water to the one in view, and which of them meet the rain and ground."""

from geometry.layout.drain import DrainLayout
from geometry.layout.lay import Layout, empties_into


def feeders(layout: Layout) -> tuple[DrainLayout, ...]:
    """Return the drains whose water comes to the drain in view, near and far."""
    found: list[DrainLayout] = []
    if layout.drain is None:
        return ()
    open_ends = [layout.drain]
    while open_ends:
        into = open_ends.pop()
        near = [d for d in layout.drains if empties_into(d, layout.drains) is into]
        found += near
        open_ends += near
    return tuple(found)


def share_of(drain: DrainLayout, station: float) -> float:
    """Return the share of a drain's water that comes to the low point at a station.

    Water enters evenly along the route and runs to the low point it falls to.
    """
    return sum(drain.falls.branches(station)) / drain.route.length


def catching(layout: Layout) -> tuple[DrainLayout, ...]:
    """Return the drains that meet rain and ground for the one in view, its own area's first.

    Of two along one footing it is the outside one: what is inside gets its water from there.
    """
    if layout.drain is None:
        return ()
    by_area: dict[str, DrainLayout] = {}
    for drain in (layout.drain, *feeders(layout)):
        there = by_area.get(drain.area.name)
        if there is None or (there.inside and not drain.inside):
            by_area[drain.area.name] = drain
    return tuple(by_area.values())
