"""Cards, walk with the rod and story pole of one house: every level worked by hand, in inches."""

from functools import cache

import pytest
from hand_house import (
    DRAIN,
    FLOOR,
    FOAM,
    HIGH,
    INCH,
    LOW,
    PIPE_WALL,
    PIT_FLOOR,
    SAND,
    SHEET,
    STONE,
    STONE_TOP,
    SUBGRADE,
    hand_house,
    without,
)  # fmt: skip

from geometry.layout.lay import Layout
from geometry.site.laser import Reading, legs
from geometry.site.pole import Room, story_pole
from geometry.site.records import Stage
from geometry.site.stages import stages

POCKET, PIT_PIPE = PIT_FLOOR - 4.25, LOW - 54 / 48
# From the low point beside the pit, 10 + 14/12 ft to a corner, then 30 + 28/12 ft.
FIRST, SECOND = LOW + (10 + 14 / 12) / 16, LOW + (10 + 14 / 12 + 30 + 28 / 12) / 16


@cache
def whole() -> Layout:
    return hand_house()


def named(layout: Layout) -> dict[str, Stage]:
    return {stage.key: stage for stage in stages(layout)}


LEVELS = {
    "subgrade": [("subgrade", SUBGRADE), ("trench", -10), ("pocket", POCKET)],
    "bedding": [
        ("bedding_low", LOW - PIPE_WALL), ("bedding_high", HIGH - PIPE_WALL), ("trench", -10),
    ],
    "pipe": [],
    "inverts": [("invert", z) for z in (LOW, FIRST, SECOND, HIGH, SECOND, FIRST)],
    "drain_stone": [("top", STONE_TOP)],
    "backfill": [("grade_wall", 84)],
    "pit": [
        ("rim", FLOOR), ("pit_invert", PIT_PIPE), ("pit_floor", PIT_FLOOR), ("pocket", POCKET),
    ],
    "base": [("top", STONE), ("under", SUBGRADE)],
    "blinding": [("top", SAND), ("under", STONE)],
    "retarder": [("top", SHEET), ("under", SAND)],
    "insulation": [("top", FOAM), ("under", SHEET)],
    "slab": [("top", FLOOR), ("under", FOAM)],
}  # fmt: skip


def test_every_card_shoots_the_levels_worked_by_hand() -> None:
    found = named(whole())
    assert list(found) == list(LEVELS)
    for key, wanted in LEVELS.items():
        shots = found[key].shots
        assert [s.key for s in shots] == [name for name, _ in wanted]
        assert [s.level / INCH for s in shots] == pytest.approx([z for _, z in wanted])
        # The laser stands 4 ft over top of footing.
        assert [s.rod / INCH for s in shots if s.rod] == pytest.approx([48 - z for _, z in wanted])


def test_cards_bear_thickness_fall_and_figures() -> None:
    found = named(whole())
    thick = {key: s.thickness[0] / INCH for key, s in found.items() if s.thickness}
    assert thick == pytest.approx({
        "bedding": 3, "drain_stone": 6, "pit": 4, "base": 6, "blinding": 0.5, "retarder": 0.01,
        "insulation": 2, "slab": 4,
    })  # fmt: skip
    falls = {key: s.fall for key, s in found.items() if s.fall is not None}
    sixteenth = 1 / 192
    assert falls == pytest.approx(
        {"bedding": sixteenth, "pipe": sixteenth, "inverts": sixteenth, "pit": 1 / 48}
    )
    figures = {(s.key, f.name): f.value for s in found.values() for f in s.figures}
    assert figures == pytest.approx({
        ("inverts", "fall"): sixteenth, ("drain_stone", "cover"): 6 * INCH,
        ("drain_stone", "lap"): 10 * INCH, ("backfill", "wide"): 12 * INCH,
        ("backfill", "away"): 120 * INCH, ("backfill", "fall"): 0.05,
        ("pit", "below"): 4 * INCH, ("pit", "beside"): 5 * INCH,
    })  # fmt: skip
    assert [s.portion for s in found.values() if s.portion != "whole"] == [
        "under pipe",
        "over pipe",
    ]


def test_holds_and_dangers_bear_feet_or_round_metres_not_less_safe() -> None:
    """29 CFR 1926: protected from 5 ft, spoil 2 ft back, ladder from 4 ft, within 25 ft of it.

    A saw cut is a quarter of the slab deep and no less than an inch; joints 30 thicknesses apart;
    stone under a slab strays 3/4 in (ACI 302, 360, 117).
    """
    said = {}
    for layout in (whole(), hand_house(DRAIN, ('"ft-in"', '"metric"'))):
        of = [row for s in stages(layout) for row in (*s.cautions, *s.holds)]
        system = layout.design.project.units
        said[system] = {(row.key, f.name): f.value for row in of for f in row.figures}
    both = {"joints": 120 * INCH, "days": 7}
    slab = {("slab", name): value for name, value in both.items()}
    feet = {
        ("cave_in", "deep"): 60, ("spoil", "back"): 24, ("ladder", "deep"): 48,
        ("ladder", "within"): 300, ("subgrade", "stray"): 0.75, ("base", "stray"): 0.75,
        ("drain_stone", "lap"): 10, ("blinding", "flat"): 0.25, ("retarder", "lap"): 12,
        ("retarder", "turn_up"): 6, ("slab", "stray"): 0.75, ("slab", "saw"): 1,
    }  # fmt: skip
    assert said["ft-in"] == pytest.approx({k: v * INCH for k, v in feet.items()} | slab)
    metres = {
        ("cave_in", "deep"): 1.5, ("spoil", "back"): 0.61, ("ladder", "deep"): 1.2,
        ("ladder", "within"): 7.6, ("subgrade", "stray"): 0.019, ("base", "stray"): 0.019,
        ("drain_stone", "lap"): 10 * INCH, ("blinding", "flat"): 0.006, ("retarder", "lap"): 0.3,
        ("retarder", "turn_up"): 0.15, ("slab", "stray"): 0.019, ("slab", "saw"): 4 * INCH / 4,
    }  # fmt: skip
    assert said["metric"] == pytest.approx(metres | slab)
    # 8 in of slab are sawn 2 in deep.
    deep = hand_house(
        "", ('thickness = "4 in", role = "slab"', 'thickness = "8 in", role = "slab"')
    )
    (saw,) = (f.value for f in named(deep)["slab"].holds[0].figures if f.name == "saw")
    assert saw == pytest.approx(2 * INCH)


def test_a_level_pipe_beds_at_one_level() -> None:
    level = hand_house(DRAIN, ('"1/16 in per ft"', '"level"'))
    shots = named(level)["bedding"].shots
    assert [s.key for s in shots] == ["bedding", "trench"]
    assert [s.level / INCH for s in shots] == pytest.approx([LOW - PIPE_WALL, -10])


@pytest.mark.parametrize(
    ("rows", "said"),
    [
        ("[-60, 60]", "holes_down"), ("[-90, 90]", "holes_down"), ("[-120, 120]", "holes_up"),
        ("[-120, 60]", "holes_round"), ("[]", "holes_none"),
    ],
)  # fmt: skip
def test_the_card_says_which_way_the_holes_look(rows: str, said: str) -> None:
    layout = hand_house(DRAIN, ("wrap =", f"holes = {{ rows = {rows} }}\nwrap ="))
    assert named(layout)["pipe"].instructions == ("pipe", said)


def test_stone_at_the_wall_is_laid_with_the_backfill_and_shot() -> None:
    strip = '[backfill]\nstone_width = "14 in"\nstone_top = "5 ft"\n'
    stage = named(hand_house(strip))["backfill"]
    assert [(s.key, s.level / INCH) for s in stage.shots] == [
        ("wall_stone", pytest.approx(60)), ("grade_wall", pytest.approx(84)),
    ]  # fmt: skip
    assert stage.parts[0] == "ground/wall stone"
    assert stage.materials == ("stone-57", "unknown")
    sand = named(hand_house('[backfill]\nmaterial = "SW"\n[soil]\ngroup = "CL"\n'))["backfill"]
    assert sand.materials == ("SW",)
    assert stage.instructions == ("wall_stone", "backfill")
    (bought,) = stage.amounts
    assert bought.key == "bulk"
    assert stage.figures[0].value == pytest.approx(14 * INCH)


def test_an_edge_board_is_as_thick_as_it_is_wide_of_the_wall() -> None:
    board = 'edge_board = { thickness = "1 1/2 in" }\nlayer = ['
    found = named(hand_house("", ("layer = [", board)))
    assert list(found)[-2:] == ["edge_board", "slab"]
    stage = found["edge_board"]
    assert stage.thickness == pytest.approx((1.5 * INCH, 1.5 * INCH))
    # It stands from the slab's bottom to the finished floor.
    assert [s.level / INCH for s in stage.shots] == pytest.approx([FLOOR, FOAM])


def test_fill_under_a_floor_over_the_ground_stands_from_the_ground_to_the_subgrade() -> None:
    found = named(hand_house('[excavation]\nexisting = "-9 in"\n'))
    stage = found["fill"]
    assert list(found).index("fill") + 1 == list(found).index("base")
    assert [s.level / INCH for s in stage.shots] == pytest.approx([SUBGRADE, -9])
    assert stage.thickness == pytest.approx((2.5 * INCH, 2.5 * INCH))
    assert [a.key for a in stage.amounts] == ["bulk"]
    said = {key: s.instructions for key, s in found.items()}
    assert [key for key, words in said.items() if "isolation" in words] == ["slab"]


def test_the_walk_shoots_every_level_worked_by_hand() -> None:
    read = {leg.key: leg.readings for leg in legs(whole())}
    assert list(read) == ["start", "concrete", "drain", "pit", "floor", "walls", "end"]

    def levels(readings: tuple[Reading, ...]) -> list[tuple[str, object]]:
        rows = [(r.key, r.level) for r in readings if r.level is not None]
        return [(key, pytest.approx(level / INCH)) for key, level in rows]

    assert levels(read["concrete"]) == [("footing_top", 0)] * 4 + [("pad_top", -2)]
    assert levels(read["pit"]) == [
        ("pocket", POCKET), ("pit_floor", PIT_FLOOR), ("pump_off", PIT_FLOOR + 4),
        ("pump_on", PIT_FLOOR + 12), ("alarm", PIT_FLOOR + 15), ("pit_invert", PIT_PIPE),
        ("rim", FLOOR),
    ]  # fmt: skip
    # The sheet is too thin for a reading.
    assert levels(read["floor"]) == [
        ("subgrade", SUBGRADE), ("layer_top", STONE), ("layer_top", SAND), ("layer_top", FOAM),
        ("finished_floor", FLOOR),
    ]  # fmt: skip
    assert levels(read["walls"]) == [("wall_top", 96), ("grade", 84)]
    tops = [(r.elevation, r.rod) for r in read["walls"]]
    assert [z / INCH for z, _ in tops if z] == pytest.approx([1200 + 96, 1200 + 84])
    assert [rod / INCH for _, rod in tops if rod] == pytest.approx([48 - 96, 48 - 84])
    drain = read["drain"]
    assert levels((drain[0], drain[-1])) == [("trench_bottom", -10), ("drain_stone_top", STONE_TOP)]
    # Steps of 10 ft; the first, 1 ft 2 in from a corner, is left to it.
    walked = [r for r in drain if r.along is not None]
    feet = [r.along / INCH / 12 for r in walked if r.along is not None and r.along < 13]
    assert feet == pytest.approx([0, 11 + 1 / 6, 20, 30, 40])
    assert [r.level / INCH for r in walked[:4] if r.level] == pytest.approx(
        [LOW, FIRST, LOW + 20 / 16, LOW + 30 / 16]
    )


def test_the_open_end_of_a_pipe_to_daylight_is_shot_where_it_comes_out() -> None:
    """The ground falls 10 ft in 30 ft from 7 ft, the pipe 1/4 in a foot from the low point."""
    out = (7 - LOW / 12) / (1 / 3 - 1 / 48)
    pipe = 'toward = "4 ft, -60 ft"\nfall = "1/4 in per ft"\nabove_ground = "0"\n'
    ground = 'ground = ["0, 7 ft", "{} ft, {} ft"]\n'
    for far, low in ((30, -3), (12, 3)):
        text = f"{DRAIN}[[drain.daylight]]\n{pipe}{ground.format(far, low)}"
        ends = [r for leg in legs(hand_house(text)) for r in leg.readings if r.key == "open_end"]
        # Known for 12 ft alone, the ground does not let it out.
        found = [(e.along, e.level) for e in ends]
        wanted = [(out * 12 * INCH, (LOW - out / 4) * INCH)] if out < far else []
        assert found == [pytest.approx(row) for row in wanted]


def test_only_what_has_a_published_tolerance_is_held_to_one() -> None:
    """ACI 117: 3/4 in for stone under a slab and the slab; half an inch over a footing's top."""
    held = {
        (r.key, r.name): (r.tolerance.above / INCH, r.tolerance.below / INCH)
        for leg in legs(whole())
        for r in leg.readings
        if r.tolerance
    }
    grade = pytest.approx((0.75, 0.75))
    assert held == {
        ("footing_top", ""): (0.5, 2), ("pad_top", "P1"): (0.5, 2), ("subgrade", ""): grade,
        ("layer_top", "stone"): grade, ("finished_floor", "slab"): grade,
    }  # fmt: skip
    bare = hand_house("", *without("slab"))
    (top,) = (r for leg in legs(bare) for r in leg.readings if r.key == "finished_floor")
    assert top.tolerance is None


@pytest.mark.parametrize(("steps", "readings"), [(5, 12), (6, 1)])
def test_a_footing_of_more_than_twelve_corners_is_one_reading(steps: int, readings: int) -> None:
    """A staircase on the plan of so many steps has two corners more than twice as many."""
    stair = [(6 * x, 6 * (steps - n)) for n in range(steps, 0, -1) for x in (n, n - 1)]
    ends = [(0, 0), (6 * steps, 0)]
    corners = [f'"{x} ft, {y} ft"' for x, y in (*ends, *((x, y + 6) for x, y in stair))]
    box = 'corners = ["0, 0", "30 ft, 0", "30 ft, 20 ft", "0, 20 ft"]'
    layout = hand_house("", (box, f"corners = [{', '.join(corners)}]"))
    (leg,) = (leg for leg in legs(layout) if leg.key == "concrete")
    assert [r.key for r in leg.readings] == ["footing_top"] * readings


def test_the_story_pole_bears_every_level_worked_by_hand() -> None:
    (area,) = whole().areas
    pole = story_pole(whole(), area, Room(0.25, 0.02, 0.005))
    said = [(t.level / INCH, [m.kind for m in t.marks]) for t in pole.ticks]
    assert said == [
        (pytest.approx(level), kinds)
        for level, kinds in (
            (STONE_TOP, ["drain stone top"]), (FLOOR, ["finished floor"]),
            (FLOOR - 1, ["column top"]), (FOAM, ["layer top"]),
            # Sheet and sand end within a pencil's line of top of footing, which leads them.
            (0, ["TOF", "layer top", "layer top"]), (STONE, ["layer top"]), (-2, ["pad top"]),
            (HIGH, ["drain high"]), (SUBGRADE, ["subgrade"]), (LOW, ["drain low"]),
            (-10, ["footing bottom", "trench bottom"]),
        )
    ]  # fmt: skip
    level = hand_house(DRAIN, ('"1/16 in per ft"', '"level"'))
    kinds = [m.kind for t in story_pole(level, level.areas[0], Room(1, 0.02, 0.005)).ticks
             for m in t.marks if m.kind.startswith("drain ")]  # fmt: skip
    assert kinds == ["drain stone top", "drain invert"]
