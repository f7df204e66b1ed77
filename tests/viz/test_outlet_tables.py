"""Tables of an outlet to daylight, on invented ground: the figures are those of the closed form."""

from geometry.materials.catalogue import PIPES
from geometry.parts.outlet import Daylight
from geometry.units import System
from geometry.water.daylight import DaylightRun
from geometry.water.emptying import Outlets
from geometry.water.outlet_figures import RunFigures, outlet_figures
from viz.tables import outlet_tables

FOOT = 0.3048


def run(*ground: tuple[float, float]) -> DaylightRun:
    points = [(x * FOOT, z * FOOT) for x, z in ground]
    raw = {"toward": (30.0, 0.0), "ground": points, "above_ground": 0.0}
    return DaylightRun(0.0, PIPES["sdr35-4"], Daylight.model_validate(raw))


def said_of(figures: RunFigures, system: System) -> dict[str, str]:
    return {str(name): str(words) for name, words in outlet_tables.run_table(figures, system).rows}


def test_the_hillside_s_figures_as_people_read_them() -> None:
    house = Outlets(None, None, None, run((0, 4), (200, -10)), "ft-in")
    figures = outlet_figures("basement", house)
    assert figures.run is not None
    said = said_of(figures.run, "ft-in")
    assert said["Comes out, from the drain"] == "81'-4 1/4\""  # 4 / (0.07 - 1/48) = 81.356 ft
    assert said["Pipe to lay"] == "81'-4 1/2\", sticks: 9 of 10 ft"
    # 100 ft of elevation, the laser 5 ft over TOF: 40 ft out the invert lies 10 in down.
    table = outlet_tables.stations(figures.run, 100 * FOOT, 105 * FOOT, "ft-in")
    assert table.rows[4] == (
        "40'-0\"", "-0'-10\"", "99.17 ft", "5'-10\"", "+1'-2 1/2\"", "1'-8 1/4\"",
    )  # fmt: skip
    assert len(table.rows) == 10
    plain = outlet_tables.stations(figures.run, 100 * FOOT, None, "metric")
    assert "Rod reading" not in plain.head
    assert outlet_tables.side_by_side(figures).rows[0][0] == "power"


def test_what_lacks_stands_in_the_table() -> None:
    house = Outlets(None, None, None, run((0, 4), (100, 1)), "ft-in")
    figures = outlet_figures("basement", house)
    assert figures.run is not None
    said = said_of(figures.run, "ft-in")
    assert said["Comes out"] == "no: 3'-1\" lacking at the last point of the ground"
    assert said["It would, with the pipe at most at"] == "no fall will do"
    assert said["It would, farther out by"].startswith("336'-4 1/4\"")
    flat = outlet_figures("", Outlets(None, None, None, run((0, 4), (9, 4)), "metric")).run
    assert flat is not None
    assert said_of(flat, "metric")["It would, farther out by"] == "never"
