"""The command `water`: tables in the design's own units, figures for programs."""

import json
from pathlib import Path

import pytest
from typer.testing import CliRunner, Result

from geometry.designfile import edited, start_text
from viz.commands.main import app

METRIC = Path(__file__).parents[3] / "assets" / "examples" / "metric-house.toml"


def asked(*words: object) -> Result:
    return CliRunner().invoke(app, [str(word) for word in words])


def test_the_demo_tells_all_its_water() -> None:
    done = asked("water", "demo")
    assert done.exit_code == 0
    for words in ("inflow", "capacities", "the pit", "uplift", "gpm", "(governs)", "Pump dead"):
        assert words in done.stdout
    assert "Not given" not in done.stdout
    assert "L/s" not in done.stdout


def test_a_metric_house_is_told_in_litres() -> None:
    done = asked("water", METRIC)
    assert done.exit_code == 0
    assert "L/s" in done.stdout
    assert "gpm" not in done.stdout


def test_figures_for_programs_are_si_and_complete() -> None:
    done = asked("water", METRIC, "--json")
    figures = json.loads(done.stdout)["water"]
    parts = figures["inflow"]
    # 40 mm in two hours is 20 mm an hour; three tenths of it soak in.
    assert parts["peak_intensity_m_per_s"] == pytest.approx(0.020 / 3600, rel=1e-9)
    rain = parts["peak_intensity_m_per_s"] * parts["strip_area_m2"] * 0.3
    assert parts["rain_m3_per_s"] == pytest.approx(rain, rel=1e-9)
    assert figures["pit"]["pump_m3_per_s"] == pytest.approx(0.002, rel=1e-9)
    assert figures["lacking"] == []


def test_what_is_not_given_is_listed_and_governs_nothing(tmp_path: Path) -> None:
    file = tmp_path / "a.toml"
    file.write_text(start_text(), encoding="utf-8")
    done = asked("water", file)
    assert done.exit_code == 0
    assert "Not given:" in done.stdout
    assert "least known" in done.stdout
    assert "(governs)" not in done.stdout
    assert "nan" not in done.stdout.lower()


def test_a_house_without_drain_and_pit_still_tells_what_floats(tmp_path: Path) -> None:
    text = edited(edited(start_text(), ("drain",), None), ("sump",), None)
    file = tmp_path / "dry.toml"
    file.write_text(text, encoding="utf-8")
    done = asked("water", file)
    assert done.exit_code == 0
    assert "uplift" in done.stdout
    assert "capacities" not in done.stdout
