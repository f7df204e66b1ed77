"""A sound design file (the house is invented), and a fault as an edit of it."""

from typing import NamedTuple

SOUND = """\
[project]
name = "Two rooms (invented)"

[datum]
top_of_footing = "100 ft"
instrument = "104 ft"

[footing]
width = "20 in"
thickness = "12 in"
offset = "0 in"
bars = { count = 2, size = "#4", cover = "3 in" }

[wall]
thickness = "8 in"
height = "8 ft"

[floor]
tie = "sand top at TOF"
edge_board = { material = "xps-iv", thickness = "1 in" }
layer = [
    { name = "stone", material = "stone-57", thickness = "6 in", role = "base" },
    { name = "sand", material = "sand-c33", thickness = "1/2 in", role = "blinding" },
    { name = "retarder", material = "poly-10mil", thickness = "10 mil", role = "retarder" },
    { name = "foam", material = "xps-iv", thickness = "2 in", role = "insulation" },
    { name = "slab", material = "concrete", thickness = "4 in", role = "slab" },
]

[[area]]
name = "basement"
corners = ["0, 0", "36 ft, 0", "36 ft, 28 ft", "0, 28 ft"]

[[area.pier]]
name = "P1"
at = "12 ft, 14 ft"

[[area.pier]]
name = "P2"
at = "24 ft, 14 ft"
column = "round"
column_size = "10 in"

[[area]]
name = "porch"
corners = ["36 ft, 8 ft", "46 ft, 8 ft", "46 ft, 20 ft", "36 ft, 20 ft"]
step = "6 ft"
wall = { height = "2 ft" }

[area.floor]
tie = "slab bottom at TOF"
layer = [
    { name = "base", material = "stone-57", thickness = "6 in", role = "base" },
    { name = "slab", material = "concrete", thickness = "5 in", role = "slab" },
]

[drain]
area = "basement"
fall = "1/16 in per ft"
offset = "8 in"
cleanouts = [3]

[drain.holes]
rows = [-60, 60]
diameter = "1/2 in"
spacing = "5 in"

[drain.stone]
width = "16 in"

[sump]
at = "3 ft 6 in, 6 ft"
depth = "30 in"

[excavation]
working_space = "2 ft"

[soil]
group = "CL"

[grade]
at_wall = "7 ft"
"""

DRAIN = SOUND[SOUND.index("[drain]") : SOUND.index("[sump]")]

Edit = tuple[str, str]


class Case(NamedTuple):
    """One fault: edits of the sound text; its place, text on its line, words of its sentence."""

    name: str
    edits: tuple[Edit, ...]
    place: str
    on: str
    words: tuple[str, ...]


def edited(edits: tuple[Edit, ...]) -> str:
    """Return the sound text with each first occurrence replaced."""
    text = SOUND
    for old, new in edits:
        assert old in text, f"no {old!r} in the sound design"
        text = text.replace(old, new, 1)
    return text


def one(name: str, old: str, new: str, place: str, on: str, *words: str) -> Case:
    return Case(name, ((old, new),), place, on, words)


CORNERS = 'corners = ["0, 0", "36 ft, 0", "36 ft, 28 ft", "0, 28 ft"]'
PORCH = 'corners = ["36 ft, 8 ft", "46 ft, 8 ft", "46 ft, 20 ft", "36 ft, 20 ft"]'
BASEMENT = 'area "basement"'
# A notch in the far side, from the given place to 20 ft.
NOTCH = (
    'corners = ["0, 0", "36 ft, 0", "36 ft, 28 ft", "20 ft, 28 ft", "20 ft, 26 ft", '
    '"{0}, 26 ft", "{0}, 28 ft", "0, 28 ft"]'
)
# A pocket in the far side, wide inside, with a narrow mouth.
POCKET = (
    'corners = ["0, 0", "36 ft, 0", "36 ft, 28 ft", "20 ft, 28 ft", "20 ft, 26 ft", '
    '"24 ft, 26 ft", "24 ft, 20 ft", "10 ft, 20 ft", "10 ft, 26 ft", "16 ft 6 in, 26 ft", '
    '"16 ft 6 in, 28 ft", "0, 28 ft"]'
)
SLAB = '{ name = "slab", material = "concrete", thickness = "4 in", role = "slab" }'
SLAB_PLACE = 'floor > layer "slab"'
