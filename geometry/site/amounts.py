"""A stage's share of the order: what lies in place, what is bought for it, in which units."""

from collections import defaultdict
from collections.abc import Iterator

from geometry.label import Label
from geometry.layout.bodies import Body
from geometry.layout.drain import DrainLayout
from geometry.layout.lay import Layout
from geometry.site.records import Amount
from geometry.takeoff.order import drained, order
from geometry.takeoff.pipes import Drained
from geometry.takeoff.row import Group, Row

# Less than this of a roll or stick is left for nobody else.
_NOTHING_M = 1e-6


def bulk(layout: Layout, *labels: Label) -> Iterator[Amount]:
    """Yield stone, sand or soil of parts, those of one material together."""
    names = [f"{x.name}, {x.area}" if x.area else x.name for x in labels]
    for row in _rows(layout, "stone and sand"):
        here = sum(part.in_place for part in row.parts if part.name in names)
        if here > 0:
            share = here / row.in_place
            mass = (row.mass_kg[0] * share, row.mass_kg[1] * share) if row.mass_kg else None
            yield Amount(
                "bulk", row.material, labels[0].area, here, row.unit, row.to_buy * share,
                row.sold, row.count * share, mass_kg=mass,
            )  # fmt: skip


def layer(layout: Layout, body: Body, last: bool) -> Iterator[Amount]:
    """Yield what one floor layer or edge board takes. last: of its role, which is taped over."""
    role, area = body.label.role, body.label.area
    if role in ("base", "blinding", "fill"):
        yield from bulk(layout, body.label)
    elif role == "slab":
        yield from _own(layout, "concrete", "concrete", body.label)
    elif role == "retarder":
        yield from _sheet(layout, body.label)
        yield from _tape(layout, "sheet", area) if last else ()
    else:
        yield from _own(layout, "foam", "boards", body.label)
        yield from _tape(layout, "foam", area) if last and role == "insulation" else ()


def fabric(layout: Layout, drain: DrainLayout) -> Iterator[Amount]:
    """Yield a drain's wrap."""
    rows = [row for row in _rows(layout, "drain") if row.item == "Fabric wrap"]
    # One row a drain, in their order; none for a wrap no roll can make.
    if len(rows) == len(layout.drains):
        yield _whole(rows[layout.drains.index(drain)], "fabric")


def pipework(layout: Layout, drain: DrainLayout) -> Iterator[Amount]:
    """Yield a drain's perforated pipe, its risers and pipes to daylight, and its fittings."""
    mine = _drained(layout, drain)
    length = sum(cut.length_m for cut in mine.perforated())
    yield from _sticks(layout, "Perforated pipe", "perforated_pipe", drain.pipe.key, length)
    solid: dict[str, float] = defaultdict(float)
    for riser in mine.risers:
        solid[drain.pipe.key] += riser.top - riser.bottom
    for outlet in mine.outlets:
        if outlet.lead is not layout.pit_lead:
            solid[outlet.lead.pipe.key] += outlet.length_m
    for material, metres in solid.items():
        yield from _sticks(layout, "Solid pipe", "solid_pipe", material, metres)
    for item, count in mine.fittings().items():
        if count:
            yield _pieces(_fitting_key(item), drain.pipe.key, count)


def pit(layout: Layout, *stone: Label) -> Iterator[Amount]:
    """Yield basin, pump, the stone round them and the solid pipe from the drain."""
    for row, key in zip(_rows(layout, "pit"), ("basin", "pump"), strict=False):
        yield _whole(row, key)
    yield from bulk(layout, *stone)
    drain = layout.sump_drain
    if drain:
        for outlet in _drained(layout, drain).outlets:
            if outlet.lead is layout.pit_lead:
                material = outlet.lead.pipe.key
                yield from _sticks(layout, "Solid pipe", "solid_pipe", material, outlet.length_m)


def _rows(layout: Layout, group: Group) -> list[Row]:
    return [row for row in order(layout).rows if row.group == group]


def _drained(layout: Layout, drain: DrainLayout) -> Drained:
    return next(d for d in drained(layout) if d.drain is drain)


def _whole(row: Row, key: str) -> Amount:
    return Amount(
        key, row.material, row.area, row.in_place, row.unit, row.to_buy, row.sold, row.count,
        mass_kg=row.mass_kg,
    )  # fmt: skip


def _own(layout: Layout, group: Group, key: str, label: Label) -> Iterator[Amount]:
    for row in _rows(layout, group):
        if row.item == label.name and row.area == label.area:
            yield _whole(row, key)


def _sheet(layout: Layout, label: Label) -> Iterator[Amount]:
    """Yield a retarder; the areas of one material are cut from the same rolls."""
    for row in _rows(layout, "sheet"):
        here = [p.in_place for p in row.parts if p.name == label.area]
        if row.material == label.material and here:
            yield Amount(
                "sheet", row.material, label.area, here[0], row.unit, row.to_buy, row.sold,
                row.count, shared=len(row.parts) > 1,
            )  # fmt: skip


def _tape(layout: Layout, group: Group, area: str) -> Iterator[Amount]:
    for row in _rows(layout, group):
        here = sum(p.in_place for p in row.parts if p.name == area)
        if row.material == "tape" and here > 0:
            shared = row.in_place - here > _NOTHING_M
            yield Amount(
                "tape", "tape", area, here, row.unit, row.to_buy, row.sold, row.count, shared
            )


def _sticks(
    layout: Layout, item: str, key: str, material: str, length_m: float
) -> Iterator[Amount]:
    for row in _rows(layout, "drain"):
        if row.item == item and row.material == material:
            shared = row.in_place - length_m > _NOTHING_M
            yield Amount(key, material, "", length_m, "m", row.to_buy, row.sold, row.count, shared)


def _pieces(key: str, material: str, count: int) -> Amount:
    return Amount(key, material, "", count, "pieces", count, "piece", count)


def _fitting_key(item: str) -> str:
    """Return `elbow:90°` for an elbow, else the fitting's name with lines for blanks."""
    if item.startswith("Elbow"):
        return f"elbow:{item.split()[-1]}"
    return item.casefold().replace(" ", "_")
