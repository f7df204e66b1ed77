"""The pipe's inverts as one walks them: names, even steps, levels, rods; worked by hand."""

import pytest

from geometry.designfile import read_design
from geometry.layout.inverts import invert_rows, outlet_words
from geometry.layout.lay import lay_out
from tests.geometry.layout.test_leads import TEXT
from tests.whole.networks import network

# 8.1 x 6.6 m outside; the pipe's centre lies 0.45 m out, so its sides are 9 and 7.5 m, 33 m in all.
BOX = TEXT.replace("9 m", "8.1 m").replace("7 m", "6.6 m")
DATUM = '[datum]\ntop_of_footing = "100 m"\ninstrument = "101.5 m"\n'


def rows(more, fall="1:100", units="metric"):
    text = BOX.format(more=more + DATUM, invert="-0.1 m").replace('"level"', f'"{fall}"')
    layout = lay_out(read_design(text.replace('"metric"', f'"{units}"')))
    return invert_rows(layout, layout.drains[0])


def test_a_loop_is_walked_from_its_outlet_every_three_metres_and_named_at_its_corners():
    found = rows("low_corner = 4\ncleanouts = [4, 2]\n")
    assert [row.along for row in found] == pytest.approx(
        [0, 3, 6, 7.5, 9, 12, 15, 16.5, 18, 21, 24, 27, 30]
    )
    assert {round(row.along, 6): row.names for row in found if row.names} == {
        0: ("low point", "corner 4", "cleanout"),
        7.5: ("corner 1",),
        16.5: ("corner 2", "cleanout", "high point"),
        24: ("corner 3",),
    }
    for row in found:
        assert row.level == pytest.approx(-0.1 + min(row.along, 33 - row.along) / 100)
        assert row.elevation == pytest.approx(100 + row.level)
        assert row.rod == pytest.approx(1.5 - row.level)
    assert [row.station for row in found if row.names] == pytest.approx([25.5, 0, 9, 16.5])


def test_an_open_run_is_walked_from_its_first_end():
    found = rows("sides = [1, 2]\nlow_corner = 3\n")
    assert [row.along for row in found] == pytest.approx([0, 3, 6, 9, 12, 15, 16.5])
    assert [row.level for row in found] == pytest.approx(
        [-0.1 + (16.5 - row.along) / 100 for row in found]
    )
    assert [row.names for row in found if row.names] == [
        ("corner 1", "high point"), ("corner 2",), ("low point", "corner 3"),
    ]  # fmt: skip


def test_a_level_pipe_has_no_high_point():
    found = rows("low_corner = 2\n", "level")
    assert {row.level for row in found} == {-0.1}
    assert "high point" not in [name for row in found for name in row.names]


def test_in_feet_there_is_an_even_step_every_ten():
    found = rows("low_corner = 3\n", units="ft-in")
    steps = [row.along / 0.3048 for row in found if not row.names]
    assert steps == pytest.approx([10, 20, 30, 40, 50, 60, 70, 80, 90, 100])


@pytest.mark.parametrize(
    ("name", "words"),
    [
        ("daylight", [["outlet to daylight"]]),
        ("one side, two outlets", [["outlet to daylight 1", "outlet to daylight 2"]]),
        (
            "pit and two to daylight",
            [["outlet to the pit", "outlet to daylight 1", "outlet to daylight 2"]],
        ),
        ("both to the pit", [["outlet to the pit"], ["low point, emptied by bleeders"]]),
        ("upper to lower stone", [["outlet to the pit"], ["open end over lower stone"]]),
    ],
)
def test_every_low_point_says_what_it_empties_into(name, words):
    layout = lay_out(network(name))
    assert [
        [outlet_words(layout, drain, n) for n in range(len(drain.lows))] for drain in layout.drains
    ] == words
    assert [outlet_words(layout, drain) for drain in layout.drains] == [each[0] for each in words]
