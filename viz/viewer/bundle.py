"""The viewer's script and style sheet, as the build step bundled them."""

from functools import lru_cache
from pathlib import Path

from geometry.errors import BedcourseError

FOLDER = Path(__file__).parent / "bundle"
LICENCES = "LICENSES.txt"


@lru_cache(maxsize=1)
def script() -> str:
    """Return the script. Raises BedcourseError where the build step left none."""
    return _text("viewer.js")


@lru_cache(maxsize=1)
def style() -> str:
    """Return the style sheet. Raises BedcourseError where the build step left none."""
    return _text("viewer.css")


def _text(name: str) -> str:
    try:
        return (FOLDER / name).read_text(encoding="utf-8")
    except FileNotFoundError as error:
        raise BedcourseError(
            "the script of the 3D page is missing from this installation: install Bedcourse anew"
        ) from error
