"""Parts that keep to every rule alone and are wrong together: pads, and the pit's hole."""

from collections.abc import Iterator

import shapely

from geometry.checks.finding import Finding
from geometry.checks.levels import AGREE_M
from geometry.formulas.bearing import SPLAY_SOURCE, trench_intrusion
from geometry.layout.areas import AreaLayout
from geometry.layout.footings import pad_prism, pier_name
from geometry.layout.lay import Layout
from geometry.layout.sump import SumpLayout
from geometry.sources import PRACTICE
from geometry.units import System, show_length, show_level


def whole_findings(layout: Layout) -> Iterator[Finding]:
    """Yield, for each area with piers, how its pads stand, and how the pit lies to footings."""
    system = layout.design.project.units
    for area in layout.areas:
        if area.area.piers:
            yield pads_finding(area, system)
    if layout.sump:
        yield pit_finding(layout.sump, system)


def pads_finding(area: AreaLayout, system: System) -> Finding:
    """Return whether pads reach up to top of footing, and down to the ground under the floor."""
    pads = [(pier_name(area, n), pad_prism(area, p)) for n, p in enumerate(area.area.piers)]
    short = [(name, area.tof - pad.top) for name, pad in pads if area.tof - pad.top > AGREE_M]
    high = [
        (name, pad.bottom - area.subgrade)
        for name, pad in pads
        if pad.bottom - area.subgrade > AGREE_M
    ]
    found = [*_listed("top of pad {} under TOF", short, system)]
    found += _listed("bottom of pad {} over the cut, on the floor's stone", high, system)
    advice = []
    if short:
        advice.append(
            "The floor's layers are drawn over a pad that lies low, and its column grows: set "
            "pad_top to TOF, or tell crew and inspector that it is meant so."
        )
    if high:
        advice.append("A pad bears on undisturbed ground: thicken it or set it lower.")
    return Finding(
        "pads-at-tof",
        "look" if found else "fine",
        f"{area.name}, pads",
        " ".join(found) or "All pads reach up to TOF at least, and down to the cut or below it.",
        "pads up to top of footing, down to undisturbed ground",
        PRACTICE,
        " ".join(advice) or "Pour them so.",
    )


def _listed(words: str, rows: list[tuple[str, float]], system: System) -> Iterator[str]:
    """Yield one sentence for pads that are alike by so much."""
    by_size: dict[str, list[str]] = {}
    for name, off in rows:
        by_size.setdefault(show_length(round(off, 4), system), []).append(name)
    for size, names in by_size.items():
        yield f"{', '.join(names)}: {words.format(size)}."


def pit_finding(pit: SumpLayout, system: System) -> Finding:
    """Return whether the pit's hole goes into the ground that carries a footing or a pad."""
    area, hole = pit.area, pit.pocket
    beside = [("footing", area.footings.distance(hole.region), area.footing_bottom)]
    for number, pier in enumerate(area.area.piers):
        pad = pad_prism(area, pier)
        name = f"pad {pier_name(area, number)}"
        beside.append((name, shapely.distance(pad.region, hole.region), pad.bottom))
    near = [
        (trench_intrusion(float(away), bottom - hole.bottom), name, float(away), bottom)
        for name, away, bottom in beside
    ]
    into, name, away, bottom = max(near)
    deep = into > AGREE_M
    return Finding(
        "pit-bearing-splay",
        "look" if deep else "fine",
        "sump, hole",
        f"The pit's hole goes down to {show_level(round(hole.bottom - area.tof, 4), system)} "
        f"against TOF; the {name}, {show_length(round(away, 3), system)} away, stands at "
        f"{show_level(round(bottom - area.tof, 4), system)}.",
        "no hole into the ground under a 1:1 splay from the edge of footing or pad",
        SPLAY_SOURCE,
        f"Move it {show_length(round(into, 3), system)} farther away, or make it shallower; else "
        "set the basin before house stands on the footing, and fill tight round it."
        if deep
        else "Dig it so.",
    )
