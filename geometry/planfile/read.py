"""The plan a design file's tables speak of, sound or not, and lengths as one writes them there."""

from dataclasses import dataclass
from fractions import Fraction
from typing import Any, get_args

from geometry.errors import LengthError
from geometry.faults.places import inside
from geometry.plan.outline import Point
from geometry.units import INCH, BareUnit, System, read_length

# A pad and a pit where the file says nothing: as their records have it.
_PAD_M, _PIT_M = 36 * INCH, 18 * INCH


@dataclass(frozen=True)
class Spot:
    """A pier or the pit: its name, centre (None where it cannot be read), size across, metres."""

    name: str
    at: Point | None
    width: float
    depth: float


@dataclass(frozen=True)
class PlanArea:
    """An area as the file says it: corners in order, None for each that cannot be read."""

    name: str
    corners: tuple[Point | None, ...]
    piers: tuple[Spot, ...]


@dataclass(frozen=True)
class Plan:
    """What a file says of the plan, sound or not, and the units it speaks."""

    system: System
    areas: tuple[PlanArea, ...]
    pit: Spot | None


def plan_of(raw: Any) -> Plan:
    """Return the plan of a design file's tables; what cannot be read in it is None."""
    bare = bare_of(raw)
    rows = inside(raw, ("area",))
    pit = inside(raw, ("sump",))
    return Plan(
        system_of(raw),
        tuple(_area(row, n, bare) for n, row in enumerate(rows, 1))
        if isinstance(rows, list)
        else (),
        _spot(pit, "", ("diameter", "diameter"), _PIT_M, bare) if isinstance(pit, dict) else None,
    )


def system_of(raw: Any) -> System:
    """Return the units the file's lengths are printed in."""
    return "metric" if inside(raw, ("project", "units")) == "metric" else "ft-in"


def bare_of(raw: Any) -> BareUnit | None:
    """Return the unit of the file's plain numbers, where it states one."""
    unit = inside(raw, ("project", "numbers"))
    return next((known for known in get_args(BareUnit) if known == unit), None)


def place_of(value: Any, bare: BareUnit | None) -> Point | None:
    """Return a place of the plan, metres; None where it cannot be read."""
    pair = value.split(",") if isinstance(value, str) else value
    if not isinstance(pair, list | tuple) or len(pair) != 2:
        return None
    try:
        x, y = (read_length(part, bare) for part in pair)
    except LengthError:
        return None
    return (x, y) if max(abs(x), abs(y)) <= 300 else None


def written(metres: float, system: System) -> str:
    """Return a length as one writes it in the file: `5 ft 6 1/2 in`, `-3 in`, `1650 mm`.

    To the sixteenth of an inch or the millimetre; one that lies between them finer.
    """
    if system == "metric":
        tenths = round(metres * 10_000)
        return f"{tenths // 10} mm" if tenths % 10 == 0 else f"{tenths / 10:.1f} mm"
    inches = abs(metres) / INCH
    fine = 16 if abs(inches * 16 - round(inches * 16)) < 1e-3 else 128
    feet, rest = divmod(Fraction(round(inches * fine), fine), 12)
    whole, part = divmod(rest, 1)
    digits = " ".join(str(n) for n in (whole, part) if n)
    words = [f"{feet} ft"] if feet else []
    words += [f"{digits} in"] if digits else []
    sign = "-" if metres < 0 and words else ""
    return sign + " ".join(words) if words else "0"


def place_words(at: Point, system: System) -> str:
    """Return a place as one writes it in the file: `12 ft, 6 ft 6 in`."""
    return ", ".join(written(size, system) for size in at)


def _area(row: Any, number: int, bare: BareUnit | None) -> PlanArea:
    table = row if isinstance(row, dict) else {}
    corners, piers = table.get("corners"), table.get("pier")
    return PlanArea(
        str(table.get("name") or number),
        tuple(place_of(c, bare) for c in corners) if isinstance(corners, list) else (),
        tuple(
            _spot(pier, f"P{n}", ("width", "depth"), _PAD_M, bare)
            for n, pier in enumerate(piers, 1)
        )
        if isinstance(piers, list)
        else (),
    )


def _spot(row: Any, name: str, keys: tuple[str, str], usual: float, bare: BareUnit | None) -> Spot:
    table = row if isinstance(row, dict) else {}
    width = _size(table.get(keys[0]), bare, usual)
    depth = _size(table.get(keys[1]), bare, width)
    return Spot(str(table.get("name") or name), place_of(table.get("at"), bare), width, depth)


def _size(value: Any, bare: BareUnit | None, usual: float) -> float:
    """Return a size to draw; the usual one where the file says none that can be drawn."""
    try:
        size = usual if value is None else read_length(value, bare)
    except LengthError:
        return usual
    return size if 0 < size < 10 else usual
