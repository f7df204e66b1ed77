"""Dangers of each stage, each with where it is from."""

from collections.abc import Iterator

from geometry.layout.lay import Layout
from geometry.site.records import Caution, Figure, Stage, StageKey
from geometry.sources import PRACTICE, Source
from geometry.units import FOOT

_DIGS = Source("29 CFR 1926.651/.652")
_SPOIL = Source("29 CFR 1926.651")
_LADDER = Source("29 CFR 1926.651")
_WALL = Source("IRC", clause="R404.1.7", sure="memory")
_BETWEEN = Source("common practice", sure="memory")
_GFCI = Source("29 CFR 1926.404")
_SILICA = Source("29 CFR 1926.1153")
_LIFT = Source("NIOSH 94-110")
_CAUSTIC = Source("common practice", sure="memory")
_HOLE = Source("29 CFR 1926.501", sure="memory")
_CAPS = Source("29 CFR 1926.701", clause="(b)", sure="memory")

# Keys of the dangers of every stage but those that hang on the design.
_OF: dict[StageKey, tuple[str, ...]] = {
    "subgrade": ("cave_in", "spoil", "ladder"),
    "bedding": ("cave_in", "ladder"),
    "pipe": ("cave_in", "ladder", "glue"),
    "inverts": ("cave_in",),
    "drain_stone": ("cave_in", "chute", "footing_edge"),
    "backfill": ("wall_held", "between", "wheels"),
    "pit": ("electric", "open_pit"),
    "fill": ("chute", "plate"),
    "base": ("chute", "plate"),
    "blinding": ("chute",),
    "retarder": ("lift", "slippery"),
    "insulation": ("wind", "no_flame"),
    "edge_board": ("knife",),
    "slab": ("caustic", "truck", "silica"),
}
# Under the floor no side of the hole stands over the work.
_INSIDE: dict[StageKey, tuple[str, ...]] = {
    "bedding": ("undermine",), "pipe": ("glue",), "inverts": ("undermine",),
    "drain_stone": ("chute", "footing_edge"),
}  # fmt: skip
_SOURCES: dict[str, Source] = {
    "cave_in": _DIGS, "spoil": _SPOIL, "ladder": _LADDER, "wall_held": _WALL,
    "between": _BETWEEN, "wheels": _BETWEEN, "truck": _BETWEEN, "electric": _GFCI,
    "open_pit": _HOLE, "lift": _LIFT, "silica": _SILICA, "caustic": _CAUSTIC, "caps": _CAPS,
}  # fmt: skip


def cautions(layout: Layout, stage: Stage) -> tuple[Caution, ...]:
    """Return the dangers of a stage, the gravest first."""
    inside = any(d.inside for d in layout.drains if d.key == stage.drain)
    usual = _INSIDE if inside else _OF
    names = (*_state(layout, stage.key), *usual.get(stage.key, _OF[stage.key]))
    return tuple(
        Caution(name, _SOURCES.get(name, PRACTICE), tuple(_figures(layout, name))) for name in names
    )


def _state(layout: Layout, key: StageKey) -> Iterator[str]:
    """Yield what the design says of the walls on the day the fill goes in."""
    if key != "backfill":
        return
    state = layout.design.backfill.state
    if not (state.deck or state.braced):
        none = state.deck is False and state.braced is False
        yield "wall_not_held" if none else "wall_not_known"


# Feet, and the round metric figure that is not less safe.
_LENGTHS: dict[str, tuple[tuple[str, float, float], ...]] = {
    "cave_in": (("deep", 5 * FOOT, 1.5),),
    "spoil": (("back", 2 * FOOT, 0.61),),
    "ladder": (("deep", 4 * FOOT, 1.2), ("within", 25 * FOOT, 7.6)),
}


def _figures(layout: Layout, name: str) -> Iterator[Figure]:
    metric = layout.design.project.units == "metric"
    for word, feet, metres in _LENGTHS.get(name, ()):
        yield Figure(word, metres if metric else feet)
