"""The drain's profile: levels and lengths on paper, its words, and that they can be read."""

import re
from itertools import pairwise

import numpy as np
import pytest

from geometry.layout.drain import DrainLayout
from geometry.layout.lay import Layout, lay_out
from geometry.units import show_elevation, show_fall, show_length, show_level, show_rod
from tests.designs import design_of, seeded_raw
from tests.viz.figures.drain_figures import assert_legible, example, layouts, words
from viz.drawing.figure import Figure
from viz.drawing.marks import Fill, Line, Text
from viz.drawing.scale import SCALES, Scale
from viz.figures.profile.profile import profile_figure


def small_scale(layout: Layout) -> Scale:
    return min(SCALES[layout.design.project.units], key=lambda scale: abs(scale.ratio - 100))


def drawn(layout: Layout, text: float = 2.5, tall: int | None = None) -> Figure:
    figure = profile_figure(layout, small_scale(layout), text, tall)
    assert figure is not None
    return figure


def drained() -> list[Layout]:
    return [layout for layout in layouts() if layout.drain]


def drain_of(layout: Layout) -> DrainLayout:
    assert layout.drain is not None
    return layout.drain


def invert_line(figure: Figure) -> np.ndarray:
    found = [m for m in figure.marks if isinstance(m, Line) and m.layer == "invert"]
    assert len(found) == 1
    return np.array(found[0].points)


def tall_of(figure: Figure) -> int:
    found = re.search(r"drawn (\d+) times", figure.remark)
    return int(found[1]) if found else 1


def test_no_drain_no_profile() -> None:
    bare = [layout for layout in layouts() if layout.drain is None]
    assert bare
    assert all(profile_figure(layout, small_scale(layout), 2.5) is None for layout in bare)


@pytest.mark.parametrize("text", [2.5, 3.0])
def test_words_of_many_profiles_can_be_read(text: float) -> None:
    assert len(drained()) > 12
    for layout in drained():
        assert_legible(drawn(layout, text))


@pytest.mark.parametrize("ratio", [4, 8, 12, 20, 32, 50, 64, 120, 200, 480])
def test_profiles_can_be_read_at_any_scale(ratio: int) -> None:
    for layout in drained()[:8]:
        figure = profile_figure(layout, Scale(f"1:{ratio}", ratio), 2.5)
        assert figure is not None
        assert_legible(figure)


def test_inverts_lie_on_paper_where_the_pipe_lies() -> None:
    for layout in drained():
        drain, figure = drain_of(layout), drawn(layout)
        per_metre = small_scale(layout).per_metre
        first = drain.low if drain.route.closed else 0.0
        line = invert_line(figure)
        assert np.all(np.diff(line[:, 0]) > 0)
        for run in np.linspace(line[0, 0], line[-1, 0], 97) / per_metre:
            level = np.interp(run * per_metre, line[:, 0], line[:, 1])
            expected = drain.invert(first + run) * per_metre * tall_of(figure)
            assert level == pytest.approx(expected, abs=1e-6)


def test_the_pipe_is_as_long_as_the_trench_less_its_ends() -> None:
    for layout in drained():
        drain, figure = drain_of(layout), drawn(layout)
        long = np.ptp(invert_line(figure)[:, 0]) / small_scale(layout).per_metre
        if drain.route.closed:
            assert long == pytest.approx(drain.route.length, abs=1e-9)
        else:
            assert 0.5 * drain.route.length < long < drain.route.length


def test_a_loop_rises_to_its_high_point_and_falls_back() -> None:
    line = invert_line(drawn(example("l-basement")))
    assert len(line) == 3
    assert line[0, 1] == pytest.approx(line[2, 1], abs=1e-9)
    assert line[1, 1] > line[0, 1]


def test_every_corner_says_its_invert_elevation_and_distance() -> None:
    for layout in drained():
        drain, said = drain_of(layout), "\n".join(words(drawn(layout))).lower()
        system, datum = layout.design.project.units, layout.design.datum
        for number, station in enumerate(drain.route.stations[: len(drain.route.points)]):
            level = drain.invert(float(station))
            assert f"corner {drain.outline_corner(number)}" in said
            assert show_level(level, system) in said
            assert show_elevation(datum.top_of_footing + level, system) in said
            if datum.instrument:
                assert show_rod(datum.instrument - datum.top_of_footing - level, system) in said
            far = shortest(drain, float(station))
            if system == "ft-in" and far is not None:
                assert show_length(far, system, 4) in said


def shortest(drain: DrainLayout, station: float) -> float | None:
    """The way down the pipe to the low point; None at the high point, which has two."""
    if not drain.route.closed:
        return abs(station - drain.low)
    if abs(station - drain.high) < 1e-6:
        return None
    ahead = (drain.high - drain.low) % drain.route.length
    run = (station - drain.low) % drain.route.length
    return run if run < ahead else drain.route.length - run


def test_the_column_of_a_place_holds_its_own_figures() -> None:
    layout = example("l-basement")
    drain, system = drain_of(layout), layout.design.project.units
    texts = [m for m in drawn(layout).marks if isinstance(m, Text)]
    for corner in range(1, 7):
        name = next(t for t in texts if t.words == f"Corner {corner}")
        column = {t.words for t in texts if abs(t.at[0] - name.at[0]) < 1e-6}
        assert show_level(drain.invert(drain.corner_station(corner)), system) in column


def test_places_stand_in_order_under_the_picture() -> None:
    for layout in drained():
        ties = [m for m in drawn(layout).marks if isinstance(m, Line) and m.layer == "leaders"]
        feet = [m.points for m in ties if len(m.points) == 3 and m.points[0][1] > m.points[2][1]
                and m.points[1][0] == m.points[2][0]]  # fmt: skip
        assert len(feet) >= 2
        for one, two in pairwise(sorted(feet)):
            assert one[2][0] < two[2][0]


def test_cleanouts_sump_and_falls_are_told() -> None:
    layout = example("l-basement")
    said = words(drawn(layout))
    assert layout.lead is not None
    assert f"to invert {show_level(layout.lead.end_invert, 'ft-in')}" in said
    assert said.count("cleanout up to") == 2
    assert show_level(layout.risers(drain_of(layout))[0].top, "ft-in") in said
    assert said.count("falls 1/16 in per ft") == 2
    assert said.count("HIGH POINT") == 1
    assert said.count("LOW POINT") == 2


def test_arrows_point_down_the_pipe() -> None:
    for layout in drained():
        figure = drawn(layout)
        line = invert_line(figure)
        heads = [m for m in figure.marks if isinstance(m, Fill) and m.layer == "labels"]
        assert bool(heads) == bool(drain_of(layout).rise)
        for head in heads:
            xs = [x for x, _ in head.shape.exterior.coords]
            tip = max(set(xs), key=lambda x: abs(x - head.shape.centroid.x))
            levels = np.interp((tip, head.shape.centroid.x), line[:, 0], line[:, 1])
            assert levels[0] <= levels[1] + 1e-9


def test_a_high_point_off_the_middle_says_both_ways_and_both_falls() -> None:
    design = example("l-basement").design
    assert design.drains
    drain = design.drains[0].model_copy(update={"high_corner": 4})
    layout = lay_out(design.model_copy(update={"drains": (drain,)}))
    figure, made = drawn(layout), drain_of(layout)
    assert_legible(figure)
    said = words(figure)
    ahead, behind = made.branches()
    assert abs(ahead - behind) > 1
    assert {show_length(ahead, "ft-in", 4), f"or {show_length(behind, 'ft-in', 4)}"} <= set(said)
    falls = {show_fall(made.rise / run, "ft-in") for run in (ahead, behind)}
    assert {f"falls {fall}" for fall in falls} <= set(said)


def test_the_pipe_is_named_inside_itself() -> None:
    figure = drawn(example("l-basement"))
    name = next(m for m in figure.marks if isinstance(m, Text) and "D2729" in m.words)
    assert name.words.endswith(", holes down")
    line = invert_line(figure)
    low = np.interp(name.at[0], line[:, 0], line[:, 1])
    drain = drain_of(example("l-basement"))
    bore = drain.pipe.inside_diameter_m * small_scale(example("l-basement")).per_metre
    assert low < name.at[1] < name.at[1] + name.height < low + bore * tall_of(figure)


def test_a_level_drain_has_no_high_point() -> None:
    layout = example("foam-stopped")
    said = words(drawn(layout))
    assert "laid level" in said
    assert "From the outlet" in said
    assert not [w for w in said if "point" in w.lower()]


def test_footing_and_floor_levels_are_named_with_their_figures() -> None:
    for layout in drained():
        said, area = words(drawn(layout)), drain_of(layout).area
        system = layout.design.project.units
        names = " / ".join(said).lower()
        for name, level in (
            ("top of footing", area.tof),
            ("underside of footing", area.footing_bottom),
            ("subgrade under the floor", area.subgrade),
            ("finished floor", area.finished_floor),
        ):
            assert name in names
            assert show_level(level, system) in said


def test_heights_follow_the_asked_enlargement() -> None:
    layout = example("metric-house")
    once, many = drawn(layout, tall=1), drawn(layout, tall=20)
    assert "one scale" in once.remark
    assert "20 times" in many.remark
    rises = [np.ptp(invert_line(figure)[:, 1]) for figure in (once, many)]
    assert rises[1] == pytest.approx(20 * rises[0], rel=1e-9)
    assert rises[0] == pytest.approx(
        drain_of(layout).rise * small_scale(layout).per_metre, rel=1e-9
    )


def test_a_steep_drain_keeps_its_words_apart() -> None:
    seed = next(n for n in range(200) if (raw := seeded_raw(n)) and "drain" in raw)
    raw = seeded_raw(seed)
    assert raw is not None
    steep = {**raw, "drain": {**raw["drain"], "fall": "1:12"}}
    layout = lay_out(design_of(steep))
    figure = drawn(layout)
    assert_legible(figure)
    assert drain_of(layout).rise > 0.5
