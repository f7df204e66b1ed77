"""The drained box with a pit, a pump and water; every value invented, to be worked by hand.

Unless said otherwise 2 in of rain in 2 hours, an inch an hour, on a strip of 5 ft: with mitred
corners 40 x 30 less 30 x 20 ft, 600 square feet.
"""

from drained_box import box

from geometry.layout.lay import Layout

INCH, FOOT = 0.0254, 0.3048
GPM = 231 * INCH**3 / 60
STEADY = 'storm = "steady"\nrain = "2 in"\nduration = "2 h"\nstrip = "5 ft"\nshare = 0.5\n'
GROUND = '[grade]\nat_wall = "7 ft"\n'
PUMP = 'pump = { off = "2 in", on = "10 in", flow = "20 gpm" }'


def wet(
    water: str = STEADY, pump: str | None = PUMP, drain: str = "", fall: str = "level",
    depth: str = "30 in", more: str = GROUND,
) -> Layout:  # fmt: skip
    """The box with a pit of 18 in; without pump for None."""
    sump = f'[sump]\nat = "5 ft, 10 ft"\ndiameter = "18 in"\ndepth = "{depth}"\n{pump or ""}\n'
    return box(fall, f"{drain}\n{sump}\n{more}\n[water]\n{water}\n")
