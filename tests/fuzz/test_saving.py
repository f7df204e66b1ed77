"""A file that is saved is the old one or the new one, whole, whatever happens meanwhile."""

import os
import random
import resource
import signal
import time
from pathlib import Path

import pytest
import tomlkit
from hypothesis import example, given
from hypothesis import strategies as st

from geometry.designfile import FileError, edited, read_design, save
from geometry.errors import DesignError
from geometry.project import Design
from tests.fuzz.hostile import AREA, HEAD
from tests.rolls import rolls

OLD, NEW = b"old\n" * 60_000, b"new!\n" * 50_000


def child(work) -> int:
    """Run work in a process of its own; return its number."""
    number = os.fork()
    if number == 0:
        try:
            work()
        finally:
            os._exit(0)
    return number


def test_a_kill_leaves_the_old_file_or_the_new_one(tmp_path: Path) -> None:
    file, dice = tmp_path / "house.toml", random.Random(3)  # noqa: S311
    save(file, OLD)

    def saving() -> None:
        while True:
            save(file, NEW)
            save(file, OLD)

    for _ in range(rolls(12)):
        number = child(saving)
        time.sleep(dice.uniform(0.0, 0.03))
        os.kill(number, signal.SIGKILL)
        os.waitpid(number, 0)
        assert file.read_bytes() in (OLD, NEW)
        assert [p.name for p in tmp_path.iterdir() if not p.name.startswith(".")] == ["house.toml"]


def test_a_full_disk_keeps_the_old_file_and_says_so(tmp_path: Path) -> None:
    file, said = tmp_path / "house.toml", tmp_path / "said"
    save(file, OLD)

    def saving() -> None:
        signal.signal(signal.SIGXFSZ, signal.SIG_IGN)
        resource.setrlimit(resource.RLIMIT_FSIZE, (10_000, 10_000))
        try:
            save(file, NEW)
        except FileError as error:
            said.write_text(str(error), encoding="utf-8")

    os.waitpid(child(saving), 0)
    assert said.read_text(encoding="utf-8") == f"{file} cannot be written: file too large"
    assert file.read_bytes() == OLD
    assert sorted(p.name for p in tmp_path.iterdir()) == ["house.toml", "said"]


@pytest.mark.parametrize(
    "place",
    [
        "/proc/house.toml", "/proc/self/mem/house.toml", "/dev/null/house.toml",
        "x" * 300, "a/" * 3000 + "x", "nul\0name",
    ],
    ids=lambda place: place[:20].replace("\0", "0"),
)  # fmt: skip
def test_a_place_that_takes_no_file_is_one_sentence(tmp_path: Path, place: str) -> None:
    with pytest.raises(FileError, match="cannot be written"):
        save(tmp_path / place, NEW)
    assert not list(tmp_path.rglob(".x*"))


@given(st.text(max_size=80))
@example('"""')
@example("'''\\")
@example("a\nb = 1\n[x]\r\n\t\x7f\x00")
@example("\ud800")
@example("]]\n[[area]]")
def test_any_words_typed_stay_words_in_the_file(words: str) -> None:
    try:
        text = edited(HEAD + AREA, ("project", "address"), words)
    except DesignError:
        return
    assert tomlkit.parse(text)["project"]["address"] == words
    found, refused = read(text)
    assert refused in ([], ["project > address"])
    assert found is None or (found.project.address == words and len(found.areas) == 1)


def read(text: str) -> tuple[Design | None, list[str]]:
    """The design, or the places of its faults."""
    try:
        return read_design(text), []
    except DesignError as error:
        return None, [fault.place for fault in error.faults]
