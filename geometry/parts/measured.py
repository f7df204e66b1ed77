"""Kinds of values of the water record: times, flows, areas, conductivities, points of a curve."""

from dataclasses import dataclass
from functools import cache
from typing import Annotated, Any

from pydantic import BeforeValidator, GetCoreSchemaHandler, GetJsonSchemaHandler, WithJsonSchema
from pydantic.json_schema import JsonSchemaValue
from pydantic_core import CoreSchema, PydanticCustomError, core_schema

from geometry.errors import LengthError
from geometry.measures import Kind, read_measure
from geometry.parts.fields import bare_unit
from geometry.units import read_length

PumpPoint = tuple[float, float]
"""Head in metres, flow in m3/s."""

_limit = cache(read_measure)


def _wrong(sentence: str) -> PydanticCustomError:
    return PydanticCustomError("design", "{sentence}", {"sentence": sentence})


@dataclass(frozen=True)
class Measure:
    """A measure of a kind between two limits, both as text so that a message can quote them."""

    kind: Kind
    low: str
    high: str

    def read(self, value: Any, info: Any) -> float:
        """Read text to SI; a record made in code holds SI floats. Raises a sentence."""
        if info.context is None and isinstance(value, float):
            return value
        try:
            number = read_measure(value, self.kind)
        except LengthError as error:
            raise _wrong(str(error)) from None
        low, high = _limit(self.low, self.kind), _limit(self.high, self.kind)
        if not low * (1 - 1e-9) <= number <= high * (1 + 1e-9):
            raise _wrong(f"{value} lies outside {self.low} to {self.high}; check its unit")
        return number

    def __get_pydantic_core_schema__(
        self, _source: Any, _handler: GetCoreSchemaHandler
    ) -> CoreSchema:
        """Read text to SI."""
        return core_schema.with_info_plain_validator_function(
            self.read, serialization=core_schema.plain_serializer_function_ser_schema(float)
        )

    def __get_pydantic_json_schema__(
        self, _schema: CoreSchema, _handler: GetJsonSchemaHandler
    ) -> JsonSchemaValue:
        """Describe the measure for the published schema."""
        text = f"a {self.kind}, {self.low} to {self.high}"
        return {"type": ["string", "number"], "description": text}


_FLOW = Measure("flow", "0", "1000 gpm")
_HEAD_FORM = 'write a point of the curve as head and flow, like "10 ft, 34 gpm"'
_MOST_HEAD_M = 100.0


def _pump_point(value: Any, info: Any) -> PumpPoint:
    pair = value.split(",") if isinstance(value, str) else value
    if not isinstance(pair, list | tuple) or len(pair) != 2:
        raise _wrong(f"{str(value)[:40]!r} is no head and flow; {_HEAD_FORM}")
    head, flow = (p.strip() if isinstance(p, str) else p for p in pair)
    try:
        metres = read_length(head, bare_unit(info))
    except LengthError as error:
        raise _wrong(f"{error}; {_HEAD_FORM}") from None
    if not 0 <= metres <= _MOST_HEAD_M:
        raise _wrong(f"a head of {head} lies outside 0 to 300 ft; check its unit")
    return metres, _FLOW.read(flow, info)


Duration = Annotated[float, Measure("time", "5 min", "10 days")]
Flow = Annotated[float, Measure("flow", "0.1 gpm", "1000 gpm")]
Surface = Annotated[float, Measure("area", "0", "20000 sq ft")]
Conductivity = Annotated[float, Measure("speed", "1e-10 cm/s", "100 cm/s")]
_POINT = {
    "type": ["string", "array"],
    "description": "a point of a pump's curve: head, flow",
}
CurvePoint = Annotated[PumpPoint, BeforeValidator(_pump_point), WithJsonSchema(_POINT)]
