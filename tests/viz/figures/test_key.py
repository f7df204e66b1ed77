"""The key names every look that the house has, and no other."""

from collections import Counter
from functools import cache

import pytest

from geometry.layout.lay import Layout
from geometry.solids.foundation import build
from tests.houses import house, without
from viz.drawing.figure import Figure
from viz.drawing.marks import Hatch, Text
from viz.figures.tables.key import key_figure, key_figures
from viz.style.materials import look_of

built = cache(build)


def key(layout: Layout) -> Figure:
    return key_figure(layout, built(layout), 2.5, 140.0)


def words(made: Figure) -> list[str]:
    return [m.words for m in made.marks if isinstance(m, Text)]


@pytest.mark.parametrize("drained", [True, False])
def test_every_look_of_the_house_has_one_row(drained: bool) -> None:
    layout = house() if drained else house(without("drain"), without("sump"))
    foundation = built(layout)
    labels = [s.label for s in (*foundation.solids, foundation.excavation)]
    patterns = {look_of(label).pattern for label in labels}
    counted = Counter(words(key(layout)))
    assert all(counted[pattern] == 1 for pattern in patterns), counted
    assert ("heavy dashed line" in counted) == drained
    assert ("Perforated pipe on the plan" in counted) == drained
    assert ("Cleanout" in counted) == drained


def test_hatches_of_the_key_differ_from_each_other() -> None:
    names = [m.name for m in key(house()).marks if isinstance(m, Hatch)]
    assert names
    assert len(set(names)) == len(names)


def test_materials_are_named_as_in_the_catalogue() -> None:
    said = " ".join(words(key(house())))
    for name in ("Concrete, 3,000 psi", "Washed stone, No. 57", "Class A, 15 mil"):
        assert said.count(name) == 1
    assert "Undisturbed ground: Well-graded gravel (GW)" in said
    assert "Footing bar, cut" in said
    assert "Footing bar, cut" not in words(key(house(("count = 2", "count = 0"))))


def test_pieces_of_the_key_keep_their_height_and_every_row() -> None:
    layout = house()
    pieces = key_figures(layout, built(layout), 2.5, 140.0, 80.0)
    assert len(pieces) > 1
    assert all(p.box.height <= 80.0 for p in pieces)
    heads = {"Sign", "Meaning", "Drawn as"}
    split = Counter(w for p in pieces for w in words(p) if w not in heads)
    assert split == Counter(w for w in words(key(layout)) if w not in heads)


def test_a_level_drain_flows_no_way() -> None:
    assert "Way of flow" in words(key(house()))
    assert "Way of flow" not in words(key(house(("1/16 in per ft", "level"))))
