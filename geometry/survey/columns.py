"""Columns of a file of shots: lengths as metres, words as what a shot stands on."""

import math
import re
from collections.abc import Sequence
from functools import lru_cache

import numpy as np

from geometry.errors import LengthError
from geometry.project import Design
from geometry.survey.shots import FOOTING, GROUND, Floats, Ints, ShotFault, What
from geometry.units import BareUnit, factor, read_length

_GROUND = {"", "ground", "subgrade", "cut", "dig", "floor"}
_FOOTING = {"footing", "top of footing", "tof", "footing top"}
# As rods are read, and as spreadsheets write what is next to nothing; the head states the unit.
_FRACTION = re.compile(r"[+-]?\s*(?:\d+[\s-]+)?\d+\s*/\s*\d+")
_EXPONENT = re.compile(r"[+-]?(?:\d+\.?\d*|\.\d+)e[+-]?\d{1,3}", re.IGNORECASE)
# Signs in a cell; over a longer one the pattern of a number could be tried for ever.
_LONGEST = 40
_NO_UNIT = 'has no unit; put it into the head, such as "{column} (ft)", or into each cell'


def lengths(
    cells: Sequence[str], unit: BareUnit | None, column: str, rows: Ints, careful: bool
) -> tuple[Floats, list[ShotFault]]:
    """Return a column in metres, (n,), not-a-number where a cell cannot be read, and the faults.

    unit: of plain numbers, which are read at once. careful: read every cell by itself.
    """
    if unit is not None and not careful:
        try:
            values = np.array(cells, dtype=np.float64) * factor(unit, "m")
        except ValueError:
            return _one_by_one(cells, unit, column, rows)
        if bool(np.isfinite(values).all()):
            return values, []
    return _one_by_one(cells, unit, column, rows)


def _one_by_one(
    cells: Sequence[str], unit: BareUnit | None, column: str, rows: Ints
) -> tuple[Floats, list[ShotFault]]:
    values = np.full(len(cells), np.nan)
    faults = []
    for number, cell in enumerate(cells):
        value = _length(cell.strip(), unit, column)
        if isinstance(value, str):
            faults.append(ShotFault(f"{column} {value}; left out", int(rows[number])))
        else:
            values[number] = value
    return values, faults


@lru_cache(maxsize=65536)
def _length(cell: str, unit: BareUnit | None, column: str) -> float | str:
    """Return metres, or what is wrong."""
    if not cell:
        return "is missing"
    try:
        return _metres(cell, unit)
    except LengthError as error:
        sentence = str(error)
        if unit is None and "has no unit" in sentence:
            return f"{cell} {_NO_UNIT.format(column=column)}"
        return f"is wrong: {sentence}"


def _metres(cell: str, unit: BareUnit | None) -> float:
    if unit is None or len(cell) > _LONGEST:
        return read_length(cell, unit)
    if unit == "in" and _FRACTION.fullmatch(cell):
        return read_length(f"{cell} in")
    if _EXPONENT.fullmatch(cell) and math.isfinite(float(cell)):
        return float(cell) * factor(unit, "m")
    return read_length(cell, unit)


def pad_names(design: Design) -> list[str]:
    """Return the names of all piers, P1, P2, ... where they have none of their own."""
    return [p.name or f"P{n + 1}" for area in design.areas for n, p in enumerate(area.piers)]


def whats(
    cells: Sequence[str], count: int, design: Design, rows: Ints
) -> tuple[Ints, tuple[What, ...], list[ShotFault]]:
    """Return what each shot stands on: (n,) codes, -1 for words not known, their list, faults."""
    if not cells:
        return np.zeros(count, np.int64), (GROUND,), []
    pads = {name.lower(): name for name in pad_names(design)}
    found: list[What] = []
    codes: dict[str, int] = {}
    for words in dict.fromkeys(cells):
        what = _what(words, pads)
        if what is not None and what not in found:
            found.append(what)
        codes[words] = -1 if what is None else found.index(what)
    code = np.fromiter((codes[c] for c in cells), dtype=np.int64, count=count)
    faults = [
        ShotFault(f"{cells[n].strip()[:40]!r} is not known; write {_known(pads)}; left out",
                  int(rows[n]))
        for n in np.flatnonzero(code < 0).tolist()
    ]  # fmt: skip
    return code, tuple(found), faults


def _what(words: str, pads: dict[str, str]) -> What | None:
    plain = " ".join(words.lower().split())
    if plain in _GROUND:
        return GROUND
    if plain in _FOOTING:
        return FOOTING
    head, _, name = plain.partition(" ")
    return What("pad", pads[name]) if head in {"pad", "pier"} and name in pads else None


def _known(pads: dict[str, str]) -> str:
    named = [f"pad {name}" for name in pads.values()]
    listed = f" or {', '.join(named)}" if named else ""
    return f"nothing for the ground, footing{listed}"
