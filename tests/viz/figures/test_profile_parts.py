"""The drain's profile in parts, with narrow sides, and with a table for its places."""

import re
from itertools import pairwise

import numpy as np
import pytest

from geometry.layout.drain import DrainLayout
from geometry.layout.lay import Layout, lay_out
from geometry.units import show_length, show_level
from tests.viz.figures.drain_figures import assert_legible, example, layouts, words
from viz.drawing.figure import Figure
from viz.drawing.marks import Fill, Line, Text
from viz.drawing.scale import Scale
from viz.figures.profile.profile import profile_figure, profile_parts

AT_128 = Scale("1:128", 128)


def drawn(
    layout: Layout,
    part: int | None,
    compact: bool = True,
    widest: float = float("inf"),
    scale: Scale = AT_128,
) -> Figure:
    figure = profile_figure(layout, scale, 2.5, part=part, compact=compact, widest=widest)
    assert figure is not None
    return figure


def drained() -> list[Layout]:
    return [layout for layout in layouts() if layout.drain]


def parts() -> list[tuple[Layout, int]]:
    return [(layout, part) for layout in drained() for part in range(profile_parts(layout))]


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


def length_of(figure: Figure, scale: Scale = AT_128) -> float:
    return float(np.ptp(invert_line(figure)[:, 0])) / scale.per_metre


def low_in_the_middle() -> Layout:
    return next(x for x in drained() if not drain_of(x).route.closed and profile_parts(x) == 2)


def off_the_middle() -> Layout:
    design = example("l-basement").design
    assert design.drains
    drain = design.drains[0].model_copy(update={"high_corner": 4})
    return lay_out(design.model_copy(update={"drains": (drain,)}))


def test_a_loop_has_two_parts_and_a_run_as_many_as_it_has_branches() -> None:
    for layout in layouts():
        drain = layout.drain
        branches = [] if drain is None else [run for run in drain.branches() if run > 1e-6]
        assert profile_parts(layout) == len(branches)


def test_a_part_that_is_not_there_is_refused() -> None:
    with pytest.raises(IndexError):
        drawn(example("l-basement"), 2)


@pytest.mark.parametrize("ratio", [64, 128, 480])
@pytest.mark.parametrize("compact", [False, True])
def test_words_of_parts_can_be_read(ratio: int, compact: bool) -> None:
    assert len(parts()) > 24
    for layout, part in parts():
        assert_legible(drawn(layout, part, compact, scale=Scale(f"1:{ratio}", ratio)))


@pytest.mark.parametrize("ratio", [32, 128, 240])
def test_words_between_narrow_sides_can_be_read(ratio: int) -> None:
    for layout in drained():
        assert_legible(drawn(layout, None, scale=Scale(f"1:{ratio}", ratio)))


def test_parts_show_inverts_where_the_pipe_lies() -> None:
    for layout, part in parts():
        drain, figure = drain_of(layout), drawn(layout, part)
        first = drain.low if drain.route.closed else 0.0
        line = invert_line(figure)
        for x in np.linspace(line[0, 0], line[-1, 0], 31):
            level = drain.invert(first + x / AT_128.per_metre)
            expected = level * AT_128.per_metre * tall_of(figure)
            assert np.interp(x, line[:, 0], line[:, 1]) == pytest.approx(expected, abs=1e-6)


def test_parts_together_are_the_whole_pipe() -> None:
    for layout in drained():
        lines = [invert_line(drawn(layout, n)) for n in range(profile_parts(layout))]
        whole = invert_line(drawn(layout, None))
        assert lines[0][0, 0] == pytest.approx(whole[0, 0])
        assert lines[-1][-1, 0] == pytest.approx(whole[-1, 0])
        for one, two in pairwise(lines):
            assert one[-1, 0] == pytest.approx(two[0, 0])


def test_every_corner_stands_in_a_part_with_its_invert() -> None:
    for layout in drained():
        drain, system = drain_of(layout), layout.design.project.units
        said = [
            "\n".join(words(drawn(layout, n))).lower() + "\n" for n in range(profile_parts(layout))
        ]
        for number, station in enumerate(drain.route.stations[: len(drain.route.points)]):
            here = [w for w in said if f"corner {drain.outline_corner(number)}\n" in w]
            assert here
            assert all(show_level(drain.invert(float(station)), system) in w for w in here)


def test_titles_name_the_corners_along_each_part() -> None:
    layout = example("l-basement")
    titles = [drawn(layout, n).title for n in range(2)]
    assert titles == ["Drain profile, corners 1 to 3", "Drain profile, corners 4 to 6"]
    assert [drawn(layout, n).name for n in range(2)] == ["drain-profile-1", "drain-profile-2"]


def test_the_high_point_says_the_length_of_the_way_shown() -> None:
    layout = off_the_middle()
    ahead, behind = drain_of(layout).branches()
    assert abs(ahead - behind) > 1
    for part, way in enumerate((ahead, behind)):
        figure = drawn(layout, part)
        assert length_of(figure) == pytest.approx(way)
        said = words(figure)
        assert show_length(way, "ft-in", 4) in said
        assert not [w for w in said if w.startswith("or ")]


def test_only_the_highest_end_of_a_run_is_its_high_point() -> None:
    layout = low_in_the_middle()
    ahead, behind = drain_of(layout).branches()
    assert abs(ahead - behind) > 0.1
    marked = ["HIGH POINT" in words(drawn(layout, n)) for n in range(2)]
    assert marked == [behind > ahead, ahead > behind]
    assert all("LOW POINT" in words(drawn(layout, n)) for n in range(2))


def test_each_part_tells_its_own_cleanout_and_the_way_to_the_sump() -> None:
    layout = example("l-basement")
    assert layout.lead is not None
    for part, corner in enumerate((2, 6)):
        said = "\n".join(words(drawn(layout, part)))
        assert f"Corner {corner}: cleanout up to" in said
        assert f"to invert {show_level(layout.lead.end_invert, 'ft-in')}." in said
        assert "as at the left" not in said


def test_a_level_loop_is_cut_halfway_round() -> None:
    layout = example("foam-stopped")
    for part in range(2):
        said = words(drawn(layout, part))
        assert "Halfway round" in said
        assert "laid level" in said


def test_narrow_sides_leave_the_pipe_its_width() -> None:
    for name in ("l-basement", "metric-house", "foam-stopped"):
        layout = example(name)
        for part in (None, 0, 1):
            figure = drawn(layout, part)
            beside = figure.box.width - np.ptp(invert_line(figure)[:, 0])
            assert 0 < beside < 75


def test_narrow_sides_still_name_every_level() -> None:
    for layout in drained():
        said, area = " ".join(words(drawn(layout, None))).lower(), drain_of(layout).area
        for name, level in (
            ("top of footing", area.tof),
            ("underside of footing", area.footing_bottom),
            ("subgrade under the floor", area.subgrade),
            ("finished floor", area.finished_floor),
        ):
            assert name in said
            assert show_level(level, layout.design.project.units) in said


def test_parts_fit_small_papers() -> None:
    for part in range(2):
        box = drawn(example("l-basement"), part, widest=253).box
        assert box.width <= 253
        assert box.height <= 138


def tabled(scale: Scale) -> list[tuple[Layout, Figure]]:
    """Profiles whose columns are a little too wide, where a table can help; all stay in."""
    found = []
    for layout in drained():
        wide = drawn(layout, None, scale=scale).box.width
        figure = drawn(layout, None, widest=wide - 1.0, scale=scale)
        if figure.box.width < wide:
            assert figure.box.width <= wide - 1.0 + 1e-6
            found.append((layout, figure))
    return found


def test_places_too_many_for_columns_stand_in_a_table() -> None:
    scale = Scale("1:480", 480)
    found = tabled(scale)
    assert len(found) > 10
    for layout, figure in found:
        assert_legible(figure)
        drain, system = drain_of(layout), layout.design.project.units
        texts = [m for m in figure.marks if isinstance(m, Text)]
        letters = [t for t in texts if t.bold and len(t.words) == 1]
        assert len(letters) >= len(drain.route.points)
        for tag in letters:
            row = next(t for t in texts if t.words == tag.words and not t.bold)
            level = drain.invert(start_of(drain) + tie_of(figure, tag) / scale.per_metre)
            figures = [t.words for t in texts if abs(t.at[1] - row.at[1]) < 1e-6]
            assert show_level(level, system) in figures


def start_of(drain: DrainLayout) -> float:
    return drain.low if drain.route.closed else 0.0


def tie_of(figure: Figure, tag: Text) -> float:
    """Where on paper the tie begins that ends above a letter."""
    ties = [m.points for m in figure.marks if isinstance(m, Line) and m.layer == "leaders"]
    feet = [p for p in ties if len(p) == 3 and p[1][0] == p[2][0] and p[0][1] > p[2][1]]
    return min(feet, key=lambda p: abs(p[2][0] - tag.at[0]) + abs(p[2][1] - tag.at[1]))[0][0]


def test_arrows_of_parts_point_down_the_pipe() -> None:
    for layout, part in parts():
        figure = drawn(layout, part)
        line = invert_line(figure)
        heads = [m for m in figure.marks if isinstance(m, Fill) and m.layer == "labels"]
        assert len(heads) == (1 if drain_of(layout).rise else 0)
        for head in heads:
            xs = [x for x, _ in head.shape.exterior.coords]
            tip = max(set(xs), key=lambda x: abs(x - head.shape.centroid.x))
            levels = np.interp((tip, head.shape.centroid.x), line[:, 0], line[:, 1])
            assert levels[0] < levels[1]
