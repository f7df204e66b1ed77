"""Which designs are asked for: files, folders of files, or a grid of changes of one."""

import json
import re
import tomllib
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import lru_cache
from itertools import product
from math import prod
from pathlib import Path
from typing import Any, TypeAlias

from geometry.designfile import FileError, edited, load
from geometry.errors import BedcourseError
from geometry.faults.places import in_words, inside
from geometry.faults.text import cleaned, raw_design
from viz.variants.variant_tables import named_apart

FilePath: TypeAlias = Path
Place: TypeAlias = tuple[str | int, ...]
Edit: TypeAlias = tuple[Place, Any]
# More designs than this take days.
MOST = 100_000
_STEP = re.compile(r"(?P<name>[A-Za-z_][A-Za-z0-9_]*)|\[(?P<entry>[^\]]+)\]|(?P<dot>\.)")
_FORM = 'write it like --vary "floor.layer[foam].thickness=1 in,2 in,3 in"'


@dataclass(frozen=True)
class Asked:
    """One design that is asked for: its name in the table, its text, and changes to make in it.

    varied: the changes in words, place by place. unread: why its file could not be read.
    """

    name: str
    text: str
    edits: tuple[Edit, ...] = ()
    varied: tuple[tuple[str, str], ...] = ()
    unread: str = ""


@dataclass(frozen=True)
class Vary:
    """One place of a design file, in words, and the values it is to take."""

    place: Place
    words: str
    values: tuple[Any, ...]


def asked_files(paths: Sequence[FilePath]) -> tuple[Asked, ...]:
    """Return the designs of files, and of all `.toml` files in folders and theirs.

    A file that cannot be read is among them, with the reason. Raises BedcourseError where there is
    none at all.
    """
    found = [pair for path in paths for pair in _files(path)]
    if not found:
        raise BedcourseError("there is no design file (.toml) in what was named")
    names = named_apart([name for name, _ in found])
    return tuple(_read(name, path) for name, (_, path) in zip(names, found, strict=True))


def _files(path: FilePath) -> Iterator[tuple[str, FilePath]]:
    if not path.is_dir():
        yield path.stem, path
        return
    for file in sorted(path.rglob("*.toml")):
        inner = file.relative_to(path)
        if file.is_file() and not any(part.startswith(".") for part in inner.parts):
            yield inner.with_suffix("").as_posix(), file


def _read(name: str, path: FilePath) -> Asked:
    try:
        return Asked(name, load(path))
    except FileError as error:
        return Asked(name, "", unread=str(error))


def asked_grid(base: Asked, varies: Sequence[str]) -> tuple[Asked, ...]:
    """Return every combination of changes of one design.

    varies: such as `floor.layer[foam].thickness=1 in,2 in`; an entry of a list is told by its name,
    or by its number counted from 0; values that hold commas are parted by semicolons. Raises
    BedcourseError, DesignError where the file has no such place.
    """
    raw = raw_design(cleaned(base.text))
    grid = [_vary(words, raw) for words in varies]
    count = prod(len(one.values) for one in grid)
    if count > MOST:
        raise BedcourseError(f"these changes make {count:,} designs; {MOST:,} is the most")
    for one in grid:
        edited(base.text, one.place, one.values[0])
    return tuple(_combined(base, grid, values) for values in product(*(one.values for one in grid)))


def _combined(base: Asked, grid: Sequence[Vary], values: Sequence[Any]) -> Asked:
    pairs = list(zip(grid, values, strict=True))
    said = tuple((one.words, str(value)) for one, value in pairs)
    name = ", ".join((base.name, *(value for _, value in said)))
    edits = tuple((one.place, value) for one, value in pairs)
    return Asked(name, base.text, edits, said)


def _vary(words: str, raw: dict[str, Any]) -> Vary:
    path, equals, values = words.partition("=")
    listed = [v.strip() for v in values.split(";" if ";" in values else ",")]
    if not equals or not all(listed):
        raise BedcourseError(f"{words!r} names no values; {_FORM}")
    place = _place(path.strip(), raw)
    return Vary(place, in_words(place, raw), tuple(map(_value, dict.fromkeys(listed))))


def _value(words: str) -> Any:
    """Return a number, a list or yes and no as the file holds them; all else is text."""
    try:
        found = tomllib.loads(f"v = {words}")["v"]
    except (ValueError, RecursionError):  # also a number of thousands of digits
        return words
    return found if isinstance(found, str | int | float | bool | list) else words


def _place(path: str, raw: dict[str, Any]) -> Place:
    """Return the path that is written with dots and brackets."""
    steps: list[str | int] = []
    at = 0
    while at < len(path):
        step = _STEP.match(path, at)
        if step is None:
            break
        at = step.end()
        if step["name"]:
            steps.append(step["name"])
        elif step["entry"]:
            steps.append(_entry(step["entry"].strip(), tuple(steps), raw))
    if at < len(path) or not steps:
        raise BedcourseError(f"{path!r} is no place of a design file; {_FORM}")
    return tuple(steps)


def _entry(words: str, above: Place, raw: dict[str, Any]) -> int:
    """Return the number of a list's entry, told by name or by number from 0."""
    rows = inside(raw, above)
    names = [str(row.get("name")) for row in rows] if _are_tables(rows) else []
    if words in names:
        return names.index(words)
    if isinstance(rows, list) and words.isdecimal() and int(words) < len(rows):
        return int(words)
    listed = ", ".join(names) or "none"
    raise BedcourseError(f"{'.'.join(map(str, above))} has no entry {words!r}; it has: {listed}")


def _are_tables(rows: Any) -> bool:
    return isinstance(rows, list) and all(isinstance(row, dict) for row in rows)


def text_of(asked: Asked) -> str:
    """Return the text of a design with its changes made. Raises DesignError."""
    text = asked.text
    for place, value in asked.edits:
        text = _edited(text, place, json.dumps(value))
    return text


@lru_cache(maxsize=64)
def _edited(text: str, place: Place, value: str) -> str:
    """Return a text with one change: in a grid the first changes are the same many times over.

    value: as JSON, by which a cache can tell 1 from 1.0 and take lists.
    """
    return edited(text, place, json.loads(value))
