"""Houses, papers and languages in which what a crew carries is looked at."""

import pytest

from tests.rolls import night
from tests.whole.networks import TEXTS
from viz.language.reader import codes
from viz.sheets.upright import SmallName

Case = tuple[str, SmallName, str]

MANY: list[Case] = [
    (name, paper, code)
    for number, name in enumerate(("l-basement", "metric-house", "foam-stopped", *TEXTS))
    for place, paper in enumerate(("letter", "A4"))
    for code in codes()
    # Examples on both papers in every language; networks so at night, else each on one.
    if number < 3
    or night()
    or (place == number % 2 and code == codes()[number // 2 % len(codes())])
]


def every(few: list[Case]) -> list[object]:
    """The few cases, and all others marked slow."""
    return [*few, *(pytest.param(*m, marks=pytest.mark.slow) for m in MANY if m not in few)]
