"""One file in many writings: the same house, shots and tickets, or one sentence why not."""

import os
from pathlib import Path

import pytest

from geometry.designfile import FileError, decoded, load, read_design
from geometry.errors import DesignError
from geometry.survey.reading import read_shots
from geometry.takeoff.tickets import read_tickets
from viz.batch.designs import Asked, asked_files, asked_grid
from viz.batch.outcome import Outcome, outcome_of
from viz.batch.run import Line
from viz.batch.store import Store
from viz.batch.table import write_tables
from viz.carried import demo, demo_shots

MARK = b"\xef\xbb\xbf"
DESIGN, SHOTS = demo().read_bytes(), demo_shots().read_bytes()
TICKETS = b"date,material,amount,place\n2026-04-02,stone-57,14.2 tons,S\xc3\xb3tano\n"
SAME = {
    "a mark of byte order": lambda data: MARK + data,
    "windows lines": lambda data: data.replace(b"\n", b"\r\n"),
    "both": lambda data: MARK + data.replace(b"\n", b"\r\n"),
    "no last line end": lambda data: data.rstrip(b"\n"),
}
OTHER = {
    "windows letters": lambda data: data.decode().replace("o", "ó").encode("cp1252"),
    "two bytes": lambda data: data.decode().encode("utf-16"),
    "two bytes, the other way": lambda data: b"\xfe\xff" + data.decode().encode("utf-16-be"),
    "cut in a letter": lambda data: data + "é".encode()[:1],
}


@pytest.mark.parametrize("how", SAME)
def test_the_same_house_shots_and_tickets_whatever_the_editor(how: str) -> None:
    design = read_design(decoded(DESIGN, "house"))
    assert read_design(decoded(SAME[how](DESIGN), "house")) == design
    plain, written = (read_shots(data, design) for data in (SHOTS, SAME[how](SHOTS)))
    assert len(plain) > 20
    assert (plain.x == written.x).all()
    assert (plain.level == written.level).all()
    assert (plain.names, plain.faults) == (written.names, written.faults)
    came = read_tickets(decoded(SAME[how](TICKETS), "list"))
    assert came == read_tickets(TICKETS.decode())
    assert came.tickets[0].place == "Sótano"


@pytest.mark.parametrize("how", OTHER)
def test_another_writing_is_one_sentence_that_says_what_to_do(how: str, tmp_path: Path) -> None:
    file = tmp_path / "house.toml"
    for data in (DESIGN, TICKETS):
        file.write_bytes(OTHER[how](data))
        with pytest.raises(FileError, match=r"is not UTF-8 text; save it as UTF-8$"):
            load(file)
    found = read_shots(OTHER[how](SHOTS), read_design(DESIGN.decode()))
    (fault,) = found.faults
    assert "save the shots as CSV, UTF-8" in str(fault)
    assert len(found) == 0


@pytest.mark.parametrize("words", ["1e308", "-1e308", "nan", "inf", "1e999", "9" * 400])
def test_figures_beyond_any_house_are_told_and_kept_out(words: str) -> None:
    text = DESIGN.decode()
    design = read_design(text)
    with pytest.raises(DesignError) as caught:
        read_design(text.replace('"6 in", role = "base"', f'{words}, role = "base"', 1))
    assert any("thickness" in fault.place for fault in caught.value.faults)
    shots = read_shots(f"x,y,level\n1 ft,1 ft,{words}\n2 ft,2 ft,-6 in\n", design)
    assert (len(shots), len(shots.faults)) == (1, 1)
    came = read_tickets(f"2026-04-02,stone-57,{words} tons,x\n2026-04-02,stone-57,9 tons,x\n")
    assert (len(came.tickets), [b.line for b in came.broken]) == (1, [1])


def test_a_key_or_table_said_twice_is_told_with_its_line() -> None:
    for twice in ("[wall]\nheight = '8 ft'\nheight = '9 ft'", "[wall]\n[wall]"):
        with pytest.raises(DesignError) as caught:
            read_design(f"[project]\nname = 'n'\n{twice}\n")
        (fault,) = caught.value.faults
        assert fault.line in (4, 5)
        assert "twice" in fault.sentence


def test_a_file_whose_name_is_no_text_stands_in_every_table(tmp_path: Path) -> None:
    for name in (b"house\xff.toml", b"a;=1\nb.toml"):
        (tmp_path / os.fsdecode(name)).write_bytes(DESIGN)
    asked = asked_files([tmp_path])
    lines = [Line(one, Outcome("died")) for one in asked]
    made = list(write_tables(lines, tmp_path / "out"))
    assert [path.suffix for path in made] == [".csv", ".xlsx", ".parquet"]
    told = made[0].read_text(encoding="utf-8")
    assert "house?" in told
    assert "a;'=1" in told
    Store(tmp_path / "out").keep_set(asked[1].name, b"x")
    assert len(list((tmp_path / "out" / "sets").iterdir())) == 1


@pytest.mark.parametrize("words", ["[" * 9000, "9" * 9000, "{ a = " * 3000, "\0", "1e999"])
def test_whatever_a_place_is_varied_by_is_a_value_or_text(words: str) -> None:
    base = Asked("house", DESIGN.decode())
    found = asked_grid(base, [f"project.revision={words};A"])
    assert len(found) == 2
    assert outcome_of(found[0], with_set=False)[0].status == "faults"
