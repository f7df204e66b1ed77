"""Worker processes of this machine: each design's time is limited, and a death costs that one.

Every worker is a process pool of one, so that a pool that breaks tells which design broke it.
"""

import os
import signal
import time
from collections import deque
from collections.abc import Callable, Iterable, Iterator
from concurrent.futures import FIRST_COMPLETED, Future, ProcessPoolExecutor, wait
from concurrent.futures.process import BrokenProcessPool
from contextlib import suppress
from multiprocessing import get_context, parent_process
from threading import Thread
from typing import TypeAlias

from geometry.errors import BedcourseError
from viz.batch.designs import Asked
from viz.batch.outcome import Outcome, outcome_of

Made: TypeAlias = tuple[Outcome, bytes | None]
Work: TypeAlias = Callable[[Asked, bool], Made]
DIED = "the process that worked at it died; the design may ask for more memory than there is"
# How long the workers are left alone between two looks at the clock, s.
_LOOK_S = 0.25
_START_S = 30.0
_KILL = getattr(signal, "SIGKILL", signal.SIGTERM)


def too_long(limit_s: float) -> Outcome:
    """Return the outcome of a design that was given up."""
    note = f"given up after {limit_s:g} s; --limit gives it longer"
    return Outcome("took too long", note, seconds=limit_s, limit_s=limit_s)


def pooled(
    asked: Iterable[Asked], workers: int, limit_s: float, with_set: bool, work: Work = outcome_of
) -> Iterator[tuple[Asked, Made]]:
    """Yield every design with what became of it, as they come, worked at by so many processes.

    limit_s: time for each, seconds. work: what is done with each. Raises BedcourseError where no
    worker can be started. When it is closed, or stopped by an exception, its processes are ended.
    """
    waiting = deque(asked)
    slots = [_Slot(work) for _ in range(max(1, min(workers, len(waiting))))]
    try:
        while waiting or any(slot.busy for slot in slots):
            for slot in slots:
                if waiting and not slot.busy:
                    slot.give(waiting.popleft(), with_set)
            wait([s.future for s in slots if s.future], _LOOK_S, FIRST_COMPLETED)
            for slot in slots:
                made = slot.taken(limit_s)
                if made is not None:
                    yield made
    finally:
        for slot in slots:
            slot.end()


def _begin() -> None:
    """Leave Ctrl-C to the parent, and end with it however it ends."""
    signal.signal(signal.SIGINT, signal.SIG_IGN)
    Thread(target=_end_with_parent, daemon=True).start()


def _ready(_work: Work) -> int:
    """Return the process's number once it has read in all that its work needs."""
    return os.getpid()


def _end_with_parent() -> None:
    parent = parent_process()
    if parent is not None:
        parent.join()
        os._exit(1)


class _Slot:
    """One worker process and the design it works at."""

    def __init__(self, work: Work) -> None:
        self._work = work
        self.future: Future[Made] | None = None
        self._asked: Asked | None = None
        self._begun = 0.0
        self._start()

    def _start(self) -> None:
        # A fresh interpreter: what is open here is not open there, on every system alike.
        self._pool = ProcessPoolExecutor(1, get_context("spawn"), _begin)
        self._pid: Future[int] = self._pool.submit(_ready, self._work)

    @property
    def busy(self) -> bool:
        """Whether it works at a design."""
        return self._asked is not None

    def give(self, asked: Asked, with_set: bool) -> None:
        """Set it to work."""
        self._asked, self._begun = asked, 0.0
        try:
            self.future = self._pool.submit(self._work, asked, with_set)
        except BrokenProcessPool:
            self.end()
            self._start()
            self.future = self._pool.submit(self._work, asked, with_set)

    def taken(self, limit_s: float) -> tuple[Asked, Made] | None:
        """Return the design and what became of it once that is known, or once its time is up."""
        asked, future = self._asked, self.future
        if asked is None or future is None:
            return None
        if future.done():
            made = self._result(future)
        elif self._passed(limit_s):
            made = (too_long(limit_s), None)
            self.end()
            self._start()
        else:
            return None
        self._asked = self.future = None
        return asked, made

    def _passed(self, limit_s: float) -> bool:
        """Whether the design has had its time; starting the process does not count."""
        if not self._pid.done():
            return False
        self._begun = self._begun or time.monotonic()
        return time.monotonic() - self._begun > limit_s

    def _result(self, future: Future[Made]) -> Made:
        try:
            return future.result()
        except BrokenProcessPool:
            if not self._pid.done() or self._pid.exception() is not None:
                raise BedcourseError("no worker process can be started on this machine") from None
            self.end()
            self._start()
            return Outcome("died", DIED), None

    def end(self) -> None:
        """End the process, at work or not."""
        self._pool.shutdown(wait=False, cancel_futures=not self.busy)
        if self.busy:
            # One that is only starting is waited for, so that nothing is left behind.
            with suppress(Exception):
                os.kill(self._pid.result(_START_S), _KILL)
