"""The command `findings`: a PDF or a page by the file's ending, on the paper of the units."""

from pathlib import Path

import pypdfium2 as pdfium
import pytest
from typer.testing import CliRunner

from tests.houses import edited
from viz.commands.main import app


@pytest.fixture
def design(tmp_path: Path) -> Path:
    file = tmp_path / "house.toml"
    file.write_text(edited(), encoding="utf-8")
    return file


def run(*words: object):  # type: ignore[no-untyped-def]
    return CliRunner().invoke(app, ["findings", *map(str, words)])


def test_a_pdf_or_a_page_is_written_and_the_counts_are_said(design: Path) -> None:
    page, paper = design.with_suffix(".html"), design.with_suffix(".pdf")
    told = run(design, "--out", page)
    assert told.exit_code == 0
    assert "look again" in told.output
    assert page.read_text(encoding="utf-8").startswith("<!doctype html>")
    assert run(design, "--out", paper, "--paper", "A4").exit_code == 0
    wide, _ = pdfium.PdfDocument(paper.read_bytes())[0].get_size()
    assert wide == pytest.approx(210 / 25.4 * 72, abs=0.5)


def test_another_ending_is_refused_in_one_sentence_and_nothing_is_written(design: Path) -> None:
    out = design.with_suffix(".docx")
    told = run(design, "--out", out)
    assert told.exit_code != 0
    assert ".pdf or .html" in told.output
    assert not out.exists()
