"""Sections and details of many random sound designs can all be drawn."""

import xml.etree.ElementTree as ET

import pytest

from geometry.layout.lay import lay_out
from geometry.sections.telling import telling_cuts
from geometry.solids.foundation import build
from tests.designs import design_of, seeded_raw
from viz.export.svg import to_svg
from viz.pictures import Cutting, detail_window, section_of


@pytest.mark.slow
@pytest.mark.parametrize("seed", range(60))
def test_every_telling_cut_is_drawn(seed: int) -> None:
    raw = seeded_raw(seed)
    if raw is None:
        pytest.skip("this seed's design has faults")
    layout = lay_out(design_of(raw))
    foundation = build(layout)
    cuts = telling_cuts(layout)
    assert cuts
    for cut in cuts:
        asked = [Cutting(cut.name, cut.line, "ARCH D")]
        if window := detail_window(layout, foundation, cut.line):
            asked.append(Cutting(cut.name, cut.line, "ANSI B", window=window))
        for cutting in asked:
            drawn = ET.fromstring(to_svg(section_of(layout, foundation, cutting)))  # noqa: S314
            assert len(list(drawn.iter())) > 50
