"""Stone, base, sand and bought soil: in place, loose, short tons and tonnes, truckloads."""

from collections import defaultdict
from collections.abc import Iterable, Iterator
from math import ceil

from geometry.label import Role
from geometry.layout.lay import Layout
from geometry.materials.catalogue import find
from geometry.materials.kinds import Aggregate, Material, Soil
from geometry.parts.order import Unit
from geometry.parts.usual import GIVEN, Factor
from geometry.project import Design
from geometry.takeoff.earth import backfill_volume, grading_volume, wall_stone_volume
from geometry.takeoff.row import Part, Row
from geometry.takeoff.usual import densities, factor
from geometry.takeoff.volumes import PartVolume
from geometry.units import to_unit

BULK: frozenset[Role] = frozenset({"base", "blinding", "fill", "drain stone", "pit stone"})
_LEAST_M3 = 1e-9


def bulk_rows(layout: Layout, volumes: Iterable[PartVolume]) -> Iterator[Row]:
    """Yield a row for each stone, sand or soil to be brought, all its places together.

    volumes: every part in place. Pipes are taken out of the stone they lie in already.
    """
    found: dict[str, list[Part]] = defaultdict(list)
    for part in volumes:
        label = part.label
        if label.role in BULK and part.volume > _LEAST_M3:
            name = f"{label.name}, {label.area}" if label.area else label.name
            found[label.material].append(Part(name, part.volume))
    up = wall_stone_volume(layout)
    if up > _LEAST_M3:
        label = layout.label("ground/wall stone")
        found[label.material].append(Part(label.name, up))
    if bought := layout.design.backfill.material:
        volumes_m3 = {
            "Backfill": backfill_volume(layout),
            "Finished grade": grading_volume(layout),
        }
        found[bought] += [Part(n, v) for n, v in volumes_m3.items() if v > _LEAST_M3]
    for key, parts in found.items():
        yield bulk_row(layout.design, key, tuple(parts))


def bulk_row(design: Design, key: str, parts: tuple[Part, ...]) -> Row:
    """Return the row of one material from its places, m3 each. Raises KeyError: no such row."""
    material = find(key)
    if material is None:
        raise KeyError(key)
    group = group_of(material)
    shares = (factor(design, f"{group}.compaction"), factor(design, f"{group}.waste"))
    in_place = sum(p.in_place for p in parts)
    loose = in_place * (1 + shares[0].value) * (1 + shares[1].value)
    weights = loose_density(design, material)
    mass = (loose * weights[0].value, loose * weights[-1].value) if weights else None
    bodies = (factor(design, "truck.volume"), factor(design, "truck.weight"))
    return Row(
        "stone and sand", key, key, "", in_place, "m3", (*shares, *weights, *bodies), loose,
        *sold(design, loose), parts, mass, truckloads(loose, mass, bodies), note=_note(weights),
    )  # fmt: skip


def sold(design: Design, volume_m3: float) -> tuple[Unit, float]:
    """Return the unit volumes are sold in, and how many of it a volume is."""
    if design.project.units == "metric":
        return "m3", volume_m3
    return "yd3", to_unit(volume_m3, "m**3", "yd**3")


def group_of(material: Material) -> str:
    """Return the group of the design's order record: stone, base (with fines), sand or soil."""
    if material.kind in ("sand", "soil"):
        return material.kind
    return "base" if isinstance(material, Aggregate) and material.with_fines else "stone"


def loose_density(design: Design, material: Material) -> tuple[Factor, ...]:
    """Return the loose density in kg/m3: one figure, or the least and the most that is printed."""
    given = getattr(design.order, group_of(material)).density
    if given is not None:
        return (Factor("loose weight", given, "kg/m3", GIVEN),)
    if isinstance(material, Soil):
        return ()
    if not isinstance(material, Aggregate):
        raise TypeError(f"{material.key} is not sold loose")
    low, high, source = densities(material)
    return tuple(Factor("loose weight", value, "kg/m3", source) for value in (low, high))


def truckloads(
    loose_m3: float, mass_kg: tuple[float, float] | None, truck: tuple[Factor, Factor]
) -> int:
    """Return the loads at the heaviest: a body is full by its room or by its weight."""
    holds, carries = (f.value for f in truck)
    by_room = ceil(loose_m3 / holds - 1e-9)
    return max(by_room, ceil(mass_kg[1] / carries - 1e-9)) if mass_kg else by_room


def _note(weights: tuple[Factor, ...]) -> str:
    if not weights:
        return "weight not known; ask the supplier and give it as density"
    if len(weights) > 1:
        return "weight is a range; ask the supplier's figure and give it as density"
    return ""
