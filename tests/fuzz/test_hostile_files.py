"""Whatever a file holds: a design or sentences, in stated time and memory, never a traceback."""

import json
import subprocess
import sys
from pathlib import Path

import pytest

from geometry.designfile import FileError, load, read_design
from geometry.errors import DesignError
from geometry.survey.reading import LARGEST_BYTES, read_shots
from geometry.takeoff.tickets import read_tickets
from tests.dice import Seeded
from tests.fuzz.doors import PEAK, SECONDS
from tests.fuzz.hostile import DESIGNS, KEPT_FILES, LIMITS, SHOT_FILES, TICKET_FILES, mutated
from tests.rolls import seeds
from viz.batch.designs import Asked
from viz.batch.outcome import outcome_of
from viz.carried import demo, demo_shots, examples

TICKETS = b"date,material,amount,place\n2026-04-02,stone-57,14.2 tons,basement\n"


@pytest.mark.parametrize("name", LIMITS)
def test_what_no_house_holds_is_refused_by_a_limit_in_one_sentence(name: str) -> None:
    text, word = LIMITS[name]
    with pytest.raises(DesignError) as caught:
        read_design(text)
    said = [f.sentence for f in caught.value.faults if word in f"{f.place} {f.sentence}"]
    assert said
    assert all(len(sentence) < 200 and "\n" not in sentence for sentence in said)


@pytest.mark.parametrize("name", ["too many", "too wide"])
def test_shots_no_crew_takes_are_refused_in_one_sentence(name: str) -> None:
    (fault,) = read_shots(SHOT_FILES[name], read_design(load(demo()))).faults
    assert "more than 200,000 shots or 100 columns" in str(fault)


def test_tickets_no_job_has_are_told_by_line_and_cut_short() -> None:
    read = read_tickets("x" * 900_000 + "\n" + "a,b,c,d\n" * 100_000)
    assert "900,000 characters" in read.broken[0].sentence
    assert len(read.broken) <= 51
    assert read.broken[-1].sentence == "more lines follow that cannot be read; mend these first"


def test_a_list_may_hold_five_thousand_tickets_and_a_line_five_hundred_letters() -> None:
    ticket = "2026-04-02,stone-57,14 tons,floor"
    assert not read_tickets(f"{ticket}\n" * 5000).broken
    (broken,) = read_tickets(f"{ticket}\n" * 5001).broken
    assert (broken.line, "5,000" in broken.sentence) == (5001, True)
    assert not read_tickets(ticket.ljust(500)).broken
    assert read_tickets(ticket.ljust(501)).broken


def test_a_file_without_end_is_not_read_to_its_end() -> None:
    with pytest.raises(FileError, match="larger than 1 MB"):
        load(Path("/dev/zero"))
    too_large = b"1,1,1\n" * (LARGEST_BYTES // 6 + 1)
    (fault,) = read_shots(too_large, read_design(load(demo()))).faults
    assert "larger than 20 MB" in str(fault)


def tried(folder: Path, files: dict[str, dict[str, bytes]]) -> list[dict]:
    """What became of each file in a process of its own; its peak is within what is stated."""
    count = 0
    for door, held in files.items():
        (folder / door).mkdir(parents=True)
        for name, data in held.items():
            (folder / door / name).write_bytes(data)
            count += 1
    # Cores are shared: what is held is the processor's time, this only ends a hang.
    done = subprocess.run(
        [sys.executable, "-m", "tests.fuzz.doors", str(folder)],
        capture_output=True, timeout=60 + 5 * SECONDS * count, check=False,
    )  # fmt: skip
    assert done.returncode == 0, done.stderr.decode()[-2000:]
    *rows, last = [json.loads(line) for line in done.stdout.splitlines()]
    assert len(rows) == count
    assert last["peak"] < PEAK, f"{last['peak'] / 1024**2:.0f} MB"
    return rows


def holds(rows: list[dict]) -> None:
    for row in rows:
        assert not row["failed"], row
        assert row["seconds"] < SECONDS, row
        assert "Traceback" not in row["said"]


@pytest.mark.slow
def test_hostile_files_are_answered_in_time_and_little_memory(tmp_path: Path) -> None:
    files = {
        "design": DESIGNS, "edit": DESIGNS, "shots": SHOT_FILES, "tickets": TICKET_FILES,
        "kept": KEPT_FILES,
    }  # fmt: skip
    holds(tried(tmp_path, files))


@pytest.mark.slow
def test_files_changed_at_random_are_answered_in_time_and_little_memory(tmp_path: Path) -> None:
    texts = [path.read_bytes() for path in examples().values()]
    shots = demo_shots().read_bytes()
    kept = outcome_of(Asked("demo", texts[0].decode()), with_set=False)[0].to_json().encode()
    files: dict[str, dict[str, bytes]] = {
        door: {} for door in ("design", "edit", "shots", "tickets", "kept")
    }
    for seed in seeds(60):
        dice = Seeded(seed)
        files["design"][f"{seed}.toml"] = mutated(dice, dice.choice(texts))
        files["edit"][f"{seed}.toml"] = files["design"][f"{seed}.toml"]
        files["kept"][f"{seed}.json"] = mutated(dice, kept)
        files["shots"][f"{seed}.csv"] = mutated(dice, shots)
        files["tickets"][f"{seed}.csv"] = mutated(dice, TICKETS)
    rows = tried(tmp_path, files)
    holds(rows)
    assert any(row["said"] for row in rows)
    assert not all(row["said"] for row in rows)
