"""Schedules of an invented house, each figure worked out by hand; random houses for their room."""

import pytest

from geometry.layout.lay import lay_out
from geometry.units import FOOT, read_length
from tests.designs import design_of, seeded_raw
from tests.houses import house, without
from viz.figures.tables import schedules
from viz.figures.tables.figure import table_figures
from viz.tables import Table

ALL = (
    schedules.floor_layers, schedules.footings, schedules.walls, schedules.piers,
    schedules.drain, schedules.drain_points,
)  # fmt: skip


def by_name(table: Table, column: str = "") -> dict[str, dict[str, str]]:
    """Rows by the cell of a column, the first unless named."""
    at = table.head.index(column) if column else 0
    return {str(r[at]): dict(zip(table.head, map(str, r), strict=True)) for r in table.rows}


def test_floor_layers_from_the_top_down() -> None:
    table = schedules.floor_layers(house())
    assert [row[1] for row in table.rows] == ["slab", "retarder", "foam", "stone"]
    rows = by_name(table, "Layer")
    # Foam from 0 to 2 in, a sheet of 15 mil, 4 in of slab: 6 in, and 250.5 ft.
    assert rows["slab"]["Top from TOF"] == "+0'-6\""
    assert rows["slab"]["Elevation"] == "250.50 ft"
    assert rows["foam"]["Thick"] == '2"'
    assert rows["stone"]["Top from TOF"] == "0'-0\""
    assert rows["retarder"]["Thick"] == "15 mil"


def test_footings_and_walls() -> None:
    layout = house()
    strip = by_name(schedules.footings(layout))["basement"]
    assert strip["Width × thick"] == '20" × 12"'
    assert (strip["Bottom from TOF"], strip["Bottom elev."]) == ("-1'-0\"", "249.00 ft")
    assert (strip["Bars, continuous"], strip["Clear cover"]) == ("2 #4 bars", '3"')
    assert strip["Concrete f'c"] == "3,000 psi"
    wall = by_name(schedules.walls(layout))["basement"]
    assert (wall["Thick"], wall["Height"], wall["Top elev."]) == ('8"', "8'-0\"", "258.00 ft")
    # Grade at 7 ft, floor at 6 in and a sheet.
    assert wall["Grade above floor"] == "6'-6\""
    under = house(without("drain"), without("sump"), ('at_wall = "7 ft"', 'at_wall = "3 in"'))
    assert by_name(schedules.walls(under))["basement"]["Grade above floor"] == '0"'


def test_what_is_not_stated_is_said() -> None:
    layout = house(("count = 2", "count = 0"), ("concrete-3000", "concrete"))
    strip = by_name(schedules.footings(layout))["basement"]
    assert (strip["Bars, continuous"], strip["Clear cover"]) == ("none", "–")
    assert strip["Concrete f'c"] == "not stated"


def test_metric_houses_have_metric_schedules() -> None:
    layout = house(('name = "Two', 'units = "metric"\nname = "Two'), ('"20 in"', '"600 mm"'))
    strip = by_name(schedules.footings(layout))["basement"]
    assert strip["Width × thick"] == "600 × 304.8 mm"
    assert strip["Bars, continuous"] == "2 #4 bars (12.7 mm)"
    assert strip["Concrete f'c"] == "20.7 MPa"


def test_piers_with_place_and_sizes() -> None:
    column = '"concrete-3000"\n\n[drain]'
    layout = house((column, column.replace("\n\n", '\ncolumn = "none"\n\n')))
    row = by_name(schedules.piers(layout))["P1"]
    assert (row["x"], row["y"]) == ("15'-0\"", "10'-0\"")
    assert row["Grid"] == "A-1"
    assert row["Pad"] == '36" × 36" × 12"'
    assert (row["Pad top"], row["Pad bottom"]) == ("0'-0\"", "-1'-0\"")
    assert (row["Column"], row["Column top"]) == ("none", "–")
    assert by_name(schedules.piers(house()))["P1"]["Column"] == '12" square'


def test_piers_stand_on_the_grid_of_the_plan() -> None:
    more = '"P1"\nat = "15 ft, 10 ft"'
    second = more + '\n\n[[area.pier]]\nname = "P2"\nat = "20 ft, 10 ft"'
    rows = by_name(schedules.piers(house((more, second))))
    # Two piers at one y: one lettered line; numbers count from the left.
    assert (rows["P1"]["Grid"], rows["P2"]["Grid"]) == ("A-1", "A-2")


def test_the_drain_item_by_item() -> None:
    rows = by_name(schedules.drain(house()))
    assert rows["pipe"]["As drawn"] == "Drain pipe, PVC SDR 35, 4 in (ASTM D3034)"
    assert rows["fall"]["As drawn"] == "1/16 in per ft"
    assert "2 rows at 60°" in rows["holes"]["As drawn"]
    assert rows["cleanouts"]["As drawn"] == "corner 3"
    assert "sump" in rows["outlet"]["As drawn"]
    level = by_name(schedules.drain(house(("1/16 in per ft", "level"), without("sump"))))
    assert level["fall"]["As drawn"] == "laid level"
    assert "not stated" in level["outlet"]["As drawn"]


def test_points_of_the_drain_rise_by_the_fall() -> None:
    layout = house()
    table = schedules.drain_points(layout)
    assert layout.drain is not None
    points = {str(row[0]): row for row in table.rows}
    assert [str(row[0]) for row in table.rows][:2] == ["entry to the sump", "low point"]
    corners = {name.split(",")[0] for name in points if name.startswith("corner")}
    assert corners == {f"corner {n}" for n in (1, 2, 3, 4)}
    assert "corner 3, cleanout" in points
    # Half way round: footing 31'-0" by 21'-0" and the pipe 8 in outside it all round.
    half = 2 * ((31 + 4 / 3) + (21 + 4 / 3)) / 2
    assert read_length(str(points["high point"][1])) / FOOT == pytest.approx(half, abs=0.01)
    away = {str(row[0]).split(",")[0]: read_length(str(row[1])) for row in table.rows}
    # The sump lies beside side 4, so corners 4 and 1 are its neighbours, 2 and 3 are far.
    assert max(away, key=lambda name: away[name]) == "high point"
    assert max(away["corner 1"], away["corner 4"]) < min(away["corner 2"], away["corner 3"])
    # 1/16 in per ft over that way, between the elevations of high and low point.
    high, low = (float(str(points[n][3]).split()[0]) for n in ("high point", "low point"))
    assert high - low == pytest.approx(half / 16 / 12, abs=0.011)
    # Rod readings hang from the laser at 254 ft.
    assert "Rod reading" in table.head
    assert "Rod reading" not in schedules.drain_points(house(('instrument = "254 ft"', ""))).head


def test_a_house_without_drain_has_no_drain_tables() -> None:
    layout = house(without("drain"), without("sump"))
    assert not schedules.drain(layout).rows
    assert not schedules.drain_points(layout).rows


@pytest.mark.parametrize("seed", [9, 12, 22])
def test_random_houses_keep_their_room(seed: int) -> None:
    raw = seeded_raw(seed)
    assert raw is not None
    layout = lay_out(design_of(raw))
    for make in ALL:
        table = make(layout)
        if table.rows:
            for piece in table_figures("t", "T", table, 2.5, 150.0, 160.0):
                assert piece.box.width <= 150.0 + 1e-6
                assert piece.box.height <= 160.0 + 1e-6
