"""A hillside with a walk-out, two drains and daylight: an invented design, figures by hand."""

import pytest

from tests.whole.situations import FT, Change, ids, of, report_on, text

HILL, PIPE_FALL = 0.07, 1 / 48
GROUND: tuple[str | int, ...] = ("drain", 0, "daylight", 0, "ground")
OPEN_END: tuple[str | int, ...] = ("drain", 0, "daylight", 0, "above_ground")


def test_hillside_has_two_drains_and_an_air_path() -> None:
    found = of("hillside_walk_out")
    assert [(d.line, d.outlets) for d in found.drains] == [
        ("outside", ("outlet to daylight",)),
        ("inside", ("low point, emptied by bleeders",)),
    ]
    (air,) = ids(found)["drain-air-path"]
    assert air.severity == "look"
    assert "radon" in air.found
    # Without the inner drain outside air has no way into the stone under the floor.
    alone = text("hillside_walk_out")
    inner = alone.index("[[drain]]\nline")
    outer = report_on(alone[:inner] + alone[alone.index("[grade]") :])
    assert "drain-air-path" not in ids(outer)


@pytest.mark.parametrize(("under_ft", "plain_ft"), [(4, 81), (1, 20)])
def test_hillside_outlet_distance(under_ft: int, plain_ft: int) -> None:
    # The ground falls 7 %, the pipe 1/4 in a foot, 2.08 %: they near each other by 4.92 %.
    nears = HILL - PIPE_FALL
    assert under_ft / nears == pytest.approx(plain_ft, abs=0.5)
    start = -7 / 12 + under_ft
    ground = [f"0, {start} ft", f"150 ft, {start - 150 * HILL} ft"]
    for above_in, want in ((0, under_ft / nears), (4, (under_ft + 4 / 12) / nears)):
        changes: list[Change] = [(GROUND, ground), (OPEN_END, f"{above_in} in")]
        run = of("hillside_walk_out", *changes).outlets[0].run
        assert run is not None
        assert run.end_at_m is not None
        assert run.end_at_m / FT == pytest.approx(want, rel=1e-6)
    assert ids(of("hillside_walk_out"))["daylight-comes-out"][0].severity == "fine"


def test_hillside_that_does_not_reach_daylight_says_what_is_lacking() -> None:
    # Known to the lot line, 60 ft: 4.2 ft of fall. The invert starts 4 ft under the ground, falls
    # 1.25 ft, and its end stands 4 in over it: 5.58 ft are needed, 1.38 ft are lacking.
    ground = ["0, 3 ft 5 in", f"60 ft, {41 / 12 - 60 * HILL} ft"]
    found = of("hillside_walk_out", (GROUND, ground))
    (words,) = ids(found)["daylight-comes-out"]
    assert words.severity == "stop"
    run = found.outlets[0].run
    assert run is not None
    assert run.lacking is not None
    needed = 4 + 60 * PIPE_FALL + 4 / 12
    assert run.lacking.at_last_point_m / FT == pytest.approx(needed - 60 * HILL, abs=1e-6)
    # So far must it go on: 1.38 / 4.92 % = 28.1 ft.
    assert run.lacking.longer_m is not None
    assert run.lacking.longer_m / FT == pytest.approx((needed - 4.2) / (HILL - PIPE_FALL), rel=1e-6)
    assert "4'-2 3/8\", 5'-7\" of fall is needed" in words.found


def test_hillside_tells_how_much_of_a_walk_out_the_hill_gives() -> None:
    # Grade uphill 10'-5" over TOF, ground at the walk-out 3'-5": 7 ft, less 5 % of 14 in out.
    apart = 7 - 0.05 * 14 / 12
    # 7 % over the 30 ft of the house: 2.1 ft; the other 4.84 ft must be made.
    gives = HILL * 30
    assert (apart, apart - gives) == pytest.approx((6.94, 4.84), abs=0.005)
    (words,) = ids(of("hillside_walk_out"))["daylight-grade"]
    assert words.severity == "look"
    assert "6'-11 1/4\" higher" in words.found
    assert "30'-0\" that way give 2'-1 1/4\"; the other 4'-10\" must be made" in words.found
    assert "engineer" in words.advice
    # Where the ground at the outlet is the grade round the house, there is nothing to tell.
    level_site: Change = (("grade", "at_wall"), "3 ft 6 in")
    assert "daylight-grade" not in ids(of("hillside_walk_out", level_site))


def test_hillside_ground_over_the_grade_is_told() -> None:
    # The ground at the outlet 12 ft over TOF, the grade at the wall 10'-5", 0.7 in less 14 in out.
    found = of("hillside_walk_out", (GROUND, ["0, 12 ft", "150 ft, 1 ft 6 in"]))
    (words,) = ids(found)["daylight-grade"]
    assert "1'-7 3/4\" lower" in words.found
    assert "must be made" not in words.found


def test_hillside_crusher_run_is_no_drain() -> None:
    assert "stone-with-fines" not in ids(of("hillside_walk_out"))
    fines: Change = (("floor", "layer", 0, "material"), "crusher-run")
    found = of("hillside_walk_out", fines)
    (words,) = ids(found)["stone-with-fines"]
    assert words.severity == "look"
    assert "does not replace a drain or a capillary break" in words.found
    assert "under a footing" in words.advice
    assert "an engineer says" in words.advice
    claims = [f.found for f in found.findings if "rush" in f.found and "drains" in f.found]
    assert claims == []
