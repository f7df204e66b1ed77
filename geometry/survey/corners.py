"""Figures over the three corners of many triangles, by columns: far faster than by rows."""

import numpy as np

from geometry.survey.shots import Floats


def lowest(level: Floats) -> Floats:
    """Return the least of three, (k, 3) to (k,)."""
    out: Floats = np.minimum(np.minimum(level[:, 0], level[:, 1]), level[:, 2])
    return out


def highest(level: Floats) -> Floats:
    """Return the greatest of three, (k, 3) to (k,)."""
    out: Floats = np.maximum(np.maximum(level[:, 0], level[:, 1]), level[:, 2])
    return out


def mean(level: Floats) -> Floats:
    """Return the mean of three, (k, 3) to (k,)."""
    out: Floats = (level[:, 0] + level[:, 1] + level[:, 2]) / 3
    return out
