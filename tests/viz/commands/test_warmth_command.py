"""The command `warmth`."""

import json
from pathlib import Path

from typer.testing import CliRunner

from tests.houses import edited
from viz.commands.main import app


def run(*words: str) -> str:
    done = CliRunner().invoke(app, ["warmth", *words])
    assert done.exit_code == 0, done.output
    return done.output


def design(tmp_path: Path, *changes: tuple[str, str]) -> str:
    path = tmp_path / "house.toml"
    path.write_text(edited(*changes), encoding="utf-8")
    return str(path)


CLIMATE = ("[soil]", '[climate]\ninside = "68 F"\noutside = "45 F"\n\n[loads]\n'
           'point = "2000 lbf"\n\n[soil]')  # fmt: skip


def test_tables_tell_layers_heat_edge_and_load(tmp_path: Path) -> None:
    said = run(design(tmp_path, CLIMATE))
    for words in ("R-10.3", "loss of walls in the ground", "at 68 F inside, 45 F outside",
                  "Foam stopped at the", "12.8 psi", "a rough count"):  # fmt: skip
        assert words in said, words


def test_figures_come_out_as_they_are(tmp_path: Path) -> None:
    made = json.loads(run(design(tmp_path, CLIMATE), "--json"))
    (floor,), (board,) = made["warmth"], made["boards"]
    assert floor["loss_w"] > 0
    assert board["point_n"] > 0
    first, *others = made["edges"]
    assert first["same"]
    assert first["cold_share"] == floor["cold_share"]
    assert len(others) >= 2


def test_metric_houses_read_metric(tmp_path: Path) -> None:
    metric = ("[project]\n", '[project]\nunits = "metric"\n')
    said = run(design(tmp_path, CLIMATE, metric))
    assert "m²K/W" in said
    assert "W/K" in said
    assert "Btu" not in said
