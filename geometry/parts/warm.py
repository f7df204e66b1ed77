"""Kinds of values of the climate record: temperatures, and how well something keeps heat."""

import re
from collections.abc import Callable
from typing import Annotated, Any

from pydantic import BeforeValidator, WithJsonSchema
from pydantic_core import PydanticCustomError

from geometry.units import to_unit

_NUMBER = r"(?P<number>[-+]?(?:\d+(?:\.\d*)?|\.\d+))"
_TEMPERATURE = re.compile(_NUMBER + r"\s*°?\s*(?P<unit>[fc])")
_R_VALUE = re.compile(r"r\s*-?\s*" + _NUMBER.replace("[-+]?", ""))
_RSI = re.compile(_NUMBER + r"\s*m2\s*k/w")
_CONDUCTED = re.compile(_NUMBER + r"\s*(?P<unit>w/m\s?k|btu/h[\s-]?ft[\s-]?f)")
_CHARACTERS = str.maketrans({"²": "2", "−": "-", "·": " ", "(": "", ")": ""})
# Nobody lives outside these; a slip of the unit lands there.
_COLDEST_C, _WARMEST_C = -60.0, 60.0
_MOST_RESISTANCE = 20.0
_LEAST_GROUND, _MOST_GROUND = 0.2, 6.0


def _wrong(sentence: str) -> PydanticCustomError:
    return PydanticCustomError("design", "{sentence}", {"sentence": sentence})


def _words(value: Any, form: str) -> str:
    if isinstance(value, bool) or not isinstance(value, str) or len(value) > 40:
        raise _wrong(f"this {form}")
    return " ".join(value.translate(_CHARACTERS).lower().split())


def _made(value: Any, info: Any) -> bool:
    """Whether a value comes from a record made in code, in SI already."""
    return info.context is None and isinstance(value, float)


def _temperature(value: Any, info: Any) -> float:
    """Read `68 F` or `20 C`, degrees Celsius."""
    if _made(value, info):
        return float(value)
    form = "is not a temperature; write it like 68 F or 20 C"
    found = _TEMPERATURE.fullmatch(_words(value, form))
    if found is None:
        raise _wrong(f"{value!r} {form}")
    number = float(found["number"])
    celsius = number if found["unit"] == "c" else (number - 32) / 1.8
    if not _COLDEST_C <= celsius <= _WARMEST_C:
        raise _wrong(f"{value} lies outside -76 F to 140 F (-60 C to 60 C); check its unit")
    return celsius


def _resistance(value: Any, info: Any) -> float:
    """Read `R-15` or `2.6 m2K/W`, m2K/W."""
    if _made(value, info):
        return float(value)
    form = "is not a thermal resistance; write it like R-15 or 2.6 m2K/W"
    words = _words(value, form)
    if found := _R_VALUE.fullmatch(words):
        metric = to_unit(float(found["number"]), "hour*delta_degF*foot**2/Btu", "K*m**2/W")
    elif found := _RSI.fullmatch(words):
        metric = float(found["number"])
    else:
        raise _wrong(f"{value!r} {form}")
    if not 0 <= metric <= _MOST_RESISTANCE:
        raise _wrong(f"{value} lies outside R-0 to R-113 (0 to 20 m2K/W); check its unit")
    return metric


def _conductivity(value: Any, info: Any) -> float:
    """Read `1.5 W/mK` or `0.9 Btu/h ft F`, W/mK."""
    if _made(value, info):
        return float(value)
    form = "is not a thermal conductivity; write it like 1.5 W/mK or 0.9 Btu/h ft F"
    found = _CONDUCTED.fullmatch(_words(value, form))
    if found is None:
        raise _wrong(f"{value!r} {form}")
    number = float(found["number"])
    metric = number
    if found["unit"].startswith("btu"):
        metric = to_unit(number, "Btu/(hour*foot*delta_degF)", "W/(m*K)")
    if not _LEAST_GROUND <= metric <= _MOST_GROUND:
        raise _wrong(f"{value} lies outside 0.2 to 6 W/mK (0.12 to 3.5 Btu/h ft F)")
    return metric


def _kind(reader: Callable[..., float], text: str) -> tuple[Any, ...]:
    return BeforeValidator(reader), WithJsonSchema({"type": "string", "description": text})


Temperature = Annotated[float, *_kind(_temperature, "a temperature: 68 F, 20 C")]
Resistance = Annotated[float, *_kind(_resistance, "a thermal resistance: R-15, 2.6 m2K/W")]
Conducted = Annotated[float, *_kind(_conductivity, "a thermal conductivity: 1.5 W/mK")]
