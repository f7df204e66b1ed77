"""Where things stand: the line of a path, the path a value was written at, and paths in words."""

from collections.abc import Mapping
from typing import Any

from geometry.errors import Fault
from geometry.faults.lines import Path

LONGEST_NAME = 40
INHERITED = ("footing", "wall", "floor")


def fault_at(path: Path, sentence: str, raw: Any, lines: Mapping[Path, int]) -> Fault:
    """Return the fault with its place in words and its line in the file."""
    home = written_at(path, raw)
    return Fault(in_words(home, raw) or "design", sentence, line_of(home, lines))


def written_at(path: Path, raw: Any) -> Path:
    """Return the path where the file states a value: an area's own table, or the house's."""
    path = single(path, raw)
    if len(path) < 3 or path[0] != "area" or path[2] not in INHERITED:
        return path
    own, house = path[:3], path[2:3]
    if inside(raw, own) is None:
        return path[2:]
    if len(path) == 3 or inside(raw, (*own, path[3])) is not None:
        return path
    return path[2:] if inside(raw, (*house, path[3])) is not None else path


def single(path: Path, raw: Any) -> Path:
    """Return a path without the numbers of lists that the file writes as a single table."""
    found: list[str | int] = []
    for step in path:
        if isinstance(step, int) and isinstance(inside(raw, tuple(found)), dict):
            continue
        found.append(step)
    return tuple(found)


def inside(raw: Any, path: Path) -> Any:
    """Return what stands at a path of the file's tables; None where nothing does."""
    for step in path:
        try:
            raw = raw[step]
        except (KeyError, IndexError, TypeError):
            return None
    return raw


def line_of(path: Path, lines: Mapping[Path, int]) -> int | None:
    """Return the line of a path, or of the nearest thing above it that has one."""
    for end in range(len(path), 0, -1):
        if path[:end] in lines:
            return lines[path[:end]]
    return None


def in_words(path: Path, raw: Any) -> str:
    """Return a path in words: `area "basement" > floor > layer "slab" > thickness`."""
    words: list[str] = []
    for end, step in enumerate(path, 1):
        if isinstance(step, str):
            words.append(step[:LONGEST_NAME])
        elif isinstance(inside(raw, path[: end - 1]), list):
            label = _label(inside(raw, path[:end]), step)
            words[-1:] = [f"{words[-1]} {label}" if words else label]
    return " > ".join(words)


def _label(entry: Any, number: int) -> str:
    """Return a list entry's name, or its number from 1."""
    name = entry.get("name") if isinstance(entry, dict) else None
    if isinstance(name, str) and 0 < len(name.strip()) <= LONGEST_NAME and name.isprintable():
        return f'"{name.strip()}"'
    return str(number + 1)
