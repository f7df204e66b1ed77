"""Loads in words, in the design's own system: US pounds, feet and inches, or metric."""

from geometry.units import System, to_unit


def show_force(newtons: float, system: System) -> str:
    """Print a force: `3,000 lb`, `13.3 kN`."""
    if system == "metric":
        return f"{newtons / 1000:.3g} kN"
    return f"{to_unit(newtons, 'N', 'lbf'):,.0f} lb"


def show_pressure(pascals: float, system: System) -> str:
    """Print a pressure of soil or water: `575 lb/ft²`, `27.5 kPa`."""
    if system == "metric":
        return f"{pascals / 1000:.1f} kPa"
    return f"{to_unit(pascals, 'Pa', 'lbf/ft**2'):,.0f} lb/ft²"


def show_modulus(pascals: float, system: System) -> str:
    """Print a modulus or a stiffness: `1,000 psi`, `6.9 MPa`."""
    if system == "metric":
        return f"{pascals / 1e6:.2g} MPa"
    return f"{to_unit(pascals, 'Pa', 'psi'):,.0f} psi"


def show_unit_weight(newtons_m3: float, system: System) -> str:
    """Print a unit weight: `100 lb/ft³`, `15.7 kN/m³`."""
    if system == "metric":
        return f"{newtons_m3 / 1000:.3g} kN/m³"
    return f"{to_unit(newtons_m3, 'N/m**3', 'lbf/ft**3'):.0f} lb/ft³"


def show_thrust(newtons_m: float, system: System) -> str:
    """Print a force on a length of wall: `2,205 lb per ft`, `32.2 kN/m`."""
    if system == "metric":
        return f"{newtons_m / 1000:.1f} kN/m"
    return f"{to_unit(newtons_m, 'N/m', 'lbf/ft'):,.0f} lb per ft"


def show_moment(newton_metres_m: float, system: System) -> str:
    """Print a moment on a length of wall: `5,633 lb·ft per ft`, `25.1 kN·m per m`."""
    if system == "metric":
        return f"{newton_metres_m / 1000:.1f} kN·m per m"
    return f"{to_unit(newton_metres_m, 'N', 'lbf'):,.0f} lb·ft per ft"
