"""How often a pump starts, and the volume between its switch levels that this asks for."""

from math import pi, sqrt

from geometry.formulas.given import positive


def cycle_time(wet_m3: float, pump_m3s: float, inflow_m3s: float) -> float:
    """Seconds from one start to the next: (V/D) [1/(1 - Q/D) + 1/(Q/D)].

    MIL-HDBK-1005/9A, equation 1: volume between on and off levels, pump's flow D, steady inflow Q
    above 0 and below D.
    """
    positive(wet_m3=wet_m3, pump_m3s=pump_m3s, inflow_m3s=inflow_m3s)
    if inflow_m3s >= pump_m3s:
        raise ValueError("an inflow of the pump's flow or more never lets it stop")
    share = inflow_m3s / pump_m3s
    return wet_m3 / pump_m3s * (1 / (1 - share) + 1 / share)


def starts_per_hour(wet_m3: float, pump_m3s: float, inflow_m3s: float) -> float:
    """Starts an hour at steady inflow: none without inflow, nor when the pump never stops."""
    if inflow_m3s == 0 or inflow_m3s >= pump_m3s:
        positive(wet_m3=wet_m3, pump_m3s=pump_m3s)
        return 0.0
    return 3600 / cycle_time(wet_m3, pump_m3s, inflow_m3s)


def most_starts_per_hour(wet_m3: float, pump_m3s: float) -> float:
    """Starts an hour at the worst inflow, half the pump's flow: 3600 D / 4V."""
    return starts_per_hour(wet_m3, pump_m3s, pump_m3s / 2)


def least_wet_volume(cycle_s: float, pump_m3s: float) -> float:
    """Volume between on and off levels so that no cycle is shorter, m3: t q / 4.

    UFC 3-240-04A, paragraph 7: one pump, or the one that runs; half of it when two equal pumps
    take turns.
    """
    positive(cycle_s=cycle_s, pump_m3s=pump_m3s)
    return cycle_s * pump_m3s / 4


def round_pit_area(inside_m: float) -> float:
    """Plan area of a round pit, m2."""
    positive(inside_m=inside_m)
    return pi * inside_m**2 / 4


def equivalent_inside(area_m2: float) -> float:
    """Inside of the round pit with a plan area, m."""
    positive(area_m2=area_m2)
    return sqrt(4 * area_m2 / pi)
