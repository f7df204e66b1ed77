"""Drain pipes. Inside diameter = average outside diameter - 2 x minimum wall: a maximum."""

from geometry.materials.kinds import Perforation, Pipe
from geometry.sources import Source
from geometry.units import INCH, to_unit

_D2729 = Source("ASTM D2729-11", clause="Table 1 (diameter, wall)", sure="memory")
_D2729_PS = Source("ASTM D2729-11", clause="Table 5 (stiffness)")
_D2729_HOLES = Source("ASTM D2729-11", clause="section 4 (two rows, 120 deg apart)", sure="memory")
_D3034_4 = Source("ASTM D3034", clause="Table 1", sure="second-hand")
_D3034_6 = Source("ASTM D3034", clause="Table 1 (wall)", sure="memory")
_D3034_PS = Source("ASTM D3034", clause="stiffness 46 psi, quoted in Moser, p. 109")
_D1785 = Source("ASTM D1785", clause="Table 1", sure="second-hand")
_M252 = Source(
    "AASHTO M 252, ASTM F405", clause="nominal = inside; outside from makers' sheets", sure="memory"
)
_F405_PS = Source("ASTM F405", clause="stiffness 24 psi, standard tubing", sure="memory")
_EN1401 = Source("EN 1401-1", clause="SN 4, read in a maker's table", sure="second-hand")
_SN4 = Source(
    "ISO 9969", clause="pipe stiffness = 8 x 6.71 x ring stiffness 4 kPa", sure="computed"
)
_HOLES_PRACTICE = Source("common practice, no source: two rows, 120 deg apart", sure="practice")
_COIL_4 = Source("a maker's sheet, 167 holes/m, 20 cm2/m", clause="rows from memory", sure="memory")
_COIL_6 = Source("AASHTO M 252", clause="Class 2, 20 cm2/m with 5 mm holes", sure="memory")
_SMOOTH_N = Source("City of Austin Drainage Criteria Manual", clause="Table 5-2 (roughness)")
_PVC_MODULUS = Source("ASTM D1784", clause="least modulus of PVC 12454, 400,000 psi", sure="memory")
_CORRUGATED_N = Source("NRCS NEH 650.14", clause="3 to 8 in tubing (roughness)", sure="memory")

# F/dy of the parallel-plate test is 6.71 EI/r3; ring stiffness is EI/D3, and D = 2r.
_PS_PER_RING_STIFFNESS = 8 * 6.71

# Smooth plastic with holes, the same table of the same manual: a designer's minimum.
_PERFORATED_N = 0.020


def _two_rows(source: Source) -> Perforation:
    return Perforation((-60.0, 60.0), 0.5 * INCH, 5 * INCH, source)


def _solid(
    key: str,
    name: str,
    standard: str,
    size_in: tuple[float, float],
    psi: float | None,
    *sources: Source,
    perforation: Perforation | None = None,
) -> Pipe:
    """Build a smooth-wall row from the table's inches (outside diameter, minimum wall)."""
    return Pipe(
        key=key,
        name=name,
        standard=standard,
        source=sources[0],
        also=(*sources[1:], _SMOOTH_N, _PVC_MODULUS),
        outside_diameter_m=size_in[0] * INCH,
        wall_m=size_in[1] * INCH,
        perforation=perforation,
        stiffness_kpa=None if psi is None else to_unit(psi, "psi", "kPa"),
        manning_n=0.010,
        manning_perforated=_PERFORATED_N,
        modulus_kpa=to_unit(400_000.0, "psi", "kPa"),
    )


def _d2729(size: int, outside: float, wall: float, psi: float) -> Pipe:
    """Build a D2729 row; the standard covers perforated pipe in 4 in only."""
    holes = _two_rows(_D2729_HOLES) if size == 4 else None
    name = f"Drain pipe, PVC D2729, {size} in"
    key, dims = f"d2729-{size}", (outside, wall)
    return _solid(key, name, "ASTM D2729", dims, psi, _D2729, _D2729_PS, perforation=holes)


def _sdr35(size: int, outside: float, wall: float, source: Source) -> Pipe:
    name = f"Drain pipe, PVC SDR 35, {size} in"
    key, dims, holes = f"sdr35-{size}", (outside, wall), _two_rows(_HOLES_PRACTICE)
    return _solid(key, name, "ASTM D3034", dims, 46.0, source, _D3034_PS, perforation=holes)


def _sch40(size: int, outside: float, wall: float) -> Pipe:
    name = f"Pipe, PVC Schedule 40, {size} in"
    return _solid(f"sch40-{size}", name, "ASTM D1785", (outside, wall), None, _D1785)


def _corrugated(size: int, outside: float, perforation: Perforation) -> Pipe:
    return Pipe(
        key=f"corrugated-{size}",
        name=f"Corrugated drain pipe, polyethylene, {size} in",
        standard="AASHTO M 252, ASTM F405",
        source=_M252,
        also=(_F405_PS, _CORRUGATED_N),
        outside_diameter_m=outside * INCH,
        wall_m=(outside - size) / 2 * INCH,
        perforation=perforation,
        stiffness_kpa=to_unit(24.0, "psi", "kPa"),
        manning_n=0.015,
        corrugated=True,
    )


def _en1401(outside_mm: int, wall_mm: float) -> Pipe:
    return Pipe(
        key=f"en1401-{outside_mm}",
        name=f"Drain pipe, PVC-U SN 4, {outside_mm} mm",
        standard="EN 1401-1",
        source=_EN1401,
        also=(_SN4, _SMOOTH_N),
        outside_diameter_m=outside_mm / 1000,
        wall_m=wall_mm / 1000,
        perforation=None,
        stiffness_kpa=4.0 * _PS_PER_RING_STIFFNESS,
        manning_n=0.010,
        manning_perforated=_PERFORATED_N,
    )


_THREE_ROWS = (-60.0, 60.0, 180.0)

ROWS = (
    _d2729(3, 3.250, 0.070, 19.0),
    _d2729(4, 4.215, 0.075, 11.0),
    _d2729(6, 6.275, 0.100, 8.0),
    _sdr35(4, 4.215, 0.120, _D3034_4),
    _sdr35(6, 6.275, 0.180, _D3034_6),
    _sch40(3, 3.500, 0.216),
    _sch40(4, 4.500, 0.237),
    _sch40(6, 6.625, 0.280),
    _sch40(8, 8.625, 0.322),
    _sch40(10, 10.750, 0.365),
    _corrugated(4, 4.65, Perforation(_THREE_ROWS, 0.0039, 3 / 167, _COIL_4)),
    _corrugated(6, 6.95, Perforation(_THREE_ROWS, 0.005, 0.0295, _COIL_6)),
    _en1401(110, 3.2),
    _en1401(125, 3.2),
    _en1401(160, 4.0),
    _en1401(200, 4.9),
)
