"""Levels as a crew shoots them: against the area's own top of footing, with the rod's reading."""

from geometry.layout.areas import AreaLayout
from geometry.layout.drain import DrainLayout
from geometry.layout.inverts import InvertRow, invert_rows
from geometry.layout.lay import Layout
from geometry.site.records import Place, Shot

# What an invert's names are called by, as keys.
_KEYS = {
    "outlet to the pit": "outlet_pit",
    "outlet to daylight": "outlet_daylight",
    "low point, emptied by bleeders": "low_bleeders",
    "open end over lower stone": "low_open_end",
    "low point": "low",
    "high point": "high",
    "cleanout": "cleanout",
    "corner": "corner",
}


def shot(
    layout: Layout,
    key: str,
    area: AreaLayout,
    level: float,
    drain: str = "",
    places: tuple[Place, ...] = (),
) -> Shot:
    """Return a level of an area, metres against the project's TOF, ready to be shot."""
    datum = layout.design.datum
    elevation = datum.top_of_footing + level
    rod = None if datum.instrument is None else datum.instrument - elevation
    return Shot(key, area.name, level, level - area.tof, elevation, rod, drain, places)


def invert_shots(layout: Layout, drain: DrainLayout) -> tuple[Shot, ...]:
    """Return the pipe's inverts at the named places, in the order they are walked."""
    rows = [row for row in invert_rows(layout, drain) if row.names]
    return tuple(
        shot(layout, "invert", drain.area, row.level, drain.key, _places(row)) for row in rows
    )


def _places(row: InvertRow) -> tuple[Place, ...]:
    return tuple(map(place, row.names))


def place(name: str) -> Place:
    """Return the key of a place that an invert is named by. Raises KeyError for another name."""
    words, _, last = name.rpartition(" ")
    if last.isdigit():
        return Place(_KEYS[words], int(last))
    return Place(_KEYS[name])
