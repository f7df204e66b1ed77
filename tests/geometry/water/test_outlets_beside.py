"""A pit with its pump beside an outlet to daylight: each matter's figures worked by hand."""

import pytest
from wet_box import FOOT, STEADY, wet

from geometry.designfile import read_design
from geometry.layout.lay import Layout, lay_out
from geometry.materials.catalogue import PIPES
from geometry.parts.outlet import Daylight
from geometry.water.daylight import DaylightRun
from geometry.water.emptying import Outlets, daylight_outlets, pit_alone
from geometry.water.feeding import share_of
from geometry.water.outlet_figures import reported_outlets
from geometry.water.outlets import show_far, show_ground, side_by_side
from geometry.water.study import study
from tests.whole.networks import TEXTS

HILL = ((0, 4), (200, -10))
CURVE = (
    'pump = { off = "2 in", on = "10 in", alarm = "13 in", lift = "9 ft", '
    'curve = ["20 ft, 0 gpm", "5 ft, 40 gpm"], '
    'discharge = { length = "40 ft", inside = "1.6 in" } }'
)


def run(*ground: tuple[float, float], **more: object) -> DaylightRun:
    points = [(x * FOOT, z * FOOT) for x, z in ground]
    asked = {"toward": (30.0, 0.0), "ground": points, "above_ground": 0.0, **more}
    return DaylightRun(0.0, PIPES["sdr35-4"], Daylight.model_validate(asked))


def said(layout: Layout, found: DaylightRun | None, share: float = 1.0) -> dict[str, list[str]]:
    water = study(layout)
    house = Outlets(layout.sump, water.pit, water.inflow, found, "ft-in", share)
    return {row.matter: [row.pump, row.daylight] for row in side_by_side(house)}


def daylight(matter: str, *ground: tuple[float, float], **more: object) -> str:
    return said(wet(), run(*(ground or HILL), **more))[matter][1]


def test_a_pit_s_figures() -> None:
    # The floor lies at +4 in, the pit is 30 in deep, its bottom 1/4 in thick; half an inch an hour
    # on 600 ft2 are 3.12 gpm.
    rows = said(wet(), run(*HILL))
    assert rows["dig"][0] == "a pit to -2'-2 1/4\""
    assert rows["flow it carries"][0] == "20.0 gpm; 3.12 gpm come at the peak"
    assert rows["warning"][0].endswith("give sump.pump.alarm")
    assert rows["open end"][0].endswith("give sump.pump.discharge")
    assert rows["high water at the open end"][0].endswith("give sump.pump.lift")
    assert rows["when it fails"][1].endswith("unless the pit's pump takes over")
    full = said(wet(pump=CURVE), run(*HILL))
    assert full["warning"][0] == "alarm when water stands at -1'-1\""
    assert full["open end"][0].startswith("40'-0\" of discharge pipe")
    assert full["high water at the open end"][0].endswith("it lifts 9'-0\"")
    bare = said(wet(pump='pump = { off = "2 in", on = "10 in" }'), run(*HILL))
    assert bare["flow it carries"][0].endswith("give sump.pump.flow, or curve and lift")


def test_starts_are_those_of_the_hour_and_need_rain_and_a_flow() -> None:
    # 1.767 ft2 by 8 in are 8.81 gal: at 3.12 gpm filled in 2.8 min, pumped in 0.5 min; 18 an hour.
    rows = said(wet(), run(*HILL))
    assert "18 starts in the storm's busiest hour" in rows["parts that move and wear"][0]
    still = said(wet(pump=None), run(*HILL))["parts that move and wear"][0]
    assert still.endswith("give [water] rain and sump.pump with its flow")
    dry = said(wet(""), run(*HILL))
    assert (
        "minutes until water stands at the floor not known: give [water]"
        in (dry["when it fails"][0])
    )
    assert dry["flow it carries"][0].endswith("the peak inflow is not known: give [water]")


def test_what_the_ground_brings_in_a_day() -> None:
    table = STEADY + 'water_table = "0"\nconductivity = "1e-3 cm/s"\n'
    layout = wet(table)
    coming = study(layout).inflow
    assert coming is not None
    assert coming.ground is not None
    daily = coming.ground.flow_m3s * 86400 / (231 * 0.0254**3)
    words = said(layout, run(*HILL))["power"][0]
    assert words.endswith(f"brings up to {daily:,.1f} gal a day")
    assert said(wet(), run(*HILL))["power"][0].endswith("give [water] water_table")


def test_a_hillside_s_pipe_by_hand() -> None:
    # 4 / (0.07 - 1/48) = 81.356 ft out; -1.6949 ft there. Wall 0.12 in and bedding 2 in under the
    # invert: 4'-2 1/8" deep, mean 2.1767 ft, 1.5 ft wide: 265.6 ft3 or 9.84 yd3. A foot of ground
    # over the top, 4.095 in over the invert, to 2.65875 / 0.0491667 = 54.077 ft.
    rows = said(wet(), run(*HILL), 0.5)
    assert rows["fall of the ground"][1] == (
        "comes out 81'-4 1/4\" from the drain (pipe 1/4 in per ft)"
    )
    assert rows["dig"][1].startswith("a trench up to 4'-2\" deep, 9.84 yd³ with upright sides")
    assert rows["cover, frost"][1].startswith(
        "1'-0\" or more of ground over the pipe up to 54'-1\" from the drain, less on the last "
        "27'-3 1/4\" before the open end"
    )
    assert rows["open end"][1] == 'at -1\'-8 5/16", 0" over the ground; guarded'
    # Half of the water comes to this outlet.
    assert rows["flow it carries"][1] == "158 gpm, pipe full; 1.56 gpm come at the peak"


def test_a_pipe_that_stays_in_the_ground_or_lies_level() -> None:
    flat = ((0.0, 4.0), (100.0, 1.0))
    # 1 ft of ground over an invert 2.0833 ft down; over the top 2.742 ft.
    assert daylight("fall of the ground", *flat) == (
        "does not come out in the 100'-0\" known: 3'-1\" lacking there (pipe 1/4 in per ft)"
    )
    assert daylight("open end", *flat) == "none within the ground known"
    assert daylight("cover, frost", *flat).startswith(
        "at the least 2'-9\" 100'-0\" from the drain; 1'-0\" wanted;"
    )
    assert daylight("flow it carries", fall="level").startswith("laid level: nothing until")
    assert "without a guard" in daylight("open end", guard=False)
    # A dip to 1 ft over the invert at 20 ft: 7.905 in over the top, told to a quarter inch.
    dip = ((0.0, 4.0), (20.0, 1.0), (40.0, 4.0), (60.0, -4.0))
    assert daylight("cover, frost", *dip, fall="level").startswith(
        'at the least 8" 20\'-0" from the drain; 1\'-0" wanted, less on the last'
    )
    assert daylight("cover, frost", (0, 1), (40, -3)).startswith("nowhere 1'-0\" of ground")


@pytest.mark.parametrize(
    ("high", "words"),
    [
        # The open end's invert lies at -1'-8 5/16", the drain's at 0.
        ("-6 ft", "4'-3 11/16\" under the open end's invert"),
        ("-1 ft", "8 5/16\" over the open end's invert, 1'-0\" under the drain"),
        ("1 ft", "2'-8 5/16\" over the open end's invert, 1'-0\" over the drain's low point"),
    ],
)
def test_high_water_against_end_and_drain(high: str, words: str) -> None:
    assert daylight("high water at the open end", high_water=high) == words


def test_distances_and_ground_are_told_no_finer_than_they_are_measured() -> None:
    # 81.356 ft and -4.0504 ft: 24.7973 m and -1.2346 m.
    assert show_far(24.79732, "metric") == "24797 mm"
    assert show_ground(-1.23456, "metric") == "-1235 mm"
    assert show_far(24.79732, "ft-in") == "81'-4 1/4\""
    assert show_ground(-1.23456, "ft-in") == "-4'-0 1/2\""


def test_every_outlet_of_a_house_takes_its_part_of_the_water() -> None:
    """A pit and two outlets: water runs to the low point it falls to, half a house's drain each."""
    text = TEXTS["pit and two to daylight"]
    water = f"[water]\n{STEADY}water_table = '-3 ft'\nconductivity = '1e-6 cm/s'\n"
    layout = lay_out(read_design(text + water))
    first, second = daylight_outlets(layout)
    assert (first.name, second.name) == (" 1", " 2")
    assert first.storm is not None
    assert layout.drain is not None
    assert layout.lead is not None
    pit = share_of(layout.drain, layout.lead.station)
    assert first.share + second.share + pit == pytest.approx(1)
    assert first.coming is not None
    for one in (first, second):
        assert one.peak_m3s == pytest.approx(one.share * (first.coming.peak_m3s or 0))
    told = [row.drain for row in reported_outlets(layout)]
    assert told == ["outside drain, basement, outlet 1", "outside drain, basement, outlet 2"]
    assert first.pit_peak_m3s == pytest.approx(pit * (first.coming.peak_m3s or 0))


def test_a_pit_alone_has_its_storm_and_no_outlet() -> None:
    layout = wet()
    assert daylight_outlets(layout) == ()
    alone = pit_alone(layout)
    assert alone.run is None
    assert alone.storm is not None
    (row,) = reported_outlets(layout)
    assert (row.drain, row.run) == ("outside drain, basement", None)
    assert pit_alone(lay_out(read_design(TEXTS["daylight"]))).storm is None


def test_towns_rules_are_told_with_their_sources() -> None:
    """Codified ordinances of St. Johns MI: 30 ft from any building; Henrico VA: 10 ft."""
    words = said(wet(), None)["where the water may go"][0]
    assert "30'-0\" (9144 mm) from any building: St. Johns" in words
    assert "10'-0\" (3048 mm) from any neighbour: Henrico" in words
