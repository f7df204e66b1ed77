"""What a list of tickets may hold: columns, amounts, places, lines that cannot be read."""

import pytest

from geometry.takeoff.tickets import read_tickets, ticket_line, with_ticket

GOOD = "2026-04-02,stone-57,3 t,cellar"


@pytest.mark.parametrize(
    ("amount", "good"),
    [("1000 t", True), ("1001 t", False), ("1000 m3", True), ("1001 m3", False), ("0 m3", False),
     ("0.5 m3", True), ("-1 m3", False), ("3", False)],
)  # fmt: skip
def test_a_load_is_more_than_nothing_and_less_than_a_ship(amount: str, good: bool) -> None:
    read = read_tickets(GOOD.replace("3 t", amount))
    assert bool(read.tickets) == good
    assert bool(read.broken) != good


@pytest.mark.parametrize(
    ("line", "good"),
    [(GOOD, True), (GOOD.removesuffix(",cellar"), True), (GOOD + ",more", False),
     (GOOD.replace("cellar", "p" * 60), True), (GOOD.replace("cellar", "p" * 61), False),
     (GOOD.replace("cellar", "a\x07b"), False),
     (GOOD.replace("cellar", '"' + " " * 500 + '"'), False)],
)  # fmt: skip
def test_a_ticket_is_one_short_line_of_three_or_four_columns(line: str, good: bool) -> None:
    assert bool(read_tickets(line).tickets) == good


def test_after_many_broken_lines_the_rest_is_not_read() -> None:
    read = read_tickets("\n".join(["broken"] * 70 + [GOOD]))
    assert len(read.broken) == 51
    assert "mend these first" in read.broken[-1].sentence
    assert read.broken[-1].line == 51
    assert read.tickets == ()
    few = read_tickets("\n".join(["broken"] * 49 + [GOOD]))
    assert (len(few.broken), len(few.tickets)) == (49, 1)


def test_a_place_that_looks_like_a_formula_is_written_so_that_none_runs() -> None:
    line = ticket_line("2026-04-02", "stone-57", "3 t", "=1+1")
    assert line == "2026-04-02,stone-57,3 t,'=1+1"
    (ticket,) = read_tickets(line).tickets
    assert ticket.place == "=1+1"
    assert read_tickets(GOOD.replace("cellar", "'quoted")).tickets[0].place == "'quoted"
    assert ticket_line("2026-04-02", "stone-57", "3 t", 'the "heap", north').endswith(
        '"the ""heap"", north"'
    )


def test_a_list_gets_its_head_only_where_it_is_empty() -> None:
    assert with_ticket("\n", GOOD).splitlines()[1] == "date,material,amount,place"
    assert with_ticket(GOOD, GOOD) == f"{GOOD}\n{GOOD}\n"
    assert with_ticket(f"{GOOD}\n", GOOD) == f"{GOOD}\n{GOOD}\n"


@pytest.mark.parametrize(
    ("day", "quoted"), [("d" * 40, '"' + "d" * 40 + '"'), ("d" * 41, '"' + "d" * 37 + '..."')]
)
def test_what_cannot_be_read_is_quoted_in_a_few_letters(day: str, quoted: str) -> None:
    (broken,) = read_tickets(GOOD.replace("2026-04-02", day)).broken
    assert broken.sentence.startswith(f"{quoted} is no date")
