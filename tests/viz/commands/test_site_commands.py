"""The commands that print papers for the site, as they are typed, and what they write."""

from pathlib import Path

import pypdfium2 as pdfium
import pytest
from typer.testing import CliRunner

from tests.viz.sheets.printed import Printed, from_pdf
from viz.commands.main import app


def asked(*words: object) -> tuple[int, str]:
    done = CliRunner().invoke(app, [str(word) for word in words])
    return done.exit_code, done.output


def pages(file: Path) -> list[Printed]:
    return [from_pdf(page) for page in pdfium.PdfDocument(file.read_bytes())]


def text(file: Path) -> str:
    return " ".join(page.text for page in pages(file))


def test_a_laser_set_up_elsewhere_gives_other_readings(tmp_path: Path) -> None:
    """Top of footing is at 412.35 ft; the laser 4'-3" and then 5'-3" above it."""
    out = tmp_path / "laser.pdf"
    assert asked("laser", "demo", "--out", out)[0] == 0
    assert "4'-3\" 4.25" in text(out)
    assert asked("laser", "demo", "--out", out, "--instrument", "417.60 ft")[0] == 0
    assert "5'-3\" 5.25" in text(out)
    assert "4'-3\" 4.25" not in text(out)


def test_the_laser_sheet_begins_and_ends_at_the_benchmark(tmp_path: Path) -> None:
    out = tmp_path / "laser.pdf"
    asked("laser", "demo", "--out", out, "--paper", "a4")
    first, *_, last = pages(out)
    assert first.text.index("Benchmark:") < first.text.index("Top of footing, corner 1")
    assert last.text.rindex("Benchmark:") > last.text.rindex("Finished grade")
    assert (round(first.width), round(first.height)) == (210, 297)


def test_papers_speak_spanish(tmp_path: Path) -> None:
    out = tmp_path / "regla.pdf"
    assert asked("pole", "demo", "--out", out, "--language", "es")[0] == 0
    assert "Mida esto antes de confiar en la regla." in text(out)
    assert asked("inspection", "demo", "--out", out, "--language", "es")[0] == 0
    assert "Hoja de inspección" in text(out)


def test_the_order_as_pdf_has_yards_tons_and_the_boards(tmp_path: Path) -> None:
    out = tmp_path / "order.pdf"
    assert asked("order", "demo", "--pdf", out)[0] == 0
    said = text(out)
    assert "A ton is not a cubic yard" in said
    assert "WASHED, no fines" in said
    assert "Boards: Foam, basement" in said
    assert "Cost" not in said


@pytest.mark.parametrize(
    ("words", "right"),
    [
        (("--out", "x.txt"), ".pdf"),
        (("--out", "x.pdf", "--paper", "A3"), "letter or A4"),
        (("--out", "x.pdf", "--language", "xx"), "en, es"),
    ],
)
def test_what_cannot_be_read_is_answered_with_what_can(
    words: tuple[str, ...], right: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.chdir(tmp_path)
    code, output = asked("pole", "demo", *words)
    assert code == 2
    assert right in output
    assert not list(tmp_path.iterdir())
