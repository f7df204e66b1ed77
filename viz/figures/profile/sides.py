"""What stands left and right of the profile: staffs, cores, names of levels."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from geometry.units import System
from viz.drawing.fonts import text_width
from viz.drawing.marks import Mark
from viz.figures.profile.cores import core_marks, core_names
from viz.figures.profile.levels import (
    STAFF,
    figures_beside,
    figures_width,
    level_lines,
    staff,
)
from viz.figures.profile.names import Names
from viz.figures.profile.piece import Piece
from viz.figures.profile.view import View

# Air between picture, cores, staffs and their figures, mm.
STAFF_GAP, _FIGURE_GAP = 3.0, 1.4
_CORE_GAP, _BETWEEN = 4.0, 3.0
# How far level lines pass the picture at least.
_PAST = 2.0


@dataclass(frozen=True)
class Sides:
    """Both sides of a picture. span: lowest and highest level, metres.

    reach: how far a riser or the pipe to the sump stands out beside the picture, mm. narrow: one
    staff at the right, the names of levels at the left, no cores.
    """

    piece: Piece
    view: View
    names: Names
    span: tuple[float, float]
    system: System
    reach: float
    text: float
    narrow: bool

    def marks(self, foot: float) -> Iterator[Mark]:
        """Yield level lines and all they end in; foot: where the picture's uprights end, mm."""
        yield from self._narrow() if self.narrow else self._full(foot)

    def foot(self) -> float:
        """Return how far down uprights go, mm, so that all beside the picture is above."""
        low = self.view.y(self.span[0])
        if self.narrow:
            return min(low - _PAST, self.names.low - 0.6 * self.text)
        return min(low - 2.6 * self.text, self.names.low - 0.5 * self.text)

    @property
    def _beside(self) -> float:
        return max(STAFF_GAP, self.reach + _PAST)

    def _narrow(self) -> Iterator[Mark]:
        left = self.view.x(self.piece.start) - self._beside
        at_staff = self.view.x(self.piece.end) + self._beside
        figures, marks = self._staff(at_staff)
        yield from level_lines(self.names.levels, self.view, left, at_staff)
        yield from self.names.at_left(left)
        yield from marks
        yield from self._figures(figures, at_staff + STAFF + _FIGURE_GAP, 1)

    def _full(self, foot: float) -> Iterator[Mark]:
        view, text, names = self.view, self.text, self.names
        right = view.x(self.piece.end)
        wide = text_width("Footing", text) + 2.0
        at_core = right + max(_CORE_GAP, self.reach + _PAST)
        at_staff = at_core + 2 * wide + _BETWEEN + STAFF_GAP
        left_staff = view.x(self.piece.start) - self._beside - STAFF
        figures, left_marks = self._staff(left_staff)
        _, right_marks = self._staff(at_staff)
        beside = at_staff + STAFF + _FIGURE_GAP
        end = beside + figures_width(figures, self.system, text) + _FIGURE_GAP
        yield from level_lines(names.levels, view, left_staff + STAFF, end)
        yield from names.at_right(self.system, right + 1.0, end)
        yield from core_marks(self.piece.drain.area, view, at_core, wide, _BETWEEN)
        yield from core_names(at_core, wide, _BETWEEN, foot + 0.9 * text, text)
        yield from (*left_marks, *right_marks)
        passing = [view.y(one.level) for one in names.levels]
        yield from self._figures(figures, left_staff - _FIGURE_GAP, -1)
        yield from self._figures(figures, beside, 1, passing)

    def _staff(self, x: float) -> tuple[tuple[float, ...], tuple[Mark, ...]]:
        return staff(self.view, self.system, *self.span, x, self.text)

    def _figures(
        self, figures: Sequence[float], x: float, way: int, passing: Sequence[float] = ()
    ) -> Iterator[Mark]:
        return figures_beside(figures, self.view, self.system, x, way, self.text, passing)
