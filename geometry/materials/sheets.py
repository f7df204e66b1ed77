"""Vapor retarders and the wall membrane."""

from geometry.materials.kinds import E1745Class, Sheet
from geometry.sources import Source
from geometry.units import MIL, to_unit

_PLAIN = Source("a maker's printed sheet for plain polyethylene", clause="permeance")
_MISPRINT = Source(
    "a maker's printed sheet for plain polyethylene",
    clause="permeance of 15 mil, out of line with 6, 10 and 20 mil",
    sure="second-hand",
)
_E1745 = Source("ASTM E1745-17", clause="Table 1")
_STRENGTH = Source("ASTM E1745-17", clause="Table 1 (tensile, puncture)", sure="memory")
_METRIC = Source("common practice, no source: 0.2 mm polyethylene", sure="practice")
_R406 = Source("IRC", "2018", "R406.2 (40 mil polymer-modified asphalt)", sure="second-hand")


def _poly(mils: int, perm: float, source: Source = _PLAIN) -> Sheet:
    return Sheet(
        key=f"poly-{mils}mil",
        name=f"Vapor retarder, plain polyethylene, {mils} mil",
        use="vapor retarder",
        source=source,
        thickness_m=mils * MIL,
        permeance_perm=perm,
    )


def _e1745(grade: E1745Class, mils: int, pounds_per_inch: float, grams: float) -> Sheet:
    """Build a row of a class; the standard sets strength and perm, the thickness is the key's."""
    return Sheet(
        key=f"e1745-{grade.lower()}-{mils}mil",
        name=f"Vapor retarder, Class {grade}, {mils} mil",
        use="vapor retarder",
        source=_E1745,
        also=(_STRENGTH,),
        thickness_m=mils * MIL,
        permeance_perm=0.1,
        e1745_class=grade,
        tensile_n_per_m=to_unit(pounds_per_inch, "lbf/inch", "N/m"),
        puncture_kg=to_unit(grams, "gram", "kg"),
    )


ROWS = (
    _poly(6, 0.13),
    _poly(10, 0.076),
    _poly(15, 0.057, _MISPRINT),
    _poly(20, 0.038),
    _e1745("A", 10, 45.0, 2200.0),
    _e1745("A", 15, 45.0, 2200.0),
    Sheet(
        key="pe-0.2mm",
        name="Vapor retarder, polyethylene, 0.2 mm",
        use="vapor retarder",
        source=_METRIC,
        thickness_m=0.0002,
        permeance_perm=None,
    ),
    Sheet(
        key="membrane",
        name="Waterproofing membrane, 40 mil",
        use="waterproofing",
        source=_R406,
        thickness_m=40 * MIL,
        permeance_perm=None,
    ),
)
