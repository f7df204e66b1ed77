"""How hard soil pushes sideways: coefficients of pressure, level ground, upright smooth wall."""

from math import exp, log, radians, sin

from geometry.formulas.given import positive, within


def rankine_active(friction_angle_deg: float) -> float:
    """Active coefficient (1 - sin phi)/(1 + sin phi): the wall yields (Rankine 1857)."""
    within(0.0, 60.0, friction_angle_deg=friction_angle_deg)
    sine = sin(radians(friction_angle_deg))
    return (1 - sine) / (1 + sine)


def at_rest(friction_angle_deg: float, overconsolidation: float = 1.0) -> float:
    """At-rest coefficient 1 - sin phi: the wall is held top and bottom (Jaky 1944).

    Once loaded more by a ratio: times OCR^sin phi (Mayne and Kulhawy 1982). Loose to medium
    fill; a compactor beside the wall pushes harder than this.
    """
    within(0.0, 60.0, friction_angle_deg=friction_angle_deg)
    within(1.0, 50.0, overconsolidation=overconsolidation)
    sine = sin(radians(friction_angle_deg))
    return (1 - sine) * exp(sine * log(overconsolidation))


def at_rest_elastic(poisson: float) -> float:
    """At-rest coefficient of an elastic soil, nu/(1 - nu): no strain sideways."""
    within(0.0, 0.5, poisson=poisson)
    return poisson / (1 - poisson)


def equivalent_fluid(coefficient: float, unit_weight_n_m3: float) -> float:
    """Weight of the fluid that pushes like the drained soil, N/m3: K gamma."""
    positive(coefficient=coefficient, unit_weight_n_m3=unit_weight_n_m3)
    return coefficient * unit_weight_n_m3


def coefficient_of_fluid(fluid_n_m3: float, unit_weight_n_m3: float) -> float:
    """Coefficient behind a code's equivalent fluid, given the soil's moist weight."""
    positive(fluid_n_m3=fluid_n_m3, unit_weight_n_m3=unit_weight_n_m3)
    return fluid_n_m3 / unit_weight_n_m3
