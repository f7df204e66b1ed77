"""Ready beginnings: sound on every example and on a fresh design, all else in the file kept."""

import tomllib
from collections.abc import Callable
from itertools import product

import pytest

from geometry.designfile import read_design, start_text
from geometry.errors import DesignError
from geometry.materials.catalogue import BOARDS, find
from geometry.plan.edits import length_of, right_angled, simple
from geometry.plan.outline import signed_area
from geometry.presets.draining import with_drain
from geometry.presets.drains import DRAINS
from geometry.presets.floors import FLOORS, with_floor
from geometry.presets.shapes import SHAPES, sized
from geometry.presets.shaping import with_shape
from viz.carried import examples

FOOT = 0.3048
TEXTS = {"fresh": start_text()} | {k: f.read_text(encoding="utf-8") for k, f in examples().items()}
DEMO = TEXTS["l-basement"]
# One house for each in the usual run, all of them in the slow one.
FAST = "fresh"
HOUSES = [name if name == FAST else pytest.param(name, marks=pytest.mark.slow) for name in TEXTS]
IN_MM = start_text().replace('units = "ft-in"', 'units = "metric"')


def notes(text: str) -> list[str]:
    return [line.partition("#")[2].strip() for line in text.split("\n") if "#" in line]


@pytest.mark.parametrize("key", SHAPES)
@pytest.mark.parametrize("name", HOUSES)
def test_each_shape_is_sound_with_what_the_file_says(name: str, key: str) -> None:
    text = TEXTS[name]
    new = with_shape(text, key, {})
    design, before = read_design(new), read_design(text)
    assert design.floor == before.floor
    assert design.project == before.project
    outlines = [area.corners for area in design.areas]
    assert all(simple(o) and right_angled(o) and signed_area(o) > 0 for o in outlines)
    assert not any(area.piers for area in design.areas)
    # Nothing of another size or place of the file is touched.
    kept = {"area", "drain", "sump"}
    raw, old = tomllib.loads(new), tomllib.loads(text)
    assert {k: v for k, v in raw.items() if k not in kept} == {
        k: v for k, v in old.items() if k not in kept
    }


@pytest.mark.parametrize("key", FLOORS)
@pytest.mark.parametrize("name", HOUSES)
def test_each_floor_is_sound_and_keeps_the_outline(name: str, key: str) -> None:
    new = with_floor(TEXTS[name], key)
    design, before = read_design(new), read_design(TEXTS[name])
    assert [a.corners for a in design.areas] == [a.corners for a in before.areas]
    assert design.drains == before.drains
    assert [layer.name for layer in design.floor.layers] == [c.name for c in FLOORS[key].courses]
    assert notes(new) == notes(TEXTS[name])
    assert with_floor(new, key) == new


def test_a_floor_speaks_the_file_s_units() -> None:
    for text, sign in ((start_text(), "in"), (IN_MM, "mm")):
        layers = tomllib.loads(with_floor(text, "usual"))["floor"]["layer"]
        assert {row["thickness"].split()[-1] for row in layers} - {"mil"} == {sign}


@pytest.mark.parametrize("floor", FLOORS.values(), ids=lambda floor: floor.key)
def test_a_floor_s_words_are_whole(floor) -> None:
    rows = [c.row(system) for c in floor.courses for system in ("ft-in", "metric")]
    assert all(find(row["material"]) for row in rows)
    foam = [c for c in floor.courses if c.role == "insulation"]
    assert all(c.feet[0] in BOARDS and c.metric[0] in BOARDS for c in foam)
    assert floor.about.endswith(".")
    assert str(floor.source)


@pytest.mark.parametrize("key", DRAINS)
@pytest.mark.parametrize("name", HOUSES)
def test_each_drain_is_sound_and_empties_as_it_says(name: str, key: str) -> None:
    preset = DRAINS[key]
    new = with_drain(TEXTS[name], key)
    drains = read_design(new).drains
    assert {d.line for d in drains} == {
        line for line in ("outside", "inside") if getattr(preset, line)
    }
    assert sorted(str(d.outlet) for d in drains) == sorted(
        [preset.outlet, *["bleeders"] * (len(drains) - 1)]
    )
    assert any(d.daylight for d in drains) == (preset.outlet == "daylight")
    again = with_drain(new, key)
    assert read_design(again).drains == drains


def test_a_drain_that_stays_keeps_its_pipe_and_a_pit_is_made_where_one_is_needed() -> None:
    stays = read_design(with_drain(DEMO, "both-pit")).drains[0]
    was = read_design(DEMO).drains[0]
    assert (stays.pipe, stays.holes, stays.stone, stays.wrap) == (
        was.pipe, was.holes, was.stone, was.wrap
    )  # fmt: skip
    bare = start_text().replace('[sump]\nat = "3 ft 6 in, 6 ft"', "[soil]\n#")
    assert "sump" not in tomllib.loads(bare)
    assert read_design(with_drain(bare, "inside-pit")).sump


def test_sizes_are_the_shape_s_and_stand_in_the_file_s_units() -> None:
    said = {"width": "40 ft", "depth": "30'-6\"", "leg": "20 ft", "body": "16 ft"}
    (area,) = read_design(with_shape(DEMO, "l", said)).areas
    lengths = [length_of(area.corners, n) / FOOT for n in range(6)]
    assert lengths == pytest.approx([40, 16, 20, 14.5, 20, 30.5])
    corners = tomllib.loads(with_shape(IN_MM, "t", {"leg": "5 m"}))["area"][0]["corners"]
    assert "9200 mm, 5400 mm" in corners


@pytest.mark.parametrize(
    ("key", "words", "sentence"),
    [
        ("l", {"leg": "wide"}, "is not a length"),
        ("l", {"leg": "40 ft"}, "at most 38'-0\""),
        ("l", {"width": "3 ft"}, "out of range"),
        ("t", {"leg": "30 ft"}, "at most 26'-0\""),
        ("u", {"left": "38 ft"}, "make the overall width larger"),
        ("deeper", {"step": "-2 ft"}, "no step down"),
    ],
)
def test_a_size_that_cannot_be_is_said_so(key: str, words: dict[str, str], sentence: str) -> None:
    with pytest.raises(DesignError) as refused:
        with_shape(DEMO, key, words)
    (fault,) = refused.value.faults
    assert sentence in fault.sentence
    labels = {size.key: size.label for size in SHAPES[key].sizes}
    assert fault.place in labels.values()


@pytest.mark.parametrize("text", ["", "area = []", "area = 3", "drain = 3\nsump = 4\nfloor = 5"])
def test_an_odd_file_is_changed_or_refused_in_a_sentence(text: str) -> None:
    with pytest.raises(DesignError, match="no area to give a shape to"):
        with_shape(text, "l", {})
    made = [lambda k=k: with_floor(text, k) for k in FLOORS]
    for change in made + [lambda k=k: with_drain(text, k) for k in DRAINS]:
        said = refusal(change)
        assert not said or "cannot be changed here" in said


def refusal(change: Callable[[], str]) -> str:
    """Why a change is refused; nothing where it is made, and then it reads again."""
    try:
        tomllib.loads(change())
    except DesignError as error:
        return str(error)
    return ""


def test_a_drain_written_within_a_line_is_changed_too() -> None:
    text = 'drain = { line = "inside" }\n' + start_text().partition("[drain]")[0]
    new = with_drain(text, "both-daylight")
    assert {d.line for d in read_design(new).drains} == {"outside", "inside"}


def test_a_text_that_is_no_toml_is_refused() -> None:
    for change in (
        lambda: with_shape("[", "l", {}), lambda: with_floor("[", "usual"),
        lambda: with_drain("[", "outside-pit"),
    ):  # fmt: skip
        with pytest.raises(DesignError):
            change()


@pytest.mark.slow
@pytest.mark.parametrize("start", ["fresh", "l-basement", "metric-house"])
def test_shapes_floors_and_drains_go_together_in_either_order(start: str) -> None:
    for number, (shape, drain) in enumerate(product(SHAPES, DRAINS)):
        text, floor = TEXTS[start], list(FLOORS)[number % len(FLOORS)]
        if number % 2:
            text = with_drain(with_floor(with_shape(text, shape, {}), floor), drain)
        else:
            text = with_shape(with_drain(with_floor(text, floor), drain), shape, {})
        try:
            read_design(text)
        except DesignError as error:
            pytest.fail(f"{shape}, {floor}, {drain}: {error}")


def test_usual_sizes_are_sound_sizes() -> None:
    for shape, system in product(SHAPES.values(), ("ft-in", "metric")):
        assert sized(shape, {}, system, None).keys() == {size.key for size in shape.sizes}
