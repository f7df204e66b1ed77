"""Stand-ins for refused values, so that the rest of the design can be looked at as well."""

from collections.abc import Iterable, Sequence
from typing import Any

from geometry.faults.lines import Path

_SQUARE = ["0 m, 0 m", "10 m, 0 m", "10 m, 10 m", "0 m, 10 m"]
_AREA = {"name": "unnamed", "corners": _SQUARE}
_LAYER = {"name": "unnamed", "material": "concrete", "thickness": "4 in", "role": "slab"}

# What a table cannot do without, by the table's key.
_NEEDED: dict[str, dict[str, Any]] = {
    "": {"project": {"name": "unnamed"}, "area": [_AREA]},
    "project": {"name": "unnamed"},
    "area": _AREA,
    "layer": _LAYER,
    "pier": {"at": "0 m, 0 m"},
    "sump": {"at": "0 m, 0 m"},
    "daylight": {"toward": "0 m, 0 m", "ground": ["0 m, 0 m", "10 m, -1 m"]},
    "pump": {"off": "4 in", "on": "10 in"},
    "grading": {"material": "stone-57", "sieves": ["1 in, 100 %", "No. 4, 0 %"]},
    "height_rule": {"name": "unnamed", "point": "crown", "at": "at or below", "level": "TOF"},
}
# Values that parts elsewhere are found by.
_OF_AREAS = {"name", "corners", "step"}
_OF_LAYERS = {"material", "thickness", "role"}
_OF_PUMPS = {"depth", "lid", "pump"}
_BY_AREA = {"area", "sides", "high_corner", "low_corner", "cleanouts"}


def mended(raw: Any, refused: Iterable[Path]) -> Any:
    """Return the raw design with refused values left out or, where needed, a stand-in put in."""
    for path in refused:
        raw = _without(raw, _to_key(path), "")
    return raw


def _to_key(path: Path) -> Path:
    """Return the path up to its last key: a list with a refused entry goes as a whole."""
    while path and isinstance(path[-1], int):
        path = path[:-1]
    return path


def _without(raw: Any, path: Path, owner: str) -> Any:
    if not path:
        return raw
    step, rest = path[0], path[1:]
    if isinstance(raw, dict) and isinstance(step, str):
        if rest and step in raw:
            return {**raw, step: _without(raw[step], rest, step)}
        needed = _NEEDED.get(owner, {})
        kept = {key: value for key, value in raw.items() if key != step}
        return {**kept, step: needed[step]} if step in needed else kept
    if isinstance(raw, list) and isinstance(step, int) and step < len(raw):
        return [*raw[:step], _without(raw[step], rest, owner), *raw[step + 1 :]]
    return raw


def stands(path: Path, refused: Sequence[Path]) -> bool:
    """Whether a fault at a path holds even though other values were refused."""
    if any(_related(path, _to_key(other)) for other in refused):
        return False
    if path[-1] in _BY_AREA or any(step in _BY_AREA for step in path[1:]):
        return not any(_names_areas(other) for other in refused)
    if path[0] == "height_rule":
        return not any("layer" in other or _names_areas(other) for other in refused)
    if path[:2] == ("sump", "pump"):
        return not any(other[:1] == ("sump",) and other[1] in _OF_PUMPS for other in refused)
    if "tie" in path:
        return not any("layer" in other and other[-1] not in _OF_LAYERS for other in refused)
    return "layer" not in path or (*path[:-1], "role") not in refused


def _related(one: Path, other: Path) -> bool:
    shorter = min(len(one), len(other))
    return one[:shorter] == other[:shorter]


def _names_areas(path: Path) -> bool:
    known = path[0] == "area" and (len(path) < 3 or path[2] in _OF_AREAS)
    return known or (path[0] == "drain" and path[-1] == "area")
