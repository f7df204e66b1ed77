"""Units: the only file that imports pint. Text outside, SI floats inside.

Lengths are read by a small parser of builders' writing, because pint reads `66 1/2 in`
as 33 in. Factors come from pint's registry, which holds the exact definitions of
NIST SP 811 (1 in = 25.4 mm); those of the usual units stand in `unit_factors.py`, so that the
registry is read for others only.
"""

import math
import re
from fractions import Fraction
from functools import cache, lru_cache
from typing import TYPE_CHECKING, Literal

from geometry.errors import LengthError
from geometry.unit_factors import FACTORS

if TYPE_CHECKING:
    import pint

System = Literal["ft-in", "metric"]
BareUnit = Literal["ft", "in", "m", "mm"]

INCH = 0.0254
FOOT = 0.3048
MIL = INCH / 1000

_FORMS = "5'-6 1/2\", 66.5 in, 5.54 ft, 1.65 m or 1650 mm"
_NUMBER = r"(?:\d+(?:\.\d*)?|\.\d+)"
_FEET = r"(?:'|ft|feet|foot)"
_INCHES = r"(?:\"|''|in|inch|inches)"
_FRACTION = r"(?P<over>\d+)\s*/\s*(?P<under>\d+)"
_IMPERIAL = re.compile(
    rf"(?:(?P<feet>{_NUMBER})\s*{_FEET})?"
    rf"(?(feet)\s*-?\s*)"
    rf"(?:(?:(?P<inches>{_NUMBER})(?:(?:\s+|-){_FRACTION})?|(?P<over2>\d+)\s*/\s*(?P<under2>\d+))"
    rf"\s*(?P<mark>{_INCHES})?)?"
)
_DECIMAL = re.compile(rf"(?P<number>{_NUMBER})\s*(?P<unit>mm|cm|m|mil|mils|thou)")
_PLAIN = re.compile(_NUMBER)
_UNIT_NAMES = {"mil": "thou", "mils": "thou"}
_CHARACTERS = str.maketrans(
    {"’": "'", "′": "'", "‘": "'", "”": '"', "″": '"', "“": '"', "−": "-", "–": "-"}
)


@cache
def factor(unit: str, to: str) -> float:
    """Return how many `to` one `unit` holds, from pint's registry, rounded once."""
    known = FACTORS.get(unit, {}).get(to)
    return float(_registry().convert(Fraction(1), unit, to)) if known is None else known


@cache
def _registry() -> "pint.UnitRegistry[Fraction]":
    import pint

    return pint.UnitRegistry(cache_folder=None, non_int_type=Fraction)


def to_unit(value: float, unit: str, to: str) -> float:
    """Convert a float between two named units."""
    return value * factor(unit, to)


def read_length(text: str | float, bare: BareUnit | None = None) -> float:
    """Read a length as a builder writes it. Returns metres, may be negative.

    `bare` is the unit of plain numbers, where the file states one. Raises LengthError.
    """
    if isinstance(text, bool) or not isinstance(text, str | int | float):
        raise LengthError(f"{text} is not a length; write it like {_FORMS}")
    return _length(str(text), bare)


@lru_cache(maxsize=1024)
def _length(text: str, bare: BareUnit | None) -> float:
    words = text.translate(_CHARACTERS).strip().lower()
    if len(words) > 40:
        raise LengthError(
            f"a length of {len(words)} characters cannot be read; write it like {_FORMS}"
        )
    sign = -1.0 if words.startswith("-") else 1.0
    body = words.lstrip("+-").strip() if words[:1] in "+-" and words[1:2] not in "+-" else words
    if _PLAIN.fullmatch(body):
        return sign * _plain(body, words, bare)
    decimal = _DECIMAL.fullmatch(body)
    if decimal:
        unit = decimal["unit"]
        scale = Fraction(repr(factor(_UNIT_NAMES.get(unit, unit), "mm")))
        return sign * float(Fraction(decimal["number"]) * scale / 1000)
    return sign * _imperial(body, text)


def _plain(body: str, words: str, bare: BareUnit | None) -> float:
    number = float(body)
    if number == 0.0:
        return 0.0
    if bare is None:
        raise LengthError(
            f"{words} has no unit; write {words}\", {words}' or {words} mm, "
            'or state `numbers = "ft"` under [project]'
        )
    return number * factor(bare, "m")


def _imperial(body: str, text: str) -> float:
    found = _IMPERIAL.fullmatch(body)
    if not found or not body:
        hint = " (use a point, not a comma)" if "," in text else ""
        raise LengthError(f"{text!r} is not a length{hint}; write it like {_FORMS}")
    feet, whole = found["feet"], found["inches"]
    over, under = found["over"] or found["over2"], found["under"] or found["under2"]
    if feet is None and found["mark"] is None:
        raise LengthError(f"{text!r} has no unit; write it like {_FORMS}")
    inches = Fraction(whole or 0) + _fraction(over, under, text)
    if over and whole and "." in whole:
        raise LengthError(f"{text!r} mixes a decimal and a fraction; write one of the two")
    if feet is not None and inches >= 12:
        total = Fraction(feet) * 12 + inches
        right = feet_inches(float(total) * INCH)
        raise LengthError(f"{text!r} has twelve or more inches after the feet; write {right}")
    return float((Fraction(feet or 0) * 12 + inches) * Fraction(254, 10000))


def _fraction(over: str | None, under: str | None, text: str) -> Fraction:
    if over is None or under is None:
        return Fraction(0)
    if int(under) == 0 or int(over) >= int(under):
        raise LengthError(f'{text!r} has a fraction that is not below one; write it like 6 1/2"')
    return Fraction(int(over), int(under))


_FALL = re.compile(r"(?P<rise>.+?)\s*(?:/|per)\s*(?P<run>ft|foot|m)")
_RATIO = re.compile(rf"1\s*:\s*(?P<run>{_NUMBER})")
_FALL_FORMS = "write it like 1/8 in per ft, 1 %, 1:100, 10 mm/m or level"
_PERCENT = re.compile(rf"(?P<number>{_NUMBER})\s*%")


def read_fall(text: str | float) -> float:
    """Read a fall such as `1/8 in per ft`, `1 %`, `1:100` or `10 mm/m`. Returns m per m.

    Raises LengthError.
    """
    if isinstance(text, bool) or not isinstance(text, str | int | float) or len(str(text)) > 40:
        raise LengthError(f"this is not a fall; {_FALL_FORMS}")
    words = str(text).strip().lower()
    if words in {"0", "0.0", "level"}:
        return 0.0
    if found := _PERCENT.fullmatch(words):
        return float(found["number"]) / 100
    if (found := _RATIO.fullmatch(words)) and float(found["run"]) > 0:
        return 1 / float(found["run"])
    if found := _FALL.fullmatch(words):
        return read_length(found["rise"]) / factor(found["run"].replace("foot", "ft"), "m")
    raise LengthError(f"{text!r} is not a fall; {_FALL_FORMS}")


def feet_inches(metres: float, denominator: int = 16) -> str:
    """Print metres as feet, inches and a reduced fraction: `5'-6 1/2"`, `0'-0 1/16"`, `-0'-6"`.

    Rounds to a whole count of the smallest fraction first, so 11.99 in prints 1'-0".
    """
    count = round(abs(metres) / INCH * denominator)
    sign = "-" if metres < 0 and count else ""
    feet, rest = divmod(count, 12 * denominator)
    return f"{sign}{feet}'-{_inches(rest, denominator)}"


def _inches(count: int, denominator: int) -> str:
    whole, part = divmod(count, denominator)
    if not part:
        return f'{whole}"'
    fraction = Fraction(part, denominator)
    return f'{whole} {fraction}"' if whole else f'{"0 " if not whole else ""}{fraction}"'


def show_length(metres: float, system: System, denominator: int = 16) -> str:
    """Print a size: under one foot in inches alone (`6 1/2"`), else feet-inches; or mm."""
    if system == "metric":
        return _millimetres(metres)
    if round(abs(metres) / INCH * denominator) >= 12 * denominator:
        return feet_inches(metres, denominator)
    count = round(abs(metres) / INCH * denominator)
    text = _inches(count, denominator).removeprefix("0 ")
    return f"-{text}" if metres < 0 and count else text


def show_thickness(metres: float, system: System) -> str:
    """Print a thickness; sheets too thin for a sixteenth of an inch come out in mil or 0.01 mm."""
    if abs(metres) < 1.2e-3:
        if system == "metric":
            return f"{metres * 1000:.2f} mm"
        return f"{metres / MIL:.3g} mil"
    return show_length(metres, system)


def show_level(metres: float, system: System, denominator: int = 16) -> str:
    """Print a level against the datum with its sign: `+0'-6"`, `-0'-8 1/2"`, `0'-0"`, `+150 mm`."""
    text = _millimetres(metres) if system == "metric" else feet_inches(metres, denominator)
    if text.startswith("-") or text in {"0'-0\"", "0 mm"}:
        return text
    return f"+{text}"


def show_elevation(metres: float, system: System) -> str:
    """Print a project elevation: decimal feet to the hundredth, or metres to the millimetre."""
    if system == "metric":
        return f"{metres:.3f} m"
    return f"{metres / FOOT:.2f} ft"


def show_rod(metres: float, system: System) -> str:
    """Print a rod reading: feet-inches to the eighth, or metres to the millimetre."""
    return f"{metres:.3f} m" if system == "metric" else feet_inches(metres, 8)


def show_area(square_metres: float, system: System) -> str:
    """Print an area in ft2 or m2."""
    if system == "metric":
        return f"{square_metres:,.2f} m²"
    return f"{to_unit(square_metres, 'm**2', 'ft**2'):,.1f} ft²"


def show_volume(cubic_metres: float, system: System) -> str:
    """Print a volume in yd3 (small ones in ft3) or m3 (small ones in litres)."""
    if system == "metric":
        return f"{cubic_metres:,.2f} m³" if cubic_metres >= 0.1 else f"{cubic_metres * 1000:,.1f} L"
    yards = to_unit(cubic_metres, "m**3", "yd**3")
    if yards >= 0.1:
        return f"{yards:,.2f} yd³"
    return f"{to_unit(cubic_metres, 'm**3', 'ft**3'):,.2f} ft³"


def show_fall(fall: float, system: System) -> str:
    """Print a fall as in/ft with a reduced fraction, or as a percentage."""
    if system == "metric":
        return f"{fall * 100:.2f} %"
    sixteenths = fall * 12 * 16
    if math.isclose(sixteenths, round(sixteenths), abs_tol=1e-6):
        inches = _inches(round(sixteenths), 16).removeprefix("0 ").removesuffix('"')
        return f"{inches} in per ft"
    return f"{fall * 12:.3f} in per ft"


def _millimetres(metres: float) -> str:
    tenths = round(metres * 10000)
    if tenths % 10 == 0:
        return f"{tenths // 10} mm"
    return f"{tenths / 10:.1f} mm"
