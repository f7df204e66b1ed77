"""Profiles of drains with several low and high points, inside drains, bleeders, open ends."""

from functools import cache

import numpy as np
import pytest

from geometry.layout.drain import DrainLayout
from geometry.layout.lay import Layout, lay_out
from geometry.units import show_level
from tests.viz.figures.drain_figures import assert_legible, words
from tests.whole import networks
from viz.drawing.figure import Figure
from viz.drawing.marks import Fill, Line
from viz.drawing.scale import Scale
from viz.figures.profile.profile import profile_figure, profile_parts
from viz.style.lines import QUIET

SCALE = Scale("1:96", 96)
SOME = ("both to the pit", "one side, two outlets")
NAMES = [
    pytest.param(name, marks=() if name in SOME else pytest.mark.slow) for name in networks.TEXTS
]


@cache
def views(name: str) -> tuple[Layout, ...]:
    return lay_out(networks.network(name)).views()


def drain_of(view: Layout) -> DrainLayout:
    assert view.drain is not None
    return view.drain


def drawn(
    view: Layout, part: int | None = None, compact: bool = False, widest: float = float("inf")
) -> Figure:
    figure = profile_figure(view, SCALE, 2.5, part=part, compact=compact, widest=widest)
    assert figure is not None
    return figure


def invert_line(figure: Figure) -> np.ndarray:
    (found,) = (m for m in figure.marks if isinstance(m, Line) and m.layer == "invert")
    return np.array(found.points)


@pytest.mark.parametrize("name", NAMES)
def test_words_can_be_read(name: str) -> None:
    for view in views(name):
        for compact in (False, True):
            assert_legible(drawn(view, None, compact, 400.0))
            for part in range(profile_parts(view)):
                assert_legible(drawn(view, part, compact))


@pytest.mark.slow
@pytest.mark.parametrize("name", networks.TEXTS)
@pytest.mark.parametrize("ratio", [8, 32, 64, 128, 250])
def test_words_can_be_read_at_any_scale(name: str, ratio: int) -> None:
    for view in views(name):
        for widest in (150.0, 245.0, 900.0):
            figure = profile_figure(view, Scale("", ratio), 2.5, compact=True, widest=widest)
            assert figure is not None
            assert_legible(figure)


@pytest.mark.parametrize("name", ["pit and two to daylight", "one side, two outlets"])
def test_the_invert_runs_up_and_down_between_outlets(name: str) -> None:
    (view,) = views(name)
    drain, figure = drain_of(view), drawn(view)
    line, said = invert_line(figure), words(figure)
    # Low and high points take turns; a loop shows its main low point at both ends.
    turns = np.sign(np.diff(line[:, 1]))
    assert np.all(turns[1:] != turns[:-1])
    closed, lows = drain.route.closed, len(drain.lows)
    assert len(line) == 2 * lows + 1
    assert said.count("LOW POINT") == lows + closed
    assert said.count("HIGH POINT") == lows
    assert said.count("END") == (0 if closed else 1)
    outlets = line[0 if closed else 1 :: 2, 1]
    assert np.ptp(outlets) < 1e-9
    assert outlets[0] < line[1 if closed else 0 :: 2, 1].min()


def test_each_outlet_says_where_it_leads() -> None:
    (view,) = views("pit and two to daylight")
    said = words(drawn(view))
    assert {"to the pit", "to daylight 1", "to daylight 2"} <= set(said)
    assert {"tee to the sump,", "tee to daylight 1,", "tee to daylight 2,"} <= set(said)
    (upper,) = (v for v in views("upper to lower stone") if drain_of(v).area.name == "garage")
    assert "open end over" in words(drawn(upper))


def test_distances_count_to_the_outlet_the_water_runs_to() -> None:
    (view,) = views("pit and two to daylight")
    drain, figure = drain_of(view), drawn(view)
    assert "From the nearest low point" in words(figure)
    # The pipe passes corner 2 between the outlets to daylight, 10 ft 2 in from the second one:
    # 18 / 2 ft from the middle of the side, 10 + 4 + 8 in farther out round the corner, less 8.
    near = min(abs(drain.corner_station(2) - low) for low in drain.lows)
    assert near / 0.3048 == pytest.approx(10 + 2 / 12, abs=1e-6)
    assert "10'-2\"" in words(figure)


def test_titles_and_names_tell_drains_apart() -> None:
    figures = [drawn(view) for view in views("both to the pit")]
    assert [f.title for f in figures] == [
        "Drain profile, inside drain, basement",
        "Drain profile, outside drain, basement",
    ]
    assert len({f.name for f in figures}) == 2
    (alone,) = views("inside")
    assert drawn(alone).title == "Drain profile"


def test_bleeders_are_ticked_at_their_invert_in_both_drains() -> None:
    for view in views("both to the pit"):
        figure, count = drawn(view), len(view.bleeders)
        assert f"Invert of {count} bleeders" in words(figure)
        level = show_level(-7 * 0.0254, "ft-in")
        assert level in words(figure)
        ticks = [
            m for m in figure.marks
            if isinstance(m, Line) and m.layer == "outline" and len(m.points) == 2
            and m.points[0][1] == m.points[1][1] and 2 < m.points[1][0] - m.points[0][0] < 3
        ]  # fmt: skip
        assert len(ticks) == count
        invert = invert_line(figure)[0, 1]
        per = SCALE.per_metre * float(figure.remark.split("drawn ")[1].split()[0])
        over = -7 * 0.0254 - drain_of(view).outlet_invert
        assert ticks[0].points[0][1] - invert == pytest.approx(over * per, abs=1e-6)


def test_every_tee_is_seen_end_on() -> None:
    (view,) = views("pit and two to daylight")
    mouths = [m for m in drawn(view).marks if isinstance(m, Fill) and m.colour == QUIET]
    # The main outlet stands at both ends of the picture.
    assert len(mouths) == len(drain_of(view).lows) + 1


def test_parts_join_to_the_whole_and_none_is_longer_than_half_of_it() -> None:
    (view,) = views("pit and two to daylight")
    count, whole = profile_parts(view), np.ptp(invert_line(drawn(view))[:, 0])
    lengths = [float(np.ptp(invert_line(drawn(view, part))[:, 0])) for part in range(count)]
    assert sum(lengths) == pytest.approx(whole)
    assert 1 < count < 2 * len(drain_of(view).lows)
    assert max(lengths) <= whole / 2 + 1e-6
