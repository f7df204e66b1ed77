"""What the inspection list says of a house worked by hand, line by line, and what it leaves out."""

from functools import cache

import pytest
from hand_house import (
    DRAIN,
    FLOOR,
    FOAM,
    HIGH,
    INCH,
    LOW,
    PIER,
    PIT,
    PIT_FLOOR,
    PUMP,
    RISE,
    SAND,
    STONE,
    STONE_TOP,
    SUBGRADE,
    hand_house,
    without,
)  # fmt: skip

from geometry.layout.lay import Layout, lay_out
from geometry.report import report
from geometry.site.inspection import inspection
from geometry.site.seen import HoldKey, HoldPoint
from tests.whole.networks import network

BLOCK = 'thickness = "10 in"\n[wall]\nkind = "concrete block"'
BARE_FOOTING = 'thickness = "10 in"\nbars = { count = 0 }'


@cache
def points(layout: Layout) -> tuple[HoldPoint, ...]:
    return inspection(layout, report(layout))


@cache
def whole() -> Layout:
    return hand_house()


def point(layout: Layout, key: HoldKey) -> HoldPoint:
    (found,) = (p for p in points(layout) if p.key == key)
    return found


def values(layout: Layout, key: HoldKey, line: str) -> dict[str, float | str]:
    """The values of the one line of that key; lengths in inches."""
    (found,) = (x for x in point(layout, key).checks if x.key == line)
    return {v.name: v.value if isinstance(v.value, str) else v.value / INCH for v in found.values}


def lines(layout: Layout, key: HoldKey) -> list[str]:
    return [line.key for line in point(layout, key).checks]


def at(level: float) -> dict[str, float]:
    """A level and its elevation, in inches; top of footing lies 100 ft high."""
    return {"level": level, "elevation": 1200 + level}


# ACI 117: a fine grade strays 3/4 in, a footing's top 1/2 in up and 2 in down. Laps and turn-up of
# the sheet: ASTM E1643, 6 in least; 12 in are usual.
LINES: list[tuple[HoldKey, str, dict[str, float | str]]] = [
    ("subgrade", "subgrade", {"area": "cellar", **at(SUBGRADE), "stray": 0.75}),
    ("subgrade", "trench", {"drain": "outside", "area": "cellar", **at(-10), "bottom": -10}),
    ("subgrade", "pocket", at(PIT_FLOOR - 0.25 - 4)),
    ("footing", "footing_size", {"width": 20, "thick": 10}),
    ("footing", "tof", {**at(0), "above": 0.5, "below": 2}),
    ("footing", "pad", {"name": "P1", "wide": 30, "deep": 24, "thick": 11, **at(-2)}),
    ("wall", "wall", {"area": "cellar", "thick": 8, "tall": 96}),
    ("wall", "waterproofing", at(84)),
    ("drain", "pipe", {"pipe": "d2729-4", "low": LOW, "high": HIGH}),
    ("drain", "fall", {"fall": 1 / 192 / INCH, "rise": RISE}),
    ("drain", "bedding", {"stone": "stone-57", "bedding": 3, "width": 18}),
    ("drain", "cover", {"cover": 6, **at(STONE_TOP)}),
    ("drain", "wrap", {"fabric": "nonwoven-6oz", "lap": 10}),
    ("drain", "cleanouts", {"corners": "2, 3"}),
    ("pit", "pit_size", {"wide": 18, "deep": 30}),
    ("pit", "pit_stone", {"below": 4, "beside": 5}),
    ("pit", "rim", at(FLOOR)),
    # From the pipe 14 in outside of the wall's face, 9 + 1 in short of the pit's middle at 48 in.
    ("pit", "pit_pipe", {**at(LOW - 54 / 48), "fall": 1 / 48 / INCH}),
    ("pit", "floats", {"off": 4, "on": 12}),
    ("pit", "alarm", {"alarm": 15}),
    ("base", "base", {"material": "stone-57", "thick": 6, **at(STONE), "stray": 0.75}),
    ("base", "blinding", {"material": "sand-c33", "thick": 0.5, **at(SAND), "flat": 0.25}),
    ("base", "retarder", {"material": "poly-10mil", "lap": 12, "up": 6}),
    ("foam", "foam", {"material": "xps-iv", "thick": 2, **at(FOAM)}),
    ("foam", "foam_over_footing", {"gap": 0.01}),
    ("slab", "slab", {"material": "concrete", "thick": 4, **at(FLOOR)}),
    ("slab", "column", {"name": "P1", **at(FLOOR - 1)}),
    # Joints at most 30 thicknesses of the slab apart (ACI 360R).
    ("slab", "joints", {"apart": 120}),
]  # fmt: skip


@pytest.mark.parametrize(("key", "line", "wanted"), LINES)
def test_lines_bear_the_figures_of_the_house(
    key: HoldKey, line: str, wanted: dict[str, float | str]
) -> None:
    assert values(whole(), key, line) == pytest.approx(wanted, abs=1e-9)


def test_every_line_and_photo_of_a_whole_house_stands_in_the_order_of_the_work() -> None:
    assert {p.key: [line.key for line in p.checks] for p in points(whole())} == {
        "subgrade": ["subgrade", "trench", "pocket", "ground"],
        "footing": ["footing_size", "tof", "bars", "keyway", "pad"],
        "wall": ["wall", "waterproofing", "wall_not_stated"],
        "drain": ["pipe", "fall", "holes", "bedding", "cover", "wrap", "cleanouts", "outlet"],
        "pit": ["pit_size", "pit_stone", "rim", "pit_pipe", "floats", "alarm"],
        "base": ["base", "blinding", "retarder", "seals"],
        "foam": ["foam", "foam_over_footing", "foam_joints"],
        "slab": ["slab", "pour", "column", "joints", "isolation", "earlier"],
    }
    photos = {p.key: [line.key for line in p.photos] for p in points(whole())}
    assert photos["footing"][-1] == "pad"
    assert photos["drain"] == [
        "drain_run", "drain_rod", "drain_holes", "cleanout", "outlet", "wrap",
    ]  # fmt: skip
    assert photos["base"] == ["base", "laps", "seals"]


def test_a_bare_house_is_asked_only_for_what_it_has() -> None:
    """No pier, bar, drain or pit; the slab on stone alone, no sheet and no foam."""
    changes = (('"sand top', '"slab bottom'), ('thickness = "10 in"', BARE_FOOTING))
    bare = hand_house("", *without("stone", "sand", "sheet", "foam"), *changes)
    assert [p.key for p in points(bare)] == ["subgrade", "footing", "wall", "slab"]
    assert lines(bare, "subgrade") == ["subgrade", "ground"]
    assert lines(bare, "footing") == ["footing_size", "tof", "keyway"]
    assert "pad" not in [line.key for line in point(bare, "footing").photos]


def test_a_level_drain_without_cleanouts_whose_pipe_was_turned() -> None:
    turned = (
        ('fall = "1/16 in per ft"', 'fall = "level"'), ("cleanouts = [2, 3]", ""),
        ("wrap =", "holes = { rows = [120, -60] }\nwrap ="),
    )  # fmt: skip
    layout = hand_house(DRAIN, *turned)
    found = lines(layout, "drain")
    assert found[:3] == ["pipe", "level_pipe", "holes_as_designed"]
    assert "no_cleanouts" in found
    assert "cleanout" not in [line.key for line in point(layout, "drain").photos]
    for rows, said in (("[90, -90]", "holes"), ("[91, -60]", "holes_as_designed")):
        layout = hand_house(DRAIN, ("wrap =", f"holes = {{ rows = {rows} }}\nwrap ="))
        assert said in lines(layout, "drain")
    solid = hand_house(DRAIN, ("wrap =", "holes = { rows = [] }\nwrap ="))
    assert not [key for key in lines(solid, "drain") if key.startswith("holes")]


def test_a_trench_deeper_than_the_footing_is_named_so() -> None:
    deep = hand_house(DRAIN, ("cleanouts", 'outlet_invert = "-14 in"\ncleanouts'))
    assert "trench_lower" in lines(deep, "subgrade")


def test_pits_without_pump_alarm_or_pipe() -> None:
    still = hand_house(PIT)
    assert lines(still, "pit") == ["pit_size", "pit_stone", "rim", "no_pump"]
    silent = hand_house(PIT + PUMP, ('alarm = "15 in"', ""))
    assert lines(silent, "pit")[-1] == "floats"


def test_what_the_design_says_of_wall_column_and_top_layer() -> None:
    for held in ("deck", "slab", "braced"):
        layout = hand_house(f"[backfill.state]\n{held} = true\n")
        assert lines(layout, "wall")[-1] == "wall_held"
    free = hand_house("[backfill.state]\ndeck = false\nbraced = false\n")
    assert lines(free, "wall")[-1] == "wall_not_stated"
    none = hand_house(PIER + 'column = "none"\n')
    assert "column" not in lines(none, "slab")
    assert "joints" not in lines(hand_house("", *without("slab")), "slab")


def test_the_layers_there_are_decide_what_is_looked_at() -> None:
    fine = hand_house("", ("stone-57", "crusher-run"))
    assert lines(fine, "base")[0] == "base_fines"
    edged = hand_house("", ("layer = [", 'edge_board = { thickness = "1 1/2 in" }\nlayer = ['))
    assert values(edged, "foam", "edge_board") == {
        "material": "xps-iv",
        "thick": pytest.approx(1.5),
    }
    bare = hand_house("", *without("stone", "sand"), ('"sand top', '"sheet bottom'))
    sheet = point(bare, "base")
    assert lines(bare, "base") == ["retarder", "seals"]
    assert [line.key for line in sheet.photos] == ["laps", "seals"]


def test_metric_houses_are_held_to_round_figures() -> None:
    """19 mm and 6 mm for 3/4 and 1/4 in. Footings under masonry: 1/2 in both ways, ACI 117."""
    changes = (('units = "ft-in"', 'units = "metric"'), ('thickness = "10 in"', BLOCK))
    metric = hand_house("", *changes)
    assert values(metric, "base", "base")["stray"] == pytest.approx(0.019 / INCH)
    assert values(metric, "base", "blinding")["flat"] == pytest.approx(0.006 / INCH)
    assert values(metric, "footing", "tof")["below"] == pytest.approx(0.5)


def test_drains_in_and_out_are_told_apart_and_the_bleeders_counted() -> None:
    layout = lay_out(network("both to the pit"))
    drains = [p for p in points(layout) if p.key == "drain"]
    assert [p.drain for p in drains] == [d.drain.line for d in layout.drains]
    counts = [v.value for p in drains for x in p.checks if x.key == "bleeders" for v in x.values]
    assert counts == [len(layout.bleeders_of(d)) for d in layout.drains if layout.bleeders_of(d)]
    assert counts


def test_each_slab_is_told_its_own_pour() -> None:
    layout = lay_out(network("upper to lower stone"))
    slabs = {p.area: p.checks for p in points(layout) if p.key == "slab"}
    said = {area: [v.value for x in checks if x.key == "pour" for v in x.values]
            for area, checks in slabs.items()}  # fmt: skip
    pours = {p.area: [p.ordered_m3] for p in report(layout).order.pours if p.area}
    assert set(said) == {"basement", "garage"}
    assert said == pours
