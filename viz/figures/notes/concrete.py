"""Notes on footings, bars and concrete."""

from collections.abc import Iterator

from geometry.layout.lay import Layout
from geometry.units import show_elevation, show_length, show_level
from viz.figures.wording import NOT_STATED, across, bars_words, joined, strength


def footings(layout: Layout) -> Iterator[str]:
    """Yield the notes on footings, their bars and piers."""
    system, datum = layout.design.project.units, layout.design.datum
    for area in layout.areas:
        strip, low = area.footing, area.footing_bottom
        yield (
            f"Footing, {area.name}: {across((strip.width, strip.thickness), system)}, to bear on "
            f"undisturbed soil at {show_level(low, system)} "
            f"(elevation {show_elevation(datum.top_of_footing + low, system)}); no fill under it."
        )
    if len({area.footing_bottom for area in layout.areas}) > 1:
        yield (
            "Where the dig for a lower footing reaches under a higher one, the higher one does "
            "not stand on undisturbed soil: ask an engineer before it is poured."
        )
    yield from _bars(layout)
    if any(area.area.piers for area in layout.areas):
        yield "Pier pads to bear on undisturbed soil at the levels of the pier schedule."


def _bars(layout: Layout) -> Iterator[str]:
    system = layout.design.project.units
    kinds = {
        f"{bars_words(a.footing.bars, system)} with {show_length(a.footing.bars.cover, system)} "
        "clear cover at sides and bottom": None
        for a in layout.areas
        if a.footing.bars.count
    }
    bare = [a.name for a in layout.areas if not a.footing.bars.count]
    if kinds:
        lead = layout.pit_lead
        round_ = ["the sleeve of the pipe to the sump"] if lead and lead.sleeve else []
        round_ += ["the bleeders"] if layout.bleeders else []
        bent = f", and bent round {joined(round_)}" if round_ else ""
        yield (
            f"Footing bars, continuous: {'; '.join(kinds)}; lapped at splices and corners{bent}. "
            "Lap lengths are not figured here."
        )
    if bare:
        yield f"No footing bars are given for {joined(bare)}."
    yield "Wall reinforcement, anchor bolts and framing are not part of these drawings."


def concrete(layout: Layout) -> Iterator[str]:
    """Yield the strengths of all concrete, and which parts have none stated."""
    system = layout.design.project.units
    parts: dict[str, list[str]] = {}
    for area in layout.areas:
        slabs = [x.material for x in area.floor.layers if x.role == "slab"]
        for name, key in [
            ("footings", area.footing.material),
            ("walls", area.wall.material),
            *((f"{area.name} slab", key) for key in slabs),
            *(("piers", pier.material) for pier in area.area.piers),
        ]:
            names = parts.setdefault(strength(key, system), [])
            if name not in names:
                names.append(name)
    open_ones = parts.pop(NOT_STATED, [])
    for fc, names in parts.items():
        yield f"Concrete of {joined(names)}: f'c {fc}."
    if open_ones:
        yield (
            f"Concrete strength of {joined(open_ones)} is not stated: ask the building "
            "department for the least strength."
        )
