"""The outlet to daylight on screens: both pictures fit, are read, and say the same levels."""

import pytest
from drain_figures import assert_legible, words

from geometry.designfile import edited
from geometry.units import show_level
from geometry.water.daylight import daylight_runs
from tests.whole.networks import TEXTS
from viz.figures.outlet.screen import outlet_pictures
from viz.job import job

LONG = edited(
    edited(TEXTS["daylight"], ("datum", "instrument"), "105 ft"),
    ("drain", 0, "daylight", 0, "ground"),
    ["0, 6 ft", "100 ft, 2 ft", "200 ft, 1 ft", "400 ft, -1 ft"],
)


@pytest.mark.parametrize(
    "text",
    [TEXTS["daylight"], LONG, edited(LONG, ("project", "units"), "metric")],
    ids=["near", "far", "metric"],
)
def test_both_pictures_fit_are_read_and_say_the_invert_at_the_end(text: str) -> None:
    layout = job(text).layout
    (pair,) = outlet_pictures(layout)
    (run,) = daylight_runs(layout.drains[0])
    for picture, widest in zip(pair, (290.0, 106.0), strict=True):
        assert picture.box.width <= widest + 1e-6
        assert_legible(picture)
        end = show_level(run.end_invert_m, layout.design.project.units)
        assert any(end in said for said in words(picture))


def test_a_house_without_an_outlet_has_no_picture() -> None:
    assert outlet_pictures(job(TEXTS["inside"]).layout) == []
