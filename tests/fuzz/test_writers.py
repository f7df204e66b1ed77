"""Every file is written by the one careful writer; nothing is unpacked or run."""

import errno
import json
import os
import re
import resource
import signal
import subprocess
import sys
import time
from pathlib import Path

import pikepdf
import pytest
from typer.testing import CliRunner

from geometry.designfile import FileError, save
from tests.fuzz.hostile import AREA, HEAD
from viz.commands.main import app

ROOT = Path(__file__).parents[2]
RUN = [sys.executable, "-c", "from viz.commands.main import run; run()"]
# The writer itself, and what runs where the package is installed.
OWN = ("geometry/designfile.py", "viz/viewer/build_step.py")
WRITES = re.compile(
    r"\b(?:write_(?:bytes|text)|mk[sd]temp|NamedTemporaryFile|symlink_to|copy(?:file|tree)|"
    r"savefig|open\([^()]*[\"'][rbt]*[wax+][rbt+]*[\"'])"
)
# What unpacks or runs what it reads.
UNPACKS = re.compile(
    r"^\s*(?:import|from)\s+(?P<what>zipfile|tarfile|gzip|bz2|lzma|pickle|marshal|shelve|openpyxl|"
    r"yaml|lxml|xml\.(?!sax\.saxutils))|\b(?P<run>eval|exec)\(",
    re.M,
)
# A ZIP file is only written; a pipe to a process of one's own is pickled; what is kept is weighed
# so.
KNOWN = {("viz/export/bundle.py", "zipfile"), ("viz/scene/worker.py", "pickle"),
         ("viz/scene/child.py", "pickle"), ("viz/panels/shared.py", "pickle")}  # fmt: skip


def met(looked_for: re.Pattern[str]) -> set[tuple[str, str]]:
    """Where in the program something stands, by file and word."""
    files = (*ROOT.glob("geometry/**/*.py"), *ROOT.glob("viz/**/*.py"), ROOT / "app.py")
    return {
        (file.relative_to(ROOT).as_posix(), next(filter(None, found.groups()), found[0]))
        for file in files
        for found in looked_for.finditer(file.read_text(encoding="utf-8"))
    }


def test_nothing_but_the_one_writer_makes_files() -> None:
    found = met(WRITES)
    assert {name for name, _ in found} == set(OWN), found


def test_nothing_unpacks_or_runs_what_it_reads() -> None:
    """No archive is read, so none can swell; no text is run."""
    assert met(UNPACKS) == KNOWN


def test_a_link_in_the_place_of_a_file_is_replaced_and_not_followed(tmp_path: Path) -> None:
    other, link, hard = tmp_path / "other", tmp_path / "report.json", tmp_path / "levels.csv"
    other.write_bytes(b"another's")
    link.symlink_to(other)
    os.link(other, hard)
    for file in (link, hard):
        save(file, b"ours")
        assert file.read_bytes() == b"ours"
    assert other.read_bytes() == b"another's"
    assert not link.is_symlink()


@pytest.mark.parametrize("step", ["fsync", "fdopen", "replace"])
def test_a_disk_that_fills_at_any_step_leaves_the_old_file(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, step: str
) -> None:
    file = tmp_path / "house.toml"
    save(file, b"old")

    def full(*_: object) -> None:
        raise OSError(errno.ENOSPC, os.strerror(errno.ENOSPC))

    monkeypatch.setattr(*((Path, step) if step == "replace" else (os, step)), full)
    with pytest.raises(FileError, match="cannot be written: no space left on device"):
        save(file, b"new")
    monkeypatch.undo()
    assert file.read_bytes() == b"old"
    assert [p.name for p in tmp_path.iterdir()] == ["house.toml"]


@pytest.fixture
def hut(tmp_path: Path) -> str:
    file = tmp_path / "hut.toml"
    file.write_text(HEAD + AREA, encoding="utf-8")
    return str(file)


@pytest.mark.slow
@pytest.mark.parametrize(
    "words",
    [
        ["order", "{}", "--csv", "/proc/x.csv"], ["order", "{}", "--xlsx", "/proc/x.xlsx"],
        ["order", "{}", "--pdf", "/proc/x.pdf"], ["section", "{}", "--out", "/proc/x.svg"],
        ["sheets", "{}", "--out", "/proc/x"], ["model", "{}", "--out", "/proc/x.glb"],
        ["model", "{}", "--out", "/proc/x.html"], ["model", "{}", "--out", "/proc/x.ifc"],
        ["findings", "{}", "--out", "/proc/x.pdf"], ["data", "{}", "--out", "/proc/x"],
        ["cards", "{}", "--out", "/proc/x"], ["pole", "{}", "--out", "/proc/x.pdf"],
        ["laser", "{}", "--out", "/proc/x.pdf"], ["inspection", "{}", "--out", "/proc/x.pdf"],
        ["compare", "{}", "{}", "--out", "/proc/x.csv"], ["batch", "{}", "--out", "/proc/x"],
        ["build", "{}", "--out", "/proc/x"], ["start", "/proc/x.toml"],
    ],
    ids=" ".join,
)  # fmt: skip
def test_a_folder_that_takes_nothing_is_one_sentence(hut: str, words: list[str]) -> None:
    done = CliRunner().invoke(app, [word.format(hut) for word in words])
    assert done.exit_code == 2, done.output
    told = [line for line in done.stderr.splitlines() if "cannot be written" in line]
    assert len(told) == 1
    assert told[0].startswith("/proc/x")
    assert "Traceback" not in done.output


def sound(file: Path) -> bool:
    """Whether a file of the set is whole."""
    data = file.read_bytes()
    if file.suffix == ".pdf":
        with pikepdf.open(file) as pdf:
            return len(pdf.pages) > 0
    if file.suffix == ".json":
        return bool(json.loads(data))
    ends = {".csv": b"\r\n", ".png": b"IEND\xaeB`\x82", ".html": b"</html>", ".svg": b"</svg>"}
    return data.rstrip(b"\n").endswith(ends.get(file.suffix, b"").rstrip(b"\n"))


def shown(folder: Path) -> list[Path]:
    """The files of a folder; one that was being written when its writer died begins with a dot."""
    return [p for p in folder.rglob("*") if p.is_file() and not p.name.startswith(".")]


@pytest.mark.slow
def test_a_set_that_is_killed_holds_whole_files_alone(hut: str, tmp_path: Path) -> None:
    out = tmp_path / "out"
    for count in (1, 9):
        with subprocess.Popen([*RUN, "build", hut, "--out", str(out)], stderr=-3) as process:
            until = time.monotonic() + 120
            while len(shown(out)) < count and time.monotonic() < until:
                time.sleep(0.005)
            process.send_signal(signal.SIGKILL)
            process.wait(60)
        assert len(shown(out)) >= count
        assert [p.name for p in shown(out) if not sound(p)] == []


@pytest.mark.slow
def test_a_disk_that_fills_stops_the_set_with_one_sentence(hut: str, tmp_path: Path) -> None:
    out = tmp_path / "out"

    def small() -> None:
        signal.signal(signal.SIGXFSZ, signal.SIG_IGN)
        resource.setrlimit(resource.RLIMIT_FSIZE, (40_000, 40_000))

    done = subprocess.run(
        [*RUN, "build", hut, "--out", str(out)], preexec_fn=small, capture_output=True, check=False
    )
    assert done.returncode == 2
    (told,) = [line for line in done.stderr.decode().splitlines() if "cannot be written" in line]
    assert told.endswith("file too large")
    assert [p.name for p in shown(out) if not sound(p)] == []
    assert not [p for p in out.rglob(".*") if p.is_file()]
