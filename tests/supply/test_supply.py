"""What the program is made of is told as it is locked, and it asks nothing of any network."""

import json
import os
import re
import shutil
import subprocess
import sys
import time
import urllib.request
from pathlib import Path

import pytest

from tests.fuzz.hostile import AREA, HEAD
from tests.serving import free_port
from tests.supply.bill import bill
from tests.supply.parts import EXTRAS, HOME, LOCK, NPM, parts
from tests.supply.renew import BILL, PAGE, page

RUN = "from viz.commands.main import run; run()"
# Every file of the set up to the first of the pictures, which are all drawn alike.
SET = """
import sys
from pathlib import Path
from viz.issue import products
from viz.job import job
for made in products(job(Path(sys.argv[1]).read_text()), lambda _: None):
    print(made.name)
    if made.name.endswith(".png") and "/" not in made.name:
        break
"""
# Every page's own code, without a browser.
WALK = """
from streamlit.testing.v1 import AppTest
from tests.app.walking import on
from viz.carried import app_file
from viz.panels.pages import PAGES
app = AppTest.from_file(str(app_file()), default_timeout=300).run()
for name in PAGES:
    assert not on(app, name).exception, name
"""


def test_licences_and_bill_tell_what_the_locks_pin() -> None:
    found = parts()
    assert PAGE.read_text(encoding="utf-8") == page(found)
    assert BILL.read_text(encoding="utf-8") == bill(found)
    told = json.loads(BILL.read_text(encoding="utf-8"))["components"]
    listed = {(c["name"], c["version"]) for c in told if ":pypi/" in c.get("purl", "")}
    locks = "\n".join(lock.read_text(encoding="utf-8") for lock in (LOCK, *EXTRAS.values()))
    assert listed == set(re.findall(r"^([\w.-]+)==([^ ;\\]+)", locks, re.M))
    assert not [p.name for p in found if p.licence == "not known here"]


@pytest.mark.slow
def test_the_bill_is_what_its_standard_asks() -> None:
    from cyclonedx.schema import SchemaVersion
    from cyclonedx.validation.json import JsonStrictValidator

    schema, told = JsonStrictValidator(SchemaVersion.V1_6), BILL.read_text(encoding="utf-8")
    assert schema.validate_str(told) is None
    assert schema.validate_str(told.replace('"library"', '"thing"', 1)) is not None


def test_what_the_3d_page_holds_is_what_npm_locks() -> None:
    packages = json.loads(NPM.read_text(encoding="utf-8"))["packages"]
    wanted = set(packages[""]["dependencies"]) - {"esbuild"}
    assert {p.name for p in parts() if p.kind == "npm"} == wanted
    # What the bundler itself met goes with the script, each with its licence.
    notices = (NPM.parent / "bundle" / "LICENSES.txt").read_text(encoding="utf-8")
    met = set(re.findall(r"^(\S+) (\d[\w.-]*) \(([^)]+)\)$", notices, re.M))
    assert met == {(p.name, p.version, p.licence) for p in parts() if p.kind == "npm"}


def test_nothing_strong_on_sharing_is_in_the_program() -> None:
    strong = [p for p in parts() if re.search(r"GPL|General Public", p.licence)]
    assert {p.extra for p in strong} <= {"ifc"}


def alone(refused: Path) -> dict[str, str]:
    """The surroundings of a process that may not look beyond this machine."""
    near = {k: v for k, v in os.environ.items() if k not in ("DISPLAY", "WAYLAND_DISPLAY")}
    paths = [str(Path(__file__).parent / "guard"), str(HOME), os.environ.get("PYTHONPATH", "")]
    return {**near, "PYTHONPATH": os.pathsep.join(filter(None, paths)), "REFUSED": str(refused)}


def test_the_guard_sees_a_look_beyond_this_machine(tmp_path: Path) -> None:
    look = "import socket; socket.create_connection(('192.0.2.1', 80), 1)"
    done = subprocess.run(
        [sys.executable, "-c", look],
        env=alone(tmp_path / "refused"),
        capture_output=True,
        check=False,
    )
    assert b"nothing beyond this machine" in done.stderr
    assert "192.0.2.1" in (tmp_path / "refused").read_text(encoding="utf-8")


@pytest.fixture
def hut(tmp_path: Path) -> Path:
    """A small house, so that all its papers and pictures are soon made."""
    file = tmp_path / "hut.toml"
    file.write_text(HEAD + AREA, encoding="utf-8")
    return file


@pytest.mark.slow
@pytest.mark.parametrize(
    "words",
    [
        ["batch", "hut.toml", "--out", "many", "--sets", "--workers", "1"],
        ["findings", "demo", "--out", "found.html"], ["order", "demo", "--xlsx", "order.xlsx"],
        ["check", "demo"], ["water", "demo"],
    ],
    ids=lambda words: words[0],
)  # fmt: skip
def test_commands_ask_nothing_of_a_network(hut: Path, words: list[str]) -> None:
    refused = hut.parent / "refused"
    done = subprocess.run(
        [sys.executable, "-c", RUN, *words], cwd=hut.parent, env=alone(refused),
        capture_output=True, check=False,
    )  # fmt: skip
    assert done.returncode in (0, 1), done.stderr.decode()
    assert not refused.exists(), refused.read_text(encoding="utf-8")


@pytest.mark.slow
def test_the_set_is_made_where_there_is_no_network_at_all(hut: Path) -> None:
    """Guarded, and where Linux allows it with no network: what a library does below Python too."""
    refused, apart = hut.parent / "refused", ["unshare", "--map-root-user", "--net"]
    known = shutil.which("unshare") and not subprocess.run([*apart, "true"], check=False).returncode
    done = subprocess.run(
        [*(apart if known else ()), sys.executable, "-c", SET, str(hut)], env=alone(refused),
        capture_output=True, check=False,
    )  # fmt: skip
    assert done.returncode == 0, done.stderr.decode()
    made = set(done.stdout.decode().split())
    assert {"permit-set.pdf", "findings.html", "model.html", "model.ifc"} <= made
    assert [name for name in made if name.endswith(".png") and "/" not in name]
    assert not refused.exists(), refused.read_text(encoding="utf-8")


@pytest.mark.slow
def test_no_page_of_the_app_asks_a_network(tmp_path: Path) -> None:
    refused = tmp_path / "refused"
    done = subprocess.run(
        [sys.executable, "-c", WALK], env=alone(refused), capture_output=True, check=False
    )
    assert done.returncode == 0, done.stderr.decode()[-2000:]
    assert not refused.exists(), refused.read_text(encoding="utf-8")


@pytest.mark.slow
def test_the_app_starts_with_this_machine_alone(tmp_path: Path) -> None:
    refused = tmp_path / "refused"
    port = free_port()
    command = [sys.executable, "-c", RUN, "app", "--port", str(port)]
    with subprocess.Popen(command, env=alone(refused), stderr=subprocess.DEVNULL) as server:
        try:
            assert answers(f"http://127.0.0.1:{port}/_stcore/health")
            assert answers(f"http://127.0.0.1:{port}/")
        finally:
            server.terminate()
            server.wait(30)
    assert not refused.exists(), refused.read_text(encoding="utf-8")


def answers(address: str) -> bool:
    for _ in range(240):
        try:
            with urllib.request.urlopen(address, timeout=5) as answer:  # noqa: S310
                return answer.status == 200
        except OSError:
            time.sleep(0.5)
    return False
