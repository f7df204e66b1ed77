"""The level table's drain: each corner of the outline once, at its own height over the low one."""

from math import pi

import pytest

from geometry.designfile import read_design
from geometry.layout.lay import lay_out
from geometry.layout.leveltable import level_rows
from tests.geometry.layout.test_bleeders_by_hand import TEXT as BLEEDING
from tests.geometry.layout.test_pad_and_pit import TEXT as PAD_AND_PIT

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


def test_an_areas_levels_are_told_from_the_top_down_with_what_lies_under_them():
    """Worked in metres: TOF at 100 m, the laser at 101.5 m; a pad without and one with a column."""
    text = PAD_AND_PIT.split("[sump]")[0] + "[[area]]" + PAD_AND_PIT.split("[[area]]")[1]
    text += (
        'column = "none"\n'
        '[[area.pier]]\nname = "Q"\nat = "2 m, 4 m"\nwidth = "0.6 m"\nthickness = "0.3 m"\n'
        'pad_top = "TOF -0.25 m"\ncolumn = "round"\ncolumn_size = "0.3 m"\n'
        'column_top = "finished floor +1 m"\n'
    )
    text += '[datum]\ntop_of_footing = "100 m"\ninstrument = "101.5 m"\n'
    layout = lay_out(read_design(text))
    rows = [row for row in level_rows(layout) if row.area == "room"]
    assert [(row.group, row.interface, row.level) for row in rows] == [
        (group, words, pytest.approx(level, abs=1e-9))
        for group, words, level in [
            ("footing", "top of wall", 2.4),
            ("pier", "column Q top", 1.1),
            ("floor", "slab top (finished floor)", 0.1),
            ("floor", "stone top", 0.0),
            ("footing", "top of footing", 0.0),
            ("floor", "subgrade", -0.15),
            ("pier", "pad P top", -0.2),
            ("pier", "pad Q top", -0.25),
            ("footing", "footing bottom", -0.3),
            ("pier", "pad Q bottom", -0.55),
            ("pier", "pad P bottom", -0.6),
        ]
    ]
    for row in rows:
        assert row.elevation == pytest.approx(100 + row.level)
        assert row.rod == pytest.approx(1.5 - row.level)
    below = {row.interface: row.thickness_below for row in rows if row.thickness_below is not None}
    assert below == pytest.approx({
        "slab top (finished floor)": 0.1, "stone top": 0.15, "top of footing": 0.3,
        "pad P top": 0.4, "pad Q top": 0.3,
    })  # fmt: skip
    (column,) = (b for b in layout.structure if b.label.role == "column")
    assert column.volume == pytest.approx(pi * 0.15**2 * (1.1 + 0.25), rel=1e-9)


def test_bleeders_are_told_by_their_invert_and_a_drain_without_them_has_none():
    layout = lay_out(read_design(BLEEDING.replace("SPACING", "2 m")))
    told = [row.level for row in level_rows(layout) if row.interface.startswith("bleeders' invert")]
    assert told == [pytest.approx(-0.2)]
