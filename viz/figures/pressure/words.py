"""What the pressure figure says: heads, the numbers under each diagram, what was counted."""

from geometry.formulas.wall_pressure import PressureDiagram, Thrust
from geometry.materials.kinds import Soil
from geometry.units import System, show_length
from geometry.water.backfill import saturated_weight, weight
from geometry.water.loadwords import show_moment, show_pressure, show_thrust, show_unit_weight
from geometry.water.wall import Push, WallRun


def length(metres: float, system: System) -> str:
    """Print a length to the millimetre: levels carry a sheet's few tenths along."""
    return show_length(round(metres, 3), system, 4)


def heads(run: WallRun, system: System) -> tuple[str, str]:
    """Return what stands over the two diagrams."""
    if run.water_depth_m <= 0:
        return "Drained", "Drain failed, water to grade"
    return "Drained", f"Water {length(run.water_depth_m, system)} under grade"


def below(diagram: PressureDiagram, thrust: Thrust, system: System) -> tuple[str, ...]:
    """Return the numbers of one diagram: at the foot, thrust R, its height, its moment."""
    water = diagram.water_pa[-1]
    parts = f" (water {show_pressure(water, system)})" if water > 0 else ""
    return (
        f"At foot {show_pressure(diagram.total_pa[-1], system)}{parts}",
        f"R = {show_thrust(thrust.force_n_m, system)}",
        f"at {length(thrust.height_m, system)} above the foot",
        f"Moment {show_moment(thrust.moment_n, system)}",
    )


def notes(push: Push, soil: Soil, system: System) -> tuple[str, ...]:
    """Return what the two come to, and what was counted."""
    load = "no wheels or stacks beside the wall"
    if push.surcharge_pa > 0:
        load = f"{show_pressure(push.surcharge_pa, system)} of even load on it"
    heavy, wet = weight(soil) or 0.0, saturated_weight(soil) or 0.0
    return (
        f"Flooded over drained: thrust {push.force_ratio:.1f} times, moment about the foot "
        f"{push.moment_ratio:.1f} times. Dashed: the water's part. R: the push in all.",
        f"{soil.name}, at rest, K = {push.coefficient:.2f}, moist "
        f"{show_unit_weight(heavy, system)}, saturated {show_unit_weight(wet, system)}: "
        "presumptive figures, no soil report. "
        f"Level ground, {load}.",
    )
