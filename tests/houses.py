"""Invented houses for the words on sheets, as text to edit and as laid out."""

from geometry.designfile import read_design
from geometry.layout.lay import Layout, lay_out

HOUSE = """
[project]
name = "Two rooms (invented)"
address = "1 Invented Lane"
prepared_by = "A. Builder (invented)"
drawn_for = "B. Owner (invented)"
parcel = "Lot 1 (invented)"
date = "2026-01-02"
code = "Invented code, 2024"

[datum]
top_of_footing = "250 ft"
instrument = "254 ft"

[footing]
width = "20 in"
thickness = "12 in"
material = "concrete-3000"
bars = { count = 2, size = "#4", cover = "3 in" }

[wall]
thickness = "8 in"
height = "8 ft"
material = "concrete-3000"

[floor]
tie = "foam bottom at TOF"
layer = [
    { name = "stone", material = "stone-57", thickness = "6 in", role = "base" },
    { name = "foam", material = "xps-iv", thickness = "2 in", role = "insulation" },
    { name = "retarder", material = "e1745-a-15mil", thickness = "15 mil", role = "retarder" },
    { name = "slab", material = "concrete-3000", thickness = "4 in", role = "slab" },
]

[[area]]
name = "basement"
corners = ["0, 0", "30 ft, 0", "30 ft, 20 ft", "0, 20 ft"]

[[area.pier]]
name = "P1"
at = "15 ft, 10 ft"
material = "concrete-3000"

[drain]
pipe = "sdr35-4"
fall = "1/16 in per ft"
cleanouts = [3]

[sump]
at = "4 ft, 5 ft"
pump = { off = "4 in", on = "12 in" }

[soil]
group = "GW"

[grade]
at_wall = "7 ft"
fall = "5 %"
fall_length = "10 ft"
"""


# A second area whose footing stands 3 ft higher, to follow the basement.
GARAGE = """
[[area]]
name = "garage"
step = "3 ft"
wall = { height = "4 ft 9 in" }
corners = ["30 ft, 0", "50 ft, 0", "50 ft, 20 ft", "30 ft, 20 ft"]

[area.floor]
tie = "slab bottom at TOF"
layer = [{ name = "slab", material = "concrete-3000", thickness = "5 in", role = "slab" }]

[drain]"""
WITH_GARAGE = ("\n[drain]", GARAGE)


def edited(*changes: tuple[str, str], text: str = HOUSE) -> str:
    """Return the house's text with each first string replaced, which must be there."""
    for old, new in changes:
        assert old in text, old
        text = text.replace(old, new)
    return text


def house(*changes: tuple[str, str]) -> Layout:
    """Return the house laid out after changes."""
    return lay_out(read_design(edited(*changes)))


def without(table: str) -> tuple[str, str]:
    """Return the change that takes a table of the file away, to the next blank line."""
    start = HOUSE.index(f"[{table}]")
    end = HOUSE.find("\n\n", start)
    return HOUSE[start : end if end > 0 else None], ""


# Without an area (invented, metres): strips of 0.5 x 0.25 m stand out 0.15 m on both sides.
METRIC = """
[project]
name = "invented"
units = "metric"
numbers = "m"
[footing]
width = 0.5
thickness = 0.25
[wall]
thickness = 0.2
height = 2.4
[floor]
tie = "base top at TOF"
layer = [
    { name = "base", material = "stone-57", thickness = 0.2, role = "base" },
    { name = "slab", material = "concrete-c25", thickness = 0.12, role = "slab" },
]
"""
