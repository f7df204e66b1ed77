"""The ways to make the edge as files: each says the very design, comments kept."""

import pytest

from geometry.designfile import read_design
from geometry.layout.lay import lay_out
from geometry.options import edge_options
from geometry.report import report
from geometry.variants.edges import edge_texts
from viz.carried import examples


@pytest.mark.slow
@pytest.mark.parametrize("name", list(examples()))
def test_each_way_is_a_file_that_gives_its_levels(name):
    text = examples()[name].read_text(encoding="utf-8")
    wanted = {o.title: o.design for o in edge_options(read_design(text)) if o.design and not o.same}
    found = dict(edge_texts(text))
    assert set(found) == set(wanted)
    for title, made in found.items():
        levels = report(lay_out(read_design(made))).levels
        assert levels == report(lay_out(wanted[title])).levels
        assert text.splitlines()[0] in made
