"""How the drains hang together: what each empties into, what joins them, what air and fines do."""

from collections.abc import Iterator

from geometry.checks.finding import Finding
from geometry.layout.bleeders import bleeder_invert
from geometry.layout.drain import DrainLayout
from geometry.layout.lay import Layout, empties_into
from geometry.materials.catalogue import AGGREGATES
from geometry.rules.outlets import GRAVITY_OR_PUMP
from geometry.sources import PRACTICE, Source
from geometry.units import FOOT, System, show_length
from geometry.water.feeding import feeders

BLEEDERS_APART_M = 50 * FOOT
"""Most between two connections of the drain outside with the one inside, along the footing."""

# Nearer than this two inverts are level.
_LEVEL_M = 1e-4

_CONNECTIONS = Source("Wayne, Michigan", "codified ordinances", "1438.02")
_AIR = Source(
    "ANSI/AARST CCAH", "2020", "404.1.5, foundation drains open to the air", sure="second-hand"
)
_CLEAN = Source("IRC", "2000, as reprinted by a city", "R405.1, gravel or crushed stone")


def network_findings(layout: Layout) -> Iterator[Finding]:
    """Yield the findings on drains as a whole; none without a drain."""
    system = layout.design.project.units
    for drain in layout.drains:
        yield from nowhere_finding(layout, drain)
        yield from lower_stone_finding(layout, drain, system)
        yield from bleeder_finding(layout, drain, system)
    yield from air_finding(layout)
    yield from fines_findings(layout)


def nowhere_finding(layout: Layout, drain: DrainLayout) -> Iterator[Finding]:
    """Yield a drain whose water is led nowhere."""
    into = empties_into(drain, layout.drains)
    if layout.leads(drain) or into is not None:
        return
    yield Finding(
        "drain-outlet",
        "stop",
        f"{drain.title}, outlet",
        "Nothing is given that takes its water: a drain without an outlet is a ring of water "
        "round the house.",
        "drain emptied by gravity or by a pump into a system the department accepts",
        GRAVITY_OR_PUMP,
        "Give a sump pit, or daylight with the profile of the ground.",
    )


def lower_stone_finding(layout: Layout, drain: DrainLayout, system: System) -> Iterator[Finding]:
    """Yield that an upper drain's open end pours into a lower drain's stone, and what that does."""
    lower = empties_into(drain, layout.drains)
    if lower is None or drain.drain.outlet != "lower stone":
        return
    drop = drain.outlet_invert - lower.stone_top
    long = show_length(round(drain.run_length, 2), system)
    yield Finding(
        "drain-into-lower-stone",
        "look",
        f"{drain.title}, outlet",
        f"Its open end stands {show_length(drop, system)} over the drain stone of the "
        f"{lower.title}, in loose backfill. All that its {long} of pipe gather falls there, washes "
        "soil down with it and is added to the lower drain's water; the lower drain is reckoned "
        "with it here.",
        "an upper drain with an outlet of its own, or led down in solid pipe",
        PRACTICE,
        f"Lead it down in solid pipe of {show_length(drop, system)} or more into the lower stone, "
        "on ground that does not settle, or give it daylight of its own.",
    )


def bleeder_finding(layout: Layout, drain: DrainLayout, system: System) -> Iterator[Finding]:
    """Yield how bleeders join two drains, and how high water stands before it passes them."""
    laid, other = layout.bleeders_of(drain), empties_into(drain, layout.drains)
    if not laid or other is None:
        return
    apart = drain.route.length / len(laid)
    stands = bleeder_invert(drain) - drain.outlet_invert
    far, high = apart > BLEEDERS_APART_M, stands > drain.bore
    wet = ": water stands so high in its stone before it passes" if stands > _LEVEL_M else ""
    yield Finding(
        "drain-bleeders",
        "look" if far or high else "fine",
        f"{drain.title}, bleeders",
        f"{len(laid)} bleeders, on average one every {show_length(round(apart, 2), system)} of the "
        f"footing, lead into the {other.title}. Their invert lies {_over(stands, system)} this "
        f"drain's lowest{wet}. Its own fall leads water along, the bleeders lead it away.",
        f"a connection at least every {show_length(BLEEDERS_APART_M, system)} where that rule is "
        "in force; water in the stone no higher than half the pipe",
        _CONNECTIONS,
        "Set more of them, or lower."
        if far or high
        else "Cast them in with the footing; bend its bars round them; keep them free of concrete.",
    )


def _over(height: float, system: System) -> str:
    if abs(height) < _LEVEL_M:
        return "level with"
    return f"{show_length(abs(height), system)} {'over' if height > 0 else 'under'}"


def air_finding(layout: Layout) -> Iterator[Finding]:
    """Yield that outside air reaches the stone under the floor through a drain open to daylight."""
    for view in layout.views():
        drain = view.drain
        if drain is None or not drain.drain.daylight:
            continue
        inside = [d for d in (drain, *feeders(view)) if d.inside]
        if inside:
            yield Finding(
                "drain-air-path",
                "look",
                f"{drain.title}, air",
                f"The {inside[0].title} joins it, and it is open to daylight: outside air reaches "
                "the stone under the floor. A vent stack against soil gas (radon) then draws that "
                "air instead of the ground's, and in winter cold air runs in under the slab.",
                "no opening to the outside air in the stone a soil-gas vent draws from",
                _AIR,
                "Keep the two apart, or close the path with a check valve or water trap made for "
                "it and looked after; ask whoever designs the radon control.",
            )


def fines_findings(layout: Layout) -> Iterator[Finding]:
    """Yield stone with fines where water is meant to run through."""
    places = [(f"{d.title}, stone", d.drain.stone.material) for d in layout.drains]
    for area in layout.areas:
        bases = [x for x in area.floor.layers if x.role == "base"]
        places += [(f"{area.name}, {layer.name}", layer.material) for layer in bases]
    for subject, material in places:
        stone = AGGREGATES.get(material)
        if stone and stone.with_fines:
            yield Finding(
                "stone-with-fines",
                "look",
                subject,
                f"{stone.name}: its fines fill the voids. It packs hard, but water hardly passes "
                "and rises in it; it does not replace a drain or a capillary break.",
                "clean (washed) gravel or crushed stone where water runs",
                _CLEAN,
                "Take washed stone here. Whether stone under a footing bears it, an engineer says.",
            )
