"""Order of the house that the import contracts cannot see."""

import ast
import tomllib
from functools import cache
from pathlib import Path

ROOT = Path(__file__).parent.parent


@cache
def imported(path: Path) -> set[str]:
    names = set()
    for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
        if isinstance(node, ast.Import):
            names |= {alias.name for alias in node.names}
        elif isinstance(node, ast.ImportFrom):
            names.add(node.module or "")
    return names


def sources(*rooms: str) -> list[Path]:
    return [path for room in rooms for path in (ROOT / room).rglob("*.py")]


def using(library: str) -> set[str]:
    files = [*sources("geometry", "viz"), ROOT / "app.py"]
    found = [p for p in files if any(n.split(".")[0] == library for n in imported(p))]
    return {p.relative_to(ROOT).as_posix() for p in found}


def test_app_only_orders_the_panels() -> None:
    rooms = {n for n in imported(ROOT / "app.py") if n.startswith(("viz", "geometry"))}
    assert rooms
    assert all(n.startswith("viz.panels") for n in rooms)


def test_each_library_has_its_room() -> None:
    assert using("pint") == {"geometry/units.py"}
    assert using("manifold3d")
    assert all(p.startswith("geometry/solids/") for p in using("manifold3d"))
    assert all(p.startswith("viz/scene/") for p in using("pyvista"))
    assert not using("ifcopenshell")  # an extra: viz/export/ifc/library.py asks for it by name
    assert all(p == "app.py" or p.startswith("viz/panels/") for p in using("streamlit"))


def test_packages_open_with_words_only() -> None:
    for path in sources("geometry", "viz"):
        if path.name == "__init__.py":
            body = ast.parse(path.read_text(encoding="utf-8")).body
            assert len(body) == 1, path
            assert isinstance(body[0], ast.Expr), path


def test_top_level_is_as_agreed() -> None:
    kept = {
        "README.md", "DEVELOPERS.md", "pyproject.toml", "LICENSE", "requirements.lock",
        "requirements-ifc.lock", "requirements-batch.lock", "app.py", "geometry", "viz",
        "assets", "tests",
    }  # fmt: skip
    made = {"out", "build", "dist"}
    found = {p.name for p in ROOT.iterdir() if not p.name.startswith(".")}
    assert found - made - {p for p in found if p.endswith(".egg-info")} == kept


def test_locks_name_no_address_and_pin_every_dependency() -> None:
    project = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))
    lock = (ROOT / "requirements.lock").read_text(encoding="utf-8")
    tests = (ROOT / "tests/requirements.lock").read_text(encoding="utf-8")
    assert "://" not in lock + tests
    for need in project["project"]["dependencies"]:
        name = need.split(">")[0]
        assert f"\n{name}==" in "\n" + lock, name
    pins = {line.split()[0] for line in lock.splitlines() if "==" in line}
    assert pins <= {line.split()[0] for line in tests.splitlines() if "==" in line}
    for name, wanted in project["project"]["optional-dependencies"].items():
        extra = (ROOT / f"requirements-{name}.lock").read_text(encoding="utf-8")
        assert "://" not in extra
        assert {f"\n{need.split('>')[0]}==" in extra for need in wanted} == {True}
        assert pins <= {line.split()[0] for line in extra.splitlines() if "==" in line}


def test_no_room_outgrows_its_reader() -> None:
    for path in sources("geometry", "viz"):
        assert len(path.read_text(encoding="utf-8").splitlines()) <= 400, path
