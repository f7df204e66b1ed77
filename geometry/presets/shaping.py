"""A shape put into a design file's text: outline, pit and what hung on the old corners."""

import tomllib
from collections.abc import Mapping
from typing import Any

from geometry.designfile import edited
from geometry.designlists import added, without
from geometry.errors import DesignError, Fault, LengthError
from geometry.faults.lines import Path
from geometry.faults.places import inside
from geometry.faults.text import raw_design
from geometry.plan.edits import Outline
from geometry.planfile.read import bare_of, place_words, system_of, written
from geometry.presets.placing import farthest, pit_place, toward_place
from geometry.presets.shapes import SHAPES, Shape, Sizes, corners_of, sized
from geometry.presets.writing import inline, spaced
from geometry.units import FOOT, read_length

UPPER = "upper part"
_LEAST_WALL_M = 2 * FOOT
# What a drain says of an outline's corners and sides, and no longer holds.
_OF_CORNERS = ("sides", "high_corner", "low_corner", "area")


def with_shape(text: str, key: str, sizes: Mapping[str, str]) -> str:
    """Return the design's text with the plan made anew in a shape, comments and all else kept.

    sizes: lengths as text by the keys of the shape's sizes; what is not given is usual. The first
    area keeps its name, footing, wall and floor and gets the outline; further areas and all piers
    are taken out. The pit moves into a corner, drains run all round again. Raises DesignError with
    a sentence for each size that cannot be, KeyError for an unknown shape.
    """
    shape = SHAPES[key]
    raw = raw_design(text)
    if not isinstance(inside(raw, ("area", 0)), dict):
        sentence = "the file has no area to give a shape to; add a table [[area]] with a name"
        raise DesignError((Fault("area", sentence),))
    system = system_of(raw)
    found = sized(shape, sizes, system, bare_of(raw))
    corners = corners_of(shape, found, system)
    changed = edited(_cleared(text), ("area", 0, "corners"), corners[0])
    if shape.step:
        changed = _with_upper(changed, shape, found)
    return spaced(text, _hung(changed, shape.outlines(found)))


def _cleared(text: str) -> str:
    """Return the text with one area that has no piers."""
    areas = _rows(text, ("area",))
    for number in reversed(range(1, len(areas))):
        text = without(text, ("area", number))
    for number in reversed(range(len(_rows(text, ("area", 0, "pier"))))):
        text = without(text, ("area", 0, "pier", number))
    if areas and isinstance(areas[0], dict) and "step" in areas[0]:
        text = edited(text, ("area", 0, "step"), None)
    return text


def _with_upper(text: str, shape: Shape, sizes: Sizes) -> str:
    """Return the text with the shape's second area, its wall ending level with the first's."""
    raw = tomllib.loads(text)
    system = system_of(raw)
    step = sizes[shape.step]
    corners = corners_of(shape, sizes, system)[1]
    name = str(inside(raw, ("area", 0, "name")) or "")
    upper = UPPER if name != UPPER else f"{UPPER} 2"
    wall = inline({"height": written(max(_wall_height(raw) - step, _LEAST_WALL_M), system)})
    entry = {"name": upper, "step": written(step, system), "corners": corners, "wall": wall}
    return added(text, ("area",), entry)


def _wall_height(raw: Any) -> float:
    own, house = ("area", 0, "wall", "height"), ("wall", "height")
    said = inside(raw, own) or inside(raw, house)
    try:
        return 8 * FOOT if said is None else read_length(said, bare_of(raw))
    except LengthError:
        return 8 * FOOT


def _hung(text: str, outlines: tuple[Outline, ...]) -> str:
    """Return the text with pit, drains and unheated areas as the new outline has them."""
    raw = tomllib.loads(text)
    pit = pit_place(raw, outlines[0][0])
    if isinstance(inside(raw, ("sump",)), dict):
        text = edited(text, ("sump", "at"), place_words(pit, system_of(raw)))
        text = _less(text, ("sump",), ("area",))
    for home in _homes(raw, ("drain",)):
        text = _drain(text, home, outlines, farthest(outlines[0], pit))
    return _heated(text)


def _drain(text: str, home: Path, outlines: tuple[Outline, ...], far: int) -> str:
    text = _less(text, home, _OF_CORNERS)
    raw = tomllib.loads(text)
    if inside(raw, (*home, "cleanouts")):
        text = edited(text, (*home, "cleanouts"), [far])
    toward = place_words(toward_place(outlines, 0), system_of(raw))
    for outlet in _homes(raw, (*home, "daylight")):
        text = edited(text, (*outlet, "toward"), toward)
    return text


def _heated(text: str) -> str:
    """Return the text with no unheated area that is not there any more."""
    raw = tomllib.loads(text)
    path = ("climate", "unheated")
    unheated = inside(raw, path)
    if not isinstance(unheated, list):
        return text
    names = {inside(area, ("name",)) for area in _rows(text, ("area",))}
    kept = [name for name in unheated if name in names]
    return text if kept == unheated else edited(text, path, kept or None)


def _less(text: str, home: Path, keys: tuple[str, ...]) -> str:
    """Return the text without some keys of a table."""
    table = inside(tomllib.loads(text), home)
    for key in keys:
        if isinstance(table, dict) and key in table:
            text = edited(text, (*home, key), None)
    return text


def _homes(raw: Any, path: Path) -> list[Path]:
    """Return where the entries of a list of tables stand; a single table stands for itself."""
    value = inside(raw, path)
    if isinstance(value, dict):
        return [path]
    return [(*path, n) for n in range(len(value))] if isinstance(value, list) else []


def _rows(text: str, path: Path) -> list[Any]:
    value = inside(tomllib.loads(text), path)
    return value if isinstance(value, list) else []
