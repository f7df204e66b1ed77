"""What the pipe's detail says: rows of holes by the clock, sizes, when water runs in, levels."""

from collections.abc import Iterator
from math import asin, cos, degrees, radians

from geometry.layout.drain import DrainLayout
from geometry.parts.drain import Holes
from geometry.units import System, show_length, show_level
from viz.words import material_name

_LETTERS = "ABCDEFGHIJKLMNOPQRSTUVWXYZ"
_HOUR_DEG = 30.0
_SAME_DEG = 1e-6
# Pipes and holes are made finer than a builder's tape: sixty-fourths of an inch.
_FINE = 64


def fine(metres: float, system: System) -> str:
    """Print a size of pipe or hole."""
    return show_length(metres, system, _FINE)


def letter(number: int) -> str:
    """Return what a row of holes is called; from the alphabet's end on, its number."""
    return _LETTERS[number] if number < len(_LETTERS) else str(number + 1)


def clock(row: float) -> str:
    """Return where a row of holes lies as on a clock's face, the house to the left.

    row: degrees from straight down, positive toward the house.
    """
    hours = (6.0 + row / _HOUR_DEG) % 12.0
    whole = round(hours)
    if abs(hours - whole) * _HOUR_DEG < _SAME_DEG:
        return f"{whole % 12 or 12} o'clock"
    before = int(hours)
    return f"between {before or 12} and {before + 1} o'clock"


def tilt(row: float) -> str:
    """Return a row's angle in words."""
    if abs(row) < _SAME_DEG:
        return "straight down"
    if abs(abs(row) - 180.0) < _SAME_DEG:
        return "straight up"
    return f"{abs(row):.4g}° from straight down"


def lowest_water(drain: DrainLayout) -> float | None:
    """Return how far above the invert water runs in through the lowest holes, metres.

    It is the lower edge of the hole on the bore; None without holes.
    """
    holes = drain.drain.holes
    if not holes.rows:
        return None
    half = degrees(asin(min(1.0, holes.diameter / 2 / drain.bore)))
    edge = max(0.0, min(abs(row) for row in holes.rows) - half)
    return drain.bore * (1.0 - cos(radians(edge)))


def way(holes: Holes) -> str:
    """Return which way the holes look."""
    if not holes.rows:
        return "No holes"
    up = [abs(row) > 90.0 for row in holes.rows]
    if all(up):
        return "Holes up"
    return "Holes all round" if any(up) else "Holes down"


def notes(drain: DrainLayout, system: System) -> Iterator[str]:
    """Yield the lines under the picture: holes and spacing, and what their place means."""
    holes, water = drain.drain.holes, lowest_water(drain)
    if water is None:
        yield f"{way(holes)}: water cannot run into this pipe along its length."
        return
    count = len(holes.rows)
    rows = "one row" if count == 1 else f"each of {count} rows"
    spacing = show_length(holes.spacing, system)
    yield f"Holes {fine(holes.diameter, system)} in diameter, every {spacing} along {rows}."
    yield f"{way(holes)}: {_meaning(holes, water, system)}"


def _meaning(holes: Holes, water: float, system: System) -> str:
    shown = show_length(water, system)
    if shown == show_length(0.0, system):
        return "water in the stone runs in as soon as it stands above the invert."
    if way(holes) == "Holes up":
        return f"water fills the stone to {shown} above the invert before any of it runs in."
    return f"water in the stone need rise only {shown} above the invert before it runs in."


def sizes(drain: DrainLayout, system: System) -> tuple[str, ...]:
    """Return the pipe's name and its sizes, a line each."""
    pipe = drain.pipe
    return (
        material_name(drain.drain.pipe),
        f"outside {fine(pipe.outside_diameter_m, system)}, "
        f"inside {fine(pipe.inside_diameter_m, system)}",
        f"wall {fine(pipe.wall_m, system)}",
    )


def level_table(drain: DrainLayout, system: System) -> tuple[tuple[str, ...], ...]:
    """Return rows of words: levels against TOF at the low and the high point, or everywhere."""
    inverts = [drain.outlet_invert, drain.high_invert] if drain.rise else [drain.outlet_invert]
    heads = ("low point", "high point") if drain.rise else ("whole length",)
    crown = drain.bore + drain.radius
    return (
        ("From TOF", *heads),
        ("Top of pipe", *(show_level(level + crown, system) for level in inverts)),
        ("Invert", *(show_level(level, system) for level in inverts)),
        ("Bottom of trench", *(show_level(drain.stone_bottom, system) for _ in inverts)),
    )
