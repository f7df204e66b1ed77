"""The levels of the tape beside the picture, each with its names."""

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Any

from geometry.layout.areas import AreaLayout
from geometry.layout.lay import Layout
from geometry.units import show_level
from viz.language.reader import Language, language
from viz.viewer.speaking import spoken

# Levels nearer than this are one line of the tape.
SAME_M = 5e-4
# More names than this at one height are too long for a line; with areas' names, one is enough.
MOST_NAMES = 2
_MAIN = ("tof", "finished")


@dataclass(frozen=True)
class Named:
    """A level, metres: its key, and the area and layer it is of."""

    z: float
    key: str
    area: str = ""
    role: str = ""

    def said(self, tongue: Language) -> str:
        """Return what the level is called."""
        layer = tongue.say(f"role.{self.role.replace(' ', '_')}") if self.role else ""
        words = tongue.say(f"viewer.level_{self.key}", layer=layer)
        if not self.area:
            return words
        return tongue.say("viewer.level_of_area", level=words, area=self.area)


def tape(layout: Layout) -> list[dict[str, Any]]:
    """Return the levels from the top down, those at one height together."""
    found = sorted(_all(layout), key=lambda level: -level.z)
    rows: list[list[Named]] = []
    for level in found:
        if rows and abs(rows[-1][0].z - level.z) < SAME_M:
            rows[-1].append(level)
        else:
            rows.append([level])
    return [_row(row, layout) for row in rows]


def _row(row: list[Named], layout: Layout) -> dict[str, Any]:
    shown = next((level for level in row if level.key in _MAIN), row[0])
    return {
        "name": {code: _names(row, code) for code in spoken(lambda tongue: tongue.code)},
        "z": shown.z,
        "text": show_level(shown.z, layout.design.project.units),
        "main": any(level.key in _MAIN for level in row),
    }


def _names(row: list[Named], code: str) -> str:
    first = sorted(row, key=lambda level: level.key not in _MAIN)
    names = dict.fromkeys(level.said(language(code)) for level in first)
    return " = ".join([*names][: 1 if any(level.area for level in row) else MOST_NAMES])


def _all(layout: Layout) -> Iterator[Named]:
    several = len(layout.areas) > 1
    for area in layout.areas:
        yield from _floor(area, area.name if several else "")
    for drain in layout.drains:
        of = (drain.drain.name or drain.area.name) if len(layout.drains) > 1 else ""
        yield Named(drain.outlet_invert, "drain_low", of)
        if drain.rise > SAME_M:
            yield Named(drain.high_invert, "drain_high", of)
    yield Named(layout.ground.at_wall, "grade")


def _floor(area: AreaLayout, name: str) -> Iterator[Named]:
    yield Named(area.tof, "tof", name)
    yield Named(area.footing_bottom, "footing_bottom", name)
    yield Named(area.subgrade, "subgrade", name)
    yield Named(area.finished_floor, "finished", name)
    tops = area.stack.levels[1:-1]
    for layer, top in zip(area.floor.layers, tops, strict=False):
        yield Named(top, "top", name, layer.role)
