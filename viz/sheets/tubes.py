"""Every floor's joints and heating tubes as they are asked for on a sheet."""

from functools import partial

from geometry.layout.joints import Joints, lay_joints
from geometry.layout.lay import Layout
from geometry.layout.tubing.lay import Tubes, lay_tubes
from viz.drawing.figure import Figure
from viz.drawing.scale import Scale
from viz.figures.joints import joints_figure
from viz.figures.section.setting import Labelling
from viz.figures.tubing.tubing import tubing_figure
from viz.sheets.compose import Wanted

# The ratio beyond which it gains nothing, and the one at which it is easily read.
_RATIOS = (32, 64)


def floor_wanted(layout: Layout, text: float) -> tuple[Wanted, ...]:
    """Return the joints of each slab whose joints are given, then the tubes of each heated one."""
    joints = (_joints(layout, one, text) for one in lay_joints(layout))
    return (*joints, *(_wanted(layout, one, text) for one in lay_tubes(layout) if one.loops))


def _joints(layout: Layout, joints: Joints, text: float) -> Wanted:
    left, low, right, high = joints.slab.bounds
    draw = partial(_drawn_joints, layout, joints, text)
    title = f"Joints in the slab: {joints.area.name}"
    return Wanted(title, (right - left, high - low), draw, *_RATIOS, ("words",))


def _drawn_joints(
    layout: Layout, joints: Joints, text: float, scale: Scale, _way: Labelling
) -> Figure:
    return joints_figure(layout, joints, scale, text)


def _wanted(layout: Layout, tubes: Tubes, text: float) -> Wanted:
    left, low, right, high = tubes.slab.bounds
    draw = partial(_drawn, layout, tubes, text)
    title = f"Heating tubes: {tubes.area.name}"
    return Wanted(title, (right - left, high - low), draw, *_RATIOS, ("words",))


def _drawn(layout: Layout, tubes: Tubes, text: float, scale: Scale, _way: Labelling) -> Figure:
    return tubing_figure(layout, tubes, scale, text)
