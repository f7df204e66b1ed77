"""The properties of a design's materials that findings hang on, each row with its sources."""

from collections.abc import Iterator

from geometry.heat.words import show_ground, show_resistance
from geometry.layout.lay import Layout
from geometry.materials.catalogue import find
from geometry.materials.kinds import (
    Aggregate,
    Board,
    Concrete,
    Fabric,
    Material,
    Pipe,
    Plastic,
    Sheet,
    Soil,
)
from geometry.measures import show_conductivity, show_density
from geometry.report import Report
from geometry.units import System, show_length, show_thickness, to_unit
from geometry.water.loadwords import show_modulus, show_pressure, show_unit_weight


def material_rows(layout: Layout, report: Report, system: System) -> Iterator[tuple[str, str, str]]:
    """Yield each material of a design once: name, properties in words, sources."""
    for key in _keys(layout, report):
        row = find(key)
        if row is not None:
            said = "; ".join(properties(row, system)) or "no figure is needed of it"
            yield row.name, said, "; ".join(map(str, (row.source, *row.also)))


def _keys(layout: Layout, report: Report) -> dict[str, None]:
    design = layout.design
    keys = [volume.material for volume in report.volumes]
    keys += [drain.drain.pipe for drain in layout.drains]
    keys += [drain.drain.wrap.material for drain in layout.drains]
    keys += [design.soil.group, design.backfill.material]
    return dict.fromkeys(filter(None, keys))


def properties(row: Material, system: System) -> tuple[str, ...]:
    """Return the known properties of a material, each with its unit."""
    match row:
        case Soil():
            found = _soil(row, system)
        case Aggregate():
            found = _aggregate(row, system)
        case Board():
            found = _board(row, system)
        case Sheet():
            found = _sheet(row, system)
        case Pipe():
            found = _pipe(row, system)
        case Fabric():
            found = _fabric(row)
        case Concrete():
            found = _concrete(row, system)
        case Plastic():
            found = iter((f"weighs {show_density(row.density_kg_m3, system)}",))
        case _:
            found = iter(())
    return tuple(found)


def _soil(row: Soil, system: System) -> Iterator[str]:
    if row.density_kg_m3 is not None:
        yield f"moist {show_density(row.density_kg_m3, system)}"
    if row.friction_angle_deg is not None:
        yield f"friction {row.friction_angle_deg:.3g}°"
    for name, load in (
        ("equivalent fluid, active", row.active_load_n_m3),
        ("at rest", row.at_rest_load_n_m3),
        ("by the wall tables", row.wall_table_load_n_m3),
    ):
        if load is not None:
            yield f"{name} {show_unit_weight(load, system)}"
    if row.bearing_pa is not None:
        yield f"presumptive bearing {show_pressure(row.bearing_pa, system)}"
    if row.permeability_m_s is not None:
        speeds = [show_conductivity(v) for v in row.permeability_m_s if v is not None]
        yield f"passes water at {' to '.join(dict.fromkeys(speeds))}"
    if row.fines is not None:
        low, high = row.fines
        yield f"{low:.0%} to {high:.0%} passing No. 200"
    if row.conductivity_w_mk is not None:
        yield f"conducts {show_ground(row.conductivity_w_mk, system)}"


def _aggregate(row: Aggregate, system: System) -> Iterator[str]:
    low, high = (show_density(v, system) for v in (row.loose_density_low, row.loose_density_high))
    yield f"loose {low}" if low == high else f"loose {low} to {high}"
    if row.porosity is not None:
        yield f"voids {row.porosity:.0%}"
    yield "with fines" if row.with_fines else "without fines"


def _board(row: Board, system: System) -> Iterator[str]:
    yield f"strength at 10 % strain {_stress(row.strength_kpa, system)}"
    if row.strain1_kpa is not None:
        yield f"at 1 % strain {_stress(row.strain1_kpa, system)}"
    inch = 0.0254
    yield (
        f"1 m²K/W takes {show_length(1 / row.r_per_m, system)}"
        if system == "metric"
        else f"{show_resistance(row.r_per_m * inch, system)} per inch"
    )


def _stress(kilopascals: float, system: System) -> str:
    if system == "metric":
        return f"{kilopascals:.0f} kPa"
    psi = to_unit(kilopascals, "kPa", "psi")
    return f"{psi:,.0f} psi" if psi > 99.5 else f"{psi:.3g} psi"


def _sheet(row: Sheet, system: System) -> Iterator[str]:
    yield show_thickness(row.thickness_m, system)
    yield f"ASTM E1745 Class {row.e1745_class}" if row.e1745_class else "no ASTM E1745 class"
    if row.permeance_perm is not None:
        yield f"{row.permeance_perm:g} US perm"


def _pipe(row: Pipe, system: System) -> Iterator[str]:
    yield row.standard
    yield f"outside {show_length(row.outside_diameter_m, system, 64)}"
    yield f"inside {show_length(row.inside_diameter_m, system, 64)}"
    if row.stiffness_kpa is not None:
        yield f"stiffness at 5 % {show_modulus(row.stiffness_kpa * 1000, system)}"
    yield f"Manning's n {row.manning_n:g}, clean"


def _fabric(row: Fabric) -> Iterator[str]:
    yield f"opening {row.opening_m * 1000:.3g} mm"
    yield f"permittivity {row.permittivity_per_s:.3g} per s"
    yield "woven" if row.woven else "nonwoven"
    if row.m288_class is not None:
        yield f"AASHTO M 288 class {row.m288_class}"


def _concrete(row: Concrete, system: System) -> Iterator[str]:
    yield f"weighs {show_density(row.density_kg_m3, system)}"
    if row.strength_kpa is None:
        yield "strength not stated"
    else:
        yield f"strength {_stress(row.strength_kpa, system)}"
