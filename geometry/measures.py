"""Measures other than lengths as a builder writes and reads them: time, flow, area, weight."""

import re
from math import floor
from typing import Literal

from geometry.errors import LengthError
from geometry.units import System, to_unit

Kind = Literal["time", "flow", "area", "speed", "volume", "mass", "density", "force", "pressure"]

# What a word of a unit means to `units.to_unit`.
_UNITS: dict[Kind, dict[str, str]] = {
    "time": {
        "s": "s", "sec": "s", "min": "min", "minutes": "min", "h": "h", "hr": "h", "hours": "h",
        "d": "day", "day": "day", "days": "day",
    },
    "flow": {
        "gpm": "gallon/min", "gal/min": "gallon/min", "gph": "gallon/h", "gal/h": "gallon/h",
        "l/s": "L/s", "l/min": "L/min", "l/h": "L/h", "m3/h": "m**3/h", "cfs": "ft**3/s",
    },
    "area": {"ft2": "ft**2", "sq ft": "ft**2", "sf": "ft**2", "m2": "m**2"},
    "speed": {
        "cm/s": "cm/s", "m/s": "m/s", "m/d": "m/day", "m/day": "m/day", "ft/d": "ft/day",
        "ft/day": "ft/day", "in/h": "inch/h", "in/hr": "inch/h", "mm/h": "mm/h",
    },
    "force": {"lbf": "lbf", "lb": "lbf", "kip": "kip", "kips": "kip", "n": "N", "kn": "kN"},
    "pressure": {
        "psf": "lbf/ft**2", "lb/ft2": "lbf/ft**2", "lb/sq ft": "lbf/ft**2", "psi": "psi",
        "pa": "Pa", "kpa": "kPa", "kn/m2": "kPa",
    },
    "volume": {
        "yd3": "yd**3", "cu yd": "yd**3", "cy": "yd**3", "ft3": "ft**3", "cu ft": "ft**3",
        "m3": "m**3",
    },
    # A ton alone is the short ton of 2,000 lb; the metric one is written t or tonne.
    "mass": {
        "ton": "short_ton", "tons": "short_ton", "short ton": "short_ton",
        "short tons": "short_ton", "lb": "lb", "t": "tonne", "tonne": "tonne",
        "tonnes": "tonne", "kg": "kg",
    },
    "density": {
        "ton/yd3": "short_ton/yd**3", "tons/yd3": "short_ton/yd**3", "lb/yd3": "lb/yd**3",
        "lb/ft3": "lb/ft**3", "pcf": "lb/ft**3", "t/m3": "tonne/m**3", "kg/m3": "kg/m**3",
    },
}  # fmt: skip
_INSIDE: dict[Kind, str] = {
    "time": "s", "flow": "m**3/s", "area": "m**2", "speed": "m/s", "volume": "m**3",
    "mass": "kg", "density": "kg/m**3", "force": "N", "pressure": "Pa",
}  # fmt: skip
_FORMS: dict[Kind, str] = {
    "time": "24 h or 90 min",
    "flow": "34 gpm or 2.1 L/s",
    "area": "900 sq ft or 84 m2",
    "speed": "1e-4 cm/s, 0.3 ft/day or 10 mm/h",
    "force": "3000 lbf or 13 kN",
    "pressure": "100 psf or 5 kPa",
    "volume": "14 yd3 or 10 m3",
    "mass": "18 tons (short) or 16 t",
    "density": "1.4 ton/yd3, 2800 lb/yd3 or 1600 kg/m3",
}
_CALLED: dict[Kind, str] = {
    "time": "a time", "flow": "a flow", "area": "an area", "speed": "a conductivity",
    "force": "a force", "pressure": "a pressure",
    "volume": "a volume", "mass": "a weight", "density": "a weight by volume",
}  # fmt: skip
_WRITTEN = re.compile(r"(?P<number>\d+(?:\.\d*)?(?:e[+-]?\d{1,2})?|\.\d+)\s*(?P<unit>[a-z/23 ]*)")
_CHARACTERS = str.maketrans({"²": "2", "³": "3", "−": "-"})


def read_measure(text: str | float, kind: Kind) -> float:
    """Read a measure such as `24 h`, `34 gpm`, `84 m2`, `1e-4 cm/s`, `14 yd3`, `1.4 ton/yd3`.

    Returns s, m3/s, m2, m/s, m3, kg or kg/m3, zero or more; N or Pa for loads. Raises LengthError.
    """
    wrong = f"is not {_CALLED[kind]}; write it like {_FORMS[kind]}"
    if isinstance(text, bool) or not isinstance(text, str | int | float) or len(str(text)) > 40:
        raise LengthError(f"this {wrong}")
    found = _WRITTEN.fullmatch(str(text).translate(_CHARACTERS).strip().lower())
    if found is None:
        raise LengthError(f"{str(text)!r} {wrong}")
    number, unit = float(found["number"]), " ".join(found["unit"].split())
    if number == 0 and not unit:
        return 0.0
    if unit not in _UNITS[kind]:
        said = f"has the unit {unit}, which" if unit else "has no unit and"
        raise LengthError(f"{str(text)!r} {said} {wrong}")
    return to_unit(number, _UNITS[kind][unit], _INSIDE[kind])


def show_flow(flow_m3s: float, system: System) -> str:
    """Print a flow in gallons a minute or litres a second, to three figures."""
    unit, name = ("L/s", "L/s") if system == "metric" else ("gallon/min", "gpm")
    return f"{_three(to_unit(flow_m3s, 'm**3/s', unit))} {name}"


def show_water(volume_m3: float, system: System) -> str:
    """Print a volume of water in US gallons or litres, to the tenth."""
    unit, name = ("L", "L") if system == "metric" else ("gallon", "gal")
    return f"{to_unit(volume_m3, 'm**3', unit):,.1f} {name}"


def show_intensity(speed_ms: float, system: System) -> str:
    """Print an intensity of rain in inches or millimetres an hour."""
    unit, name = ("mm/h", "mm/h") if system == "metric" else ("inch/h", "in/h")
    return f"{_three(to_unit(speed_ms, 'm/s', unit))} {name}"


def show_conductivity(speed_ms: float) -> str:
    """Print a hydraulic conductivity in cm/s, as soil reports do in either system."""
    return f"{to_unit(speed_ms, 'm/s', 'cm/s'):.2g} cm/s"


def show_tons(mass_kg: float, system: System) -> str:
    """Print a weight in short tons or tonnes, to the tenth."""
    unit, name = ("tonne", "t") if system == "metric" else ("short_ton", "tons")
    return f"{to_unit(mass_kg, 'kg', unit):,.1f} {name}"


def show_density(density_kg_m3: float, system: System) -> str:
    """Print a weight by volume in short tons for a cubic yard, or tonnes for a cubic metre."""
    if system == "metric":
        return f"{density_kg_m3 / 1000:.2f} t/m³"
    return f"{to_unit(density_kg_m3, 'kg/m**3', 'short_ton/yd**3'):.2f} ton/yd³"


def show_time(seconds: float) -> str:
    """Print a span of time: minutes, from two hours on hours and minutes; rounded down."""
    minutes = floor(seconds / 60 + 1e-9)
    if minutes == 0 and seconds > 0:
        return "under 1 min"
    if minutes < 120:
        return f"{minutes} min"
    hours, rest = divmod(minutes, 60)
    return f"{hours} h {rest} min" if rest else f"{hours} h"


def _three(value: float) -> str:
    """Return a figure with three that count, but no more than three places; 0 stays 0."""
    if value == 0:
        return "0"
    if value < 0.0005:
        return "under 0.001"
    value = float(f"{value:.4g}")
    places = 0 if value >= 100 else 1 if value >= 10 else 2 if value >= 1 else 3
    return f"{value:,.{places}f}"
