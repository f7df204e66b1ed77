"""`bedcourse section` and `bedcourse sheets`: files others can read, errors in one sentence."""

import re
import struct
from xml.etree import ElementTree as ET

import pypdfium2 as pdfium
import pytest
from typer.testing import CliRunner

from viz.commands.main import app

# A house of one room, without a drain: its set is short.
HUT = """
[project]
name = "Invented hut"
[[area]]
name = "hut"
corners = ["0, 0", "20 ft, 0", "20 ft, 14 ft", "0, 14 ft"]
"""
ACROSS = ("--from", "-10 ft, 12 ft", "--to", "60 ft, 12 ft")
JOGGED = (*ACROSS[:3], "60 ft, 20 ft", "--via", "14 ft, 12 ft; 14 ft, 20 ft")
POINT_MM = 25.4 / 72


def asked(*words):
    return CliRunner().invoke(app, [str(w) for w in words])


@pytest.fixture
def hut(tmp_path):
    file = tmp_path / "hut.toml"
    file.write_text(HUT, encoding="utf-8")
    return file


def refused(folder, *words):
    """The one sentence a command is refused with; nothing is written."""
    before = sorted(folder.rglob("*"))
    done = asked(*words)
    assert done.exit_code == 2
    assert done.stdout == ""
    assert sorted(folder.rglob("*")) == before
    (sentence,) = done.stderr.strip().splitlines()
    return sentence


def svg_words(file):
    root = ET.parse(file).getroot()  # noqa: S314
    return [t.text for t in root.iter("{http://www.w3.org/2000/svg}text")]


def png_size(file):
    data = file.read_bytes()
    assert data.startswith(b"\x89PNG")
    return struct.unpack(">II", data[16:24])


@pytest.mark.parametrize(
    ("options", "words"),
    [
        (("--out", "x.docx"), "x.docx should end in .svg or .png or .pdf"),
        (("--out", "x"), "x should end in .svg"),
        (("--out", "x.svg", "--from", "0, 0"), "give both --from and --to"),
        (("--out", "x.svg", "--from", "0", "--to", "1 ft, 1 ft"), "--from takes 2 lengths"),
        (("--out", "x.svg", "--from", "1 x, 0", "--to", "1 ft, 1 ft"), "not a length"),
        (("--out", "x.svg", "--from", "1 ft, 0", "--to", "1 ft, 0"), "the same place"),
        (("--out", "x.svg", "--from", "400 ft, 0", "--to", "500 ft, 0"), "shows nothing"),
        (("--out", "x.svg", "--via", "1 ft, 0"), "--from and --to; give these too"),
        (("--out", "x.svg", *ACROSS, "--via", "1 ft"), "--via takes 2 lengths"),
        (("--out", "x.svg", *ACROSS, "--via", "-20 ft, 12 ft"), "runs back"),
        (("--out", "x.svg", "--cut", "roof"), "across, pier, sump"),
        (("--out", "x.svg", "--scale", "1:7"), "is not a scale"),
        (("--out", "x.svg", "--paper", "napkin"), "is not a paper; choose one of: ARCH D"),
        (("--out", "x.svg", "--window", "0, 0, 1 ft"), "takes 4 lengths"),
        (("--out", "x.svg", "--window", "1 ft, 0, 0, 1 ft"), "left below its right"),
        (
            (
                "--out",
                "x.svg",
                "--window",
                "detail",
                "--from",
                "13 ft, 8 ft",
                "--to",
                "26 ft, 8 ft",
            ),
            "a detail needs one",
        ),
    ],
)
def test_a_section_that_cannot_be_drawn_is_refused(tmp_path, monkeypatch, options, words):
    monkeypatch.chdir(tmp_path)
    assert words in refused(tmp_path, "section", "demo", *options)


@pytest.mark.parametrize("kind", ["section", "sheets"])
def test_a_scale_too_great_for_the_paper_is_told_the_greatest_that_fits(tmp_path, kind):
    """What is named does fit, and no scale of the list between the two does."""
    paper = ("--paper", "ARCH C")
    out = tmp_path / "x.pdf"
    sentence = refused(tmp_path, kind, "demo", *paper, "--scale", "1:12", "--out", out)
    assert 'does not fit this paper at 1" = 1\'-0"; the greatest that fits is ' in sentence
    best = sentence.partition("that fits is ")[2]
    if kind == "section":
        assert asked(kind, "demo", *paper, "--scale", best, "--out", out).exit_code == 0
        assert "3/8" in best or "1/4" in best or "3/16" in best


def test_sections_are_written_as_svg_png_and_pdf_on_the_paper_asked_for(tmp_path):
    drawn, printed = tmp_path / "across.svg", tmp_path / "across.PDF"
    options = (*ACROSS, "--scale", "1:64", "--paper", "arch c")
    assert asked("section", "demo", *options, "--out", drawn).exit_code == 0
    assert 'Scale 3/16" = 1\'-0"' in svg_words(drawn)
    assert asked("section", "demo", *options, "--out", printed).exit_code == 0
    (page,) = pdfium.PdfDocument(printed)
    assert [side * POINT_MM for side in page.get_size()] == pytest.approx([609.6, 457.2], abs=0.01)
    detail = tmp_path / "detail.png"
    done = asked("section", "demo", "--window", "detail", "--dpi", 50, "--out", detail)
    assert done.exit_code == 0
    # One drawing alone: 17 by 11 in.
    assert png_size(detail) == (850, 550)


def test_a_metric_design_is_drawn_on_a3_at_a_metric_scale(tmp_path, hut):
    hut.write_text(HUT.replace("name = ", 'units = "metric"\nname = ', 1), encoding="utf-8")
    out = tmp_path / "cut.svg"
    assert asked("section", hut, "--out", out).exit_code == 0
    assert 'width="420mm" height="297mm"' in out.read_text(encoding="utf-8")
    assert [w for w in svg_words(out) if re.fullmatch(r"Scale 1:\d+", w)]


def test_a_cut_with_jogs_shows_where_it_steps(tmp_path):
    """A level jog of the plane is a chain line: long dash, gap, dot, gap."""
    plain, jogged = tmp_path / "plain.svg", tmp_path / "jogged.svg"
    for options, out in ((ACROSS, plain), (JOGGED, jogged)):
        done = asked("section", "demo", *options, "--paper", "ARCH C", "--out", out)
        assert done.exit_code == 0
    chains = [upright_chains(file) for file in (plain, jogged)]
    assert [len(found) for found in chains] == [0, 1]


def upright_chains(file):
    root = ET.parse(file).getroot()  # noqa: S314
    ways = [
        [tuple(map(float, spot.split())) for spot in re.findall(r"[ML]([^MLZ]+)", path.get("d"))]
        for path in root.iter("{http://www.w3.org/2000/svg}path")
        if (path.get("stroke-dasharray") or "").count(" ") == 3
    ]
    return [way for way in ways if len({x for x, _ in way}) == 1]


def test_a_window_shows_a_part_larger(tmp_path):
    out = tmp_path / "part.svg"
    window = ("--window", "8 ft, -2 ft, 14 ft, 2 ft")
    assert asked("section", "demo", *window, "--out", out).exit_code == 0
    said = svg_words(out)
    assert any("Top of footing" in w for w in said)
    assert not any("Top of wall" in w for w in said)


def test_the_permit_set_is_one_pdf(tmp_path, hut):
    out = tmp_path / "set.pdf"
    done = asked("sheets", hut, "--paper", "arch d", "--scale", '1/4" = 1\'-0"', "--out", out)
    assert done.exit_code == 0
    assert sorted(tmp_path.iterdir()) == [hut, out]
    document = pdfium.PdfDocument(out)
    pages = [page.get_textpage().get_text_range() for page in document]
    outline = [b.get_title().split()[0] for b in document.get_toc()]
    assert outline[0] == "S-001"
    assert len(outline) == len(pages)
    sections = [text for n, text in zip(outline, pages, strict=True) if n.startswith("S-3")]
    assert sections
    assert all('Scale 1/4" = 1\'-0"' in text for text in sections)
    assert all("Invented hut" in text for text in pages)


@pytest.mark.slow
def test_into_a_folder_every_sheet_comes_as_svg_and_png_too(tmp_path, hut):
    out = tmp_path / "made" / "here"
    done = asked("sheets", hut, "--paper", "A1", "--dpi", 30, "--out", out)
    assert done.exit_code == 0
    document = pdfium.PdfDocument(out / "permit-set.pdf")
    numbers = [b.get_title().split()[0] for b in document.get_toc()]
    expected = {f"{n}.{kind}" for n in numbers for kind in ("svg", "png")} | {"permit-set.pdf"}
    assert {file.name for file in out.iterdir()} == expected
    assert f"Wrote {len(expected)} files" in done.stdout
    # 841 by 594 mm at 30 dots for an inch.
    for number in numbers:
        wide, high = png_size(out / f"{number}.png")
        assert (wide, high) == pytest.approx((841 / 25.4 * 30, 594 / 25.4 * 30), abs=1)


@pytest.mark.slow
def test_the_demos_set_is_one_pdf(tmp_path):
    out = tmp_path / "set.pdf"
    assert asked("sheets", "demo", "--out", out).exit_code == 0
    outline = [b.get_title() for b in pdfium.PdfDocument(out).get_toc()]
    assert {title[:4] for title in outline} >= {"S-00", "S-10", "S-30", "S-40", "S-50", "S-60"}


@pytest.mark.parametrize(
    ("options", "words"),
    [
        (("--out", "x.docx"), "x.docx should end in .pdf"),
        (("--out", "x.pdf", "--paper", "napkin"), "'napkin' is not a paper; choose one of: ARCH D"),
        (
            ("--out", "x.pdf", "--scale", "1:33"),
            "'1:33' is not a scale; choose one of: 3\" = 1'-0\"",
        ),
        (("--out", "x.pdf", "--scale", "1:50"), "'1:50' is not a scale"),
    ],
)
def test_a_set_that_cannot_be_drawn_is_refused(tmp_path, monkeypatch, options, words):
    monkeypatch.chdir(tmp_path)
    assert words in refused(tmp_path, "sheets", "demo", *options)


def test_a_scale_of_the_other_system_is_refused_with_the_list(tmp_path, hut):
    hut.write_text(HUT.replace("name = ", 'units = "metric"\nname = ', 1), encoding="utf-8")
    sentence = refused(tmp_path, "sheets", hut, "--scale", "1:48", "--out", tmp_path / "x.pdf")
    assert sentence.endswith("1:5, 1:10, 1:20, 1:25, 1:50, 1:100, 1:200, 1:500")


@pytest.mark.parametrize("dots", [10, 2400])
def test_dots_out_of_reach_are_refused(tmp_path, hut, dots):
    done = asked("sheets", hut, "--dpi", dots, "--out", tmp_path / "made")
    assert done.exit_code == 2
    assert "Invalid value for '--dpi'" in done.stderr
    assert not (tmp_path / "made").exists()
