"""The level table's drain: each corner of the outline once, at its own height over the low one."""

import pytest

from geometry.designfile import read_design
from geometry.layout.lay import lay_out
from geometry.layout.leveltable import level_rows

FOOT = 0.3048
# Footing's face 6 in off the wall, pipe's middle 8 in off that: 14 in more at every end of a side.
TEXT = """
[project]
name = "A box (invented)"
[[area]]
name = "basement"
corners = ["0, 0", "30 ft, 0", "30 ft, 20 ft", "0, 20 ft"]
[drain]
fall = "1/16 in per ft"
low_corner = 2
"""


def test_corners_of_the_drain_are_told_by_the_outlines_numbers():
    rows = [row for row in level_rows(lay_out(read_design(TEXT))) if row.group == "drain"]
    levels = {row.interface: row.level for row in rows}
    assert len(levels) == len(rows)
    low = levels["drain invert, low point"]
    long, short = 30 + 28 / 12, 20 + 28 / 12
    # The third and the first are next to the low one, the fourth is opposite, either way round.
    run = {1: long, 2: 0, 3: short, 4: (long + short)}
    corners = {n: levels.pop(f"drain invert, corner {n}") for n in run}
    rise = {n: (level - low) / FOOT for n, level in corners.items()}
    assert rise == pytest.approx({n: feet / 16 / 12 for n, feet in run.items()})
    assert levels["drain invert, high point"] == corners[4]
    assert not [words for words in levels if "corner" in words]
