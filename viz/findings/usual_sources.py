"""Where the figures come from that are taken as usual where a design file says nothing."""

from geometry.sources import PRACTICE, Source

_COVER = Source("ACI 318-19", clause="Table 20.5.1.3.1 (cast against earth)")
_DRAIN = Source("IRC", "2018 and later", "R405.1", sure="second-hand")
_PIT = Source("IRC", "2021", "P3303.1.2 (18 in across, 24 in deep at least)")
_GRADE = Source("IRC", "2015", "R401.3 (6 in within 10 ft)")
_BEDDING = Source("ASTM D2321", clause="stone that is not worked in", sure="memory")
_FLATTENED = Source("Moser, Buried Pipe Design", clause="p. 115")
_WIDTH = Source("IRC", "2021", "R403.1.1 (12 in wide, 6 in thick at least)", sure="second-hand")
_SLAB = Source("IRC", "2009", "R506.1 (3 1/2 in at least), R506.2.2", sure="second-hand")
_SEWER = Source("Plumbing code, slope of horizontal drainage pipe", clause="1/4 in per ft, small "
                "pipes", sure="memory")  # fmt: skip
_PERFORATED = Source("ASTM D2729", clause="two rows of holes, 1/2 in, 5 in apart", sure="memory")
_STATED_NONE = Source("none is given, so none is counted", sure="computed")

# By the key of the design file; the longest that begins a key counts.
_SOURCES: dict[str, Source] = {
    "footing.width": _WIDTH, "footing.thickness": _WIDTH, "footing.bars.cover": _COVER,
    "floor.layer": _SLAB, "area.floor.layer": _SLAB,
    "drain.holes": _PERFORATED, "drain.stone.bedding": _DRAIN, "drain.stone.cover": _DRAIN,
    "sump.diameter": _PIT, "sump.depth": _PIT, "sump.fall": _SEWER,
    "grade.fall": _GRADE, "loads.bedding": _BEDDING, "loads.deflection_limit": _FLATTENED,
    "loads.wheel": _STATED_NONE, "loads.surcharge": _STATED_NONE, "loads.point": _STATED_NONE,
    "water.roof": _STATED_NONE, "backfill.water_depth": _STATED_NONE,
}  # fmt: skip


def usual_source(key: str) -> Source:
    """Return where the usual value of a key comes from: common practice unless published."""
    fitting = [begin for begin in _SOURCES if key.startswith(begin)]
    return _SOURCES[max(fitting, key=len)] if fitting else PRACTICE
