"""The command `deliveries`: a list on disk, one ticket more, what is short."""

from pathlib import Path

from typer.testing import CliRunner, Result

from tests.houses import HOUSE
from viz.commands.main import app


def run(folder: Path, *words: str) -> Result:
    design = folder / "house.toml"
    design.write_text(HOUSE, encoding="utf-8")
    return CliRunner().invoke(app, ["deliveries", str(design), str(folder / "list.csv"), *words])


def test_a_list_grows_by_tickets(tmp_path: Path) -> None:
    assert run(tmp_path).exit_code == 2  # there is no list yet
    made = run(tmp_path, "--add", "2026-04-02, stone-57, 14.2 tons, basement")
    assert made.exit_code == 0, made.output
    again = run(tmp_path, "--add", "2026-04-03, sand-0-4, 1 t", "--instead", "stone-8")
    said = " ".join(again.output.split())
    assert "14.2 tons" in said
    assert "Washed stone, No. 8" in said
    assert "Washed sand, 0/4 came, and no part of this design takes it" in said
    kept = (tmp_path / "list.csv").read_text(encoding="utf-8").splitlines()
    assert kept[1:] == ["2026-04-02,stone-57,14.2 tons,basement", "2026-04-03,sand-0-4,1 t,"]


def test_what_cannot_be_read_is_said_and_nothing_is_written(tmp_path: Path) -> None:
    list_file = tmp_path / "list.csv"
    list_file.write_text("nonsense\n", encoding="utf-8")
    assert "line 1: 1 columns" in run(tmp_path).output
    refused = run(tmp_path, "--add", "yesterday, stone-57, 3 tons")
    assert refused.exit_code == 2
    assert "is no date" in refused.output
    assert list_file.read_text(encoding="utf-8") == "nonsense\n"
    assert "did you mean" in run(tmp_path, "--instead", "stone-75").output
