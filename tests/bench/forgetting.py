"""What the engine remembers, forgotten: so that every run is a first one."""

import gc
from functools import _lru_cache_wrapper

from geometry.solids import carving


def forget() -> None:
    """Empty every store of the engine that remembers what it was asked before."""
    carving.forget()
    for kept in gc.get_objects():
        if isinstance(kept, _lru_cache_wrapper) and kept.__module__.startswith("geometry."):
            kept.cache_clear()
