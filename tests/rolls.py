"""How many designs are rolled and how many examples are tried: one factor, `pytest --rolls`.

The counts in the tests are those of every run; a factor of 20 tries twenty times as many.
"""

USUAL = 1.0
_FACTOR = [USUAL]


def use(factor: float) -> None:
    """Take a factor before the tests are read; tests/conftest.py does."""
    _FACTOR[:] = [factor]


def rolls(usual: int) -> int:
    """Return how many to roll where a usual run rolls so many; one at least."""
    return max(1, round(usual * _FACTOR[0]))


def seeds(usual: int, first: int = 0) -> range:
    """Return the seeds to roll, from the first on, where a usual run rolls so many."""
    return range(first, first + rolls(usual))


def night() -> bool:
    """Whether more than usual is asked for: whole meshes are tried, not a line through them."""
    return _FACTOR[0] > USUAL
