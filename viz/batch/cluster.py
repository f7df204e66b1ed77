"""Workers of a Dask cluster that is there already; the library is an extra, asked for by name."""

import time
from collections import deque
from collections.abc import Iterable, Iterator
from contextlib import suppress
from importlib import import_module
from importlib.util import find_spec
from typing import Any

from geometry.errors import BedcourseError
from viz.batch.designs import Asked
from viz.batch.outcome import Outcome, outcome_of, program
from viz.batch.pool import DIED, Made, too_long

LIBRARY = "distributed"
HOW = (
    "--scheduler needs the library dask.distributed, which is not installed: "
    "`.venv/bin/uv pip install --require-hashes -r requirements-batch.lock` installs it"
)
_PATIENCE_S = 15
_LOOK_S = 0.25


def there() -> bool:
    """Whether the library is installed."""
    return find_spec(LIBRARY) is not None


def clustered(
    asked: Iterable[Asked], address: str, limit_s: float, with_set: bool
) -> Iterator[tuple[Asked, Made]]:
    """Yield every design with what became of it, as they come, worked at by a cluster.

    address: of its scheduler. A design that passes its limit is given up and no longer waited
    for; its worker goes on with it. Raises BedcourseError where the library or the cluster is not
    there.
    """
    library = _library()
    try:
        client = library.Client(address, timeout=_PATIENCE_S)
    except (OSError, ValueError, TimeoutError) as error:
        why = " ".join(f"{error}".split())[:200]
        raise BedcourseError(f"no cluster answers at {address}: {why}") from None
    with client:
        yield from _worked(library, client, deque(asked), limit_s, with_set)


def _library() -> Any:
    if not there():
        raise BedcourseError(HOW)
    return import_module(LIBRARY)


def _worked(
    library: Any, client: Any, waiting: deque[Asked], limit_s: float, with_set: bool
) -> Iterator[tuple[Asked, Made]]:
    """Keep as many designs at work as the cluster has threads, so that each one's time is known."""
    running: dict[Any, tuple[Asked, float]] = {}
    while waiting or running:
        threads = sum(client.nthreads().values())
        if not threads:
            raise BedcourseError("the cluster has no workers")
        while waiting and len(running) < threads:
            one = waiting.popleft()
            future = client.submit(outcome_of, one, with_set, pure=False)
            running[future] = (one, time.monotonic())
        with suppress(TimeoutError):
            library.wait(list(running), timeout=_LOOK_S, return_when="FIRST_COMPLETED")
        for future, (one, begun) in list(running.items()):
            made = _made(future, begun, limit_s)
            if made is not None:
                del running[future]
                yield one, made


def _made(future: Any, begun: float, limit_s: float) -> Made | None:
    """Return what became of a design, None while that is not known."""
    if not future.done():
        if time.monotonic() - begun <= limit_s:
            return None
        future.cancel()
        return too_long(limit_s), None
    error = future.exception()
    if error is None:
        made: Made = future.result()
        return _same_program(made)
    if type(error).__name__ == "KilledWorker":
        return Outcome("died", DIED), None
    return Outcome("failed", " ".join(f"{type(error).__name__} {error}".split())[:300]), None


def _same_program(made: Made) -> Made:
    """Refuse figures of another version of the program: a table must not mix them."""
    other = made[0].program
    if other == program():
        return made
    return Outcome("failed", f"the cluster runs version {other}, not {program()}"), None
