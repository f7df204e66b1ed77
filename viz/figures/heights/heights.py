"""Every height of the drain against top of footing at once, over the rules that ask for them."""

from dataclasses import dataclass

from geometry.layout.drain import DrainLayout
from geometry.layout.lay import Layout
from geometry.units import System
from geometry.water.height_figures import HeightFigures, RuleFigures, height_figures
from viz.drawing.figure import Figure, extent, figure, moved
from viz.drawing.marks import Mark
from viz.drawing.scale import Scale
from viz.figures.heights.frame import Frame
from viz.figures.heights.labels import (
    Lettering,
    end_marks,
    reference_rows,
    room_height,
    room_marks,
    room_width,
)
from viz.figures.heights.picture import picture_marks, shown_levels, water_marks
from viz.figures.tables.figure import table_figures
from viz.figures.watertable import table_of, told_outside
from viz.tables.drain_tables import rule_verdicts
from viz.tables.table import Table

TITLE = "Heights of the drain, and rules on them"
# Between the section and the rules under it; the least width of the rules, mm.
_APART, _LEAST = 6.0, 150.0
_UNSURE = ("second-hand", "from memory")


@dataclass(frozen=True)
class Shown:
    """What the section is drawn of, and millimetres of paper for a metre."""

    layout: Layout
    drain: DrainLayout
    figures: HeightFigures
    per_metre: float


def heights_figure(layout: Layout, scale: Scale, text: float) -> Figure | None:
    """Return the section with every height of the drain, and the rules; None without a drain.

    scale: a large one, 1:8 to 1:25. text: height of capitals, mm.
    """
    shown = shown_of(layout, scale.per_metre)
    if shown is None:
        return None
    system = layout.design.project.units
    marks, told = section_marks(shown, Lettering(text, system))
    box = extent(marks)
    width = max(box.width, _LEAST)
    (rules,) = table_figures("rules", "", rules_table(shown.figures, system), text, width)
    left = (box.left + box.right - rules.box.width) / 2
    marks += moved(rules.marks, left - rules.box.left, box.low - _APART - rules.box.high)
    remark = (
        f"Floor shortened. {told}Rules differ from place to place: "
        "the building department says which is in force."
    )
    return figure("drain-heights", TITLE, marks, scale, remark)


def shown_of(layout: Layout, per_metre: float) -> Shown | None:
    """Return what is drawn; None without a drain."""
    drain, figures = layout.drain, height_figures(layout)
    if drain is None or figures is None:
        return None
    return Shown(layout, drain, figures, per_metre)


def section_marks(shown: Shown, lettering: Lettering) -> tuple[list[Mark], str]:
    """Return the marks, and in words the water's levels that the section does not reach."""
    drain, figures = shown.drain, shown.figures
    area = drain.area
    rows = reference_rows(figures, area.tof, lettering.system)
    half = room_width(rows, lettering) / 2 + floor_taken(drain) * shown.per_metre
    plain = Frame(drain, shown.per_metre, half, 0.0)
    over = plain.y(area.finished_floor) + room_height(rows, lettering)
    top = max(over, plain.y(drain.stone_top)) + 4.0
    frame = Frame(drain, shown.per_metre, half, top)
    water = water_shown(shown, frame)
    marks = [
        *picture_marks(frame),
        *water_marks(frame, table_of(shown.layout)),
        *room_marks(frame, rows, lettering),
        *end_marks(frame, figures.low_m | water, figures.high_m | water, lettering),
    ]
    bounds = shown_levels(frame)
    told = told_outside(table_of(shown.layout), *bounds, area.tof, lettering.system)
    return marks, f"{told} " if told else ""


def floor_taken(drain: DrainLayout) -> float:
    """Return how far from the wall the floor lies over the footing or over the drain, metres."""
    within = drain.drain.stone.width if drain.inside else 0.0
    return max(0.0, drain.area.projection_in) + within


def water_shown(shown: Shown, frame: Frame) -> dict[str, float]:
    """Return the levels of the water table that the section reaches, by name."""
    low, high = shown_levels(frame)
    return {name: z for name, z in table_of(shown.layout).named if low <= z <= high}


def rules_table(figures: HeightFigures, system: System) -> Table:
    """Return the rules on heights: whose, what, and met or not at the low and the high point."""
    rows = []
    for rule in figures.rules:
        low, high = rule_verdicts(rule, system)
        rows.append((_whose(rule), rule.title, low, high))
    return Table(("Rules", "What is asked", "Low point", "High point"), tuple(rows))


def _whose(rule: RuleFigures) -> str:
    unsure = next((words for words in _UNSURE if words in rule.source), "")
    marks = [unsure] if unsure else []
    marks += [] if rule.asked else ["not asked here"]
    return f"{rule.rules} ({', '.join(marks)})" if marks else rule.rules
