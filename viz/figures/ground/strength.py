"""How far the drain's pipe and others of its size flatten, beside each other."""

from geometry.units import System, show_length
from geometry.water.loadwords import show_modulus
from geometry.water.strength import DrainStrength, PipeStrength
from viz.drawing.figure import Figure, figure
from viz.figures.ground.bars import Bar, Group, Limit, bar_marks
from viz.words import material_name

TITLE = "How far the pipe flattens"
REMARK = "Full: under the fill. The equation gives a size, no prediction."
WITH_WHEEL = (
    "Full: under the fill. Hatched: what a wheel over it adds. The equation gives a size, "
    "no prediction."
)


def strength_figure(
    shown: DrainStrength | None, system: System, width: float, text: float
) -> Figure | None:
    """Return a bar for each pipe at the deepest and the shallowest place; None without a drain.

    width: mm. text: height of capitals, mm.
    """
    if shown is None or not shown.pipes:
        return None
    groups = [_group(pipe, shown, system) for pipe in shown.pipes]
    limit = Limit(shown.limit, f"limit {shown.limit:.0%}")
    remark = WITH_WHEEL if shown.wheel_n else REMARK
    return figure("pipe-strength", TITLE, bar_marks(groups, limit, width, text), None, remark)


def _group(pipe: PipeStrength, shown: DrainStrength, system: System) -> Group:
    bars = tuple(
        Bar(
            f"{at.place}, {show_length(round(at.cover_m, 2), system)}",
            at.flattened,
            f"{at.with_wheel:.1%}{'' if at.with_wheel <= shown.limit else ', too far'}",
            max(0.0, at.with_wheel - at.flattened),
        )
        for at in pipe.places
    )
    mine = ", this drain's" if pipe.chosen else ""
    name = f"{material_name(pipe.pipe)}{mine}, stiffness {show_modulus(pipe.stiffness_pa, system)}"
    return Group(name, bars)
