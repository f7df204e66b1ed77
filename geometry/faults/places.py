"""Where things stand: lines of a TOML file by path, and paths in words."""

import re
from collections.abc import Mapping, Sequence
from typing import Any

Path = tuple[str | int, ...]

_HEADER = re.compile(r"\s*(?P<open>\[\[?)\s*(?P<name>[^\[\]]+?)\s*\]\]?\s*(?:#.*)?")
_KEY = re.compile(r"\s*(?P<key>\"[^\"]+\"|'[^']+'|[A-Za-z0-9_-]+(?:\s*\.\s*[A-Za-z0-9_-]+)*)\s*=")


def lines_by_path(text: str) -> dict[Path, int]:
    """Return the line (from 1) of every table header and key in a TOML text.

    Keys inside inline tables and arrays share their line's key.
    """
    found: dict[Path, int] = {}
    counts: dict[Path, int] = {}
    table: Path = ()
    for number, line in enumerate(text.splitlines(), 1):
        if header := _HEADER.fullmatch(line):
            table = _table(_names(header["name"]), header["open"] == "[[", counts)
            found.setdefault(table, number)
        elif key := _KEY.match(line):
            found.setdefault((*table, *_names(key["key"])), number)
    return found


def _names(dotted: str) -> list[str]:
    return [part.strip().strip("\"'") for part in dotted.split(".")]


def _table(names: Sequence[str], repeated: bool, counts: dict[Path, int]) -> Path:
    path: Path = ()
    for name in names[:-1]:
        path = (*path, name)
        if path in counts:
            path = (*path, counts[path] - 1)
    path = (*path, names[-1])
    if repeated:
        counts[path] = counts.get(path, 0) + 1
        return (*path, counts[path] - 1)
    return path


def line_of(path: Path, lines: Mapping[Path, int]) -> int | None:
    """Return the line of a path, or of the nearest thing above it that has one."""
    for end in range(len(path), 0, -1):
        if path[:end] in lines:
            return lines[path[:end]]
    return None


def in_words(path: Path, raw: Any) -> str:
    """Return a path in words: `area "basement" > floor > layer "slab" > thickness`."""
    words: list[str] = []
    here = raw
    for step in path:
        try:
            here = here[step]
        except (KeyError, IndexError, TypeError):
            here = None
        if isinstance(step, int):
            name = here.get("name") if isinstance(here, dict) else None
            label = f'"{name}"' if isinstance(name, str) else str(step + 1)
            words[-1:] = [f"{words[-1]} {label}" if words else label]
        else:
            words.append(step)
    return " > ".join(words)
