"""Where the labels of a section stand: in columns beside it, floors between walls from above."""

from collections.abc import Sequence
from dataclasses import replace

from shapely import LineString, STRtree

from geometry.label import Role
from viz.drawing.marks import Leader, Mark
from viz.drawing.page import Box
from viz.figures.dimensions import width_upright
from viz.figures.section.anchors import SIDES, Side, shut_in
from viz.figures.section.anchors import sides as choose_sides
from viz.figures.section.cut import built, step_lines
from viz.figures.section.flags import Site, flag_marks, place_flags
from viz.figures.section.labels import GAP, KEY_RADIUS, label_marks
from viz.figures.section.layout import Layout, layout
from viz.figures.section.level_mark import LevelMark
from viz.figures.section.levels import levels_width, seen_levels
from viz.figures.section.setting import Setting, datum_height

# Parts under the open room of a house, which may be labelled from above: together or not at all.
# Piers come first: they have less choice of place than layers.
_ABOVE: tuple[tuple[Role, ...], ...] = (
    ("pad", "column"),
    ("base", "blinding", "retarder", "insulation", "slab", "fill"),
)
# Flags may stand this much higher than the picture, mm.
_OVER = 60.0


def labels_of(setting: Setting) -> tuple[Layout, tuple[Mark, ...]]:
    """Return layout and labels: floors labelled from above if there is room, else aside."""
    lifted = _lifted(setting)
    plan, aside = _aside(setting, lifted)
    if not lifted:
        return plan, aside
    above = _flags(setting, lifted, aside)
    if above is None:
        return _aside(setting, ())
    return plan, (*aside, *above)


def _lifted(setting: Setting) -> tuple[str, ...]:
    """Return the wordings that want a flag: leaders to a side would cross other work."""
    groups = _grouped(setting, tuple(setting.shapes))
    reached = setting.reached
    return tuple(
        wording
        for group in groups
        if any(shut_in(reached[wording], setting.view.box.width) for wording in group)
        for wording in group
    )


def _grouped(setting: Setting, wordings: Sequence[str]) -> list[tuple[str, ...]]:
    """Return the wordings of each group of roles."""
    words = setting.picture.words
    roles = {words.get(f.label.part, "").strip(): f.label.role for f in setting.faces}
    return [tuple(w for w in wordings if roles.get(w) in group) for group in _ABOVE]


def _aside(setting: Setting, lifted: Sequence[str]) -> tuple[Layout, tuple[Mark, ...]]:
    """Return layout and labels of all that is not lifted, in columns beside the picture."""
    shapes = {w: s for w, s in setting.shapes.items() if w not in lifted}
    heights = {w: setting.block_height(w) for w in shapes}
    room = max(1.2 * setting.view.box.height, 0.6 * sum(heights.values()))
    reached = {w: setting.reached[w] for w in shapes}
    sides = choose_sides(reached, setting.view.box.width, heights, room)
    columns = tuple(_column(setting, [w for w in shapes if sides[w] == s]) for s in SIDES)
    strings = tuple(width_upright(c, setting.text) for c in (setting.left, setting.right))
    levels = levels_width(_seen(setting), setting.picture.system, setting.text)
    plan = layout(
        setting.view.box, (strings[0], strings[1]), (columns[0], columns[1]), levels, setting.text
    )
    kept: dict[Side, list[float]] = {
        side: [stop for c in chains for stop in c.stops] + datum_height(setting)
        for side, chains in zip(SIDES, (setting.left, setting.right), strict=True)
    }
    datum = next(iter(datum_height(setting)), None)
    return plan, label_marks(shapes, sides, setting.lettering, plan, kept, datum)


def _seen(setting: Setting) -> tuple[LevelMark, ...]:
    return seen_levels(setting.picture.levels, setting.view)


def _column(setting: Setting, wordings: Sequence[str]) -> Box:
    """Return a column as wide and as high as its labels."""
    if setting.lettering.keys:
        wide = 2 * KEY_RADIUS * setting.text if wordings else 0.0
    else:
        blocks = [setting.lettering.block(w) for w in wordings]
        wide = max((b.width(setting.text) for b in blocks), default=0.0)
    return Box(0.0, 0.0, wide, sum(map(setting.block_height, wordings)) + 2 * GAP)


def _flags(
    setting: Setting, lifted: Sequence[str], aside: Sequence[Mark]
) -> tuple[Mark, ...] | None:
    """Return the labels that stand above the floor, None where they have no room."""
    view = setting.view
    groups = [{w: setting.shapes[w] for w in group} for group in _grouped(setting, lifted) if group]
    datum = LineString((view.at(view.extent[0], 0), view.at(view.extent[2], 0)))
    steps = [LineString(m.points) for m in step_lines(setting.picture.steps, view)]
    things = STRtree([datum, *steps, *(p for f in built(setting.faces) for p in f.shape.geoms)])
    leaders = STRtree([LineString(m.points) for m in aside if isinstance(m, Leader)])
    high = view.box.high + (0.0 if view.cropped else _OVER)
    flags = place_flags(
        groups, Site(replace(view.box, high=high), things, leaders, setting.lettering)
    )
    if flags is None:
        return None
    keyed = bool(setting.lettering.keys)
    return tuple(mark for flag in flags for mark in flag_marks(flag, setting.text, keyed))
