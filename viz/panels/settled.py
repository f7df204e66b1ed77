"""The server's memory: what stays is searched for garbage once, what is free is given back."""

import ctypes
import gc
from functools import cache
from threading import Lock, Timer

# The usual library of C under Linux keeps what a thread frees in an arena of that thread. Runs of
# the page are threads, one after another: a few arenas serve them all.
_ARENA_MAX, _ARENAS = -8, 2
# Seconds from a run of the page until its memory is given back, together with that of others.
_REST_S = 10.0


@cache
def _memory() -> ctypes.CDLL | None:
    """Return the library of C, told to keep few arenas; None where it knows nothing of them."""
    try:
        library = ctypes.CDLL(None)
        library.mallopt(_ARENA_MAX, _ARENAS)
    except (AttributeError, OSError, TypeError):
        return None
    return library if hasattr(library, "malloc_trim") else None


class _Rest:
    """A rest after runs of the page, in which garbage and free pages of memory are given back.

    What is there at the first one, modules above all, is left out of every later search: by then
    nearly all that the app needs is loaded.
    """

    def __init__(self) -> None:
        self._lock, self._waits, self._first = Lock(), False, True

    def comes(self) -> None:
        """See to it that a rest comes soon; one is enough for all runs before it."""
        with self._lock:
            waits, self._waits = self._waits, True
        if not waits:
            rest = Timer(_REST_S, self._used)
            rest.daemon = True
            rest.start()

    def _used(self) -> None:
        with self._lock:
            self._waits = False
            first, self._first = self._first, False
        gc.collect()
        if first:
            gc.freeze()
        if library := _memory():
            library.malloc_trim(0)


give_back = _Rest().comes
_memory()
