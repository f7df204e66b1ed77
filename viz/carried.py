"""Files that come with the program: in the source tree, or inside the installed package."""

from pathlib import Path

import viz
from geometry.errors import BedcourseError

DEMO = "l-basement"


def _home() -> Path:
    package = Path(viz.__file__).parent
    installed = package / "bundled"
    return installed if installed.is_dir() else package.parent


def app_file() -> Path:
    """Return the app's script."""
    return _home() / "app.py"


def examples() -> dict[str, Path]:
    """Return the example designs by name, the demo first."""
    files = sorted((_home() / "assets" / "examples").glob("*.toml"))
    return {f.stem: f for f in sorted(files, key=lambda f: (f.stem != DEMO, f.stem))}


def demo() -> Path:
    """Return the demo's design file. Raises BedcourseError if it did not come with the program."""
    found = examples()
    if DEMO not in found:
        raise BedcourseError("The demo design is missing from this installation: install it anew.")
    return found[DEMO]


def demo_shots() -> Path:
    """Return the demo's shots of its dug ground. Raises BedcourseError like `demo`."""
    return demo().with_name(f"{DEMO}-shots.csv")
