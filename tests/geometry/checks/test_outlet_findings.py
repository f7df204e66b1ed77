"""Findings on an outlet to daylight, on invented grounds; and its row beside a pit's."""

import pytest

from geometry.checks.finding import Finding
from geometry.checks.outlets import outlet_findings
from geometry.materials.catalogue import PIPES
from geometry.parts.outlet import Daylight
from geometry.units import System
from geometry.water.daylight import DaylightRun
from geometry.water.emptying import Outlets
from geometry.water.outlets import side_by_side
from geometry.water.study import study
from viz.carried import demo
from viz.job import job

FOOT = 0.3048
GPM = 231 * 0.0254**3 / 60
HILL = ((0, 6), (100, -1), (200, -8))


def run(*ground: tuple[float, float], **more: object) -> DaylightRun:
    points = [(x * FOOT, z * FOOT) for x, z in ground]
    asked = Daylight.model_validate({"toward": (30.0, 0.0), "ground": points, **more})
    return DaylightRun(0.0, PIPES["sdr35-4"], asked)


def findings(
    found: DaylightRun, peak: float | None = None, system: System = "ft-in"
) -> dict[str, Finding]:
    return {f.id.removeprefix("daylight-"): f for f in outlet_findings(found, peak, system)}


def test_an_outlet_on_a_hillside_is_fine() -> None:
    # It falls 4.9167 ft in 100 less than the ground; the end stands 1/3 ft over it.
    found = findings(run(*HILL), 100 * GPM)
    assert {f.severity for f in found.values()} == {"fine"}
    assert "comes out 128'-9 3/4\" from the drain" in found["comes-out"].found
    assert "IRC" in str(found["comes-out"].source)
    assert set(found) == {"comes-out", "fall", "cover", "end", "solid", "capacity"}


@pytest.mark.parametrize(
    ("name", "severity", "words", "found"),
    [
        ("fall", "look", "asked to fall 1/8 in per ft", run(*HILL, fall="1/16 in per ft")),
        ("fall", "look", "laid level", run(*HILL, fall="level")),
        ("end", "look", 'stands 2"', run(*HILL, above_ground="2 in")),
        ("end", "stop", "in that hollow", run(*HILL[:2], (150, -4), (170, 0))),
        ("solid", "look", "without a guard", run(*HILL, guard=False)),
        ("backwater", "look", "over the open end", run(*HILL, high_water="-1 ft")),
        ("backwater", "stop", "1'-0\" over the drain's low point", run(*HILL, high_water="1 ft")),
        ("backwater", "fine", "under the open end", run(*HILL, high_water="-6 ft")),
        ("cover", "look", 'Nowhere 1\'-0" of ground', run((0, 1), (40, -3))),
        ("cover", "look", 'Too little from 36\'-0 3/4"', run((0, 6), (40, 0), (60, 3), (150, -8))),
    ],
)  # fmt: skip
def test_what_is_unwise_is_said(name: str, severity: str, words: str, found: DaylightRun) -> None:
    one = findings(found)[name]
    assert one.severity == severity
    assert words in one.found
    assert one.source.title


def test_ground_below_the_drain_is_doubted() -> None:
    found = findings(run((0, -1), (40, -3)))
    assert {name: one.severity for name, one in found.items()} == {"comes-out": "look"}


def test_a_pipe_too_small_for_the_peak() -> None:
    assert findings(run(*HILL), 200 * GPM)["capacity"].severity == "look"
    assert "capacity" not in findings(run(*HILL), None)
    assert "capacity" not in findings(run(*HILL, fall="level"), 200 * GPM)


def test_what_is_lacking_is_told_in_numbers() -> None:
    # The ground falls 3 ft in 100 and is known for 100 ft; the pipe falls 2.0833 ft on it.
    found = findings(run((0, 4), (100, 1), above_ground=0))
    stop = found["comes-out"]
    assert stop.severity == "stop"
    assert "the ground falls 3'-0\", 6'-1\" of fall is needed" in stop.found
    assert "3'-1\" is lacking" in stop.found
    assert "raise the drain 3'-1\"" in stop.advice
    assert "336'-4 1/4\" farther" in stop.advice  # 3.0833 / (0.03 - 1/48)
    assert set(found) == {"comes-out", "fall"}
    # From 0.5 ft over the ground's last point a flatter pipe comes out, and falls enough.
    gentle = findings(run((0, 1), (40, -0.5), above_ground=0))["comes-out"]
    assert "lay the pipe at 0.150 in per ft at most" in gentle.advice


def test_metric_words() -> None:
    words = " ".join(
        f.found + f.asked + f.advice for f in outlet_findings(run(*HILL), 0.01, "metric")
    )
    assert " ft" not in words
    assert '"' not in words
    assert "305 mm" in words or "304.8 mm" in words


def test_pit_and_daylight_stand_side_by_side_with_this_house_s_numbers() -> None:
    layout = job(demo().read_text(encoding="utf-8")).layout
    water = study(layout)
    house = Outlets(layout.sump, water.pit, water.inflow, run(*HILL), "ft-in")
    rows = {row.matter: row for row in side_by_side(house)}
    assert "after" in rows["when it fails"].pump
    assert "gpm" in rows["flow it carries"].pump
    assert "gpm" in rows["flow it carries"].daylight
    assert rows["power"].daylight == "none"
    assert "drain.daylight.high_water" in rows["high water at the open end"].daylight


def test_what_is_not_known_says_what_to_give() -> None:
    rows = side_by_side(Outlets(None, None, None, None, "metric"))
    for row in rows:
        both = f"{row.pump} {row.daylight}"
        assert row.pump
        assert row.daylight
        assert "None" not in both
    asked = " ".join(f"{row.pump} {row.daylight}" for row in rows)
    assert all(key in asked for key in ("[sump]", "drain.daylight", "[water]"))


def test_a_pipe_that_all_but_comes_out_may_end_lower_over_the_ground() -> None:
    # Ground 2 in under the invert at its last point, 4 in wanted.
    found = findings(run((0, 6), (96, -2 - 2 / 12)))["comes-out"]
    assert 'let the end stand 2" over the ground, 96\'-0" from the drain' in found.advice
