"""Turns: one at a time, what is quick before what is long; nobody is kept waiting by a long one."""

from threading import Event, Thread

from viz.panels.turns import Turns

PATIENCE_S = 10


def queued(turns: Turns, wanted: list[bool], done: list[tuple[int, bool]]) -> list[Thread]:
    """Start a thread for each turn wanted; each is in the queue before the next one starts."""
    threads = []
    for number, quick in enumerate(wanted):

        def run(number: int = number, quick: bool = quick) -> None:
            with turns.taken(quick):
                done.append((number, quick))

        threads.append(Thread(target=run, daemon=True))
        threads[-1].start()
        while turns.waiting < number + 1:
            pass
    return threads


def test_the_quick_go_first_and_each_kind_in_its_order() -> None:
    turns = Turns(turn_s=PATIENCE_S)
    done: list[tuple[int, bool]] = []
    with turns.taken(quick=True):
        threads = queued(turns, [False, True, False, True], done)
        assert done == []
    for thread in threads:
        thread.join(PATIENCE_S)
    assert done == [(1, True), (3, True), (0, False), (2, False)]


def test_the_quick_begin_beside_a_long_one_and_the_long_do_not() -> None:
    turns = Turns(turn_s=PATIENCE_S)
    done: list[tuple[int, bool]] = []
    with turns.taken(quick=False):
        with turns.taken(quick=True):
            pass
        threads = queued(turns, [False], done)
        assert done == []
    threads[0].join(PATIENCE_S)
    assert done == [(0, False)]


def test_a_turn_that_lasts_keeps_nobody_waiting() -> None:
    turns, begun = Turns(turn_s=0.01), Event()
    with turns.taken(quick=False):

        def run() -> None:
            with turns.taken(quick=False):
                begun.set()

        Thread(target=run, daemon=True).start()
        assert begun.wait(PATIENCE_S)


def test_what_goes_wrong_in_a_turn_gives_it_back() -> None:
    turns = Turns(turn_s=PATIENCE_S)
    for quick in (True, False):
        try:
            with turns.taken(quick):
                raise ValueError
        except ValueError:
            pass
    with turns.taken(quick=False):
        assert turns.waiting == 0
