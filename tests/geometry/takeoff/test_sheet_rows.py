"""The sheet under the slab: what counts as one, and the tape for its laps and openings."""

import pytest

from geometry.takeoff.order import order
from geometry.takeoff.sheet import sheet_rows, strip_layouts
from tests.houses import house

NARROW = ("[soil]", '[order.sheet]\nroll_width = "10 ft"\nroll_length = "100 ft"\n\n[soil]')
WIDE = ("[soil]", '[order.sheet]\nroll_width = "40 ft"\nroll_length = "100 ft"\n\n[soil]')


def test_the_retarder_alone_is_laid_in_strips():
    ((body, _),) = strip_layouts(house())
    assert body.label.role == "retarder"
    (row,) = (r for r in order(house()).rows if r.group == "sheet" and r.unit == "m2")
    # 30 x 20 ft outside walls of 8 in, less the pit, 18 1/2 in over its walls, and a column.
    inside = (30 - 16 / 12) * (20 - 16 / 12) - 3.141592653589793 / 4 * (18.5 / 12) ** 2 - 1
    assert row.in_place == pytest.approx(inside * 0.3048**2, rel=1e-6)


def test_tape_runs_along_every_seam_and_round_every_opening():
    """From a roll wider than the room no seam is left: round pit and column alone."""
    (_, wide), (_, narrow) = (
        next(strip_layouts(layout)) for layout in (house(WIDE), house(NARROW))
    )
    assert wide.seam_m == 0.0
    around = 3.141592653589793 * 18.5 * 0.0254 + 4 * 0.3048
    assert wide.holes_m == pytest.approx(around, rel=2e-3)
    assert narrow.seam_m > 0
    for laid, change in ((wide, [WIDE]), (narrow, [NARROW])):
        (tape,) = (row for row, _ in sheet_rows(house(*change)) if row.unit == "m")
        assert tape.in_place == pytest.approx(laid.seam_m + laid.holes_m)
