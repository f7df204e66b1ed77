"""The header of a file of shots: which column holds what, and in which unit."""

import re
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Literal

from geometry.survey.shots import ShotFault
from geometry.units import BareUnit

Column = Literal["point", "x", "y", "rod", "elevation", "level", "what"]
HEIGHTS: tuple[Column, ...] = ("rod", "elevation", "level")

_NAMES: dict[Column, tuple[str, ...]] = {
    "point": ("point", "pt", "name", "no", "number", "id", "shot"),
    "x": ("x", "east", "easting"),
    "y": ("y", "north", "northing"),
    "rod": ("rod", "rod reading", "reading"),
    "elevation": ("elevation", "elev", "el", "z"),
    "level": ("level", "from tof", "level from tof", "against tof", "level against tof", "tof"),
    "what": ("what", "code", "kind", "on"),
}
_COLUMN = {name: column for column, names in _NAMES.items() for name in names}
_UNITS: dict[str, BareUnit] = {
    "ft": "ft", "feet": "ft", "foot": "ft", "'": "ft", "decimal feet": "ft", "in": "in",
    "inch": "in", "inches": "in", '"': "in", "m": "m", "metre": "m", "metres": "m", "meter": "m",
    "meters": "m", "mm": "mm",
}  # fmt: skip
# Written in each cell: nothing is said in the header.
_IN_CELLS = {"", "ft-in", "feet-inches", "ft in"}
_HEAD = re.compile(r"(?P<name>[^(\[]*?)\s*(?:[(\[]\s*(?P<unit>[^)\]]*?)\s*[)\]])?\s*")

LIKE = "the first line names the columns, such as: point,x (ft),y (ft),rod (ft),what"


@dataclass(frozen=True)
class Header:
    """Place of each column, and the unit its head states."""

    place: dict[Column, int]
    unit: dict[Column, BareUnit | None]
    count: int

    @property
    def height(self) -> Column:
        """The column that gives the height."""
        return next(c for c in HEIGHTS if c in self.place)


def read_header(cells: Sequence[str], numbers: BareUnit | None) -> tuple[Header, list[ShotFault]]:
    """Return the header and all that is wrong with it; numbers: unit of plain numbers else."""
    place: dict[Column, int] = {}
    unit: dict[Column, BareUnit | None] = {}
    faults: list[ShotFault] = []
    for number, cell in enumerate(cells):
        name, said = _split(cell)
        column = _COLUMN.get(name)
        if column is None:
            if name:
                faults.append(_unused(cell))
        elif column in place:
            faults.append(_file(f"two columns are named {column}; keep one"))
        else:
            place[column] = number
            # What stands in brackets after a name that is no length is a remark.
            length = column in ("x", "y", *HEIGHTS)
            unit[column], wrong = _unit(cell, said, numbers) if length else (None, [])
            faults += wrong
    return Header(place, unit, len(cells)), [*faults, *_lacking(place)]


def _split(cell: str) -> tuple[str, str]:
    found = _HEAD.fullmatch(cell.strip().lower())
    if found is None:
        return cell.strip().lower(), ""
    return " ".join(found["name"].split()), (found["unit"] or "").strip()


def _unit(
    cell: str, said: str, numbers: BareUnit | None
) -> tuple[BareUnit | None, list[ShotFault]]:
    if said in _IN_CELLS:
        return numbers, []
    if said in _UNITS:
        return _UNITS[said], []
    return None, [
        _file(f"{said!r} in the head {cell.strip()!r} is no unit; write (ft), (in), (m) or (mm)")
    ]


def _lacking(place: dict[Column, int]) -> list[ShotFault]:
    lacking = [c for c in ("x", "y") if c not in place]
    heights = [c for c in HEIGHTS if c in place]
    if not place:
        return [_file(f"this is no file of shots: {LIKE}")]
    faults = []
    if lacking:
        faults.append(_file(f"there is no column {' and no column '.join(lacking)}; {LIKE}"))
    if not heights:
        faults.append(_file(f"no column gives the height: rod, elevation or level; {LIKE}"))
    if len(heights) > 1:
        faults.append(_file(f"{len(heights)} columns give the height: {', '.join(heights)}; "
                            "keep one"))  # fmt: skip
    return faults


def _file(sentence: str) -> ShotFault:
    return ShotFault(sentence, weight="file")


def _unused(cell: str) -> ShotFault:
    return ShotFault(f"the column {cell.strip()[:40]!r} is not used", weight="note")
