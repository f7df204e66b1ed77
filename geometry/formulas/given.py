"""What an equation may be given; anything else is the programmer's mistake, a ValueError."""

from collections.abc import Callable
from math import inf, isfinite


def positive(**values: float) -> None:
    """Raise ValueError unless every named value is finite and above zero."""
    for name, value in values.items():
        if not (isfinite(value) and value > 0):
            raise ValueError(f"{name} must be above zero, not {value}")


def not_negative(**values: float) -> None:
    """Raise ValueError unless every named value is finite and zero or more."""
    for name, value in values.items():
        if not (isfinite(value) and value >= 0):
            raise ValueError(f"{name} must be zero or more, not {value}")


def within(low: float, high: float, **values: float) -> None:
    """Raise ValueError unless every named value lies from `low` to `high`, both included."""
    for name, value in values.items():
        if not low <= value <= high:
            raise ValueError(f"{name} must lie between {low} and {high}, not {value}")


def where_it_rises_to(
    wanted: float, rising: Callable[[float], float], low: float, high: float = inf
) -> float:
    """Argument between `low` and `high` at which the rising function reaches `wanted`.

    Halves the span until no float lies between; with no upper end it is sought by doubling.
    Raises ValueError when the value is not reached within the span.
    """
    if high == inf:
        high = max(1.0, 2 * low)
        while rising(high) < wanted and high < 1e12:
            high *= 2
    if not rising(low) <= wanted <= rising(high):
        raise ValueError(f"{wanted} is not reached between {low} and {high}")
    while low < (middle := (low + high) / 2) < high:
        if rising(middle) < wanted:
            low = middle
        else:
            high = middle
    return high
