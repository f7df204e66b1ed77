"""A plain plan without words, on which a cut is chosen: light, and clear at the size of a hand."""

from dataclasses import dataclass

import shapely

from geometry.layout.lay import Layout
from geometry.units import FOOT
from viz.drawing.figure import moved
from viz.drawing.marks import Mark
from viz.drawing.page import Drawing
from viz.figures.plan import pipes
from viz.figures.plan.onpaper import OnPaper
from viz.figures.plan.structure import structure, structure_marks

# The longer side of the picture, mm, and the ground shown round the works, metres.
_LONG = 120.0
_AROUND_M = 5 * FOOT


@dataclass(frozen=True)
class ChooserPlan:
    """The picture, and how a place of the job lies on it.

    per_metre: mm of the picture for a metre. origin: where the job's 0, 0 lies, mm from the
    picture's lower left corner.
    """

    drawing: Drawing
    per_metre: float
    origin: tuple[float, float]


def chooser_plan(layout: Layout) -> ChooserPlan:
    """Draw walls, footings, piers, drain and pit, with room around them to begin a cut in."""
    works = [layout.ground.house, *(area.footings for area in layout.areas)]
    works += [drain.low_space for drain in layout.drains]
    left, low, right, high = shapely.union_all(works).buffer(_AROUND_M).bounds
    per_metre = _LONG / max(right - left, high - low)
    paper = OnPaper(per_metre)
    origin = (-left * per_metre, -low * per_metre)
    wide, tall = ((right - left) * per_metre, (high - low) * per_metre)
    marks = tuple(moved(_marks(layout, paper), *origin))
    return ChooserPlan(Drawing(wide, tall, "Plan", 1000 / per_metre, marks), per_metre, origin)


def _marks(layout: Layout, paper: OnPaper) -> list[Mark]:
    made = structure(layout, paper)
    found: list[Mark] = []
    for drain in layout.drains:
        found += pipes.band_marks(drain, paper, made.footings)
    found += structure_marks(made)
    for drain in layout.drains:
        found += pipes.drain_marks(drain, paper)
    found += pipes.outward_marks(layout, paper)
    if layout.sump:
        found += pipes.pit_marks(layout.sump, paper)
    return found
