"""Kinds of values of a grading curve: shares, and a sieve with what passes it."""

import re
from dataclasses import dataclass
from typing import Annotated, Any

from pydantic import BeforeValidator, GetCoreSchemaHandler, GetJsonSchemaHandler, WithJsonSchema
from pydantic.json_schema import JsonSchemaValue
from pydantic_core import CoreSchema, PydanticCustomError, core_schema

from geometry.errors import LengthError
from geometry.materials.sieves import SIEVES_M
from geometry.parts.fields import bare_unit
from geometry.units import read_length

SievePoint = tuple[float, float]
"""Sieve's opening in metres, share passing from 0 to 1."""

_NUMBERED = re.compile(r"(?:no\.?|#)\s*(\d{1,4})", re.IGNORECASE)
_SHARE = re.compile(r"(\d+(?:\.\d*)?|\.\d+)\s*(%?)")
_POINT_FORM = 'write a sieve and what passes it, like "No. 200, 35 %" or "2 mm, 95 %"'
# From the coarsest stone to clay; what is finer no test gives.
_LEAST_M, _MOST_M = 1e-7, 0.3


def _wrong(sentence: str) -> PydanticCustomError:
    return PydanticCustomError("design", "{sentence}", {"sentence": sentence})


def read_share(value: Any) -> float:
    """Read a share, `35 %` or `0.35`, as 0 to 1 and beyond. Raises LengthError."""
    if isinstance(value, bool) or not isinstance(value, str | int | float) or len(str(value)) > 40:
        raise LengthError("this is no share; write it like 35 % or 0.35")
    found = _SHARE.fullmatch(str(value).strip())
    if found is None:
        raise LengthError(f"{str(value)!r} is no share; write it like 35 % or 0.35")
    number = float(found[1])
    if not found[2] and number > 1:
        raise LengthError(f"{value} is more than the whole; write it like 35 % or 0.35")
    return number / 100 if found[2] else number


@dataclass(frozen=True)
class Share:
    """A share between two limits, both as text so that a message can quote them."""

    low: str
    high: str

    def _read(self, value: Any) -> float:
        try:
            share = read_share(value)
        except LengthError as error:
            raise _wrong(str(error)) from None
        if not read_share(self.low) - 1e-9 <= share <= read_share(self.high) + 1e-9:
            raise _wrong(f"{value} lies outside {self.low} to {self.high}")
        return share

    def __get_pydantic_core_schema__(
        self, _source: Any, _handler: GetCoreSchemaHandler
    ) -> CoreSchema:
        """Read text or number to a share of 1."""
        return core_schema.no_info_plain_validator_function(
            self._read, serialization=core_schema.plain_serializer_function_ser_schema(float)
        )

    def __get_pydantic_json_schema__(
        self, _schema: CoreSchema, _handler: GetJsonSchemaHandler
    ) -> JsonSchemaValue:
        """Describe the share for the published schema."""
        text = f"a share, {self.low} to {self.high}, as % or from 0 to 1"
        return {"type": ["string", "number"], "description": text}


def _sieve_point(value: Any, info: Any) -> SievePoint:
    pair = value.split(",") if isinstance(value, str) else value
    if not isinstance(pair, list | tuple) or len(pair) != 2:
        raise _wrong(f"{str(value)[:40]!r} is no sieve and share; {_POINT_FORM}")
    sieve, passing = (p.strip() if isinstance(p, str) else p for p in pair)
    try:
        size, share = _size(sieve, info), read_share(passing)
    except LengthError as error:
        raise _wrong(f"{error}; {_POINT_FORM}") from None
    if share > 1:
        raise _wrong(f"{passing} cannot pass a sieve; give 0 to 100 %")
    if not _LEAST_M <= size <= _MOST_M:
        raise _wrong(f"a sieve of {sieve} lies outside 0.0001 to 300 mm; check its unit")
    return size, share


def _size(sieve: Any, info: Any) -> float:
    """Return a sieve's opening, m: a US number, or a length."""
    named = _NUMBERED.fullmatch(sieve) if isinstance(sieve, str) else None
    if named is None:
        return read_length(sieve, bare_unit(info))
    number = int(named[1])
    if number not in SIEVES_M:
        raise LengthError(f"there is no sieve No. {number}; give its opening in mm")
    return SIEVES_M[number]


_SIEVE = {
    "type": ["string", "array"],
    "description": "a sieve by its opening or US number, and the share that passes it",
}
SieveShare = Annotated[SievePoint, BeforeValidator(_sieve_point), WithJsonSchema(_SIEVE)]
