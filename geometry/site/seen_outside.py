"""What is looked at from the dug floor to the drain: ground, footing, wall, pipe and stone."""

from collections.abc import Iterator

from geometry.layout.areas import AreaLayout
from geometry.layout.drain import DrainLayout
from geometry.layout.footings import pad_prism, pier_name
from geometry.layout.lay import Layout
from geometry.site.holds import GRADE_M
from geometry.site.seen import Line, Value, area_value, level_values
from geometry.survey.tolerances import footing_tolerance

# What is lower than something by less than this lies on a level with it.
_SAME_M = 5e-4

SUBGRADE_PHOTOS = (Line("hole"), Line("floor_rod"), Line("footing_side"))


def subgrade(layout: Layout) -> Iterator[Line]:
    """Yield the dug floors, trenches and the hole of the pit."""
    stray = Value("stray", GRADE_M[layout.design.project.units])
    for area in layout.areas:
        yield Line("subgrade", (area_value(area), *level_values(layout, area.subgrade), stray))
    for drain in layout.drains:
        under = drain.stone_bottom - drain.area.footing_bottom
        key = "trench_lower" if under < -_SAME_M else "trench"
        bottom = Value("bottom", drain.area.footing_bottom, "level")
        yield Line(key, (Value("drain", drain.drain.name or drain.drain.line, "line"),
                         area_value(drain.area),
                         *level_values(layout, drain.stone_bottom), bottom))  # fmt: skip
    if layout.sump:
        yield Line("pocket", level_values(layout, layout.sump.pocket.bottom))
    yield Line("ground")


FOOTING_PHOTOS = (Line("tof_rod"), Line("footing_width"), Line("keyway"))


def footing(layout: Layout, area: AreaLayout) -> Iterator[Line]:
    """Yield an area's footing and pads as they stand."""
    strip, holds = area.footing, footing_tolerance(area.wall)
    size = (Value("width", strip.width), Value("thick", strip.thickness))
    yield Line("footing_size", size)
    spans = (Value("above", holds.above), Value("below", holds.below))
    yield Line("tof", (*level_values(layout, area.tof), *spans))
    bars = strip.bars
    if bars.count:
        yield Line("bars", (Value("count", bars.count, "count"), Value("size", bars.size, "words"),
                            Value("cover", bars.cover)))  # fmt: skip
    yield Line("keyway")
    for number, pier in enumerate(area.area.piers):
        name = Value("name", pier_name(area, number), "words")
        sides = (Value("wide", pier.width), Value("deep", pier.pad_depth),
                 Value("thick", pier.thickness))  # fmt: skip
        yield Line("pad", (name, *sides, *level_values(layout, pad_prism(area, pier).top)))


WALL_PHOTOS = (Line("wall_sides"), Line("wall_foot"), Line("wall_held"))


def walls(layout: Layout) -> Iterator[Line]:
    """Yield the walls before backfill."""
    for area in layout.areas:
        sizes = (Value("thick", area.wall.thickness), Value("tall", area.wall.height))
        yield Line("wall", (area_value(area), *sizes))
    yield Line("waterproofing", level_values(layout, layout.ground.at_wall))
    state = layout.design.backfill.state
    held = state.deck or state.slab or state.braced
    yield Line("wall_held" if held else "wall_not_stated")


def drain(layout: Layout, drain: DrainLayout) -> Iterator[Line]:
    """Yield a drain before it is covered."""
    made = drain.drain
    yield Line("pipe", (Value("pipe", drain.pipe.key, "material"),
                        Value("low", drain.outlet_invert, "level"),
                        Value("high", drain.high_invert, "level")))  # fmt: skip
    if made.fall:
        yield Line("fall", (Value("fall", made.fall, "fall"), Value("rise", drain.rise)))
    else:
        yield Line("level_pipe")
    rows = made.holes.rows
    if rows:
        yield Line("holes" if all(abs(row) <= 90 for row in rows) else "holes_as_designed")
    stone = Value("stone", made.stone.material, "material")
    yield Line("bedding", (stone, Value("bedding", made.stone.bedding),
                           Value("width", made.stone.width)))  # fmt: skip
    yield Line("cover", (Value("cover", made.stone.cover),
                         *level_values(layout, drain.stone_top)))  # fmt: skip
    yield Line("wrap", (Value("fabric", made.wrap.material, "material"),
                        Value("lap", made.wrap.overlap)))  # fmt: skip
    if made.cleanouts:
        corners = ", ".join(map(str, made.cleanouts))
        yield Line("cleanouts", (Value("corners", corners, "words"),))
    else:
        yield Line("no_cleanouts")
    bleeders = layout.bleeders_of(drain)
    if bleeders:
        yield Line("bleeders", (Value("count", len(bleeders), "count"),))
    yield Line("outlet")


def drain_photos(drain: DrainLayout) -> Iterator[Line]:
    """Yield the photos of a drain."""
    yield Line("drain_run")
    yield Line("drain_rod")
    yield Line("drain_holes")
    if drain.drain.cleanouts:
        yield Line("cleanout")
    yield Line("outlet")
    yield Line("wrap")
