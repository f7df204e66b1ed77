"""Hazen-Williams against a printed friction table.

77 Illinois Administrative Code 906, appendix A, exhibit I: friction loss in Schedule 40 plastic
pipe, C = 150, ft per 100 ft. Bores from the ASTM D1785 table (1 to 2 in from memory).
"""

import pytest

from geometry.formulas.friction import PLASTIC_C
from geometry.formulas.pumps import Discharge

INCH, FOOT, GPM = 0.0254, 0.3048, 231 * 0.0254**3 / 60
# bore in: {gpm: ft per 100 ft}
TABLE = {
    1.049: {5: 1.52, 10: 5.50},
    1.380: {10: 1.46, 15: 3.06, 20: 5.23},
    1.610: {20: 2.46, 25: 3.75, 30: 5.22},
    2.067: {20: 0.74, 30: 1.54, 40: 2.62, 50: 3.98},
    3.068: {50: 0.58, 60: 0.81, 80: 1.38, 100: 2.09},
    4.026: {100: 0.55, 150: 1.17},
    6.065: {400: 0.99, 450: 1.22},
}
CASES = [(bore, gpm, loss) for bore, row in TABLE.items() for gpm, loss in row.items()]


@pytest.mark.parametrize(("bore", "gpm", "loss"), CASES)
def test_friction_is_the_table_s(bore: float, gpm: float, loss: float) -> None:
    pipe = Discharge(100 * FOOT, bore * INCH, PLASTIC_C)
    assert pipe.friction(gpm * GPM) / FOOT == pytest.approx(loss, rel=0.02)
