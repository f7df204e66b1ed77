"""Faults of piers: place, pad, column."""

from collections.abc import Iterator

import numpy as np
import shapely

from geometry.faults.common import At, Words
from geometry.faults.floors import far_faults, unknown_level
from geometry.faults.lines import Path
from geometry.layout.areas import AreaLayout
from geometry.layout.footings import column_prism, pad_prism, pier_name

OVERLAP_M2 = 1e-9


def pier_faults(number: int, area: AreaLayout, words: Words) -> Iterator[At]:
    """Yield faults of one area's piers; its floor must be sound."""
    names: set[str] = set()
    pads: dict[int, shapely.Polygon] = {}
    for place, pier in enumerate(area.area.piers):
        path, name = ("area", number, "pier", place), pier_name(area, place)
        if name in names:
            yield At((*path, "name"), f'two piers are named "{name}"; give each its own name')
        names.add(name)
        levels = list(_level_faults(path, area, place, words))
        yield from levels
        if levels:
            continue
        pads[place] = pad_prism(area, pier).region
        yield from _place_faults(path, name, area, place)
        yield from _column_faults(path, name, area, place, words)
    yield from _overlap_faults(number, area, pads)


def _overlap_faults(
    number: int, area: AreaLayout, pads: dict[int, shapely.Polygon]
) -> Iterator[At]:
    """Yield pads that lie on one before them, each once."""
    places, shapes = list(pads), np.array(list(pads.values()), dtype=object)
    tree = shapely.STRtree(shapes)
    for later, place in enumerate(places):
        met = (n for n in np.sort(tree.query(shapes[later])) if n < later)
        under = (n for n in met if shapes[n].intersection(shapes[later]).area > OVERLAP_M2)
        if (first := next(under, None)) is not None:
            other = places[int(first)]
            yield At(
                ("area", number, "pier", place, "at"),
                f"the pads of piers {pier_name(area, other)} and {pier_name(area, place)} overlap; "
                "move them apart or make one pad of both",
            )


def _level_faults(path: Path, area: AreaLayout, place: int, words: Words) -> Iterator[At]:
    for field in ("pad_top", "column_top"):
        at = getattr(area.area.piers[place], field)
        yield from unknown_level((*path, field), area, at)
        yield from far_faults((*path, field), at, words)


def _place_faults(path: Path, name: str, area: AreaLayout, place: int) -> Iterator[At]:
    pier = area.area.piers[place]
    if not area.room.contains(shapely.Point(pier.at)):
        yield At(
            (*path, "at"),
            f'pier {name} stands outside the floor of area "{area.name}"; move it inside the walls',
        )
    elif not area.core.buffer(1e-6).contains(pad_prism(area, pier).region):
        yield At(
            (*path, "at"),
            f"the pad of pier {name} runs into the strip footing; "
            "move it inward or make the pad smaller",
        )


def _column_faults(
    path: Path, name: str, area: AreaLayout, place: int, words: Words
) -> Iterator[At]:
    pier = area.area.piers[place]
    column = column_prism(area, pier)
    if column is None:
        return
    if column.top < column.bottom - 1e-9:
        yield At(
            (*path, "column_top"),
            f"the column of pier {name} would end at {words.level(column.top)}, below its pad's "
            f"top at {words.level(column.bottom)}; raise the column's top or lower the pad",
        )
    if not pad_prism(area, pier).region.buffer(1e-9).contains(column.region):
        least = min(pier.width, pier.pad_depth)
        yield At(
            (*path, "column_size"),
            f"the column of pier {name} is {words.size(pier.column_size)}, wider than its pad; "
            f"make it at most {words.most(least)}",
        )
