"""Reading what is typed on the command line: designs, places, windows, scales."""

import re
import sys
from pathlib import Path
from typing import TYPE_CHECKING, get_args

from geometry.errors import BedcourseError, LengthError
from geometry.units import BareUnit, System, read_length

if TYPE_CHECKING:
    from viz.drawing.page import PaperName
    from viz.drawing.scale import Scale
    from viz.figures.section.view import Window

DEMO = "demo"
STDIN = "-"


def design_text(design: str) -> str:
    """Return the text of a design file, of the demo, or of standard input for a dash."""
    from geometry.designfile import decoded, limited, load

    if design == STDIN:
        return decoded(limited(sys.stdin.buffer, "standard input"), "standard input")
    return load(design_path(design))


def design_path(design: str) -> Path:
    """Return the path a design is read from. Raises BedcourseError for a name that is no file."""
    from viz.carried import demo

    path = Path(design)
    if design == DEMO and not path.exists():
        return demo()
    if path.is_dir():
        raise BedcourseError(f"{path} is a folder; name a design file in it, or the word demo")
    if not path.exists():
        raise BedcourseError(
            f"{path} does not exist; `bedcourse start {path}` writes a first design, "
            "and the word demo shows the one that came with the program"
        )
    return path


def point(text: str, option: str, bare: BareUnit | None) -> tuple[float, float]:
    """Read a place on the plan, "x, y". Returns metres."""
    x, y = _lengths(text, 2, option, '"12 ft, 6 ft 6 in"', bare)
    return x, y


def points(text: str | None, option: str, bare: BareUnit | None) -> tuple[tuple[float, float], ...]:
    """Read places on the plan with semicolons between, "x, y; x, y". Returns metres."""
    pieces = (text or "").split(";")
    return tuple(point(piece, option, bare) for piece in pieces if piece.strip())


def window(text: str | None, bare: BareUnit | None) -> "Window | None":
    """Read a window of a section, "left, low, right, high". Returns metres."""
    if text is None:
        return None
    left, low, right, high = _lengths(text, 4, "--window", '"0, -2 ft, 8 ft, 4 ft"', bare)
    return left, low, right, high


def _lengths(
    text: str, count: int, option: str, example: str, bare: BareUnit | None
) -> list[float]:
    pieces = text.split(",")
    if len(pieces) != count:
        raise BedcourseError(f"{option} takes {count} lengths with commas between, like {example}")
    try:
        return [read_length(piece.strip(), bare) for piece in pieces]
    except LengthError as error:
        raise BedcourseError(f"{option}: {error}") from None


def scale(text: str | None, system: System) -> "Scale | None":
    """Read a scale by its name, or as a ratio such as 1:48; None leaves it to the paper."""
    from viz.drawing.scale import SCALES, named_scale

    if text is None:
        return None
    ratio = re.fullmatch(r"\s*1\s*:\s*(\d+)\s*", text)
    found = [s for s in SCALES[system] if ratio and s.ratio == int(ratio[1])]
    return found[0] if found else named_scale(text.strip(), system)


def paper(text: str | None) -> "PaperName | None":
    """Read a paper's name, whatever its capitals."""
    from viz.drawing.page import PaperName

    names: dict[str, PaperName] = {name.casefold(): name for name in get_args(PaperName)}
    if text is None:
        return None
    if text.strip().casefold() not in names:
        raise BedcourseError(f"{text!r} is not a paper; choose one of: {', '.join(names.values())}")
    return names[text.strip().casefold()]
