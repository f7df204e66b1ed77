"""The residential code's tables on footings and walls, as far as they are at hand."""

import pytest

from geometry.rules.footings import table_size
from geometry.rules.walls import wall_answer

INCH = 0.0254


# Table R403.1(1) of the IRC, 2015 and later, 2,000 psf and 30 psf of snow: inches for one, two and
# three stories on a basement, and the thickness which the ledge beyond an 8 in wall asks for.
@pytest.mark.parametrize(("stories", "wide", "ledge"), [(1, 14, 3), (2, 17, 4.5), (3, 20, 6)])
def test_the_footing_table(stories: int, wide: float, ledge: float) -> None:
    psf = 47.880259
    size = table_size(stories, "basement", 2000 * psf, 30 * psf, 9.0)
    assert size is not None
    assert size.width_m / INCH == pytest.approx(wide)
    assert size.thickness_for(8 * INCH) / INCH == pytest.approx(max(6, ledge))
    assert size.source.sure == "seen"
    # 36 ft wide is 2 x 2 ft more: 4 in of width and 2 in of thickness.
    wider = table_size(stories, "basement", 2000 * psf, 30 * psf, 36 * 0.3048)
    assert wider is not None
    assert (wider.width_m - size.width_m) / INCH == pytest.approx(4)
    assert (wider.thickness_m - size.thickness_m) / INCH == pytest.approx(2)


def test_the_footing_table_is_no_guess() -> None:
    psf = 47.880259
    assert table_size(2, "basement", 1000 * psf, 0, 9) is None
    assert table_size(2, "basement", 2000 * psf, 50 * psf, 9) is None
    recalled = table_size(2, "basement", 1500 * psf, 0, 9)
    assert recalled is not None
    assert "from memory" in str(recalled.source)
    # 23 x 6 in by the table, which stands out 7 1/2 in under an 8 in wall.
    assert recalled.thickness_m / INCH == pytest.approx(6)
    assert recalled.thickness_for(8 * INCH) / INCH == pytest.approx(7.5)


def test_a_wall_gets_a_table_value_an_engineer_or_a_question() -> None:
    foot = 0.3048
    block = wall_answer("grouted block", 8 * INCH, 9 * foot, 4 * foot, water=False)
    assert block.answer == "table value"
    assert block.source.sure == "second-hand"
    for kind, thick, high, fill in (
        ("poured concrete", 8, 9, 4), ("grouted block", 6, 9, 4),
        ("grouted block", 8, 10, 4), ("grouted block", 8, 9, 5),
    ):  # fmt: skip
        said = wall_answer(kind, thick * INCH, high * foot, fill * foot, water=False)
        assert said.answer == "table not at hand"
    assert wall_answer("block", 1, 1, 1, water=True).answer == "needs an engineer"
