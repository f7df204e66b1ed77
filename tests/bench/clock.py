"""The clock of a run: the wall's, or the processor's where other work shares the machine."""

import os
import time

CLOCK = "BEDCOURSE_BENCH_CLOCK"
PROCESSOR = "processor"


def now() -> float:
    """Return seconds since some moment, by the wall or of all threads of this process."""
    return time.process_time() if by_processor() else time.perf_counter()


def by_processor() -> bool:
    """Whether the run counts the processor's time."""
    return os.environ.get(CLOCK) == PROCESSOR
