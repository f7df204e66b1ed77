"""Stones and sands: loose density as a range, because supplier and moisture move it."""

from typing import Literal

from geometry.materials.kinds import Aggregate, Passing, ReactionClass
from geometry.sources import Source
from geometry.units import to_unit

_C33 = Source("ASTM C33", clause="grading")
_C33_SECOND = Source("ASTM C33", clause="grading", sure="second-hand")
_C33_MEMORY = Source("ASTM C33", clause="grading", sure="memory")
_C33_67 = Source("ASTM C33", clause="grading, as UFGS-03701, No. 4 to 3/4 in", sure="second-hand")
_BULK = Source("bulk density of clean aggregate, 95 to 105 pcf", "a textbook", sure="second-hand")
_VOIDS = Source("void space of crushed stone, 40 %", "a chamber maker's note", sure="second-hand")
_YARD = Source("a stone yard's weight list", clause="dense graded base 1.70 to 1.75 short ton/yd3")
_SAND_LOW = Source("a stone yard's coverage chart", clause="concrete sand (low)", sure="computed")
_SAND_HIGH = Source("common practice, no source: sand 1.35 short ton/yd3", sure="practice")
_METRIC_STONE = Source("EN 12620 grading; loose density of washed gravel", sure="memory")
_D_OVER_D = Source(
    "EN 12620, EN 13242", clause="2D, 1.4D, D, d, d/2, category GC 85/20", sure="memory"
)
_METRIC_SAND = Source("EN 12620 grading; loose density of damp sand", sure="memory")

Rows = tuple[tuple[float, float, float], ...]
_NO_57: Rows = ((37.5, 100, 100), (25, 95, 100), (12.5, 25, 60), (4.75, 0, 10), (2.36, 0, 5))
_NO_67: Rows = ((25, 100, 100), (19, 90, 100), (9.5, 20, 55), (4.75, 0, 10), (2.36, 0, 5))
_NO_8: Rows = ((12.5, 100, 100), (9.5, 85, 100), (4.75, 10, 30), (2.36, 0, 10), (1.18, 0, 5))
_NO_89: Rows = ((12.5, 100, 100), (9.5, 90, 100), (4.75, 20, 55), (2.36, 5, 30), (1.18, 0, 10))
_SAND: Rows = (
    (9.5, 100, 100),
    (4.75, 95, 100),
    (2.36, 80, 100),
    (1.18, 50, 85),
    (0.6, 25, 60),
    (0.3, 5, 30),
    (0.15, 0, 10),
    (0.075, 0, 3),
)
_GRAVEL_16_32: Rows = ((63, 100, 100), (45, 98, 100), (31.5, 85, 99), (16, 0, 20), (8, 0, 5))
_GRAVEL_8_16: Rows = ((31.5, 100, 100), (22.4, 98, 100), (16, 85, 99), (8, 0, 20), (4, 0, 5))
_SAND_0_4: Rows = ((8, 100, 100), (5.6, 95, 100), (4, 85, 99))


def _grading(rows: Rows) -> tuple[Passing, ...]:
    """Turn (sieve in mm, low %, high %) into a band."""
    return tuple(Passing(mm / 1000, low / 100, high / 100) for mm, low, high in rows)


def _aggregate(
    kind: Literal["stone", "sand"],
    key: str,
    name: str,
    density: tuple[float, float],
    *sources: Source,
    grading: Rows = (),
    porosity: float | None = None,
    with_fines: bool = False,
    reaction: ReactionClass = "clean coarse",
) -> Aggregate:
    return Aggregate(
        kind=kind,
        key=key,
        name=name,
        source=sources[0],
        also=sources[1:],
        loose_density_low=density[0],
        loose_density_high=density[1],
        porosity=porosity,
        with_fines=with_fines,
        grading=_grading(grading),
        reaction_class=reaction,
    )


def _range(low: float, high: float, unit: str) -> tuple[float, float]:
    return to_unit(low, unit, "kg/m**3"), to_unit(high, unit, "kg/m**3")


def _washed(number: int, grading: Rows, source: Source) -> Aggregate:
    """Build a crushed stone; a rounded gravel of the same size holds a pipe less stiffly."""
    return _aggregate(
        "stone",
        f"stone-{number}",
        f"Washed stone, No. {number}",
        _range(95, 105, "lb/ft**3"),
        _BULK,
        source,
        _VOIDS,
        grading=grading,
        porosity=0.40,
        reaction="crushed rock",
    )


_TONS = "short_ton/yd**3"

ROWS = (
    _washed(57, _NO_57, _C33),
    _washed(67, _NO_67, _C33_67),
    _washed(8, _NO_8, _C33_MEMORY),
    _washed(89, _NO_89, _C33_SECOND),
    _aggregate(
        "stone",
        "gravel-16-32",
        "Washed gravel, 16/32",
        (1450.0, 1600.0),
        _METRIC_STONE,
        _D_OVER_D,
        _VOIDS,
        grading=_GRAVEL_16_32,
        porosity=0.40,
    ),
    _aggregate(
        "stone",
        "gravel-8-16",
        "Washed gravel, 8/16",
        (1450.0, 1600.0),
        _METRIC_STONE,
        _D_OVER_D,
        _VOIDS,
        grading=_GRAVEL_8_16,
        porosity=0.40,
    ),
    _aggregate(
        "stone",
        "crusher-run",
        "Crushed base with fines",
        _range(1.70, 1.75, _TONS),
        _YARD,
        with_fines=True,
        reaction="coarse with fines",
    ),
    _aggregate(
        "sand",
        "sand-c33",
        "Concrete sand, C33",
        _range(1.256, 1.35, _TONS),
        _SAND_HIGH,
        _SAND_LOW,
        _C33_SECOND,
        grading=_SAND,
    ),
    _aggregate(
        "sand",
        "sand-0-4",
        "Washed sand, 0/4",
        (1400.0, 1600.0),
        _METRIC_SAND,
        grading=_SAND_0_4,
    ),
)
