"""Colours in three dimensions: the table of materials, and the few tones around it."""

from geometry.label import Label
from viz.style.materials import look_of

RGB = tuple[int, int, int]
PAPER: RGB = (247, 247, 244)
INK: RGB = (38, 40, 42)
GHOST: RGB = (150, 156, 158)


def colour(label: Label) -> RGB:
    """The solid colour of a part's material."""
    return rgb(look_of(label).solid)


def rgb(code: str) -> RGB:
    """A colour written `#rrggbb`."""
    return int(code[1:3], 16), int(code[3:5], 16), int(code[5:7], 16)


def mixed(tone: RGB, other: RGB, share: float) -> RGB:
    """The tone with a share (0 to 1) of another in it."""
    r, g, b = (round(a + (c - a) * share) for a, c in zip(tone, other, strict=True))
    return r, g, b
