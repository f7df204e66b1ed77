"""Fittings and the joints they are glued at: one for every end a pipe goes into or onto."""

from math import ceil, hypot

import pytest

from geometry.designfile import read_design
from geometry.layout.lay import lay_out
from geometry.takeoff.order import order
from tests.houses import house

# Metres, invented. Two corners of the outline turn by 45 degrees, two by 135.
TEXT = """
[project]
name = "Glue (invented)"
units = "metric"
[[area]]
name = "room"
corners = ["0, 0", "9 m, 0", "13 m, 4 m", "4 m, 4 m"]
[drain]
pipe = "sdr35-4"
fall = "1:100"
{drain}
[order.pipe]
joints = 7
"""
ROUND = "low_corner = 1\ncleanouts = [1]\n"
OPEN = "sides = [1, 2]\n"
DAYLIGHT = 'daylight = { toward = "5 m, -30 m", ground = ["0, 1 m", "20 m, -6 m"] }\n'
SOCKETS = {
    "Elbow 45°": 2, "Elbow, special, 135°": 2, "Coupling": 2, "Tee": 3, "Cap": 1,
    "Cleanout tee": 3, "Cleanout plug": 1, "Guard for an open end": 0,
}  # fmt: skip


@pytest.mark.parametrize(
    ("drain", "fittings"),
    [
        (ROUND, {"Elbow 45°": 2, "Elbow, special, 135°": 2, "Cleanout tee": 1, "Cleanout plug": 1}),
        (OPEN, {"Elbow 45°": 1, "Cap": 2}),
        (
            DAYLIGHT,
            {"Elbow 45°": 2, "Elbow, special, 135°": 2, "Tee": 1, "Guard for an open end": 1},
        ),
    ],
)
def test_fittings_and_glue(drain: str, fittings: dict[str, int]) -> None:
    rows = {
        row.item: row for row in order(lay_out(read_design(TEXT.replace("{drain}", drain)))).rows
    }
    found = {item: rows[item].count for item in SOCKETS if item in rows}
    couplings = found.pop("Coupling")
    assert couplings > 0
    assert found == fittings
    joints = 2 * couplings + sum(SOCKETS[item] * count for item, count in fittings.items())
    assert rows["Glue"].in_place == joints
    assert rows["Glue"].count == ceil(joints / 7)


def test_a_corrugated_pipe_comes_in_coils_and_is_not_glued() -> None:
    text = TEXT.replace("{drain}", ROUND)
    coiled = order(lay_out(read_design(text.replace("sdr35-4", "corrugated-4")))).rows
    straight = order(lay_out(read_design(text))).rows
    for rows, unit, length in ((coiled, "coil", 50.0), (straight, "stick", 5.0)):
        (pipe,) = (row for row in rows if row.item == "Perforated pipe")
        assert pipe.sold == unit
        assert pipe.to_buy == pytest.approx(pipe.count * length)
    assert "Glue" in {row.item for row in straight}
    assert "Glue" not in {row.item for row in coiled}


def test_a_sleeve_is_as_long_as_the_footing_is_wide_along_the_pipes_fall() -> None:
    (sleeve,) = (
        row for row in order(house(("[sump]\n", '[sump]\nfall = "1:40"\n'))).rows
        if row.item == "Sleeve"
    )  # fmt: skip
    assert sleeve.in_place == pytest.approx(20 * 0.0254 * hypot(1, 1 / 40), rel=1e-6)
