"""Every height of the drain against top of footing at once, over the rules that ask for them."""

from collections.abc import Iterator

from geometry.layout.drain import DrainLayout
from geometry.layout.lay import Layout
from geometry.units import System
from geometry.water.height_figures import HeightFigures, RuleFigures, height_figures
from viz.drain_tables import rule_verdicts
from viz.drawing.figure import Figure, extent, figure, moved
from viz.drawing.marks import Mark
from viz.drawing.scale import Scale
from viz.figures.heights.frame import Frame
from viz.figures.heights.labels import (
    end_marks,
    reference_rows,
    room_height,
    room_marks,
    room_width,
)
from viz.figures.heights.picture import picture_marks
from viz.figures.tables.figure import table_figures
from viz.tables import Table

# Between the section and the rules under it; the least width of the rules, mm.
_APART, _LEAST = 6.0, 150.0
_UNSURE = ("second-hand", "from memory")


def heights_figure(layout: Layout, scale: Scale, text: float) -> Figure | None:
    """Return the section with every height of the drain, and the rules; None without a drain.

    scale: a large one, 1:8 to 1:25. text: height of capitals, mm.
    """
    drain, figures = layout.drain, height_figures(layout)
    if drain is None or figures is None:
        return None
    system = layout.design.project.units
    marks = [*_section(drain, figures, scale, system, text)]
    box = extent(marks)
    width = max(box.width, _LEAST)
    (rules,) = table_figures("rules", "", rules_table(figures, system), text, width)
    left = (box.left + box.right - rules.box.width) / 2
    marks += moved(rules.marks, left - rules.box.left, box.low - _APART - rules.box.high)
    title = "Heights of the drain, and rules on them"
    remark = (
        "Floor shortened. Rules differ from place to place: "
        "the building department says which is in force."
    )
    return figure("drain-heights", title, marks, scale, remark)


def _section(
    drain: DrainLayout, figures: HeightFigures, scale: Scale, system: System, text: float
) -> Iterator[Mark]:
    per_metre, area = scale.per_metre, drain.area
    rows = reference_rows(figures, area.tof, system)
    inner = room_width(rows, text) / 2
    half = inner + max(0.0, area.projection_in) * per_metre
    plain = Frame(drain, per_metre, half, 0.0)
    over = plain.y(area.finished_floor) + room_height(rows, text)
    top = max(over, plain.y(drain.stone_top)) + 4.0
    frame = Frame(drain, per_metre, half, top)
    yield from picture_marks(frame)
    yield from room_marks(frame, rows, text)
    yield from end_marks(frame, figures, system, text)


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
