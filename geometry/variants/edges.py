"""The ready ways to make the floor's edge as design files of their own."""

from typing import Any

from geometry.designfile import edited, read_design
from geometry.errors import BedcourseError
from geometry.faults.places import single
from geometry.faults.text import cleaned, raw_design
from geometry.options import edge_options
from geometry.parts.fields import LevelAt
from geometry.parts.floor import EdgeBoard, Floor
from geometry.project import Design
from geometry.units import System, read_length, show_length
from geometry.variants.written import differing

_Path = tuple[str | int, ...]


def edge_texts(text: str) -> tuple[tuple[str, str], ...]:
    """Return the other ways to make a sound design's edge: each one's title, and its file's text.

    Comments and order are kept. A way is left out if its file would not say the very design.
    """
    design = read_design(text)
    found = (
        (option.title, _text_of(text, design, option.design))
        for option in edge_options(design)
        if option.design is not None and not option.same
    )
    return tuple((title, made) for title, made in found if made is not None)


def _text_of(text: str, design: Design, wanted: Design) -> str | None:
    """Return the file that says a changed design; the house's floor is tried first."""
    pairs = enumerate(zip(design.areas, wanted.areas, strict=True))
    number = next(n for n, (old, new) in pairs if old is not new)
    raw = raw_design(cleaned(text))
    area = single(("area", number), raw)
    for home in (("floor",), (*area, "floor")):
        try:
            made = _written(text, area, home, wanted, number)
            if _says(made, wanted):
                return made
        except BedcourseError:
            continue
    return None


def _says(text: str, wanted: Design) -> bool:
    """Whether a file says a design."""
    raw: dict[str, Any] = raw_design(cleaned(text))
    return not differing([(read_design(text), raw), (wanted, raw)])


def _written(text: str, area: _Path, home: _Path, wanted: Design, number: int) -> str:
    new, system = wanted.areas[number], wanted.project.units
    floor = wanted.floor_of(new)
    text = edited(text, (*home, "tie"), _ties(floor, system))
    text = edited(text, (*home, "edge_board"), _board(floor.edge_board, system))
    raw = raw_design(cleaned(text))
    piers = zip(read_design(text).areas[number].piers, new.piers, strict=True)
    for n, (before, after) in enumerate(piers):
        if before.pad_top != after.pad_top:
            path = single((*area, "pier", n), raw)
            text = edited(text, (*path, "pad_top"), _level(after.pad_top, system))
    return text


def _ties(floor: Floor, system: System) -> str | list[str] | None:
    said = [f"{tie.interface} at {_level(tie.at, system)}" for tie in floor.tie]
    return said[0] if len(said) == 1 else said or None


def _board(board: EdgeBoard | None, system: System) -> dict[str, str] | None:
    if board is None:
        return None
    return {
        "material": board.material,
        "thickness": _length(board.thickness, system),
        "bottom": _level(board.bottom, system),
        "top": _level(board.top, system),
    }


def _level(level: LevelAt, system: System) -> str:
    if not level.offset_m:
        return level.base
    sign = "+" if level.offset_m > 0 else "-"
    return f"{level.base} {sign}{_length(abs(level.offset_m), system)}"


def _length(metres: float, system: System) -> str:
    """Return a length as a builder writes it where that is exact, else to the nanometre."""
    shown = show_length(metres, system)
    exact = abs(read_length(shown) - metres) < 1e-9
    return shown if exact else f"{metres * 1000:.6f} mm"
