"""Schedules of an invented house, each figure worked out by hand; random houses for their room."""

import pytest

from geometry.layout.lay import lay_out
from geometry.units import FOOT, read_length
from tests.designs import design_of, seeded_raw
from tests.houses import house, without
from tests.whole import networks
from viz.figures.tables import drains, schedules
from viz.figures.tables.figure import table_figures
from viz.tables.table import Table

ALL = (
    schedules.floor_layers, schedules.footings, schedules.walls, schedules.piers,
    drains.drain, drains.inverts,
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
    rows = by_name(drains.drain(house()))
    assert rows["pipe"]["As drawn"] == "Drain pipe, PVC SDR 35, 4 in (ASTM D3034)"
    assert rows["fall"]["As drawn"] == "1/16 in per ft"
    assert "2 rows at 60°" in rows["holes"]["As drawn"]
    assert rows["cleanouts"]["As drawn"] == "corner 3"
    assert "sump" in rows["outlet"]["As drawn"]
    level = by_name(drains.drain(house(("1/16 in per ft", "level"), without("sump"))))
    assert level["fall"]["As drawn"] == "laid level"
    assert "not stated" in level["outlet"]["As drawn"]


def test_inverts_along_the_drain_rise_by_the_fall() -> None:
    layout = house()
    table = drains.inverts(layout)
    points = {str(row[0]): row for row in table.rows}
    assert str(table.rows[0][0]) == "outlet to the pit"
    assert str(table.rows[-1][0]) == "entry to the sump"
    corners = {name.split(",")[0] for name in points if name.startswith("corner")}
    assert corners == {f"corner {n}" for n in (1, 2, 3, 4)}
    assert "corner 3, cleanout" in points
    # Half way round: footing 31'-0" by 21'-0" and the pipe 8 in outside it all round.
    half = 2 * ((31 + 4 / 3) + (21 + 4 / 3)) / 2
    assert read_length(str(points["high point"][1])) / FOOT == pytest.approx(half, abs=0.02)
    # 1/16 in per ft over that way, between the elevations of high and low point.
    high, low = (float(str(points[n][3]).split()[0]) for n in ("high point", "outlet to the pit"))
    assert high - low == pytest.approx(half / 16 / 12, abs=0.011)
    # Places without a name lie every 10 ft: 109 ft 4 in round.
    steps = [read_length(str(row[1])) / FOOT for row in table.rows if row[0] == "–"]
    assert steps == pytest.approx([10.0 * n for n in range(1, 11)])
    # Rod readings hang from the laser at 254 ft, TOF at 250 ft.
    assert table.head[-1] == "Rod reading"
    for row in table.rows:
        rod, level = (read_length(str(row[n])) for n in (4, 2))
        assert rod == pytest.approx(4 * FOOT - level, abs=0.003)
    assert "Rod reading" not in drains.inverts(house(('instrument = "254 ft"', ""))).head


def test_every_drain_has_its_schedule_and_its_inverts() -> None:
    views = lay_out(networks.network("both to the pit")).views()
    inside, outside = (by_name(drains.drain(view)) for view in views)
    assert "sump" in inside["outlet"]["As drawn"]
    assert "bleeders" not in inside
    bled = outside["bleeders"]["As drawn"]
    assert f"{len(views[0].bleeders)} of Pipe, PVC Schedule 40, 3 in" in bled
    assert "at most 7'-0\" apart" in bled
    assert "invert -0'-7\"" in bled
    first = [[str(cell) for cell in drains.inverts(view).rows[0]] for view in views]
    assert [row[0] for row in first] == [
        "outlet to the pit", "low point, emptied by bleeders, corner 1",
    ]  # fmt: skip
    assert first[0][2] != first[1][2]


def test_pipes_to_daylight_stand_in_the_schedule_and_their_ends_among_the_inverts() -> None:
    (view,) = lay_out(networks.network("pit and two to daylight")).views()
    rows = by_name(drains.drain(view))
    assert {"pipe to daylight 1", "pipe to daylight 2"} <= set(rows)
    assert "solid, falls 1/4 in per ft" in rows["pipe to daylight 1"]["As drawn"]
    inverts = by_name(drains.inverts(view))
    assert {"outlet to daylight 1", "outlet to daylight 2"} <= set(inverts)
    # The ground falls 1 in 3 from 7 ft over TOF; the pipe 1 in 48 from 7.89 in under it. The end
    # stands 4 in over the ground: 7 - x / 3 + 1/3 = -0.6576 - x / 48, x = 25.57 ft.
    assert inverts["open end, daylight 2"]["Along the pipe"].startswith("25'-6")


def test_a_house_without_drain_has_no_drain_tables() -> None:
    layout = house(without("drain"), without("sump"))
    assert not drains.drain(layout).rows
    assert not drains.inverts(layout).rows


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
