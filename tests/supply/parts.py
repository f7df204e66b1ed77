"""What the program is made of, by its locks: names, versions, licences as the packages say."""

import json
import re
from dataclasses import dataclass
from importlib.metadata import PackageNotFoundError, metadata
from pathlib import Path

HOME = Path(__file__).parents[2]
LOCK = HOME / "requirements.lock"
NPM = HOME / "viz" / "viewer" / "package-lock.json"
# Bundled into the page's script; esbuild only makes it.
BUNDLED = ("three", "fflate")
_PIN = re.compile(
    r"^(?P<name>[A-Za-z0-9._-]+)==(?P<version>[^ ;\\]+)(?: ; (?P<only>[^\\]+))?", re.M
)
# What their files say and their metadata does not, or what one system alone installs: from memory.
_ELSEWHERE = {
    "colorama": "BSD-3-Clause", "pyobjc-core": "MIT", "pyobjc-framework-cocoa": "MIT",
    "resvg-py": "MIT",
}  # fmt: skip


@dataclass(frozen=True)
class Part:
    """One package; kind: pypi or npm, as in a package URL; only: the systems that install it."""

    kind: str
    name: str
    version: str
    licence: str
    only: str = ""

    @property
    def url(self) -> str:
        """Its package URL."""
        return f"pkg:{self.kind}/{self.name}@{self.version}"


def parts() -> list[Part]:
    """Return everything the lock installs and the page's script holds."""
    pins = _PIN.finditer(LOCK.read_text(encoding="utf-8"))
    found = [
        Part(
            "pypi", pin["name"], pin["version"], _licence(pin["name"]), (pin["only"] or "").strip()
        )
        for pin in pins
    ]
    packages = json.loads(NPM.read_text(encoding="utf-8"))["packages"]
    locked = [(name, packages[f"node_modules/{name}"]) for name in BUNDLED]
    return found + [Part("npm", name, row["version"], row["license"]) for name, row in locked]


def _licence(name: str) -> str:
    """Return the licence as the package states it, in one line."""
    if name in _ELSEWHERE:
        return _ELSEWHERE[name]
    try:
        told = metadata(name)
    except PackageNotFoundError:
        return "not known here"
    classes = [
        c.split("::")[-1].strip() for c in told.get_all("Classifier") or () if "License ::" in c
    ]
    first = (told.get("License") or "").strip().split("\n")[0]
    short = first if 0 < len(first) <= 40 else ""
    return told.get("License-Expression") or ", ".join(classes) or short or "not known here"
