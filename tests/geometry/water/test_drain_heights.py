"""Heights of the drain and verdicts on them, worked by hand on an invented box."""

from math import asin, cos, pi, radians

import pytest
from drained_box import HALF_FT, INCH, INSIDE, INVERT, OUTSIDE, WALL, box

from geometry.rules.codes import CANADA, IRC, WAYNE
from geometry.rules.height_rule import HeightRule
from geometry.water.clashes import clashes, invert_bound
from geometry.water.heights import drain_heights
from geometry.water.holes import Holes, first_water
from geometry.water.verdicts import rule_sets, size_verdicts, verdicts

NEARLY = pytest.approx


def inches(level: float | None) -> float:
    assert level is not None
    return level / INCH


def test_every_height_at_the_low_and_at_the_high_point() -> None:
    heights = drain_heights(box("1/8 in per ft"))
    assert heights is not None
    rise = HALF_FT / 8
    low = {name: inches(level) for name, level in heights.low.items()}
    assert low["trench bottom"] == NEARLY(-10)
    assert low["pipe underside"] == NEARLY(INVERT - WALL)
    assert low["invert"] == NEARLY(INVERT)
    assert low["crown"] == NEARLY(INVERT - WALL + OUTSIDE)
    for name, level in heights.high.items():
        moves = 0 if name in {"trench bottom", "stone top"} else rise
        assert inches(level) == NEARLY(low[name] + moves), name
    # The crown at the high point is over TOF: the cover of 6 in counts from it.
    assert low["stone top"] == NEARLY(INVERT - WALL + OUTSIDE + rise + 6)
    named = {name: inches(heights.references[name]) for name in ("TOF", "slab underside")}
    assert named == {"TOF": NEARLY(0), "slab underside": NEARLY(0)}
    assert inches(heights.references["slab top"]) == NEARLY(4)
    assert inches(heights.references["base underside"]) == NEARLY(-8)
    assert inches(heights.references["footing bottom"]) == NEARLY(-10)


def test_no_drain_no_heights() -> None:
    from tests.houses import house, without

    dry = house(without("drain"), without("sump"))
    assert drain_heights(dry) is None
    assert verdicts(dry, IRC.heights) == ()
    assert clashes(dry, IRC.heights) == ()


# Holes as points in the middle of the wall of a 4 in bore: 4 and 8 o'clock lie 1 in over the
# invert, 5 and 7 o'clock 0.27 in, 10 and 2 o'clock 3 in.
@pytest.mark.parametrize(("row", "height"), [(60, 1.0), (-30, 0.268), (120, 3.0), (240, 3.0)])
def test_pinholes_by_the_clock(row: float, height: float) -> None:
    holes = Holes((row,), 1e-9, 4 * INCH, 4 * INCH)
    assert inches(holes.lowest) / 2 == NEARLY(height, abs=1e-3)


def test_edges_of_holes_at_their_true_angle() -> None:
    # Half-inch holes at 60 degrees: on the bore the edges lie asin(0.25 / 2.0325) either side.
    heights = drain_heights(box())
    assert heights is not None
    half = asin(0.25 / (INSIDE / 2))
    low = INSIDE / 2 * (1 - cos(pi / 3 - half))
    high = INSIDE / 2 * (1 - cos(pi / 3 + half))
    assert inches(heights.low["lowest hole"]) == NEARLY(INVERT + low)
    assert inches(heights.low["highest hole"]) == NEARLY(INVERT + high)


def test_a_hole_straight_down_lets_water_in_at_the_invert_and_straight_up_over_the_wall() -> None:
    down = Holes((0.0,), 0.5, 4.0, 4.25)
    assert down.lowest == NEARLY(0.0)
    assert down.turned.rows == (180.0,)
    # The sill of a hole straight up is its edge on the outside.
    assert down.turned.lowest == NEARLY(4.0 + 4.25 * cos(asin(0.25 / 4.25)))
    assert Holes((), 0.5, 4.0, 4.25).lowest is None


def test_holes_turned_up_take_water_far_later() -> None:
    drain = box("1/16 in per ft").drain
    assert drain is not None
    found = first_water(drain)
    assert found.as_laid is not None
    assert found.turned is not None
    half = asin(0.25 / (INSIDE / 2))
    assert inches(found.as_laid[0]) == NEARLY(INVERT + INSIDE / 2 * (1 - cos(pi / 3 - half)))
    outer = asin(0.25 / (OUTSIDE / 2))
    up = INSIDE / 2 - OUTSIDE / 2 * cos(radians(120) - outer)
    assert inches(found.turned[0]) == NEARLY(INVERT + up)
    assert inches(found.turned[1] - found.turned[0]) == NEARLY(HALF_FT / 16)
    assert (inches(found.tof), inches(found.floor)) == (NEARLY(0), NEARLY(4))


def test_a_rule_is_met_at_the_low_point_and_not_at_the_high_one() -> None:
    # The top of the pipe stands at INVERT - WALL + OUTSIDE = -3.72 in and rises 6.83 in.
    (crown,) = verdicts(box("1/8 in per ft"), CANADA.heights)
    top = INVERT - WALL + OUTSIDE
    assert (crown.met_low, crown.met_high, crown.met) == (True, False, False)
    assert inches(crown.low_spare) == NEARLY(-top)
    assert inches(crown.high_spare) == NEARLY(-top - HALF_FT / 8)
    assert inches(crown.past) == NEARLY(top + HALF_FT / 8)
    (level,) = verdicts(box(), CANADA.heights)
    assert level.met
    assert level.past == 0


def test_of_two_levels_either_is_enough() -> None:
    # Raised over the footing the slab's underside is at +2 in: the higher of it and TOF binds.
    over = {v.rule.key: v for v in verdicts(box(tie="foam bottom at TOF"), IRC.heights)}
    assert inches(over["irc-tof"].limit) == NEARLY(2)
    sunk = {v.rule.key: v for v in verdicts(box(tie="slab top at TOF"), IRC.heights)}
    assert inches(sunk["irc-tof"].limit) == NEARLY(0)


def test_a_floor_without_slab_does_not_answer_the_slab_s_rule() -> None:
    from tests.houses import house

    bare = house(('material = "concrete-3000", thickness = "4 in", role = "slab"',
                  'material = "sand-c33", thickness = "4 in", role = "fill"'))  # fmt: skip
    (crown,) = verdicts(bare, CANADA.heights)
    assert not crown.answered
    assert not crown.met


def test_sizes_of_the_stone() -> None:
    # 16 in of stone less the wrap; 8 in to the middle less wrap and radius: 5.82 in, short of 150.
    beyond, bedding, cover = size_verdicts(box(), IRC.sizes)
    assert (beyond.met, bedding.met, cover.met) == (True, True, True)
    assert inches(bedding.found) == NEARLY(2)
    assert inches(beyond.found) == NEARLY(16 - 1.75 / 25.4)
    # The cover of 6 in counts from TOF, under which the level pipe's crown lies 3.72 in.
    assert inches(cover.found) == NEARLY(6 - (INVERT - WALL + OUTSIDE))
    assert inches(size_verdicts(box("1/8 in per ft"), IRC.sizes)[2].found) == NEARLY(6)
    top, beside = size_verdicts(box(), CANADA.sizes)
    assert inches(beside.found) == NEARLY(8 - 1.75 / 25.4 - OUTSIDE / 2)
    assert (top.met, beside.met) == (True, False)


def test_rules_of_the_design_file() -> None:
    rule = """
[[height_rule]]
name = "office: crown 1 in under the foam"
point = "crown"
at = "at or below"
level = "foam bottom -1 in"
why = "Town handout (invented)"
[[height_rule]]
name = "pipe on the footing's base"
point = "pipe underside"
at = "at or above"
level = "footing bottom +3 in"
"""
    layout = box(more=rule)
    own = rule_sets(layout)[-1]
    crown, under = verdicts(layout, own.heights)
    assert own.key == "own"
    assert inches(crown.limit) == NEARLY(-3)
    assert inches(crown.low_spare) == NEARLY(-3 - (INVERT - WALL + OUTSIDE))
    assert crown.met
    assert str(crown.rule.source) == "Town handout (invented)"
    assert inches(under.limit) == NEARLY(-7)
    assert inches(under.low_spare) == NEARLY(INVERT - WALL + 7)
    assert not under.met


def test_a_layer_called_slab_has_a_top_of_its_own() -> None:
    from tests.houses import house

    screed = ('role = "slab" },\n]', 'role = "slab" },\n    { name = "screed", '
              'material = "sand-c33", thickness = "1 in", role = "blinding" },\n]')  # fmt: skip
    more = ('[soil]', '[[height_rule]]\nname = "r"\npoint = "crown"\nat = "at or below"\n'
            'level = "slab top"\n[soil]')  # fmt: skip
    layout = house(screed, more)
    (verdict,) = verdicts(layout, rule_sets(layout)[-1].heights)
    assert verdict.limit == NEARLY(layout.areas[0].finished_floor - INCH)


def test_an_invert_level_with_the_footing_s_base_clashes_with_a_trench_that_is_not_below_it() -> (
    None
):
    rules: list[HeightRule] = [rule for known in rule_sets(box()) for rule in known.heights]
    found = {(c.up.key, c.down.key): c for c in clashes(box(), rules)}
    clash = found["din-base", "wayne-high"]
    # Bedding, wrap and wall lie between the trench's bottom and the invert.
    assert inches(clash.apart) == NEARLY(2 + 1.75 / 25.4 + WALL)
    words = clash.sentence(0.0, "ft-in")
    assert "“trench not below the bottom of the footing” (Guide to DIN 4095)" in words
    # The bearing rule holds the same point to the same level: it is not told twice.
    assert ("bearing-trench", "wayne-high") not in found
    assert '2 1/8" apart' in words


def test_a_rule_on_the_stone_s_top_bounds_the_invert_through_cover_and_rise() -> None:
    """At +9 in less 6 in of cover, the pipe from invert to crown, and the rise to the high point;
    a rule that asks it to be higher bounds nothing: more stone can be heaped up.
    """
    rule = '[[height_rule]]\nname = "top"\npoint = "stone top"\nat = "{}"\nlevel = "TOF +9 in"\n'
    for sense, most in (
        ("at or below", 9 - 6 - (OUTSIDE - WALL) - HALF_FT / 16),
        ("at or above", 0),
    ):
        layout = box("1/16 in per ft", rule.format(sense))
        heights, drain = drain_heights(layout), layout.drain
        assert heights is not None
        assert drain is not None
        (top,) = rule_sets(layout)[-1].heights
        bound = invert_bound(drain, heights, top)
        assert bound == (NEARLY(most * INCH) if most else None)


def test_a_level_pipe_meets_what_a_falling_one_cannot() -> None:
    def between(fall: str) -> list[float]:
        return [inches(c.apart) for c in clashes(box(fall), WAYNE.heights)]

    assert between("level") == []
    assert between("1/8 in per ft") == [NEARLY(HALF_FT / 8)]
