"""Who goes next where many visits ask at once: one at a time, what is quick before pictures.

One process runs one thread's Python at a time, so twenty at once would all be answered last. In
turn the first are answered soon, and everybody's figures come before anybody's picture.
"""

from collections import deque
from collections.abc import Iterator
from contextlib import contextmanager
from threading import Condition
from time import monotonic

# A turn that lasts longer no longer keeps others from beginning theirs.
TURN_S = 1.0


class Turns:
    """A queue for what is quick and one for what may be long; the long begins behind the quick."""

    def __init__(self, turn_s: float = TURN_S) -> None:
        """Take turns of at most so many seconds."""
        self._turn_s = turn_s
        self._changed = Condition()
        # By whether quick: who waits, the first first, and until when a turn keeps others waiting.
        self._waiting: dict[bool, deque[object]] = {True: deque(), False: deque()}
        self._ends: dict[bool, dict[object, float]] = {True: {}, False: {}}

    @property
    def waiting(self) -> int:
        """How many wait for their turn."""
        return sum(map(len, self._waiting.values()))

    @contextmanager
    def taken(self, quick: bool) -> Iterator[None]:
        """Wait for one's turn and take it while the context lasts.

        quick: of the queue that goes first. Who has a turn must not ask for another of its kind.
        """
        mine = object()
        with self._changed:
            self._waiting[quick].append(mine)
            while (pause := self._pause(quick, mine)) > 0:
                self._changed.wait(pause)
            self._waiting[quick].remove(mine)
            self._ends[quick][mine] = monotonic() + self._turn_s
            self._changed.notify_all()
        try:
            yield
        finally:
            with self._changed:
                del self._ends[quick][mine]
                self._changed.notify_all()

    def _pause(self, quick: bool, mine: object) -> float:
        """Return the seconds after which to ask again unless something changes; 0 to go."""
        before = [True] if quick else [True, False]
        ends = [end for kind in before for end in self._ends[kind].values()]
        left = max((end - monotonic() for end in ends), default=0.0)
        first = self._waiting[quick][0] is mine and (quick or not self._waiting[True])
        return left if left > 0 else 0.0 if first else self._turn_s


_TURNS = Turns()
taken = _TURNS.taken
