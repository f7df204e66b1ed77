"""What is kept for all visits is made once, and dropped where it outgrows its room."""

import pytest

from viz.panels.shared import shared, weight

LARGE = 1000


@pytest.fixture
def made():
    return []


def test_a_result_is_made_once_and_is_the_same_for_all(made):
    @shared(4)
    def once(word: str) -> tuple[str, ...]:
        made.append(word)
        return (word,)

    assert once("a") is once("a")
    assert once("b") == ("b",)
    assert made == ["a", "b"]


def test_what_outgrows_the_room_is_dropped(made):
    @shared(8, room=3 * LARGE)
    def heavy(word: str) -> bytes:
        made.append(word)
        return bytes(LARGE)

    for word in ("a", "b", "c", "a", "d", "d", "a"):
        heavy(word)
    # The fourth is more than the room: those before it go, it stays.
    assert made == ["a", "b", "c", "d", "a"]


def test_two_functions_do_not_share_their_results():
    @shared(4)
    def one(word: str) -> str:
        return f"one {word}"

    @shared(4)
    def other(word: str) -> str:
        return f"other {word}"

    assert (one("a"), other("a"), one("a")) == ("one a", "other a", "one a")


def test_a_weight_grows_with_what_is_held():
    text = "x" * LARGE
    assert weight(text) == weight((text,)) == weight({"key": text}) == LARGE
    assert weight((text, text)) == 2 * LARGE
    assert weight(object()) > 0
