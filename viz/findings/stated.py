"""Every value of a design beside its file: as the file states it, or taken as usual."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import Annotated, Any, get_args, get_origin

from pydantic.fields import FieldInfo

from geometry.faults.places import INHERITED, inside, single, written_at
from geometry.faults.text import cleaned, raw_design
from geometry.materials.catalogue import find
from geometry.measures import show_conductivity, show_flow, show_time
from geometry.parts.fields import LevelAt, Record, Span, Tie
from geometry.parts.floor import Layer
from geometry.parts.graded import Share
from geometry.parts.measured import Measure
from geometry.project import Design
from geometry.units import System, show_area, show_fall, show_length, show_level, show_thickness
from geometry.water.loadwords import show_force, show_pressure

Path = tuple[str | int, ...]
# Names stand in the title, an order's factors on the order.
_ELSEWHERE = ("format", "project", "order")
# What a part is called stands in its place already; bleeders are told where a file names them.
_UNTOLD = ("name",)


@dataclass(frozen=True)
class Value:
    """One value. place: in words; key: of the file, without numbers; given: by the file."""

    place: str
    key: str
    words: str
    given: bool


def stated_keys(text: str) -> frozenset[str]:
    """Return the keys a design file states, without numbers of lists: "loads.wheel"."""
    return frozenset(_keys(raw_design(cleaned(text)), ()))


def _keys(table: dict[str, Any], above: tuple[str, ...]) -> Iterator[str]:
    for key, value in table.items():
        yield ".".join((*above, key))
        for row in value if isinstance(value, list) else [value]:
            if isinstance(row, dict):
                yield from _keys(row, (*above, key))


def values(design: Design, text: str) -> tuple[Value, ...]:
    """Return every value of a design that is not empty, in the order of the file's keys."""
    walk = _Walk(raw_design(cleaned(text)), design.project.units)
    return tuple(walk.record(design, (), ""))


@dataclass(frozen=True)
class _Walk:
    raw: dict[str, Any]
    system: System

    def record(self, record: Record, path: Path, place: str) -> Iterator[Value]:
        for name, field in type(record).model_fields.items():
            word = field.alias or name
            told = word not in (_UNTOLD if path else _ELSEWHERE)
            if told and not (word == "bleeders" and self.written((*path, word)) is None):
                here = f"{place} > {word}" if place else word
                yield from self.value(getattr(record, name), _kinds(field), (*path, word), here)

    def written(self, path: Path) -> Any:
        return inside(self.raw, written_at(path, self.raw))

    def value(self, value: Any, kinds: Sequence[Any], path: Path, place: str) -> Iterator[Value]:
        if isinstance(value, Layer):
            yield self.layer(value, path, place)
        elif _is_table(value):
            yield from self.record(value, path, place)
        elif isinstance(value, tuple) and value and all(map(_is_table, value)):
            yield from self.rows(value, path, place)
        elif value not in (None, (), ""):
            yield from self.leaf(value, kinds, path, place)

    def layer(self, layer: Layer, path: Path, place: str) -> Value:
        """Return a layer in one line."""
        thick = self.written((*path, "thickness"))
        words = self.words(layer.thickness, (_LENGTH,), "thickness", thick)
        row = find(layer.material)
        said = f"{words} of {row.name if row else layer.material}, {layer.role}"
        return Value(place, _key(path), said, thick is not None)

    def rows(self, rows: tuple[Record, ...], path: Path, place: str) -> Iterator[Value]:
        for number, row in enumerate(rows):
            name = str(getattr(row, "name", "") or (number + 1 if len(rows) > 1 else ""))
            yield from self.value(row, (), (*path, number), f"{place} {name}".strip())

    def leaf(self, value: Any, kinds: Sequence[Any], path: Path, place: str) -> Iterator[Value]:
        """Yield one value; an area's own that the house's stands for is told there alone."""
        of_house = path[0] == "area" and len(path) > 3 and path[2] in INHERITED
        if of_house and inside(self.raw, single(path, self.raw)) is None:
            return
        written = self.written(path)
        said = self.words(value, kinds, str(path[-1]), written)
        yield Value(place, _key(path), said, written is not None)

    def words(self, value: Any, kinds: Sequence[Any], name: str, written: Any) -> str:
        if name not in _POINTS:
            if isinstance(written, str):
                return written
            if isinstance(written, list) and written and isinstance(written[0], str):
                return "; ".join(map(str, written))
        return shown(value, kinds, name, self.system)


_POINTS = ("corners", "at")
_LENGTH = Span("0.1 mm", "6 ft")


def _key(path: Path) -> str:
    return ".".join(step for step in path if isinstance(step, str))


def _kinds(field: FieldInfo) -> tuple[Any, ...]:
    """Return what a field's value is checked by, of one that may be left out as well."""
    inner = (one for one in get_args(field.annotation) if get_origin(one) is Annotated)
    return (*field.metadata, *(kind for one in inner for kind in get_args(one)[1:]))


def _is_table(value: Any) -> bool:
    return isinstance(value, Record) and not isinstance(value, LevelAt | Tie)


def shown(value: Any, kinds: Sequence[Any], name: str, system: System) -> str:
    """Return a value in words. kinds: what its field is checked by; name: of the field."""
    if isinstance(value, tuple):
        return _several(value, kinds, name, system)
    if isinstance(value, LevelAt):
        off = f" {show_level(value.offset_m, system)}" if value.offset_m else ""
        return f"{value.base}{off}"
    if isinstance(value, Tie):
        return f"{value.interface} at {shown(value.at, (), name, system)}"
    if isinstance(value, bool):
        return "yes" if value else "no"
    if isinstance(value, float):
        return _figure(value, kinds, name, system)
    return str(value)


def _several(value: tuple[Any, ...], kinds: Sequence[Any], name: str, system: System) -> str:
    if name == "at" or (name == "corners" and isinstance(value[0], float)):
        return ", ".join(show_length(metres, system) for metres in value)
    return "; ".join(shown(one, kinds, name, system) for one in value)


_DEGREES, _RATIOS = ("rows", "north"), ("slope",)


def _figure(value: float, kinds: Sequence[Any], name: str, system: System) -> str:
    if name == "fall":
        return show_fall(value, system)
    if name in _DEGREES:
        return f"{value:g}°"
    if name in _RATIOS:
        return f"{value:g} across for 1 up"
    for kind in kinds:
        if isinstance(kind, Span):
            thin = 0 < value < 0.003
            return show_thickness(value, system) if thin else show_length(value, system)
        if isinstance(kind, Share):
            return f"{value:.3g} (share)" if value > 1 else f"{value * 100:.3g} %"
        if isinstance(kind, Measure):
            return _measured(value, kind, system)
    return f"{value:g}"


def _measured(value: float, kind: Measure, system: System) -> str:
    match kind.kind:
        case "flow":
            return show_flow(value, system)
        case "time":
            return show_time(value)
        case "area":
            return show_area(value, system)
        case "force":
            return show_force(value, system)
        case "pressure":
            return show_pressure(value, system)
        case "speed":
            return show_conductivity(value)
        case _:
            return f"{value:g}"
