"""A batch from what is asked for to what became of it; what is finished is not run again."""

from collections.abc import Callable, Generator, Iterator, Sequence
from contextlib import closing
from dataclasses import dataclass
from pathlib import Path

from viz.batch.cluster import clustered
from viz.batch.designs import Asked
from viz.batch.outcome import Outcome
from viz.batch.pool import Made, pooled
from viz.batch.store import Store

Tell = Callable[[int, int, Outcome], None]


@dataclass(frozen=True)
class How:
    """How a batch is run. scheduler: address of a cluster; else this machine's own workers."""

    out: Path
    workers: int
    limit_s: float
    with_sets: bool = False
    scheduler: str = ""


@dataclass(frozen=True)
class Line:
    """One design that was asked for, and what became of it."""

    asked: Asked
    outcome: Outcome


def run(asked: Sequence[Asked], how: How, tell: Tell = lambda *_: None) -> tuple[Line, ...]:
    """Return a line for every design, in the order they were asked for.

    Each result is kept when it is known. tell: hears after each how many are known, of how many,
    and the last one. Raises BedcourseError where no worker or cluster is to be had, FileError.
    """
    store = Store(how.out)
    # Designs of one content are worked at once.
    alike: dict[str, list[Asked]] = {}
    for one in asked:
        alike.setdefault(store.key(one), []).append(one)
    found = dict(_kept(store, alike, how))
    count = sum(len(alike[key]) for key in found)
    for outcome in found.values():
        tell(count, len(asked), outcome)
    missing = [rows[0] for key, rows in alike.items() if key not in found]
    with closing(_worked(missing, how)) as worked:
        for one, (outcome, pdf) in worked:
            key = store.key(one)
            found[key] = outcome
            for name in (row.name for row in alike[key] if pdf):
                store.keep_set(name, pdf or b"")
            store.keep(key, outcome)
            count += len(alike[key])
            tell(count, len(asked), outcome)
    return tuple(Line(one, found[store.key(one)]) for one in asked)


def _worked(missing: Sequence[Asked], how: How) -> Generator[tuple[Asked, Made], None, None]:
    unread = [one for one in missing if one.unread]
    for one in unread:
        yield one, (Outcome("cannot be read", one.unread), None)
    sound = [one for one in missing if not one.unread]
    if not sound:
        return
    if how.scheduler:
        yield from clustered(sound, how.scheduler, how.limit_s, how.with_sets)
    else:
        yield from pooled(sound, how.workers, how.limit_s, how.with_sets)


def _kept(store: Store, alike: dict[str, list[Asked]], how: How) -> Iterator[tuple[str, Outcome]]:
    """Yield what is finished already: a result, and the permit sets where they are asked for."""
    for key, rows in alike.items():
        outcome = store.kept(key)
        if outcome is None or not _stands(outcome, how.limit_s):
            continue
        drawn = outcome.figures is None or bool(outcome.set_note)
        if not how.with_sets or drawn or all(store.has_set(row.name) for row in rows):
            yield key, outcome


def _stands(outcome: Outcome, limit_s: float) -> bool:
    """Whether a result needs no other try: one that took too long does with more time."""
    if outcome.status == "took too long":
        return outcome.limit_s is not None and limit_s <= outcome.limit_s
    return outcome.finished
