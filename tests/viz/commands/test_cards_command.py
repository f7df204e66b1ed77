"""The command `cards`, as it is typed, and what it writes."""

from pathlib import Path

import pypdfium2 as pdfium
import pytest
from typer.testing import CliRunner

from viz.commands.main import app


def asked(*words: object) -> tuple[int, str]:
    done = CliRunner().invoke(app, ["cards", "demo", *(str(word) for word in words)])
    return done.exit_code, done.output


def test_what_is_no_paper_or_no_language_is_refused_before_anything_is_written(
    tmp_path: Path,
) -> None:
    for words, said in ((("--paper", "A1"), "letter or A4"), (("--language", "xx"), "en, es")):
        code, output = asked("--out", tmp_path / "cards.pdf", *words)
        assert code == 2
        assert said in output
    assert not list(tmp_path.iterdir())


@pytest.mark.slow
def test_a_folder_takes_the_pdf_and_every_card_as_svg_and_png(tmp_path: Path) -> None:
    code, _ = asked("--out", tmp_path, "--language", "es", "--paper", "a4", "--dpi", 40)
    assert code == 0
    document = pdfium.PdfDocument((tmp_path / "crew-cards.pdf").read_bytes())
    for ending in ("svg", "png"):
        assert len(list(tmp_path.glob(f"card-*.{ending}"))) == len(document)
    assert document[0].get_size() == pytest.approx((595.3, 841.9), abs=0.1)
    assert "Fondo de excavación" in document[0].get_textpage().get_text_range()
