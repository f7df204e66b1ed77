"""What has arrived against what was ordered: cover, shortfall, top-up, tons taken for yards."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from math import ceil

from geometry.layout.lay import Layout
from geometry.materials.catalogue import AGGREGATES, find
from geometry.measures import show_tons
from geometry.project import Design
from geometry.takeoff.bulk import bulk_row, loose_density
from geometry.takeoff.foam import covered
from geometry.takeoff.order import order
from geometry.takeoff.row import Part, Row
from geometry.takeoff.tickets import Ticket
from geometry.takeoff.usual import factor
from geometry.units import show_volume, to_unit

# A number of tons that lies so near the number of yards needed is taken for a mix-up.
NEAR = 0.05
_FLOOR = frozenset({"base", "blinding", "fill"})
# Units whose numbers are mixed up: weight, volume.
_MIXED = (("short_ton", "yd**3"), ("tonne", "m**3"))
_SAID = {"short_ton": "tons", "tonne": "t", "yd**3": "yd³", "m**3": "m³"}

Span = tuple[float, float]


@dataclass(frozen=True)
class Arrived:
    """One material: needed and arrived, loose; pairs are least and most, for a range of weight.

    covers_m: depth in place that what came for the floor makes over all the floor it is meant for,
    wanted_m: the depth drawn there; None where it is under no floor. short_in_place_m3: at the
    worst. loads: truckloads that are lacking, at the most.
    """

    material: str
    needed_m3: float
    needed_kg: Span | None
    arrived_m3: Span | None
    arrived_kg: Span | None
    short_m3: Span | None
    short_kg: Span | None
    short_in_place_m3: float | None
    loads: int | None
    covers_m: Span | None
    wanted_m: float | None
    mixed_up: str


def arrived(layout: Layout, tickets: Sequence[Ticket]) -> tuple[Arrived, ...]:
    """Return every stone, sand and soil that is needed, with what came of it."""
    rows = [row for row in order(layout).rows if row.group == "stone and sand"]
    return tuple(
        _one(layout, row, [t for t in tickets if t.material == row.material]) for row in rows
    )


def strange(layout: Layout, tickets: Sequence[Ticket]) -> tuple[str, ...]:
    """Return the materials that came and that no part of the design takes."""
    needed = {row.material for row in order(layout).rows}
    return tuple(dict.fromkeys(t.material for t in tickets if t.material not in needed))


def _one(layout: Layout, row: Row, tickets: Sequence[Ticket]) -> Arrived:
    weights = _weights(layout.design, row.material)
    came = _loose(tickets, weights)
    short = None if came is None else _lacking((row.to_buy, row.to_buy), came)
    loosened = row.to_buy / row.in_place
    floor = _floor(layout, row.material)
    here = _loose([t for t in tickets if _on_floor(layout, t)], weights)
    kilograms = _weighed(tickets, weights)
    return Arrived(
        row.material, row.to_buy, row.mass_kg, came, kilograms, short, _mass(short, weights),
        short[1] / loosened if short else None, _loads(layout.design, short, weights),
        _depth(here, loosened, floor), floor[1] / floor[0] if floor else None,
        mixed_up(layout.design, row, tickets),
    )  # fmt: skip


def _weights(design: Design, key: str) -> Span | None:
    material = find(key)
    found = loose_density(design, material) if material else ()
    return (found[0].value, found[-1].value) if found else None


def _loose(tickets: Sequence[Ticket], weights: Span | None) -> Span | None:
    """Return the loose volume that came, least and most; None where a weight tells none."""
    volume = sum(t.volume_m3 or 0.0 for t in tickets)
    mass = sum(t.mass_kg or 0.0 for t in tickets)
    if mass and weights is None:
        return None
    low, high = weights or (1.0, 1.0)
    return volume + mass / high, volume + mass / low


def _weighed(tickets: Sequence[Ticket], weights: Span | None) -> Span | None:
    volume = sum(t.volume_m3 or 0.0 for t in tickets)
    mass = sum(t.mass_kg or 0.0 for t in tickets)
    if volume and weights is None:
        return None
    low, high = weights or (1.0, 1.0)
    return mass + volume * low, mass + volume * high


def _lacking(needed: Span, came: Span) -> Span:
    return max(0.0, needed[0] - came[1]), max(0.0, needed[1] - came[0])


def _mass(volume: Span | None, weights: Span | None) -> Span | None:
    if volume is None or weights is None:
        return None
    return volume[0] * weights[0], volume[1] * weights[1]


def _loads(design: Design, short: Span | None, weights: Span | None) -> int | None:
    if short is None:
        return None
    holds = factor(design, "truck.volume").value
    carries = factor(design, "truck.weight").value
    by_weight = short[1] * weights[1] / carries if weights else 0.0
    return ceil(max(short[1] / holds, by_weight) - 1e-9)


def _floor(layout: Layout, key: str) -> Span | None:
    """Return the plan and the volume in place of the floor layers of a material, m2 and m3."""
    found = [b for b in layout.floors if b.label.role in _FLOOR and b.label.material == key]
    area = sum(float(covered(b).area) for b in found if b.prisms)
    return (area, sum(b.volume for b in found)) if area > 0 else None


def _on_floor(layout: Layout, ticket: Ticket) -> bool:
    """Say whether a load went to the floor: its place names an area, the floor, or nothing."""
    names = {"", "floor", *(a.name.casefold() for a in layout.areas)}
    return ticket.place.casefold() in names


def _depth(came: Span | None, loosened: float, floor: Span | None) -> Span | None:
    if came is None or floor is None:
        return None
    return came[0] / loosened / floor[0], came[1] / loosened / floor[0]


def top_up(design: Design, short: Arrived, key: str) -> Row | None:
    """Return what it takes of another material to fill a shortfall in place; None without one.

    Raises KeyError for a material that is not in the catalogue.
    """
    if not short.short_in_place_m3:
        return None
    return bulk_row(design, key, (Part(f"instead of {short.material}", short.short_in_place_m3),))


def mixed_up(design: Design, row: Row, tickets: Sequence[Ticket]) -> str:
    """Return one sentence if the tons that came are the number of yards needed, or the reverse."""
    return next(_mix_ups(design, row, tickets), "")


def _mix_ups(design: Design, row: Row, tickets: Sequence[Ticket]) -> Iterator[str]:
    mass = sum(t.mass_kg or 0.0 for t in tickets)
    volume = sum(t.volume_m3 or 0.0 for t in tickets)
    name = AGGREGATES[row.material].name if row.material in AGGREGATES else row.material
    system = design.project.units
    for tons, cubes in _MIXED:
        if mass and not volume and row.mass_kg:
            number, needed = to_unit(mass, "kg", tons), to_unit(row.to_buy, "m**3", cubes)
            if _near(number, needed) and mass < row.mass_kg[0]:
                yield (
                    f"{name}: {number:,.1f} {_SAID[tons]} came and {needed:,.1f} {_SAID[cubes]} "
                    "are needed, the same number in another unit; the need weighs "
                    f"{show_tons(row.mass_kg[0], system)} or more."
                )
        if volume and not mass and row.mass_kg:
            number = to_unit(volume, "m**3", cubes)
            low, high = (to_unit(m, "kg", tons) for m in row.mass_kg)
            if low * (1 - NEAR) <= number <= high * (1 + NEAR) and volume > row.to_buy:
                yield (
                    f"{name}: {number:,.1f} {_SAID[cubes]} came and {low:,.1f} to {high:,.1f} "
                    f"{_SAID[tons]} are needed, the same number in another unit; the need is "
                    f"{show_volume(row.to_buy, system)} loose."
                )


def _near(number: float, needed: float) -> bool:
    return abs(number - needed) <= NEAR * needed
