"""Concrete volumes against worked examples on a trade page: plain arithmetic, exact values.

The page prints: slab 30 x 20 ft x 4 in 7.407 yd3; footing 100 x 2 x 1 ft 7.407; wall 20 x 8 ft
x 8 in 3.951; round column 12 in x 10 ft 0.2909. Each is done through a design of our own.
"""

import math
from typing import Any

import pytest

from geometry.layout.bodies import Prism
from geometry.layout.lay import Layout, lay_out
from geometry.plan.outline import circle
from geometry.project import Design
from geometry.solids.kernel import raised

YD3 = 0.764554857984  # NIST SP 811
FT = 0.3048


def laid(**parts: Any) -> Layout:
    raw = {"project": {"name": "invented"}, **parts}
    return lay_out(Design.model_validate(raw, context={"numbers": "ft"}))


def yards(layout: Layout, part: str) -> float:
    return next(b.volume for b in layout.bodies if b.label.part == part) / YD3


def rectangle(width: float, depth: float) -> list[list[float]]:
    return [[0, 0], [width, 0], [width, depth], [0, depth]]


def test_slab_30_by_20_ft_4_in() -> None:
    # Walls of 8 in outside a room of 30 x 20 ft; the slab alone, on TOF.
    wall = 8 / 12
    layout = laid(
        wall={"thickness": "8 in"},
        floor={
            "tie": "slab bottom at TOF",
            "layer": [
                {"name": "slab", "material": "concrete", "thickness": "4 in", "role": "slab"}
            ],
        },
        area=[{"name": "a", "corners": rectangle(30 + 2 * wall, 20 + 2 * wall)}],
    )
    assert yards(layout, "a/slab") == pytest.approx(30 * 20 * 4 / 12 / 27, rel=1e-9)
    assert yards(layout, "a/slab") == pytest.approx(7.407, abs=0.0005)


def test_footing_100_ft_of_2_by_1_ft() -> None:
    # A strip's middle line is 100 ft long under walls of 8 in: sides 30 and 20 ft on the middle,
    # and the corners' squares counted once each: outside 30'-8" x 20'-8".
    layout = laid(
        footing={"width": "2 ft", "thickness": "1 ft"},
        wall={"thickness": "8 in"},
        area=[{"name": "a", "corners": rectangle(30 + 8 / 12, 20 + 8 / 12)}],
    )
    assert yards(layout, "footing") == pytest.approx(100 * 2 * 1 / 27, rel=1e-9)
    assert yards(layout, "footing") == pytest.approx(7.407, abs=0.0005)


def test_wall_20_ft_by_8_ft_by_8_in() -> None:
    # Four walls of 20 ft on the middle line, 8 ft high: four times the page's wall.
    layout = laid(
        wall={"thickness": "8 in", "height": "8 ft"},
        area=[{"name": "a", "corners": rectangle(20 + 8 / 12, 20 + 8 / 12)}],
    )
    assert yards(layout, "a/wall") / 4 == pytest.approx(20 * 8 * (8 / 12) / 27, rel=1e-9)
    assert yards(layout, "a/wall") / 4 == pytest.approx(3.951, abs=0.0005)


def test_round_column_12_in_10_ft() -> None:
    # The page: pi x 0.5^2 x 10 ft = 7.854 ft3 = 0.2909 yd3; a column stands on its pad at TOF
    # and ends 10 ft higher.
    layout = laid(
        wall={"height": "12 ft"},
        area=[
            {
                "name": "a",
                "corners": rectangle(20, 20),
                "pier": [
                    {
                        "at": [10, 10],
                        "column": "round",
                        "column_size": "12 in",
                        "column_top": "10 ft",
                    }
                ],
            }
        ],
    )
    exact = math.pi * 0.5**2 * 10 / 27
    assert yards(layout, "a/pier P1 column") == pytest.approx(exact, rel=1e-9)
    assert yards(layout, "a/pier P1 column") == pytest.approx(0.2909, abs=0.00005)


@pytest.mark.parametrize("sides", [32, 48, 64])
def test_the_column_s_mesh_has_the_circle_s_volume(sides: int) -> None:
    column = Prism(circle((0, 0), 0.5 * FT, sides), 0, 10 * FT)
    mesh = raised(column.region, column.bottom, column.top)
    assert mesh.volume / YD3 == pytest.approx(math.pi * 0.5**2 * 10 / 27, rel=1e-12)
