"""The plan for small papers: signs at their places, all that is said of them in the key."""

from math import hypot

import pytest
import shapely
from shapely import LineString

from geometry.layout.lay import Layout
from geometry.units import show_elevation, show_length, show_level
from tests.rolls import seeds
from tests.viz.figures.plan.reading import (
    EXAMPLES,
    FOOT,
    SCALES,
    SMALL,
    all_finite,
    clashes,
    cut_bounds,
    example,
    light,
    of_layer,
    plain,
    referred,
    rolled,
    room,
    texts,
    words,
)
from viz.drawing.figure import Figure
from viz.drawing.lettering import text_box
from viz.drawing.marks import Fill, Line, Text
from viz.drawing.page import PAPERS
from viz.drawing.scale import SCALES as NAMED
from viz.drawing.scale import Scale
from viz.figures.plan.refs import DetailRef, SectionRef
from viz.sheets.caption import captioned
from viz.sheets.titleblock import room as room_of

HOUSE = ((0, 0), (30, 0), (30, 20), (0, 20))
SIXTEENTH, HUNDREDTH = Scale('1/16" = 1\'-0"', 192), Scale("1:100", 100)

SEEDS = [*range(8), *(pytest.param(n, marks=pytest.mark.slow) for n in seeds(24, 8))]


def signs(figure: Figure) -> list[Text]:
    return [t for t in texts(figure) if t.layer == "signs"]


def key(figure: Figure) -> list[Text]:
    return [t for t in texts(figure) if t.layer == "notes"]


def row(figure: Figure, sign: Text) -> list[str]:
    """The words of the key beside a sign and on the next line, nearest first."""
    near = [t for t in key(figure) if -3.0 * 2.5 < t.at[1] - sign.at[1] < 1.0]
    right = [t for t in near if 0 < t.at[0] - sign.at[0] < 55]
    return [t.words for t in sorted(right, key=lambda t: (-t.at[1], t.at[0]))]


def in_key(figure: Figure) -> dict[str, Text]:
    """The signs that stand in the key, each left of a word of the key on its own baseline."""
    heads = key(figure)
    return {
        s.words: s
        for s in signs(figure)
        if any(abs(t.at[1] - s.at[1]) < 1e-6 and 0 < t.at[0] - s.at[0] < 12 for t in heads)
    }


@pytest.mark.parametrize(
    "widest", [250.0, *(pytest.param(w, marks=pytest.mark.slow) for w in (0.0, 700.0))]
)
@pytest.mark.parametrize("scale", [*SCALES, SIXTEENTH])
@pytest.mark.parametrize("name", EXAMPLES)
def test_words_of_examples_stand_free(name: str, scale: Scale, widest: float) -> None:
    layout = example(name)
    figure = light(layout, scale, widest, *referred(layout))
    assert clashes(figure) == []
    assert all_finite(figure)


@pytest.mark.parametrize("seed", SEEDS)
def test_words_of_rolled_designs_stand_free(seed: int) -> None:
    layout = rolled(seed)
    if layout is None:
        pytest.skip("this seed's design has faults")
    figure = light(layout, SIXTEENTH, 250.0, *referred(layout))
    assert clashes(figure) == []
    assert all_finite(figure)
    assert_inverts_in_key(layout, figure)


def assert_inverts_in_key(layout: Layout, figure: Figure) -> None:
    drain, system = layout.drain, layout.design.project.units
    if drain is None:
        return
    said = [t.words for t in key(figure)]
    stations = [f.station for f in drain.fittings if f.kind == "bend"]
    stations += [] if drain.route.closed else [0.0, drain.route.length]
    for station in (drain.low, drain.high, *stations):
        level = drain.invert(station)
        elevation = layout.design.datum.top_of_footing + level
        assert f"INV {show_level(level, system)}" in said
        assert f"El. {show_elevation(elevation, system)}" in said


@pytest.mark.parametrize("name", EXAMPLES)
def test_the_sign_at_a_corner_leads_to_its_invert_in_the_key(name: str) -> None:
    layout = example(name)
    drain, system = layout.drain, layout.design.project.units
    assert drain is not None
    figure = light(layout, HUNDREDTH)
    told = in_key(figure)
    for bend in (f for f in drain.fittings if f.kind == "bend"):
        corner = drain.outline_corner(bend.corner or 0)
        head, invert = row(figure, told[str(corner)])[:2]
        level = drain.invert(bend.station)
        assert f"orner {corner}" in head
        assert ("CO" in head) == (corner in drain.drain.cleanouts)
        assert invert == f"INV {show_level(level, system)}"
        at = [v * 10 for v in drain.route.at(bend.station)]
        near = [s.words for s in signs(figure) if hypot(s.at[0] - at[0], s.at[1] - at[1]) < 12]
        assert str(corner) in near


@pytest.mark.parametrize("seed", seeds(12))
def test_every_sign_on_the_plan_stands_in_the_key_once(seed: int) -> None:
    layout = rolled(seed)
    if layout is None:
        pytest.skip("this seed's design has faults")
    figure = light(layout, HUNDREDTH)
    told = set(in_key(figure))
    assert told == {s.words for s in signs(figure)}
    steps = [w for w in told if w.startswith("ST")]
    placed = [s.words for s in signs(figure) if not s.words.startswith("ST")]
    assert len(placed) == 2 * (len(told) - len(steps))


@pytest.mark.parametrize("name", EXAMPLES)
def test_areas_stand_by_name_with_their_levels_in_the_key(name: str) -> None:
    layout = example(name)
    system, datum = layout.design.project.units, layout.design.datum.top_of_footing
    figure = light(layout)
    said = " ".join(t.words for t in key(figure))
    for area in layout.areas:
        title = area.name.upper()
        assert title in [t.words for t in texts(figure) if t.layer == "labels"]
        assert title in said
        for word, level in (("TOF", area.tof), ("Finished floor", area.finished_floor)):
            elevation = show_elevation(datum + level, system)
            assert f"{word} {show_level(level, system)} (El. {elevation})" in said


def test_pit_sleeve_steps_and_falls_are_told_in_the_key() -> None:
    said = " ".join(t.words for t in key(light(example("l-basement"))))
    for told in ('Sump 18" inside', "(El. 410.02 ft)", "solid pipe falls 1/4 in per ft",
                 "Footing steps 4'-2\"", "falls 1/16 in per ft along the arrows"):  # fmt: skip
        assert told in said
    assert "laid level" in [t.words for t in key(light(example("foam-stopped")))]


@pytest.mark.parametrize("name", EXAMPLES)
def test_walls_are_drawn_to_scale_and_dimensioned(name: str) -> None:
    layout = example(name)
    figure = light(layout, HUNDREDTH)
    left, low, right, high = layout.ground.house.bounds
    assert cut_bounds(figure) == pytest.approx((left * 10, low * 10, right * 10, high * 10))
    said, system = words(figure), layout.design.project.units
    assert show_length(right - left, system) in said
    assert show_length(high - low, system) in said


def test_a_plain_house_has_no_signs_and_two_dimensions() -> None:
    figure = light(plain(*HOUSE))
    assert not signs(figure)
    assert words(figure).count("30'-0\"") == words(figure).count("20'-0\"") == 1
    assert words(figure).count("HUT") == 2


def paper_fit(layout: Layout, ratio: int, refs: bool) -> bool:
    system = layout.design.project.units
    space = room_of(PAPERS["letter" if system == "ft-in" else "A4"])
    scale = next(s for s in NAMED[system] if s.ratio == ratio)
    more = referred(layout) if refs else ((), ())
    box = captioned(light(layout, scale, space.width, *more), 1, 2.5, system).box
    return box.width <= space.width and box.height <= space.height


@pytest.mark.parametrize("refs", [False, True])
@pytest.mark.parametrize(
    ("name", "ratio"), [("l-basement", 192), ("metric-house", 100), ("foam-stopped", 128)]
)
def test_examples_fit_the_smallest_papers(name: str, ratio: int, refs: bool) -> None:
    assert paper_fit(example(name), ratio, refs)


def test_the_key_stands_beside_the_plan_where_there_is_room_else_under_it() -> None:
    layout = plain(*HOUSE)
    beside, under = light(layout, widest=400.0), light(layout, widest=0.0)
    edge = max(t.at[0] for t in texts(beside) if t.layer == "dimensions")
    assert all(t.at[0] > edge for t in key(beside))
    low = min(room(t).bounds[1] for t in texts(under) if t.layer == "dimensions")
    assert all(t.at[1] < low for t in key(under))
    assert beside.box.width <= 400.0


def test_other_drawings_are_named_flat_and_sections_once() -> None:
    refs = (SectionRef(((-9.0, 2.0), (15.0, 2.0)), "1", "S-3"),)
    figure = light(plain(*HOUSE), refs=refs, details=(DetailRef((0.0, 0.0), 0.8, "7", "S-5"),))
    names = [t.words for t in texts(figure) if t.layer == "names"]
    assert sorted(names) == ["1/S-3", "7/S-5"]
    assert "1/S-3: drawing 1 on sheet S-3." in " ".join(t.words for t in key(figure))
    arrows = [m.shape for m in of_layer(figure, "marks") if isinstance(m, Fill)]
    assert len(arrows) == 2
    # Both look up the sheet, to the left of the way along the cut.
    for arrow in arrows:
        assert arrow.bounds[1] == pytest.approx(20.0)
        assert arrow.bounds[3] > 21.0
    assert max(a.bounds[2] for a in arrows) > 30 * FOOT * 10 > 0 > min(a.bounds[0] for a in arrows)


def test_a_cut_that_starts_in_the_house_is_named_outside() -> None:
    refs = (SectionRef(((2.0, 3.0), (-4.0, 3.0)), "1", "S-3"),)
    figure = light(plain(*HOUSE), refs=refs)
    (name,) = [t for t in texts(figure) if t.layer == "names"]
    assert name.at[0] < 0
    assert clashes(figure) == []


@pytest.mark.parametrize("name", EXAMPLES)
def test_words_stand_free_at_a_scale_far_too_small(name: str) -> None:
    layout = example(name)
    figure = light(layout, SMALL, 250.0, *referred(layout))
    assert clashes(figure) == []
    assert_inverts_in_key(layout, figure)


@pytest.mark.parametrize("name", EXAMPLES)
def test_no_word_is_crossed_by_the_drain_and_the_box_holds_all(name: str) -> None:
    layout = example(name)
    drain = layout.drain
    assert drain is not None
    figure = light(layout, SIXTEENTH)
    pipe = shapely.transform(drain.route.line, lambda xy: xy * SIXTEENTH.per_metre)
    assert not [t.words for t in texts(figure) if pipe.intersects(room(t))]
    box = figure.box
    for text in texts(figure):
        inner = text_box(text)
        assert box.left <= inner.left <= inner.right <= box.right
        assert box.low <= inner.low <= inner.high <= box.high


def test_thin_lines_stop_short_of_signs() -> None:
    layout = example("l-basement")
    figure = light(layout, SIXTEENTH, 250.0, *referred(layout))
    frames = [m for m in of_layer(figure, "signs") if isinstance(m, Line)]
    boxes = [shapely.Polygon(f.points).buffer(-0.05) for f in frames]
    assert len(boxes) == len(signs(figure))
    thin = [m for layer in ("dig", "grid", "dimensions", "section line")
            for m in of_layer(figure, layer) if isinstance(m, Line)]  # fmt: skip
    assert not [m for m in thin for b in boxes if b.intersects(LineString(m.points))]
