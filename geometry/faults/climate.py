"""Faults of the climate record: areas that are not there."""

from collections.abc import Iterator

from geometry.faults.common import At
from geometry.materials.catalogue import nearest
from geometry.project import Design


def climate_faults(design: Design) -> Iterator[At]:
    """Yield names of unheated areas that no area has, or that stand twice."""
    names = [area.name for area in design.areas]
    unheated = design.climate.unheated
    for number, name in enumerate(unheated):
        path = ("climate", "unheated", number)
        if name not in names:
            like = nearest(name, names)
            meant = f'; did you mean "{like}"?' if like else f"; there are {', '.join(names)}"
            yield At(path, f'no area is called "{name}"{meant}')
        elif name in unheated[:number]:
            yield At(path, f'"{name}" stands here twice; leave one out')
