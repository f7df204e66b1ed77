"""Kinds of values a design file holds: lengths, falls, plan points, level words.

Each reads a builder's text and keeps an SI float (or a small record), refuses what no
foundation can be, and describes itself in the published JSON Schema.
"""

import re
from collections.abc import Callable
from dataclasses import dataclass
from functools import cache
from typing import Annotated, Any, Literal

from pydantic import (
    BaseModel,
    BeforeValidator,
    ConfigDict,
    GetCoreSchemaHandler,
    GetJsonSchemaHandler,
    ValidationInfo,
    WithJsonSchema,
)
from pydantic.json_schema import JsonSchemaValue
from pydantic_core import CoreSchema, PydanticCustomError, core_schema

from geometry.errors import LengthError
from geometry.units import BareUnit, read_fall, read_length

Point = tuple[float, float]


class Record(BaseModel):
    """A frozen record of the design; unknown keys are faults."""

    model_config = ConfigDict(frozen=True, extra="forbid", populate_by_name=True)


def _wrong(sentence: str) -> PydanticCustomError:
    return PydanticCustomError("design", "{sentence}", {"sentence": sentence})


def bare_unit(info: ValidationInfo) -> BareUnit | None:
    """Return the unit of plain numbers: what the file states; metres for records made in code."""
    if info.context is None:
        return "m"
    unit: BareUnit | None = info.context.get("numbers")
    return unit


_limit = cache(read_length)


@dataclass(frozen=True)
class Span:
    """A length between two limits, both as text so that a message can quote them."""

    low: str
    high: str
    example: str = ""

    def _read(self, value: Any, info: core_schema.ValidationInfo) -> float:
        try:
            metres = read_length(value, bare_unit(info))
        except LengthError as error:
            raise _wrong(str(error)) from None
        if not _limit(self.low) - 1e-9 <= metres <= _limit(self.high) + 1e-9:
            example = f", such as {self.example}" if self.example else ""
            raise _wrong(f"{value} is out of range; give {self.low} to {self.high}{example}")
        return metres

    def __get_pydantic_core_schema__(
        self, _source: Any, _handler: GetCoreSchemaHandler
    ) -> CoreSchema:
        """Read text or number to metres."""
        return core_schema.with_info_plain_validator_function(
            self._read, serialization=core_schema.plain_serializer_function_ser_schema(float)
        )

    def __get_pydantic_json_schema__(
        self, _schema: CoreSchema, _handler: GetJsonSchemaHandler
    ) -> JsonSchemaValue:
        """Describe the length for the published schema."""
        return {"type": ["string", "number"], "description": f"a length, {self.low} to {self.high}"}


def _fall(value: Any) -> float:
    try:
        fall = read_fall(value)
    except LengthError as error:
        raise _wrong(str(error)) from None
    if not 0 <= fall <= 0.25 + 1e-9:
        raise _wrong(f"{value} is out of range; give level to 3 in per ft, such as 1/8 in per ft")
    return min(fall, 0.25)


def _point(value: Any, info: ValidationInfo) -> Point:
    pair = value.split(",") if isinstance(value, str) else value
    if not isinstance(pair, list | tuple) or len(pair) != 2:
        raise _wrong(
            f'{value!r} is not a place on the plan; write it like "24\', 12\'-6\\"" (x, then y)'
        )
    try:
        x, y = (read_length(p.strip() if isinstance(p, str) else p, bare_unit(info)) for p in pair)
    except LengthError as error:
        raise _wrong(str(error)) from None
    if max(abs(x), abs(y)) > 300:
        raise _wrong(
            f"{value!r} lies more than 300 m (1,000 ft) from the plan's origin; check the unit"
        )
    return x, y


class LevelAt(Record):
    """A level said by name with an offset: `finished floor`, `foam top`, `TOF +1 in`, `-8 in`.

    base: "TOF", "finished floor", "subgrade", "footing bottom" or "<layer> top" / "<layer> bottom".
    offset_m: metres above it.
    """

    base: str
    offset_m: float = 0.0


_LEVEL = re.compile(r"(?P<base>[A-Za-z][A-Za-z0-9 _-]*?)\s*(?P<offset>(?:[+−-]\s*\d).*)?")


def read_level(value: Any, numbers: BareUnit | None = None) -> LevelAt:
    """Read a level by name and offset, or a plain length against TOF. Raises LengthError."""
    if isinstance(value, LevelAt):
        return value
    text = str(value).strip()
    named = _LEVEL.fullmatch(text) if isinstance(value, str) else None
    if named is None:
        return LevelAt(base="TOF", offset_m=read_length(value, numbers))
    # read_length takes a blank between sign and number, and one before a fraction.
    offset = read_length(named["offset"], numbers) if named["offset"] else 0.0
    base = " ".join(named["base"].split())
    known = {"tof": "TOF", "top of footing": "TOF"}
    return LevelAt(base=known.get(base.lower(), base.lower()), offset_m=offset)


def _level(value: Any, info: ValidationInfo) -> LevelAt:
    try:
        if isinstance(value, dict):
            return LevelAt(**value)
        return read_level(value, bare_unit(info))
    except LengthError as error:
        raise _wrong(f"{error}; or name a level: TOF, finished floor, subgrade, foam top") from None


class Tie(Record):
    """One interface of the build-up tied to a level: `foam bottom at TOF`."""

    interface: str
    at: LevelAt


_TIE = re.compile(r"(?P<interface>.+?)\s+at\s+(?P<level>.+)", re.IGNORECASE)
_TIE_FORM = 'write it like "foam bottom at TOF", "slab top at +6 in" or "subgrade at -9 in"'


def _tie(value: Any, info: ValidationInfo) -> Tie:
    if isinstance(value, Tie):
        return value
    if isinstance(value, dict):
        return Tie(**value)
    found = _TIE.fullmatch(str(value).strip())
    if not found:
        raise _wrong(f"{value!r} ties nothing to a level; {_TIE_FORM}")
    try:
        at = read_level(found["level"], bare_unit(info))
    except LengthError as error:
        raise _wrong(f"{error}; {_TIE_FORM}") from None
    return Tie(interface=" ".join(found["interface"].lower().split()), at=at)


def _listed(value: Any) -> Any:
    return [value] if isinstance(value, str) else value


def _described(text: str, reader: Callable[..., Any]) -> tuple[Any, ...]:
    schema = {"type": ["string", "number", "array"], "description": text}
    return BeforeValidator(reader), WithJsonSchema(schema)


Fall = Annotated[float, *_described("a fall: 1/8 in per ft, 1 %, 1:100, level", _fall)]
PlanPoint = Annotated[Point, *_described("a place on the plan: x, y", _point)]
Level = Annotated[LevelAt, *_described("a level: TOF, finished floor, foam top, -8 in", _level)]
FloorTie = Annotated[Tie, *_described("a tie: foam bottom at TOF", _tie)]
_TIES = {
    "type": ["string", "array"],
    "items": {"type": "string"},
    "description": "a tie, or a list",
}
Ties = Annotated[tuple[FloorTie, ...], BeforeValidator(_listed), WithJsonSchema(_TIES)]

Name = Annotated[str, BeforeValidator(lambda v: str(v).strip() if isinstance(v, str | int) else v)]

FootingWidth = Annotated[float, Span("8 in", "8 ft", "20 in")]
FootingThickness = Annotated[float, Span("4 in", "4 ft", "10 in")]
WallThickness = Annotated[float, Span("4 in", "24 in", "8 in")]
WallHeight = Annotated[float, Span("6 in", "20 ft", "8 ft")]
Shift = Annotated[float, Span("-24 in", "24 in", "0")]
Step = Annotated[float, Span("-20 ft", "20 ft", "3'-6\"")]
LayerThickness = Annotated[float, Span("0.1 mm", "6 ft", "4 in")]
PadSize = Annotated[float, Span("8 in", "12 ft", "36 in")]
ColumnSize = Annotated[float, Span("2 in", "4 ft", "12 in")]
BoardThickness = Annotated[float, Span("1/4 in", "12 in", "1 in")]
Elevation = Annotated[float, Span("-1500 ft", "30000 ft", "412.35 ft")]
LevelValue = Annotated[float, Span("-50 ft", "50 ft", "-8 in")]
Clear = Annotated[float, Span("0", "20 ft", "2 ft")]
Small = Annotated[float, Span("0", "3 ft", "6 in")]
HoleSize = Annotated[float, Span("1 mm", "1 in", "1/2 in")]
HoleSpacing = Annotated[float, Span("1/2 in", "3 ft", "5 in")]
PitDiameter = Annotated[float, Span("10 in", "5 ft", "18 in")]
PitDepth = Annotated[float, Span("12 in", "12 ft", "30 in")]
FloatHeight = Annotated[float, Span("0", "12 ft", "12 in")]
Cover = Annotated[float, Span("1/2 in", "6 in", "3 in")]
BarSize = Literal["#3", "#4", "#5", "#6", "#7", "#8"]
