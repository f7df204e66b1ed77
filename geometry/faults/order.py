"""Faults of the order: laps too wide for their roll, loads larger than the truck, odd prices."""

from collections.abc import Iterator

from geometry.faults.common import At, Words
from geometry.faults.names import LONGEST, text_faults
from geometry.materials.catalogue import BARS
from geometry.parts.usual import ordering_factor
from geometry.project import Design
from geometry.units import show_volume

# What laps, and what the lap must be shorter than.
_LAPS = (
    ("sheet.lap", "sheet.roll_width"),
    ("sheet.lap", "sheet.roll_length"),
    ("fabric.lap", "fabric.roll_width"),
    ("fabric.lap", "fabric.roll_length"),
)


def order_faults(design: Design, words: Words) -> Iterator[At]:
    """Yield what no supplier could fill."""
    yield from _laps(design, words)
    yield from _bars(design, words)
    yield from _loads(design, words)
    yield from _prices(design)
    yield from text_faults(("order", "currency"), design.order.currency, LONGEST)


def _figure(design: Design, key: str) -> float:
    return ordering_factor(design.order, design.project.units == "metric", key).value


def _laps(design: Design, words: Words) -> Iterator[At]:
    for key, roll in _LAPS:
        lap, size = _figure(design, key), _figure(design, roll)
        if lap > size / 2:
            group, name = key.split(".")
            side = roll.split("_")[-1]
            yield At(
                ("order", group, name),
                f"a lap of {words.size(lap)} takes more than half the roll's {side} of "
                f"{words.size(size)}; give at most {words.most(size / 2)}, or another roll",
            )


def _bars(design: Design, words: Words) -> Iterator[At]:
    stick, diameters = _figure(design, "bars.stick"), _figure(design, "bars.lap")
    areas = [design.footing_of(area).bars for area in design.areas]
    for size in dict.fromkeys(bars.size for bars in areas if bars.count):
        lap = diameters * BARS[size].diameter_m
        if lap > stick / 2:
            yield At(
                ("order", "bars", "stick"),
                f"{size} bars lap {words.size(lap)}, more than half a stick of "
                f"{words.size(stick)}; give sticks of at least {words.least(2 * lap)}",
            )


def _loads(design: Design, words: Words) -> Iterator[At]:
    truck, least = _figure(design, "concrete.truck"), _figure(design, "concrete.least")
    step = _figure(design, "concrete.step")
    for name, value in (("least", least), ("step", step)):
        if value > truck + 1e-9:
            yield At(
                ("order", "concrete", name),
                f"{show_volume(value, words.system)} is more than a truck holds, "
                f"{show_volume(truck, words.system)}; give less, or a larger truck",
            )


def _prices(design: Design) -> Iterator[At]:
    seen: set[tuple[str, str]] = set()
    for number, price in enumerate(design.order.prices):
        path = ("order", "price", number, "of")
        if not price.of:
            yield At(path, 'the price names nothing; write of = "stone-57" or an item of the order')
        yield from text_faults(path, price.of, LONGEST)
        if (price.of, price.per) in seen:
            yield At(path, f'"{price.of}" has two prices per {price.per}; leave one')
        seen.add((price.of, price.per))
