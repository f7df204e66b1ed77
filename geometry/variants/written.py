"""What the files of several designs say otherwise, place by place, in the files' own writing."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import combinations
from math import isclose
from typing import Any, TypeAlias

from geometry.faults.places import INHERITED, inside, written_at
from geometry.parts.fields import LevelAt, Record, Span, Tie
from geometry.project import Design
from geometry.units import System, show_fall, show_length, show_level, show_thickness

Key: TypeAlias = tuple[str, ...]
Path: TypeAlias = tuple[str | int, ...]

GIVEN, LACKING = "given", "–"
_ORDER = ", in order"
# Keys of the design file that hold a fall; no limit of a length tells them.
_FALLS = ("fall",)
# What changes no part comes last.
_LAST = ("project",)


@dataclass(frozen=True)
class Said:
    """A value of a design in SI, and as its file writes it (else the usual one in words)."""

    value: Any
    words: str


@dataclass(frozen=True)
class Written:
    """A place of the design file at which designs differ: `floor > layer "foam" > thickness`.

    words: what each design's file says there, a dash where it has no such thing.
    """

    place: str
    words: tuple[str, ...]


def differing(designs: Sequence[tuple[Design, dict[str, Any]]]) -> tuple[Written, ...]:
    """Return the places at which designs differ, each with its raw tables; names and notes last.

    What two files write otherwise and mean alike (`2 in`, `50.8 mm`) is no difference. Footing,
    wall and floor count as each area has them; what all areas share is told once, as the house's.
    """
    told = [dict(_told(design, raw)) for design, raw in designs]
    keys = list(dict.fromkeys(key for one in told for key in one))
    found = [(key, _words(told, key)) for key in keys if _differs(told, key)]
    rows = _shared(found, {key[0] for key in keys if key[0].startswith("area ")})
    rows = sorted(rows, key=lambda row: row[0][0] in _LAST)
    steps = {step for key in keys for step in key}
    return tuple(Written(_place(key, steps), words) for key, words in rows)


def _place(key: Key, steps: set[str]) -> str:
    """Return a place in words; the only one of a list needs no number."""
    return " > ".join(
        step.removesuffix(" 1") if f"{step.removesuffix(' 1')} 2" not in steps else step
        for step in key
    )


_Row: TypeAlias = tuple[Key, tuple[str, ...]]


def _shared(rows: list[_Row], areas: set[str]) -> list[_Row]:
    """Return the rows with those that every area has alike told once, without the area."""
    having: dict[_Row, set[str]] = {}
    for key, words in rows:
        having.setdefault((key[1:], words), set()).add(key[0])

    def house(row: _Row) -> _Row:
        key, words = row
        inherited = key[0] in areas and len(key) > 1 and key[1] in INHERITED
        return (key[1:], words) if inherited and having[key[1:], words] == areas else row

    return list(dict.fromkeys(map(house, rows)))


def _differs(told: Sequence[dict[Key, Said]], key: Key) -> bool:
    """Whether the designs that have the thing around a place differ there."""
    around = [one for one in told if len(key) == 1 or _has(one, key[:-1])]
    values = [one[key].value if key in one else _MISSING for one in around]
    if key[-1].endswith(_ORDER):
        lists = [v for v in values if isinstance(v, tuple)]
        return any(_turned(v, w) for v, w in combinations(lists, 2))
    return any(not _alike(values[0], other) for other in values[1:])


def _turned(one: tuple[str, ...], two: tuple[str, ...]) -> bool:
    """Whether what two lists have in common stands in another order in each."""
    return [n for n in one if n in two] != [n for n in two if n in one]


def _has(told: dict[Key, Said], key: Key) -> bool:
    return key in told and told[key].value is not None


_MISSING = object()


def _alike(one: Any, two: Any) -> bool:
    if isinstance(one, float | int) and isinstance(two, float | int):
        return isclose(one, two, rel_tol=1e-9, abs_tol=1e-9)
    if isinstance(one, tuple) and isinstance(two, tuple):
        return len(one) == len(two) and all(map(_alike, one, two))
    if isinstance(one, Record) and isinstance(two, Record):
        return _alike(_fields(one), _fields(two))
    return bool(one == two)


def _fields(record: Record) -> tuple[Any, ...]:
    return tuple(getattr(record, name) for name in type(record).model_fields)


def _words(told: Sequence[dict[Key, Said]], key: Key) -> tuple[str, ...]:
    return tuple(one[key].words or LACKING if key in one else LACKING for one in told)


def _told(design: Design, raw: dict[str, Any]) -> Iterator[tuple[Key, Said]]:
    """Yield every place of a design with its value, area by area with what it has of the house."""
    areas = tuple(
        area.model_copy(
            update={
                "footing": design.footing_of(area),
                "wall": design.wall_of(area),
                "floor": design.floor_of(area),
            }
        )
        for area in design.areas
    )
    teller = _Teller(raw, design.project.units)
    for key, said in teller.record(design.model_copy(update={"areas": areas}), (), ()):
        if key[0] not in INHERITED:
            yield key, said


@dataclass(frozen=True)
class _Teller:
    """Walks a design beside its raw tables."""

    raw: dict[str, Any]
    system: System

    def record(self, record: Record, path: Path, key: Key) -> Iterator[tuple[Key, Said]]:
        """Yield what stands within a record."""
        for name, field in type(record).model_fields.items():
            word = field.alias or name
            value = getattr(record, name)
            yield from self.value(value, field.metadata, (*path, word), (*key, word))

    def value(
        self, value: Any, kinds: Sequence[Any], path: Path, key: Key
    ) -> Iterator[tuple[Key, Said]]:
        """Yield a value, or the record or the list of records that it is."""
        if _is_table(value):
            yield key, Said(True, GIVEN)
            yield from self.record(value, path, key)
        elif isinstance(value, tuple) and value and all(map(_is_table, value)):
            yield from self._listed(value, path, key)
        elif value != ():
            yield key, Said(value, self._words(value, kinds, path))

    def _listed(self, rows: tuple[Any, ...], path: Path, key: Key) -> Iterator[tuple[Key, Said]]:
        """Yield the entries of a list by their names, or by their numbers where they have none."""
        names = [str(getattr(row, "name", "")) for row in rows]
        named = all(names) and len(set(names)) == len(names)
        for number, row in enumerate(rows):
            label = f'"{names[number]}"' if named else str(number + 1)
            entry = (*key[:-1], f"{key[-1]} {label}")
            yield entry, Said(True, GIVEN)
            yield from self.record(row, (*path, number), entry)
        if named:
            yield (*key[:-1], f"{key[-1]}{_ORDER}"), Said(tuple(names), ", ".join(names))

    def _words(self, value: Any, kinds: Sequence[Any], path: Path) -> str:
        written = inside(self.raw, written_at(path, self.raw))
        if written is None:
            return _usual(value, kinds, path, self.system)
        if isinstance(written, list):
            return "; ".join(map(_plain, written))
        words = _plain(written)
        bare = isinstance(written, int | float) and any(isinstance(k, Span) for k in kinds)
        numbers = inside(self.raw, ("project", "numbers"))
        return f"{words} {numbers}" if bare and numbers else words


def _is_table(value: Any) -> bool:
    """Whether a value is a table of the file; levels and ties are words."""
    return isinstance(value, Record) and not isinstance(value, LevelAt | Tie)


def _plain(written: Any) -> str:
    if isinstance(written, bool):
        return "yes" if written else "no"
    if isinstance(written, list):
        return ", ".join(map(str, written))
    return str(written)


def _usual(value: Any, kinds: Sequence[Any], path: Path, system: System) -> str:
    """Return a value that no file states in words."""
    if value is None:
        return ""
    if isinstance(value, LevelAt):
        return _level(value, system)
    if isinstance(value, float) and any(isinstance(kind, Span) for kind in kinds):
        return show_thickness(value, system) if value else show_length(value, system)
    if isinstance(value, float) and path[-1] in _FALLS:
        return show_fall(value, system)
    if isinstance(value, bool):
        return _plain(value)
    if isinstance(value, tuple):
        return ", ".join(_usual(one, kinds, path, system) for one in value)
    return f"{value:g}" if isinstance(value, float) else str(value)


def _level(level: LevelAt, system: System) -> str:
    return f"{level.base} {show_level(level.offset_m, system)}" if level.offset_m else level.base
