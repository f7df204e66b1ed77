"""An invented box of a house with a drain round it, to be worked by hand.

30 x 20 ft, footing 10 in thick and 20 in wide, wall 8 in: the footing stands out 6 in, the pipe
lies 8 in further. Half the run is 30 + 20 + 4 (6 + 8) / 12 ft = 54'-8". The pipe is 4.215 in
outside and 4.065 in inside, its wall 0.075 in; the wrap is 1.75 mm thick. With the foam's top at
TOF the slab's underside is at 0, the finished floor at +4 in and the subgrade at -8 in.
"""

from geometry.designfile import read_design
from geometry.layout.lay import Layout, lay_out

INCH = 0.0254
WRAP = 1.75 / 25.4
OUTSIDE, INSIDE, WALL = 4.215, 4.065, 0.075
HALF_FT = 30 + 20 + 4 * (6 + 8) / 12
# Lowest invert and the room under the slab, inches.
INVERT = -10 + WRAP + 2 + WALL
ROOM = 10 - WRAP - 2 - OUTSIDE

TEXT = """
[project]
name = "A box (invented)"
[footing]
thickness = "10 in"
[[area]]
name = "basement"
corners = ["0, 0", "30 ft, 0", "30 ft, 20 ft", "0, 20 ft"]
[floor]
tie = "{tie}"
layer = [
    {{ name = "stone", material = "stone-57", thickness = "6 in", role = "base" }},
    {{ name = "foam", material = "xps-iv", thickness = "2 in", role = "insulation" }},
    {{ name = "slab", material = "concrete", thickness = "4 in", role = "slab" }},
]
[drain]
fall = "{fall}"
{more}
"""


def box(fall: str = "level", more: str = "", tie: str = "foam top at TOF") -> Layout:
    return lay_out(read_design(TEXT.format(tie=tie, fall=fall, more=more)))
