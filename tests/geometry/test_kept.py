"""Results kept by their inputs: made once, dropped for want of room, the same for all threads."""

from concurrent.futures import ThreadPoolExecutor

import numpy as np

from geometry.solids.kept import Kept, content


def test_a_result_is_made_once_and_the_longest_unused_goes_first() -> None:
    kept = Kept[str](6, len)
    made: list[str] = []

    def ask(key: str) -> str:
        return kept.get(key, lambda: made.append(key) or key * 2)  # type: ignore[func-returns-value]

    assert [ask(k) for k in "abca"] == ["aa", "bb", "cc", "aa"]
    assert made == ["a", "b", "c"]
    ask("d")  # no room: b is the longest unused
    assert [ask(k) for k in "acd"] == ["aa", "cc", "dd"]
    assert made == ["a", "b", "c", "d"]
    ask("b")
    assert made[-1] == "b"


def test_what_has_no_room_is_made_and_drops_nothing() -> None:
    kept = Kept[str](4, len)
    assert kept.get("small", lambda: "abc") == "abc"
    assert kept.get("large", lambda: "abcdef") == "abcdef"
    assert kept.get("small", lambda: "made again") == "abc"


def test_many_threads_get_what_they_asked_for() -> None:
    kept = Kept[str](40, len)
    keys = [str(n % 17) for n in range(400)]
    with ThreadPoolExecutor(8) as pool:
        found = list(pool.map(lambda key: kept.get(key, lambda: f"<{key}>"), keys))
    assert found == [f"<{key}>" for key in keys]


def test_a_name_tells_values_kind_and_shape() -> None:
    whole = np.arange(6)
    others = [whole + 1, whole.astype(float), whole.reshape(2, 3), whole.reshape(3, 2)]
    assert len({content(array) for array in (whole, *others)}) == 5
    assert content(whole) == content(np.arange(12)[::2] // 2)
    assert content(whole, whole[:2]) != content(whole[:2], whole)
