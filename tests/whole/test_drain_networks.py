"""Houses with several drains, inside drains, bleeders and outlets to daylight (all invented)."""

from itertools import pairwise

import pytest

from geometry.designfile import read_design
from geometry.errors import DesignError
from geometry.layout.falls import open_falls, round_falls
from geometry.layout.inverts import invert_rows
from geometry.layout.lay import lay_out
from geometry.project import Design
from geometry.report import Found, report
from geometry.units import FOOT, INCH, show_length
from geometry.water.inflow import inflow, strip_width
from tests.whole import networks
from tests.whole.test_invariants import hold
from tests.whole.witness import Whole

ONE = "both to daylight"


def test_a_network_holds() -> None:
    hold(Whole(networks.network(ONE)))


@pytest.mark.slow
@pytest.mark.parametrize("name", [name for name in networks.TEXTS if name != ONE])
def test_every_network_holds(name: str) -> None:
    hold(Whole(networks.network(name)))


def test_an_inside_drain_lies_in_the_floors_base() -> None:
    layout = lay_out(networks.network("inside"))
    drain = layout.drain
    assert drain is not None
    base = layout.areas[0].core
    assert base.buffer(1e-9).contains(drain.low_space)
    assert layout.pit_lead is not None
    assert layout.pit_lead.sleeve is None
    # Its pipe stands 6 in from the footing's inner face, 20 / 2 + 4 = 14 in from the outside.
    assert min(drain.route.points) == pytest.approx((20 * INCH, 20 * INCH), abs=1e-9)


def test_bleeders_lie_no_farther_apart_than_asked_and_pass_the_footing() -> None:
    layout = lay_out(networks.network("both to the pit"))
    outside = next(d for d in layout.drains if not d.inside)
    laid = layout.bleeders_of(outside)
    # Sides of 40, 18, 16, 10, 24 and 28 ft, 12 in left free at each corner of both drains.
    assert len(laid) >= 2 * (40 + 28) / 7 - 6
    for bleeder in laid:
        start, end = bleeder.outside.start, bleeder.outside.end
        assert start[2] == end[2] == pytest.approx(-7 * INCH + 3.068 / 2 * INCH, abs=1e-6)
        assert bleeder.length > 20 * INCH
    first = sorted(b.outer_end[0] for b in laid if b.outer_end[1] < 0)
    assert max(b - a for a, b in pairwise(first)) <= 7 * FOOT + 1e-9


def test_every_outlet_is_a_low_point_with_a_tee() -> None:
    layout = lay_out(networks.network("pit and two to daylight"))
    drain = layout.drain
    assert drain is not None
    assert len(drain.lows) == 3
    assert [f.station for f in drain.fittings if f.kind == "tee"] == sorted(drain.lows)
    assert {round(drain.invert(s), 12) for s in drain.lows} == {round(drain.outlet_invert, 12)}
    # Between two outlets the pipe rises 1/16 in per ft to half way.
    longest = max(b - a for a, b in pairwise(sorted(drain.lows))) / 2
    wrapped = (min(drain.lows) + drain.route.length - max(drain.lows)) / 2
    assert drain.rise == pytest.approx(max(longest, wrapped) / 192)
    assert drain.longest == pytest.approx(max(longest, wrapped))


def test_one_outlet_going_round_falls_along_the_longer_branch() -> None:
    falls = round_falls([10.0], 100.0, 0.01, high=40.0)
    assert falls.rise(40.0) == pytest.approx(0.7)
    assert falls.rise(25.0) == pytest.approx(0.35)
    assert falls.rise(75.0) == pytest.approx(0.35)
    assert falls.branches(10.0) == pytest.approx((30.0, 70.0))


def test_outlets_of_an_open_run_rise_to_its_ends_and_between() -> None:
    falls = open_falls([20.0, 60.0], 100.0, 0.01)
    assert [falls.rise(s) for s in (0.0, 20.0, 40.0, 60.0, 100.0)] == pytest.approx(
        [0.2, 0.0, 0.2, 0.0, 0.4]
    )
    assert falls.slant == pytest.approx(100 * (1 + 0.01**2) ** 0.5)


def test_inverts_stand_every_ten_feet_and_wherever_the_drain_does_something() -> None:
    design = networks.network("pit and two to daylight", datum__instrument="105 ft")
    layout = lay_out(design)
    drain = layout.drain
    assert drain is not None
    rows = invert_rows(layout, drain)
    assert rows[0].names == ("outlet to the pit",)
    words = [name for row in rows for name in row.names]
    assert sum(w.startswith("corner") for w in words) == 6
    assert words.count("outlet to daylight 1") == words.count("outlet to daylight 2") == 1
    assert words.count("cleanout") == 1
    tens = [row.along / (10 * FOOT) for row in rows]
    steps = [ten for ten in tens if abs(ten - round(ten)) < 1e-6]
    assert len(steps) >= int(drain.route.length / (10 * FOOT)) - 2
    assert all(b.along - a.along <= 10 * FOOT + 1e-6 for a, b in pairwise(rows))
    # At every ten feet a row of its own, or one that is named within a thumb's width of it.
    wanted = range(1, int(drain.route.length / (10 * FOOT)) + 1)
    assert all(any(abs(ten - n) * 10 * FOOT <= 0.02 for ten in tens) for n in wanted)
    bare = [round(row.along / (10 * FOOT), 6) for row in rows if not row.names]
    assert set(bare) <= set(map(float, wanted))
    for row in rows:
        assert row.level == pytest.approx(drain.invert(row.station))
        assert row.rod is not None
        assert row.rod == pytest.approx(105 * FOOT - 100 * FOOT - row.level)


def test_the_report_holds_every_drain_under_its_name() -> None:
    found = report(lay_out(networks.network("both to the pit")))
    assert [d.name for d in found.drains] == ["inside drain, basement", "outside drain, basement"]
    assert found.drains[0].outlets == ("outlet to the pit",)
    assert found.drains[1].bleeders is not None
    subjects = {f.subject for f in found.findings if f.id == "drain-slope-fits"}
    assert subjects == {"inside drain, basement, slope", "outside drain, basement, slope"}
    alone = report(lay_out(networks.network("inside")))
    assert {f.subject for f in alone.findings if f.id == "drain-slope-fits"} == {"drain, slope"}
    names = [v.name for v in found.volumes]
    assert len(names) == len(set(names))


BROKEN = (
    ("both to the pit", {"drain__1__outlet": "pit"}, "drain 2 > outlet", "empties into the pit"),
    ("inside", {"drain__0__outlet": "bleeders"}, "drain 1 > outlet", "no drain runs along"),
    ("daylight", {"drain__0__outlet": "pit"}, "drain 1 > outlet", "there is no pit"),
    ("both to daylight", {"drain__0__outlet": "bleeders"}, "drain 1 > outlet", "leave one of them"),
    ("inside", {"drain__0__outlet": "daylight"}, "drain 1 > outlet", "no daylight is given"),
    ("upper to lower stone", {"drain__1__sides": [3]}, "drain 2 > low_corner", "a lower drain"),
    ("upper to lower stone", {"drain__0__cleanouts": [3]}, "drain 1 > cleanouts", "another drain"),
    ("inside", {"drain__0__outlet_invert": "-3 in"}, "drain 1 > outlet_invert", "floor's base"),
    ("both to the pit", {"drain__1__bleeders__invert": "-2 in"}, "bleeders > invert", "within the"),
    ("inside", {"sump__at": "3 ft, 12 ft"}, "sump > at", "run into the inside drain"),
)


@pytest.mark.parametrize(("name", "changes", "place", "words"), BROKEN)
def test_a_network_that_cannot_be_built_is_said_in_its_place(
    name: str, changes: dict[str, object], place: str, words: str
) -> None:
    with pytest.raises(DesignError) as caught:
        networks.network(name, **changes)
    said = [(f.place, f.sentence) for f in caught.value.faults]
    assert any(place in where and words in sentence for where, sentence in said), said


def test_one_table_and_a_list_of_one_read_the_same() -> None:
    once: Design = networks.network("daylight")
    single = networks.TEXTS["daylight"].replace("[[drain]]", "[drain]")
    assert read_design(single.replace("[[drain.daylight]]", "[drain.daylight]")) == once


def found_in(name: str, **changes: object) -> dict[str, list[Found]]:
    """The findings of a network by id."""
    rows: dict[str, list[Found]] = {}
    for row in report(lay_out(networks.network(name, **changes))).findings:
        rows.setdefault(row.id, []).append(row)
    return rows


def test_an_upper_drain_over_lower_stone_is_warned_of_and_its_water_counted() -> None:
    name, rain = "upper to lower stone", {"storm": "steady", "rain": "2 in", "share": 0.5}
    (warned,) = found_in(name)["drain-into-lower-stone"]
    assert warned.severity == "look"
    assert "drain-into-lower-stone" not in found_in("both to the pit")
    layout = lay_out(networks.network(name, water=rain))
    lower, upper = layout.drains
    # From the lower footing's bottom up: 2 in of bedding, the pipe's wall, the rise of 1/16 in per
    # ft to half way, the pipe's bore and wall, 6 in of cover, twice the fabric. From the upper
    # footing's bottom, 8 in under its TOF 4 ft up, the same to the invert.
    to_invert = 2 * INCH + 0.075 * INCH + lower.wrap_m
    top = -10 * INCH + to_invert + lower.route.length / 2 / 192 + (4.065 + 0.075 + 6) * INCH
    assert lower.pipe.inside_diameter_m == pytest.approx(4.065 * INCH)
    drop = upper.outlet_invert - lower.stone_top
    assert drop == pytest.approx(4 * FOOT - 8 * INCH + to_invert - top - lower.wrap_m, abs=1e-9)
    assert show_length(drop, "ft-in") in warned.found
    whole, alone = (
        inflow(view)
        for view in (layout, lay_out(networks.network("upper to daylight", water=rain)))
    )
    assert whole is not None
    assert alone is not None
    # The garage's strip, as long as its run of 22 + 16 + 12 ft and corners, comes on top.
    more = whole.strip_m2 - alone.strip_m2
    assert more == pytest.approx(upper.route.length * strip_width(layout, upper))


def test_air_through_an_open_drain_is_told_where_it_reaches_the_floor() -> None:
    (air,) = found_in("both to daylight")["drain-air-path"]
    assert "radon" in air.found
    assert "drain-air-path" not in found_in("daylight")
    assert "drain-air-path" not in found_in("both to the pit")


def test_a_drain_that_leads_nowhere_is_stopped() -> None:
    lost = report(lay_out(read_design(networks.HOUSE + networks.OUTSIDE)))
    (finding,) = (f for f in lost.findings if f.id == "drain-outlet")
    assert finding.severity == "stop"
    assert "drain-outlet" not in found_in("both to the pit")


def test_far_and_high_bleeders_are_looked_at() -> None:
    # Every side gets one at least: six sides of 136 ft in all, about 24 ft apart.
    (near,) = found_in("both to the pit")["drain-bleeders"]
    assert near.severity == "fine"
    higher = {"drain__1__bleeders__invert": "-4 in"}
    (high,) = found_in("both to the pit", **higher)["drain-bleeders"]
    assert high.severity == "look"
    # Outside pipe's invert: footing bottom -10 in + fabric + 2 in bedding + 0.075 in wall.
    assert '3 7/8" over' in high.found


def test_stone_with_fines_is_no_drain() -> None:
    clean = found_in("inside")
    assert "stone-with-fines" not in clean
    layers = [
        {"name": "base", "material": "crusher-run", "thickness": "6 in", "role": "base"},
        {"name": "slab", "material": "concrete", "thickness": "4 in", "role": "slab"},
    ]
    (fines,) = found_in("daylight", floor__layer=layers)["stone-with-fines"]
    assert "does not replace a drain" in fines.found
    assert "engineer" in fines.advice
