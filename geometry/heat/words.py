"""Heat in words, in the design's own system: US units, or metric."""

from geometry.units import System, to_unit

_R = "hour*delta_degF*foot**2/Btu"


def show_resistance(resistance: float, system: System) -> str:
    """Print a thermal resistance: `R-10.3`, `1.82 m²K/W`."""
    if system == "metric":
        return f"{resistance:.2f} m²K/W"
    return f"R-{to_unit(resistance, 'K*m**2/W', _R):.3g}"


def show_transmittance(u: float, system: System) -> str:
    """Print a U: `0.039 Btu/h·ft²·F`, `0.221 W/m²K`."""
    if system == "metric":
        return f"{u:.3f} W/m²K"
    return f"{to_unit(u, 'W/(K*m**2)', 'Btu/(hour*foot**2*delta_degF)'):.4f} Btu/h·ft²·F"


def show_loss(loss_w_k: float, system: System) -> str:
    """Print a loss for each degree: `44 Btu/h·F`, `23.0 W/K`."""
    if system == "metric":
        return f"{loss_w_k:.1f} W/K"
    return f"{to_unit(loss_w_k, 'W/K', 'Btu/(hour*delta_degF)'):,.1f} Btu/h·F"


def show_power(watts: float, system: System) -> str:
    """Print a heat flow: `2,640 Btu/h`, `774 W`."""
    if system == "metric":
        return f"{watts:,.0f} W"
    return f"{to_unit(watts, 'W', 'Btu/hour'):,.0f} Btu/h"


def show_flow(watts_m2: float, system: System) -> str:
    """Print a heat flow through a floor: `20 Btu/h·ft²`, `63 W/m²`."""
    if system == "metric":
        return f"{watts_m2:,.0f} W/m²"
    return f"{to_unit(watts_m2, 'W/m**2', 'Btu/(hour*foot**2)'):,.1f} Btu/h·ft²"


def show_temperature(celsius: float, system: System) -> str:
    """Print a temperature: `68 F`, `20 C`."""
    return f"{celsius:.3g} C" if system == "metric" else f"{celsius * 1.8 + 32:.3g} F"


def show_ground(conductivity: float, system: System) -> str:
    """Print the ground's conductivity: `0.87 Btu/h·ft·F`, `1.5 W/mK`."""
    if system == "metric":
        return f"{conductivity:.3g} W/mK"
    return f"{to_unit(conductivity, 'W/(m*K)', 'Btu/(hour*foot*delta_degF)'):.2f} Btu/h·ft·F"
