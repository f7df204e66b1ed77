"""Words that schedules, notes and lists share, from the design's own numbers."""

import math
from collections.abc import Sequence

from geometry.label import Role
from geometry.layout.lay import Layout
from geometry.layout.leads import LeadLayout
from geometry.materials.catalogue import BARS, CONCRETES, find
from geometry.materials.kinds import Pipe, Sheet
from geometry.parts.drain import Holes
from geometry.parts.floor import Layer
from geometry.parts.footing import Bars
from geometry.units import System, show_fall, show_length, show_thickness, to_unit
from viz.words import holes_words, material_name, size

ROLES = {
    "base": "base", "blinding": "blinding", "retarder": "vapor retarder",
    "insulation": "insulation", "slab": "slab", "fill": "fill",
}  # fmt: skip
NOT_STATED = "not stated"
NONE = "none"


def has(layout: Layout, role: Role) -> bool:
    """Tell whether any floor has a layer of this role."""
    return any(x.role == role for area in layout.areas for x in area.floor.layers)


def strength(material: str, system: System) -> str:
    """Return a concrete's specified strength, or that none is stated."""
    row = CONCRETES.get(material)
    if row is None or row.strength_kpa is None:
        return NOT_STATED
    if system == "metric":
        return f"{row.strength_kpa / 1000:.3g} MPa"
    return f"{to_unit(row.strength_kpa, 'kPa', 'psi'):,.0f} psi"


def bars_words(bars: Bars, system: System) -> str:
    """Return count and size of a strip's bars: `2 #4 bars`; in metric with their diameter."""
    if not bars.count:
        return NONE
    noun = "bar" if bars.count == 1 else "bars"
    wide = f" ({BARS[bars.size].diameter_m * 1000:.1f} mm)" if system == "metric" else ""
    return f"{bars.count} {bars.size} {noun}{wide}"


def across(sizes: Sequence[float], system: System) -> str:
    """Return sizes that belong together: `20" × 10"`, `600 × 300 mm`."""
    words = [size(metres, system) for metres in sizes]
    if system == "metric":
        words[:-1] = [one.removesuffix(" mm") for one in words[:-1]]
    return " × ".join(words)


def joined(parts: Sequence[str]) -> str:
    """Return words as a list: `a, b and c`."""
    *most, last = parts
    return f"{', '.join(most)} and {last}" if most else last


def within(key: str) -> str:
    """Return a material's name as it stands within a sentence."""
    name = material_name(key)
    return name[0].lower() + name[1:] if name[1:2].islower() else name


def layer_words(layer: Layer, system: System) -> str:
    """Return thickness and material of a layer; a sheet's thickness is not said twice."""
    row = find(layer.material)
    name = within(layer.material)
    if isinstance(row, Sheet) and math.isclose(row.thickness_m, layer.thickness, rel_tol=1e-3):
        name = name.rpartition(", ")[0] or name
    return f"{show_thickness(layer.thickness, system)} {name}"


def plain_pipe(pipe: Pipe) -> str:
    """Return a pipe's name where the sentence has said already that it is one."""
    return pipe.name.removeprefix("Drain pipe, ").removeprefix("Pipe, ")


def pipe_words(key: str) -> tuple[str, str]:
    """Return a pipe's name and the standard it is made to."""
    row = find(key)
    return (row.name, row.standard) if isinstance(row, Pipe) else (material_name(key), NOT_STATED)


def holes(given: Holes, system: System) -> str:
    """Return rows, angles, size and spacing of the drilled holes, and where they look."""
    if not given.rows:
        return holes_words(given.rows)
    angles = sorted({round(abs(row), 1) for row in given.rows})
    listed = joined([f"{angle:g}°" for angle in angles])
    rows = "1 row" if len(given.rows) == 1 else f"{len(given.rows)} rows"
    wide, apart = (show_length(m, system) for m in (given.diameter, given.spacing))
    return f"{holes_words(given.rows)}: {rows} at {listed} from straight down, {wide} every {apart}"


def corners(numbers: Sequence[int]) -> str:
    """Return corner numbers in words: `corners 2 and 6`."""
    if not numbers:
        return NONE
    return f"corner{'s' if len(numbers) > 1 else ''} {joined(list(map(str, numbers)))}"


def outlets(layout: Layout) -> tuple[str, ...]:
    """Return where the water of the drain in view goes, each of its outlets in words."""
    drain = layout.drain
    if drain is None:
        return ()
    given = drain.drain
    if given.outlet == "bleeders":
        other = "outside" if drain.inside else "inside"
        return (f"bleeders through the footing into the stone {other} it",)
    if given.outlet == "lower stone":
        return ("open end over the stone of the lower drain",)
    found = [_to_pit(layout.lead, layout.design.project.units)] if layout.lead else []
    several = len(given.daylight) > 1
    found += [
        f"to daylight {number}" if several else "to daylight"
        for number in range(1, len(given.daylight) + 1)
    ]
    return tuple(found) or ("from the low point; where the water goes from there is not stated",)


def _to_pit(lead: LeadLayout, system: System) -> str:
    return f"{plain_pipe(lead.pipe)}, solid, falls {show_fall(lead.fall, system)} to the sump pit"
