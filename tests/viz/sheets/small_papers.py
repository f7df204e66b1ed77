"""Houses, papers and languages in which what a crew carries is looked at."""

import pytest

from tests.whole.networks import TEXTS
from viz.language.reader import codes
from viz.sheets.upright import SmallName

Case = tuple[str, SmallName, str]

MANY: list[Case] = [
    (name, paper, code)
    for name in ("l-basement", "metric-house", "foam-stopped", *TEXTS)
    for paper in ("letter", "A4")
    for code in codes()
]


def every(few: list[Case]) -> list[object]:
    """The few cases, and all others marked slow."""
    return [*few, *(pytest.param(*m, marks=pytest.mark.slow) for m in MANY if m not in few)]
