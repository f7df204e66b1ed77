"""A drain's outlet to daylight: a solid pipe that falls until it leaves the falling ground."""

from itertools import pairwise
from typing import Annotated, Any

from pydantic import AfterValidator, BeforeValidator, Field, ValidationInfo, WithJsonSchema
from pydantic_core import PydanticCustomError

from geometry.errors import LengthError
from geometry.parts.fields import Fall, LevelValue, Name, PlanPoint, Record, Small, Span, bare_unit
from geometry.units import INCH, read_length

GroundPoint = tuple[float, float]
"""Distance from the pipe's centre at the drain's low point, level of the ground there; metres."""

_FORM = 'write a point of the ground as distance and level, like "40 ft, -2 ft"'
_FARTHEST_M, _HIGHEST_M = 600.0, 60.0


def _wrong(sentence: str) -> PydanticCustomError:
    return PydanticCustomError("design", "{sentence}", {"sentence": sentence})


def _point(value: Any, info: ValidationInfo) -> GroundPoint:
    pair = value.split(",") if isinstance(value, str) else value
    if not isinstance(pair, list | tuple) or len(pair) != 2:
        raise _wrong(f"{str(value)[:40]!r} is no distance and level; {_FORM}")
    try:
        far, level = (_length(part, info) for part in pair)
    except LengthError as error:
        raise _wrong(f"{error}; {_FORM}") from None
    if not 0 <= far <= _FARTHEST_M or abs(level) > _HIGHEST_M:
        raise _wrong(
            f"{str(value)[:40]!r} is out of range; give a distance of 0 to 2000 ft and a level "
            "within 200 ft of TOF"
        )
    return far, level


def _length(part: Any, info: ValidationInfo) -> float:
    """Return metres; a record made in code holds them."""
    if info.context is None and isinstance(part, float):
        return part
    return read_length(part.strip() if isinstance(part, str) else part, bare_unit(info))


def _rising(points: tuple[GroundPoint, ...]) -> tuple[GroundPoint, ...]:
    if points[0][0] > 0:
        raise _wrong(
            'the ground begins away from the drain; give its level over the drain first, like "0, '
            '5 ft"'
        )
    if any(b[0] - a[0] < 1e-3 for a, b in pairwise(points)):
        raise _wrong("distances along the ground do not rise; give the points outward in order")
    return points


_POINT = {"type": ["string", "array"], "description": "a point of the ground: distance, level"}
_Point = Annotated[GroundPoint, BeforeValidator(_point), WithJsonSchema(_POINT)]
GroundLine = Annotated[
    tuple[_Point, ...], Field(min_length=2, max_length=60), AfterValidator(_rising)
]


class Daylight(Record):
    """The solid pipe from the drain's low point to its open end, and the ground it runs under.

    toward: plan point it heads to, in a straight line. fall: of the pipe. pipe: the drain's kind
    unless given. ground: the finished ground along that line, "distance, level" outward from 0,
    levels against the project's TOF; beyond the last point it is unknown. cover: least ground
    wanted over the pipe. above_ground: least height of the open end's invert over the ground
    there, free of snow, leaves and grass. Both are common practice, no source. guard: a screen
    against animals at the open end. high_water: highest water known at the open end (stream,
    ditch, street), against the project's TOF. trench_width, bedding: of its trench, and under it.
    """

    toward: PlanPoint
    ground: GroundLine
    fall: Fall = 1 / 48
    pipe: Name = ""
    cover: Annotated[float, Span("0", "10 ft", "12 in")] = 12 * INCH
    above_ground: Small = 4 * INCH
    guard: bool = True
    high_water: LevelValue | None = None
    trench_width: Annotated[float, Span("6 in", "6 ft", "18 in")] = 18 * INCH
    bedding: Small = 2 * INCH
