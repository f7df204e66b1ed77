"""Invented houses with other drains than one to a pit: inside, both, daylight, a higher area's."""

from geometry.designfile import edited, read_design
from geometry.project import Design

HOUSE = """
[project]
name = "Invented"
units = "ft-in"
[footing]
width = "20 in"
thickness = "10 in"
[floor]
tie = "base top at TOF"
layer = [
    { name = "base", material = "stone-57", thickness = "6 in", role = "base" },
    { name = "retarder", material = "poly-10mil", thickness = "10 mil", role = "retarder" },
    { name = "slab", material = "concrete", thickness = "4 in", role = "slab" },
]
[[area]]
name = "basement"
corners = ["0, 0", "40 ft, 0", "40 ft, 18 ft", "24 ft, 18 ft", "24 ft, 28 ft", "0, 28 ft"]
[[area.pier]]
at = "12 ft, 14 ft"
"""
PIT = """
[sump]
at = "5 ft, 12 ft"
depth = "30 in"
"""
OUTSIDE = """
[[drain]]
fall = "1/16 in per ft"
cleanouts = [6]
"""
LEVEL_OUTSIDE = OUTSIDE.replace("1/16 in per ft", "level")
INSIDE = """
[[drain]]
line = "inside"
fall = "level"
offset = "6 in"
cleanouts = [6]
stone = { width = "12 in", bedding = "1 in" }
"""
BLED = 'outlet = "bleeders"\nbleeders = { spacing = "7 ft", pipe = "sch40-3", invert = "-7 in" }\n'
DAYLIGHT = """
[[drain.daylight]]
toward = "20 ft, -60 ft"
fall = "1/4 in per ft"
ground = ["0, 7 ft", "30 ft, -3 ft", "80 ft, -8 ft"]
"""
SECOND = DAYLIGHT.replace("20 ft, -60 ft", "80 ft, 9 ft")
GARAGE = """
[[area]]
name = "garage"
step = "4 ft"
corners = ["24 ft, 18 ft", "40 ft, 18 ft", "40 ft, 40 ft", "24 ft, 40 ft", "24 ft, 28 ft"]
footing = { width = "16 in", thickness = "8 in" }
wall = { height = "4 ft" }
[area.floor]
tie = "slab top at +3 ft 6 in"
"""
UPPER = """
[[drain]]
area = "garage"
sides = [2, 3, 4]
outlet = "lower stone"
low_corner = 2
fall = "1/16 in per ft"
stone = { cover = "3 in" }
"""
UPPER_TO_DAYLIGHT = UPPER.replace('"lower stone"\nlow_corner = 2\n', '"daylight"\n') + (
    DAYLIGHT.replace("20 ft, -60 ft", "90 ft, 31 ft").replace('"0, 7 ft"', '"0, 8 ft"')
)

TEXTS = {
    "inside": HOUSE + INSIDE + PIT,
    "both to the pit": HOUSE + INSIDE + LEVEL_OUTSIDE + BLED + PIT,
    "daylight": HOUSE + OUTSIDE + DAYLIGHT,
    "both to daylight": HOUSE + LEVEL_OUTSIDE + DAYLIGHT + INSIDE + BLED,
    "pit and two to daylight": HOUSE + OUTSIDE + DAYLIGHT + SECOND + PIT,
    "upper to lower stone": HOUSE + GARAGE + OUTSIDE + UPPER + PIT,
    "upper to daylight": HOUSE + GARAGE + OUTSIDE + UPPER_TO_DAYLIGHT + PIT,
    "one side, two outlets": HOUSE
    + OUTSIDE.replace("cleanouts = [6]", "sides = [1, 2, 3]")
    + DAYLIGHT
    + SECOND,
}


def network(name: str, **changes: object) -> Design:
    """Return one of the houses; changes: keys joined by two underscores, with other values."""
    text = TEXTS[name]
    for key, value in changes.items():
        path = tuple(int(step) if step.isdigit() else step for step in key.split("__"))
        text = edited(text, path, value)
    return read_design(text)
