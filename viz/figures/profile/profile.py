"""The drain's profile: unrolled along the pipe, heights enlarged, every place with its figures."""

from collections.abc import Iterator
from dataclasses import dataclass

from geometry.layout.drain import DrainLayout
from geometry.layout.lay import Layout
from geometry.units import System
from viz.drawing.figure import Figure, figure
from viz.drawing.fonts import text_width
from viz.drawing.marks import Mark
from viz.drawing.scale import Scale
from viz.figures.profile.cores import core_marks, core_names
from viz.figures.profile.falls import fall_marks
from viz.figures.profile.levels import (
    STAFF,
    NamedLevel,
    figures_beside,
    figures_width,
    level_lines,
    name_heights,
    named_levels,
    names_beside,
    staff,
)
from viz.figures.profile.picture import (
    BREAK,
    pipe_marks,
    pipe_words,
    riser_marks,
    stone_marks,
    tee_marks,
    uprights,
    wrap_marks,
)
from viz.figures.profile.places import places, stretches
from viz.figures.profile.rows import band, rows
from viz.figures.profile.view import View, taller

# Air between picture, cores, staffs and their figures, mm.
_STAFF_GAP, _FIGURE_GAP = 3.0, 1.4
_CORE_GAP, _BETWEEN = 4.0, 3.0
# How far upright lines pass the picture, and the arrows the risers.
_PAST, _ARROW = 2.0, 4.0


def profile_figure(
    layout: Layout, scale: Scale, text: float, tall: int | None = None
) -> Figure | None:
    """Return the drain's profile; None without a drain.

    scale: of lengths along the pipe. tall: how many times larger heights are drawn, chosen for a
    picture that is well read unless given. text: height of capitals, mm.
    """
    drain = layout.drain
    if drain is None:
        return None
    levels = named_levels(layout)
    low, high = levels[0].level, levels[-1].level
    low = min(low, layout.lead.invert if layout.lead else low)
    high = max(high, drain.high_invert + drain.bore + drain.radius)
    if tall is None:
        tall = taller((high - low) * scale.per_metre)
    sheet = _Sheet(layout, drain, View(scale.per_metre, tall), levels, (low, high), text)
    times = f"Heights drawn {tall} times larger than lengths."
    remark = times if tall > 1 else "Heights and lengths drawn at one scale."
    return figure(
        "drain-profile",
        "Drain profile",
        sheet.marks(),
        scale,
        f"{remark} Unrolled along the pipe, seen from outside the house.",
    )


@dataclass(frozen=True)
class _Sheet:
    """Everything the profile's marks are made from; span: lowest and highest level, metres."""

    layout: Layout
    drain: DrainLayout
    view: View
    levels: tuple[NamedLevel, ...]
    span: tuple[float, float]
    text: float

    def marks(self) -> Iterator[Mark]:
        """Yield the marks, what lies behind first."""
        view, found, falling = self.view, places(self.layout), stretches(self.drain)
        low, high = (view.y(level) for level in self.span)
        names = name_heights(self.levels, view, self.text)
        foot = min(low - 2.6 * self.text, names[0] - 1.2 * self.text)
        arrow = max(high + BREAK + _ARROW, names[-1] + 1.2 * self.text)
        yield from stone_marks(self.drain, view)
        yield from uprights([p.run for p in found], view, foot, high + _PAST)
        if self.drain.rise:
            turns = {end for s in falling for end in (s.high, s.low)}
            yield from uprights(sorted(turns), view, high + _PAST, arrow)
        yield from self._sides(foot)
        yield from wrap_marks(self.drain, view)
        yield from riser_marks(self.drain, found, view, high)
        yield from pipe_marks(self.drain, found, view)
        yield from pipe_words(self.drain, found, view, self.text)
        if self.layout.lead:
            yield from tee_marks(self.layout.lead, found, view)
        yield from fall_marks(falling, view, self._system, arrow, self.text)
        start = "low point" if self.drain.rise else "outlet"
        table = rows(found, start, self.layout.design.datum, self._system)
        xs = [view.x(place.run) for place in found]
        yield from band(table, xs, foot, min(xs) - _STAFF_GAP, self.text)

    @property
    def _system(self) -> System:
        return self.layout.design.project.units

    @property
    def _reach(self) -> float:
        """How far a riser or the pipe to the sump stands out beside its place, mm."""
        lead = self.layout.lead
        return self.view.x(max(self.drain.radius, lead.outer if lead else 0.0))

    def _sides(self, foot: float) -> Iterator[Mark]:
        """Yield the level lines and what they end in: staffs at both sides, cores, names."""
        view, text, system = self.view, self.text, self._system
        right = view.x(self.drain.route.length)
        wide = text_width("Footing", text) + 2.0
        at_core = right + max(_CORE_GAP, self._reach + _PAST)
        at_staff = at_core + 2 * wide + _BETWEEN + _STAFF_GAP
        left_staff = -max(_STAFF_GAP, self._reach + _PAST) - STAFF
        figures, left_marks = staff(view, system, *self.span, left_staff, text)
        _, right_marks = staff(view, system, *self.span, at_staff, text)
        beside = at_staff + STAFF + _FIGURE_GAP
        end = beside + figures_width(figures, system, text) + _FIGURE_GAP
        yield from level_lines(self.levels, view, left_staff + STAFF, end)
        yield from names_beside(self.levels, view, system, right + 1.0, end, text)
        yield from core_marks(self.drain.area, view, at_core, wide, _BETWEEN)
        yield from core_names(at_core, wide, _BETWEEN, foot + 0.9 * text, text)
        yield from (*left_marks, *right_marks)
        passing = [view.y(one.level) for one in self.levels]
        yield from figures_beside(figures, view, system, left_staff - _FIGURE_GAP, -1, text)
        yield from figures_beside(figures, view, system, beside, 1, text, passing)
