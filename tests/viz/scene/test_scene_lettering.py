import numpy as np
import pytest
from PIL import Image

from viz.scene import lettering
from viz.scene.callouts import Callout
from viz.scene.palette import PAPER


def test_long_names_break_at_words_and_keep_every_word():
    rows = lettering.rows("Foundation wall, poured concrete\n8 in thick", 26, 220)
    assert " ".join(line for line, bold in rows if bold) == "Foundation wall, poured concrete"
    assert rows[-1] == ("8 in thick", False)
    assert len(rows) == 3
    past = 2 * lettering.EDGE + lettering.RUN + lettering.CLEAR
    assert lettering.width([rows], 26) <= 220 + past * 26


def test_lines_of_a_broken_name_are_about_as_long_as_each_other():
    rows = lettering.rows("Cleanout at corner 6", 26, 240)
    assert [line for line, _ in rows] == ["Cleanout at", "corner 6"]


def test_one_word_too_wide_stands_alone():
    assert lettering.rows("Waterproofing up", 30, 10) == (("Waterproofing", True), ("up", True))


@pytest.mark.parametrize("side", ["left", "right"])
def test_words_stay_in_the_column_and_the_leader_reaches_the_spot(side):
    size, height = (600, 300), 20
    rows = (("Drain stone", True), ("18 x 14 in", False))
    spot = (300.0, 80.0)
    image = Image.new("RGB", size, PAPER)
    bend = lettering.bend([rows], height)
    turn = bend if side == "left" else size[0] - bend
    tall, drop = lettering.room(height, 2), lettering.drop(height)
    lettering.lettered(image, [Callout(rows, side, spot, turn, tall, drop, 150.0)], height)
    pixels = np.asarray(image, dtype=int)
    dark = pixels.max(axis=2) < 120
    _, columns = np.nonzero(dark)
    column = lettering.width([rows], height)
    words = columns < column if side == "left" else columns > size[0] - column
    assert words.sum() > 200
    assert columns.min() > 2
    assert columns.max() < size[0] - 3
    assert dark[78:83, 298:303].any()
    beyond = columns > 310 if side == "left" else columns < 290
    assert not beyond.any()
