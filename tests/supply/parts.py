"""What the program is made of, by its locks: names, versions, licences as the packages say."""

import json
import re
from dataclasses import dataclass
from importlib.metadata import PackageNotFoundError, metadata
from pathlib import Path

HOME = Path(__file__).parents[2]
LOCK = HOME / "requirements.lock"
EXTRAS = {name: HOME / f"requirements-{name}.lock" for name in ("ifc", "batch")}
NPM = HOME / "viz" / "viewer" / "package-lock.json"
# Bundled into the page's script; esbuild only makes it.
BUNDLED = ("three", "fflate")
_PIN = re.compile(
    r"^(?P<name>[A-Za-z0-9._-]+)==(?P<version>[^ ;\\]+)(?: ; (?P<only>[^\\]+))?", re.M
)
# What their files say and their metadata does not, or what one system alone installs: from memory.
# The extra `batch` is not among the tests' packages: as its own metadata said when it was locked.
_ELSEWHERE = {
    "colorama": "BSD-3-Clause", "pyobjc-core": "MIT", "pyobjc-framework-cocoa": "MIT",
    "resvg-py": "MIT",
    "cloudpickle": "BSD-3-Clause", "dask": "BSD-3-Clause", "distributed": "BSD-3-Clause",
    "fsspec": "BSD-3-Clause", "importlib-metadata": "Apache-2.0", "lazy-importer": "Apache-2.0",
    "locket": "BSD-2-Clause", "msgpack": "Apache-2.0", "partd": "BSD",
    "psutil": "BSD-3-Clause", "pyyaml": "MIT License", "tblib": "BSD-2-Clause",
    "toolz": "BSD-3-Clause", "tornado": "Apache Software License", "zict": "BSD License",
    "zipp": "MIT",
}  # fmt: skip


@dataclass(frozen=True)
class Part:
    """One package; kind: pypi or npm, as in a package URL; only: the systems that install it.

    extra: the extra that brings it, empty for the program's own.
    """

    kind: str
    name: str
    version: str
    licence: str
    only: str = ""
    extra: str = ""

    @property
    def url(self) -> str:
        """Its package URL."""
        return f"pkg:{self.kind}/{self.name}@{self.version}"


def parts() -> list[Part]:
    """Return everything the locks install and the page's script holds, the extras' own last."""
    found = locked(LOCK)
    packages = json.loads(NPM.read_text(encoding="utf-8"))["packages"]
    bundled = [(name, packages[f"node_modules/{name}"]) for name in BUNDLED]
    found += [Part("npm", name, row["version"], row["license"]) for name, row in bundled]
    own = {part.url for part in found}
    for extra, lock in EXTRAS.items():
        found += [part for part in locked(lock, extra) if part.url not in own]
    return found


def locked(lock: Path, extra: str = "") -> list[Part]:
    """Return what one lock pins."""
    pins = _PIN.finditer(lock.read_text(encoding="utf-8"))
    return [
        Part(
            "pypi", pin["name"], pin["version"], _licence(pin["name"]),
            (pin["only"] or "").strip(), extra,
        )
        for pin in pins
    ]  # fmt: skip


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
