"""Results kept by what they were made from: pure work is not done twice while there is room."""

from collections import OrderedDict
from collections.abc import Callable, Hashable
from hashlib import blake2b
from threading import Lock
from typing import Generic, TypeVar

import numpy as np
from numpy.typing import NDArray

T = TypeVar("T")


class Kept(Generic[T]):
    """Results by key, those asked for longest ago dropped first; many threads may ask at once."""

    def __init__(self, room: int, size: Callable[[T], int]) -> None:
        """Hold at most `room` bytes; `size` tells the bytes of one result.

        A result larger than the room is returned and not kept.
        """
        self._room, self._size = room, size
        self._held: OrderedDict[Hashable, T] = OrderedDict()
        self._full = 0
        self._lock = Lock()

    def get(self, key: Hashable, make: Callable[[], T]) -> T:
        """Return the result of a key, made where it is not held."""
        with self._lock:
            if key in self._held:
                self._held.move_to_end(key)
                return self._held[key]
        # Made outside the lock: two threads may make the same, nobody waits for another's work.
        made = make()
        if self._size(made) > self._room:
            return made
        with self._lock:
            if key not in self._held:
                self._held[key] = made
                self._full += self._size(made)
            while self._full > self._room:
                _, gone = self._held.popitem(last=False)
                self._full -= self._size(gone)
        return made

    def clear(self) -> None:
        """Drop everything."""
        with self._lock:
            self._held.clear()
            self._full = 0


def content(*arrays: NDArray[np.generic]) -> bytes:
    """Return a name that tells the content of arrays: their kinds, shapes and values."""
    told = blake2b(digest_size=16)
    for array in arrays:
        told.update(f"{array.dtype.str}{array.shape}".encode())
        told.update(np.ascontiguousarray(array).data)
    return told.digest()
