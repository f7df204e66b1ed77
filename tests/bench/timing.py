"""Calls timed again and again: least, median and greatest."""

import gc
from collections.abc import Callable, Iterable, Mapping, Sequence
from statistics import median
from typing import Any

from tests.bench.clock import now
from tests.bench.row import MS, Beside, Ms, Row

Work = Callable[[], Any]
# Three runs at least; no more are begun when a call has had these seconds.
FEW, ENOUGH_S = 3, 10.0
# A first call is left out, unless it takes so long that what it warms up is nothing beside it.
LONG_S = 1.0
# Results that differ by a greater share are not of the same thing.
WRONG = 1e-4


def timed(work: Work, repeats: int, before: Work | None = None) -> Ms:
    """Return least, median and greatest milliseconds of a call."""
    return in_turns({"": work}, repeats, before)[""]


def in_turns(works: Mapping[str, Work], repeats: int, before: Work | None = None) -> dict[str, Ms]:
    """Return the times of several calls that take turns, so that a busy machine slows all alike.

    before: called before each, not timed. Long calls are repeated fewer times.
    """
    first = {name: once(work, before) for name, work in works.items()}
    times = {name: [ms] if ms > LONG_S * MS else [] for name, ms in first.items()}
    for _ in range(repeats):
        for name, work in works.items():
            if not _enough(times[name], repeats):
                times[name].append(once(work, before))
    return {name: spread(found) for name, found in times.items()}


def spread(times: Iterable[float]) -> Ms:
    """Return least, median and greatest."""
    row = list(times)
    return min(row), median(row), max(row)


def _enough(times: Sequence[float], repeats: int) -> bool:
    return len(times) >= repeats or (len(times) >= FEW and sum(times) > ENOUGH_S * MS)


def once(work: Work, before: Work | None = None) -> float:
    """Return the milliseconds of one call."""
    if before:
        before()
    gc.collect()
    start = now()
    work()
    return (now() - start) * MS


def told(what: str, took: Ms, aim: float | None = None, note: str = "") -> Row:
    """Return times as a line."""
    return Row(what, took[1], aim=aim, note=note, least=took[0], most=took[2])


def beside(
    what: str, own: Work, peers: Mapping[str, tuple[Work, str]], repeats: int,
    before: Work | None = None, aim: float | None = None,
) -> list[Beside]:  # fmt: skip
    """Return the engine beside its peers. peers: the call, and how far its result agrees."""
    works = {"": own, **{name: work for name, (work, _) in peers.items()}}
    took = in_turns(works, repeats, before)
    return [
        Beside(what, name, took[""], took[name], result, aim) for name, (_, result) in peers.items()
    ]


def agreed(own: float, theirs: float) -> str:
    """Return how far two results agree, in words; they must to a share of 1e-4."""
    off = abs(theirs / own - 1)
    assert off < WRONG, f"the peer disagrees: {theirs:g} for {own:g}"
    return f"equal to {max(off, 1e-12):.0e}"
