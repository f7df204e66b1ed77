"""An invented box of a house whose levels are worked by hand; inches from top of footing.

30 x 20 ft, footing 20 x 10 in, wall 8 in, so the footing stands out 6 in and the pipe lies 8 in
further: half the run round is 30 + 20 + 4 (6 + 8) / 12 ft. The pipe is 4.215 in outside, 4.065 in
inside, 0.075 in thick; the wrap 1.75 mm. Top of footing lies 100 ft high, the laser 104 ft.
"""

from geometry.designfile import read_design
from geometry.layout.lay import Layout, lay_out

INCH = 0.0254
WRAP, PIPE_WALL = 1.75 / 25.4, 0.075
RISE = (30 + 20 + 4 * (6 + 8) / 12) / 16
# A trench to the footing's bottom, 3 in of bedding; the crown a mean of both diameters higher.
LOW = -10 + WRAP + 3 + PIPE_WALL
HIGH = LOW + RISE
CROWN = HIGH + (4.065 + 4.215) / 2
STONE_TOP = CROWN + 6 + WRAP
SAND, SHEET, FOAM, FLOOR = 0.0, 0.01, 2.01, 6.01
STONE, SUBGRADE = -0.5, -6.5
PIT_FLOOR = FLOOR - 30

BASE = """
[project]
name = "Worked by hand (invented)"
units = "ft-in"
[datum]
top_of_footing = "100 ft"
instrument = "104 ft"
[footing]
width = "20 in"
thickness = "10 in"
[floor]
tie = "sand top at TOF"
layer = [
    { name = "stone", material = "stone-57", thickness = "6 in", role = "base" },
    { name = "sand", material = "sand-c33", thickness = "1/2 in", role = "blinding" },
    { name = "sheet", material = "poly-10mil", thickness = "10 mil", role = "retarder" },
    { name = "foam", material = "xps-iv", thickness = "2 in", role = "insulation" },
    { name = "slab", material = "concrete", thickness = "4 in", role = "slab" },
]
[[area]]
name = "cellar"
corners = ["0, 0", "30 ft, 0", "30 ft, 20 ft", "0, 20 ft"]
[grade]
at_wall = "7 ft"
"""
PIER = """
[[area.pier]]
at = "20 ft, 10 ft"
width = "30 in"
depth = "24 in"
thickness = "11 in"
pad_top = "TOF - 2 in"
column_top = "finished floor - 1 in"
"""
DRAIN = """
[[drain]]
fall = "1/16 in per ft"
cleanouts = [2, 3]
stone = { bedding = "3 in", width = "18 in", cover = "6 in" }
wrap = { overlap = "10 in" }
"""
PIT = """
[sump]
at = "4 ft, 10 ft"
diameter = "18 in"
depth = "30 in"
wall = "1/4 in"
stone_below = "4 in"
stone_beside = "5 in"
"""
PUMP = """
[sump.pump]
off = "4 in"
on = "12 in"
alarm = "15 in"
"""


def hand_house(more: str = PIER + DRAIN + PIT + PUMP, *changes: tuple[str, str]) -> Layout:
    """Lay the house out with more tables, and pieces of its text put for others."""
    text = BASE + more
    for old, new in changes:
        assert old in text
        text = text.replace(old, new)
    return lay_out(read_design(text))


def without(*layers: str) -> tuple[tuple[str, str], ...]:
    """Return the changes that leave layers out."""
    rows = [row for row in BASE.splitlines() if any(f'name = "{n}"' in row for n in layers)]
    return tuple((row, "") for row in rows)
