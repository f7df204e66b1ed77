"""What is allowed to differ from the plan, and which verdict foam gets, at and about each limit."""

import pytest

from geometry.layout.lay import Layout
from geometry.survey.asdug import AsDug, as_dug
from geometry.survey.reading import read_shots
from geometry.survey.tolerances import (
    FINE_GRADE,
    FOOTING_TOP,
    UNDER_MASONRY,
)
from tests.houses import WITH_GARAGE, house

INCH = 0.0254
HEAD = "point,x (ft),y (ft),level (in),what\n"
CORNERS = "1,1,1,-6,\n2,29,1,-6,\n3,29,19,-6,\n4,1,19,-6,\n"


def read(layout: Layout, rows: str) -> AsDug:
    return as_dug(layout, read_shots(HEAD + CORNERS + rows, layout.design))


@pytest.mark.parametrize(
    ("name", "above", "below"),
    [("FINE_GRADE", 0.75, 0.75), ("FOOTING_TOP", 0.5, 2), ("UNDER_MASONRY", 0.5, 0.5)],
)
def test_tolerances_are_the_published_ones(name: str, above: float, below: float) -> None:
    """ACI 117-10 4.4.5 for fine grade; its 3.3 for tops of footings; a micrometre is rounding."""
    tolerance = {
        "FINE_GRADE": FINE_GRADE, "FOOTING_TOP": FOOTING_TOP, "UNDER_MASONRY": UNDER_MASONRY,
    }[name]  # fmt: skip
    for beside, holds in ((0.0, True), (5e-7, True), (2e-6, False)):
        assert tolerance.holds(above * INCH + beside) == holds
        assert tolerance.holds(-below * INCH - beside) == holds


NO_FOAM = (
    ('    { name = "foam", material = "xps-iv", thickness = "2 in", role = "insulation" },\n', ""),
    ('tie = "foam bottom at TOF"', 'tie = "slab bottom at TOF"'),
)


def test_foam_over_base_by_how_thick_the_base_comes_out() -> None:
    """Base to TOF, 4 in of it at least; foam on ground up to 1/4 in over that still lies flat."""
    rows = "a,5,5,-4,\nb,20,5,-3.9,\nc,25,5,0.2,\nd,5,15,0.3,\ne,20,15,-6,\nout,-1,10,-6,\n"
    (area,) = read(house(), rows).areas
    found = {row.shot: row for row in area.foam.rows()}
    assert {name: (row.verdict, row.meets_tof) for name, row in found.items() if name > "9"} == {
        "a": ("lies flat", True), "b": ("lies flat, base thin", True),
        "c": ("lies flat, base thin", True), "d": ("lifts off", False),
        "e": ("lies flat", True), "out": ("outside the floor", None),
    }  # fmt: skip
    for name, up in {"a": -4, "b": -3.9, "c": 0.2, "d": 0.3, "out": -6}.items():
        assert found[name].gap_m == pytest.approx(-up * INCH, abs=1e-9)
    assert (found["b"].x / 12 / INCH, found["b"].y / 12 / INCH) == pytest.approx((20, 5))
    assert area.foam.count("lies flat") + area.foam.count("outside the floor") == 7


def test_a_floor_without_foam_has_no_verdict_but_outside() -> None:
    found = read(house(*NO_FOAM), "d,5,15,3,\nout,-1,10,-6,\nf,0,10,2,footing\n")
    told = {row.shot: (row.verdict, row.meets_tof) for row in found.areas[0].foam.rows()}
    assert (told["d"], told["out"]) == (("no foam", None), ("outside the floor", None))
    (row,) = found.foam_on_footing.rows()
    assert (row.verdict, row.gap_m, row.meets_tof) == ("no foam", 0.0, None)


@pytest.mark.parametrize(
    ("bed", "up", "verdict"),
    [
        # Straight on the footing, 1/4 in either way.
        (0, 0.3, "lifts off"), (0, -0.3, "gap under it"),
        # An inch of stone between: it is thinner or thicker, until the footing stands out of it.
        (1, 0.3, "lies flat"), (1, -0.3, "lies flat"), (1, 1.2, "lies flat"), (1, 1.3, "lifts off"),
        # What a board bridges is no bed.
        (0.2, -0.3, "gap under it"), (0.2, 0.3, "lies flat"),
        # Planned under TOF by what no tape tells it is over the footing all the same.
        (-0.06, 0, "lies flat"), (-0.07, 0, "not over footing"),
    ],
)  # fmt: skip
def test_foam_on_a_footing_with_and_without_a_bed_between(
    bed: float, up: float, verdict: str
) -> None:
    layout = house(("foam bottom at TOF", f"foam bottom at TOF {bed:+} in"))
    (row,) = read(layout, f"f,0,10,{up},footing\n").foam_on_footing.rows()
    assert row.verdict == verdict
    assert row.gap_m == pytest.approx((bed - up) * INCH)


def test_shots_on_concrete_go_to_the_nearest_and_may_stand_half_a_foot_beside() -> None:
    """Outline from 0 to 30 ft, strips 6 in out of it and 14 in into it; a pad of 3 ft at 15, 10.

    The garage's top of footing stands 3 ft up, its own strips end at 50 ft.
    """
    rows = (
        "out,-0.97,10,0.4,footing\nfar,-1.03,10,0.4,footing\nin,1.64,10,0.4,footing\n"
        "deep,1.69,10,0.4,footing\npad,13.03,10,-1,pad P1\nby,12.97,10,-1,pad P1\n"
        "up,50,10,36.25,footing\n"
    )
    found = read(house(WITH_GARAGE), rows)
    doubts = [f.row for f in found.faults if "beside it" in f.sentence]
    assert doubts == [7, 9, 11]
    tops = {top.shot: top for top in found.tops}
    assert list(tops) == ["out", "far", "in", "deep", "pad", "by", "up"]
    assert {(t.area, t.on) for t in found.tops} == {
        ("basement", "footing"), ("basement", "pad P1"), ("garage", "footing"),
    }  # fmt: skip
    assert tops["up"].planned_m == pytest.approx(36 * INCH)
    assert tops["up"].off_m == pytest.approx(0.25 * INCH)
    assert tops["pad"].off_m == pytest.approx(-INCH)
    assert tops["pad"].x == pytest.approx(13.03 * 12 * INCH)
    assert tops["out"].y == pytest.approx(120 * INCH)


def test_pads_of_one_name_are_told_apart_by_where_the_shot_lies() -> None:
    pier = '[[area.pier]]\nat = "40 ft, 10 ft"\n\n[area.floor]'
    layout = house(WITH_GARAGE, ("[area.floor]", pier))
    found = read(layout, "one,15,10,0,pad P1\ntwo,40,10,36,pad P1\n")
    assert [(t.area, t.on, t.off_m) for t in found.tops] == [
        ("basement", "pad P1", pytest.approx(0)), ("garage", "pad P1", pytest.approx(0)),
    ]  # fmt: skip
